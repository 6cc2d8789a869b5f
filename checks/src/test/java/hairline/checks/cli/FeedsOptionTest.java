package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code check --feeds}. */
class FeedsOptionTest {
  private static final String DEMO = "../programs/mixer-insert/mixer-insert.nc";
  private static final String ONE_RULE = "--only=step-below-smallest";

  @TempDir private Path folder;
  private Path program;

  /** A slot between rests, then 2 µm blocks, which 1 ms a block holds at 120 mm/min. */
  @BeforeEach
  void write() throws IOException {
    Files.writeString(
        folder.resolve("setup.yaml"),
        """
        machine:
          rapid: 15 m/min
          acceleration: 2000 mm/s^2
          control: {path_tolerance: 2 um, block_time: 1 ms, look_ahead: 100}
        tools: [{number: 3, shape: flat, diameter: 0.4 mm, flutes: 2}]
        """);
    StringBuilder text =
        new StringBuilder("G21 G90 G17 G94 G54\nT3 M6\nS30000 M3\nG0 X0. Y0. Z0.\nG4 P0\n");
    text.append("G1 X1. F600.\nG4 P0\nM98 P7\nM30\n");
    program = folder.resolve("p.nc");
    Files.writeString(program, text);
    StringBuilder called = new StringBuilder("O7\n");
    for (int k = 1; k <= 100; k++) {
      called.append("X").append("1.").append(String.format(java.util.Locale.ROOT, "%03d", 2 * k));
      called.append("\n");
    }
    Files.writeString(folder.resolve("O7.nc"), called.append("M99\n"));
  }

  private static Ran ran(String program, String... more) {
    List<String> args = new ArrayList<>(List.of("check", ONE_RULE, "--feeds"));
    args.addAll(Arrays.asList(more));
    args.add(program);
    Ran ran = Ran.of(args.toArray(new String[0]));
    assertThat(ran.err()).isEmpty();
    return ran;
  }

  private static JsonNode feeds(String program) throws IOException {
    return new ObjectMapper().readTree(ran(program, "--format=json").out()).at("/programs/0/feeds");
  }

  /** Rest to rest at 10 mm/s and 2000 mm/s² costs v/a = 5 ms (exact). */
  @Test
  void theTextNamesTheSlowestMovesAndWhatHoldsThem() {
    assertThat(ran(program.toString()).out())
        .contains("feeds  0.206 s at feed as planned, 0.12 s as programmed; below the programmed")
        .contains("lost to  block time 0.08 s, stop 0.006 s")
        .contains("operation  T3 at 30000 rpm from line 4")
        .containsPattern("furthest below +programmed +entry +lowest +mean mm/min +mm +s +lost s")
        .containsPattern("line [0-9]+ of .*O7.nc +600 .* block time\n")
        .containsPattern("line 6 +600 +0 +0 +571.4 +1 +0.105 +0.005 +1 +stop\n");
  }

  @Test
  void jsonIsAsTheSchemaHasIt() throws IOException {
    JsonNode feeds = feeds(program.toString());
    assertThat(feeds.at("/plan/programmedSeconds").asDouble()).isCloseTo(0.12, within(1e-9));
    assertThat(feeds.at("/operations/0/moves").asInt()).isEqualTo(101);
    assertThat(feeds.at("/operations/0/movesBelow").asInt()).isEqualTo(101);
    JsonNode slowest = feeds.at("/operations/0/slowest");
    assertThat(slowest.size()).isBetween(2, 20);
    assertThat(feeds.get("complete").asBoolean()).isTrue();
    String text = ran(DEMO, "--format=json").out();
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                SchemaLocation.of("urn:hairline:report:1"),
                new String(
                    FeedsOptionTest.class
                        .getResourceAsStream("/hairline/checks/report/report.schema.json")
                        .readAllBytes(),
                    StandardCharsets.UTF_8),
                InputFormat.JSON);
    assertThat(schema.validate(text, InputFormat.JSON)).isEmpty();
    assertThat(schema.validate(text.replace("heldBy", "held"), InputFormat.JSON))
        .as("the schema can tell")
        .isNotEmpty();
  }

  @Test
  void theTableHasARowForEachMoveAndAddsUpToTheReport() throws IOException {
    String[] rows = ran(program.toString(), "--format=csv").out().split("\r\n");
    List<String> heading = List.of(rows[0].split(",", -1));
    int time = heading.indexOf("time_s");
    int lost = heading.indexOf("lost_s");
    double seconds = 0;
    double lostSeconds = 0;
    int moves = 0;
    for (String row : rows) {
      String[] fields = row.split(",", -1);
      assertThat(fields).hasSameSizeAs(heading);
      if (fields[1].equals("move") && fields[heading.indexOf("move")].equals("line")) {
        moves++;
        seconds += Double.parseDouble(fields[time]);
        lostSeconds += Double.parseDouble(fields[lost]);
      }
    }
    assertThat(moves).isEqualTo(101);
    JsonNode plan = feeds(program.toString()).get("plan");
    assertThat(seconds).isCloseTo(plan.get("plannedSeconds").asDouble(), within(1e-9));
    assertThat(lostSeconds)
        .isCloseTo(seconds - plan.get("programmedSeconds").asDouble(), within(1e-9));
    assertThat(rows)
        .anySatisfy(row -> assertThat(row).contains(",move,").contains("O7.nc"))
        .anySatisfy(row -> assertThat(row).contains(",operation,"))
        .anySatisfy(row -> assertThat(row).contains(",feeds,"));
    assertThat(rows)
        .anySatisfy(
            row ->
                assertThat(row).endsWith(",line,1,600,0,0,0,600,571.428571429,0.105,0.005,stop"));
  }

  @Test
  void aTableOfStandardInputIsReadAgainToo() throws IOException {
    String demo = Files.readString(Path.of(DEMO));
    Ran ran =
        Ran.withInput(
            demo,
            "check",
            ONE_RULE,
            "--feeds",
            "--format=csv",
            "--setup=../programs/mixer-insert/setup.yaml",
            "-");
    assertThat(ran.out().lines().filter(row -> row.contains(",move,")).count())
        .isEqualTo(
            ran(DEMO, "--format=csv").out().lines().filter(row -> row.contains(",move,")).count())
        .isGreaterThan(2000);
  }

  @Test
  void withoutLimitsOfTheMachineItSaysWhatIsMissing() {
    String text = "G21 G90 G17 G94 G54\nG0 X0. Y0. Z0.\nG1 X1. F100.\nM30\n";
    assertThat(Ran.withInput(text, "check", ONE_RULE, "--feeds", "-").out())
        .contains(
            "feeds  not planned: not on the sheet: machine.acceleration,"
                + " machine.control.path_tolerance");
    assertThat(Ran.withInput(text, "check", ONE_RULE, "--feeds", "--format=csv", "-").out())
        .contains(",move,")
        .contains("not on the sheet: machine.acceleration and machine.control.path_tolerance");
    assertThat(
            Ran.withInput(
                    "G21 G90\nM30\n",
                    "check",
                    ONE_RULE,
                    "--feeds",
                    "--set",
                    "machine.acceleration=1 m/s^2",
                    "--set",
                    "machine.control.path_tolerance=1 um",
                    "-")
                .out())
        .contains("feeds  none: no feed move is planned");
  }

  @Test
  void quietReportsHoldItAndOthersDoNot() throws IOException {
    assertThat(ran(DEMO, "-q").out()).contains("feeds  ", "furthest below");
    assertThat(Ran.of("check", ONE_RULE, DEMO).out()).doesNotContain("furthest below");
    Ran json = Ran.of("check", ONE_RULE, "--format=json", DEMO);
    assertThat(new ObjectMapper().readTree(json.out()).at("/programs/0").has("feeds")).isFalse();
  }

  @Test
  void verboseReportsShowAllThatIsKept() {
    long few = rows(ran(DEMO).out());
    assertThat(rows(ran(DEMO, "-v").out())).isGreaterThan(few).isLessThanOrEqualTo(60);
    ran(DEMO)
        .out()
        .lines()
        .forEach(line -> assertThat(line.codePointCount(0, line.length())).isLessThan(112));
  }

  private static long rows(String text) {
    return text.lines().filter(line -> line.matches(" +line [0-9]+ .*[a-z]")).count();
  }
}
