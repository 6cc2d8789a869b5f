package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * {@code hairline brief}: what it tells of the demo, read off the program and its sheet by hand.
 */
class BriefCommandTest {
  private static final Path DEMO = Path.of("../programs/mixer-insert");
  private static final String PROGRAM = DEMO.resolve("mixer-insert.nc").toString();

  @TempDir private Path folder;

  @Test
  void itTellsTheDemo() throws Exception {
    Ran ran = Ran.of("brief", PROGRAM);
    assertThat(ran.status()).isZero();
    String text = ran.out().replaceAll("\\s+", " ");
    // The hash as sha256sum prints it is compared with the JDK's own of the whole file.
    byte[] bytes = Files.readAllBytes(Path.of(PROGRAM));
    String hash =
        java.util.HexFormat.of()
            .formatHex(java.security.MessageDigest.getInstance("SHA-256").digest(bytes));
    assertThat(text)
        .contains(PROGRAM + ", O100")
        .contains("SHA-256 " + hash + ", " + bytes.length + " bytes")
        .contains("machine bench mill 2; material hardened tool steel, 54 HRC")
        .contains("nothing found")
        .contains("G54 rapid X −8 to 8 −28 to −12 −150 to 150 122")
        .contains("8 0:01.5 warm-up M71 spindle 30000 rpm for 12 min, valid for 20 min")
        .contains("mixer cascade step 4, ±0.8 um −4, −8, −12, −16")
        .contains("inlet ladder levels −4, −8, −14 −4, −8, −14")
        .contains("[ ] G54 is set and probed, on the sheet X −20, Y 5, Z −60 mm")
        .contains("[ ] guards closed, interlocks work, emergency stop in reach")
        .contains("replaces no prove-out")
        .contains("local codes of safety hold");
  }

  /** What {@code check --feeds} tells of the program, in a line. */
  @Test
  void itTellsWhetherTheFeedsAreReached() {
    String feeds = Ran.of("check", "--feeds", PROGRAM).out().replaceAll("\\s+", " ");
    Matcher below =
        Pattern.compile("below the programmed feed for [0-9.]+ % of the time, on [0-9.]+ %")
            .matcher(feeds);
    assertThat(below.find()).isTrue();
    Matcher tool5 =
        Pattern.compile("T5 at [^:]*: [^:]*; below the programmed feed for ([0-9.]+ %)")
            .matcher(feeds);
    assertThat(tool5.find()).isTrue();
    String brief = Ran.of("brief", PROGRAM).out().replaceAll("\\s+", " ");
    assertThat(brief)
        .contains(below.group())
        .contains("most by T5 from line 139 on (" + tool5.group(1) + " of its time)")
        .doesNotContain("lost to");
    assertThat(Ran.of("check", "--feeds", "--format=html", PROGRAM).out())
        .contains(below.group())
        .contains("; lost to corner ");
  }

  @Test
  void thePageIsTheHtmlReportOfTheCheck() throws IOException {
    Path report = folder.resolve("report.html");
    Ran check = Ran.of("check", "--report=html=" + report, PROGRAM);
    assertThat(check.status()).isZero();
    // What the page needs does not show in the report on standard output.
    assertThat(check.out()).doesNotContain("terrace", "moves");
    assertThat(Files.readString(report)).isEqualTo(Ran.of("brief", "--format=html", PROGRAM).out());
  }

  @Test
  void findingsDoNotFailABriefAndUnreadTextDoes() throws IOException {
    Path program = folder.resolve("part.nc");
    Files.writeString(program, "G21 G90\nG54\nG0 X1.00005\nM1\n/M0\nM30\n");
    Ran ran = Ran.of("brief", program.toString());
    assertThat(ran.status()).isZero();
    assertThat(ran.out())
        .contains("a setup sheet for this machine and job is still to be written")
        .contains("block delete switch: position decided and set")
        .contains("optional stop switch: position decided and set");
    Files.writeString(program, "G21 G90\nG54\n(open [[\nG1 X[[1\nM30\n");
    assertThat(Ran.of("brief", program.toString()).status()).isEqualTo(3);
    assertThat(Ran.of("brief", "gone.nc").status()).isEqualTo(3);
    assertThat(Ran.of("brief", folder.toString()).status()).isEqualTo(2);
  }

  /** 0.25 µm under an increment of 0.1 µm is stored as 0.3: half away from zero. */
  @Test
  void theFinestStepIsToldAsStoredAndAsWritten() throws IOException {
    Path program = folder.resolve("part.nc");
    String text = Files.readString(Path.of(PROGRAM));
    assertThat(text).contains("G1 Z-0.004 F60.");
    Files.writeString(program, text.replace("G1 Z-0.004 F60.", "G1 Z-0.00025 F60."));
    Ran ran = Ran.of("brief", "--setup=" + DEMO.resolve("setup.yaml"), program.toString());
    assertThat(ran.out().replaceAll("\\s+", " "))
        .contains("60 to 28.6 s 0.3 −16", "(written 0.25)");
    // The budgets of the same steps: one is declared as 4, the other as nothing.
    String sheet = "--setup=" + DEMO.resolve("setup.yaml");
    assertThat(Ran.of("brief", "--format=html", sheet, program.toString()).out())
        .contains("<th scope=\"col\">finest step µm, as stored</th>", "<td>0.3 (written 0.25)</td>")
        .containsSubsequence("mixer cascade</th>\n<td>0.3 (declared 4)</td>")
        .containsSubsequence("inlet ladder</th>\n<td>0.3 (written 0.25)</td>");
  }

  /** Which number is in force is told by the program, which one is the tool's by the sheet. */
  @Test
  void aLengthOffsetThatIsNotTheSheetsIsToldWithIt() throws IOException {
    Path program = folder.resolve("part.nc");
    String text = Files.readString(Path.of(PROGRAM));
    Files.writeString(program, text.replace("G43 H3", "G43 H7"));
    Ran ran = Ran.of("brief", "--setup=" + DEMO.resolve("setup.yaml"), program.toString());
    assertThat(ran.out().replaceAll("\\s+", " "))
        .contains("0.8 µm or less, H7 in the program, H3 on the sheet")
        .contains("2 µm or less, H1 ");
  }

  @Test
  void theHelpSaysWithWhichStatusItEnds() {
    String help = Ran.of("brief", "--help").out().replaceAll("\\s+", " ");
    assertThat(help)
        .contains("0 the brief is written, whatever is found, and the whole program was understood")
        .contains("3 the program could not be read, or not all of it was understood")
        .doesNotContain(" 1 ");
  }

  @Test
  void aProgramThatDoesNothingHasABriefToo() throws IOException {
    Path program = folder.resolve("empty.nc");
    Files.writeString(program, "(nothing)\nM30\n");
    for (String format : new String[] {"text", "html"}) {
      Ran ran = Ran.of("brief", "--format=" + format, program.toString());
      assertThat(ran.status()).isZero();
      assertThat(ran.out()).contains("no stop, no warm-up, no measuring and no tool change");
    }
  }
}
