package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Figure;
import hairline.checks.finding.Finding;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The same part milled elsewhere on the table, or turned by a quarter about Z, has the same faults:
 * every annotated program whose frame is its own is moved and turned, and each rule says the same,
 * with the same figures. (Source: geometry; the distances are whole increments and whole cells of
 * the height field.)
 */
class MovedProgramsTest {
  private static final BigDecimal X_MM = new BigDecimal("7.2");
  private static final BigDecimal Y_MM = new BigDecimal("-3.2");

  /**
   * What fixes a program to a place: other frames, increments, parameters, inches, subprograms,
   * digits finer than the increments (half of one is rounded away from zero).
   */
  private static final Pattern FIXED =
      Pattern.compile(
          "(?i)G(10|20|28|30|5[2-9]\\.?\\d?|70|90\\.1|91|92)(?!\\d)|[#\\[]|M9[89]|\\.\\d{5}"
              + "|O\\d+[^)]*\\n[^%]*\\nO\\d");

  private static final Pattern SHEET_FIXED = Pattern.compile("travel|decimal_point|unreadable");

  /** Other planes, sides of the machine that differ, one-sided approaches. */
  private static final Pattern UPRIGHT = Pattern.compile("(?i)G(18|19|68|5[12])(?!\\d)");

  private static final Pattern SHEET_UPRIGHT = Pattern.compile("\\b[XY]:");

  private static final Pattern COMMENT = Pattern.compile("\\([^)\\n]*\\)|;[^\\n]*");
  private static final Pattern SHEET_RANGES =
      Pattern.compile(
          "\\bx: \\[(-?[\\d.]+) mm, (-?[\\d.]+) mm\\], y: \\[(-?[\\d.]+) mm, (-?[\\d.]+) mm\\]");
  private static final Pattern WORD = Pattern.compile("(?i)([XYIJ])([+-]?\\d*\\.?\\d*)");

  /** Folders whose words are not all numbers. */
  private static final Set<String> NOT_NUMBERS = Set.of("syntax", "space-inside-number");

  @TestFactory
  Stream<DynamicTest> moved() throws IOException {
    return programs()
        .filter(MovedProgramsTest::upright)
        .map(p -> test(p, MovedProgramsTest::movedWord, MovedProgramsTest::movedRanges));
  }

  @TestFactory
  Stream<DynamicTest> turnedAndMoved() throws IOException {
    return programs()
        .filter(p -> !upright(p))
        .map(p -> test(p, MovedProgramsTest::turnedWord, MovedProgramsTest::turnedRanges));
  }

  private static boolean upright(Path program) {
    return UPRIGHT.matcher(words(program)).find()
        || SHEET_UPRIGHT.matcher(read(sheet(program))).find();
  }

  private static Stream<Path> programs() throws IOException {
    Path folder = Programs.ROOT.resolve("rules");
    return AnnotatedProgramsTest.programs().stream()
        .filter(program -> program.startsWith(folder))
        .filter(p -> !NOT_NUMBERS.contains(folder.relativize(p).getName(0).toString()))
        .filter(p -> !FIXED.matcher(words(p)).find())
        .filter(p -> !SHEET_FIXED.matcher(read(sheet(p))).find());
  }

  private static String words(Path program) {
    return COMMENT.matcher(read(program)).replaceAll("").replace("G54", "");
  }

  private static Path sheet(Path program) {
    String name = String.valueOf(program.getFileName());
    Path own = program.resolveSibling(name.substring(0, name.length() - 3) + ".setup.yaml");
    if (Files.exists(own)) {
      return own;
    }
    Path folders = program.resolveSibling("setup.yaml");
    return Files.exists(folders) ? folders : Programs.ROOT.resolve("rules/setup.yaml");
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static DynamicTest test(
      Path program, Function<MatchResult, String> word, Function<MatchResult, String> ranges) {
    return DynamicTest.dynamicTest(
        Programs.ROOT.relativize(program).toString(),
        () -> {
          String text = read(program);
          String sheet = read(sheet(program));
          assertSame(
              findings(text, sheet),
              findings(eachWord(text, word), SHEET_RANGES.matcher(sheet).replaceAll(ranges)));
        });
  }

  private static void assertSame(List<Finding> here, List<Finding> there) {
    assertThat(there.stream().map(MovedProgramsTest::place).toList())
        .isEqualTo(here.stream().map(MovedProgramsTest::place).toList());
    for (int i = 0; i < here.size(); i++) {
      List<Figure> before = here.get(i).worst().figures();
      List<Figure> after = there.get(i).worst().figures();
      assertThat(after).hasSameSizeAs(before);
      for (int f = 0; f < before.size(); f++) {
        double resolution = resolution(here.get(i), before.get(f));
        assertThat(
                isSame(before.get(f), after.get(f))
                    || Math.abs(after.get(f).value() - before.get(f).value()) < resolution)
            .as(here.get(i) + ": " + before.get(f) + ", moved " + after.get(f))
            .isTrue();
      }
    }
  }

  private static final Pattern CELL = Pattern.compile("good to a cell of ([0-9.]+) µm");

  /** How well a width is told that cells show: other cells show another one after the move. */
  private static double resolution(Finding finding, Figure figure) {
    if (!figure.name().equals("width")) {
      return 0;
    }
    return finding.worst().facts().stream()
        .map(CELL::matcher)
        .filter(Matcher::find)
        .mapToDouble(cell -> Double.parseDouble(cell.group(1)))
        .findFirst()
        .orElse(0);
  }

  /** The same figure, or a place that moved too; a longer approach may change times a little. */
  private static boolean isSame(Figure before, Figure after) {
    double by = after.value() - before.value();
    double little = 1e-3 * (1 + Math.abs(before.value()));
    return before.name().equals(after.name())
        && (after.value() == before.value()
            || Math.abs(by) < little
            || PLACES.contains(before.name())
            || Stream.of(X_MM, Y_MM)
                .mapToDouble(mm -> mm.doubleValue() * (before.unit().equals("mm") ? 1 : 1000))
                .anyMatch(mm -> Math.abs(by - mm) < little));
  }

  /** Figures that say where, not how much. */
  private static final Set<String> PLACES = Set.of("x", "y");

  private static String place(Finding finding) {
    return finding.rule()
        + " "
        + finding.level()
        + " "
        + finding.at().line()
        + " x"
        + finding.count();
  }

  private static List<Finding> findings(String program, String sheet)
      throws IOException, SheetException {
    return ProgramCheck.of(Selection.ALL)
        .check(
            PartPrograms.of("moved.nc", program.getBytes(StandardCharsets.UTF_8)),
            new SheetReader().parse(sheet, "setup.yaml"))
        .findings()
        .stream()
        .sorted(Comparator.comparing(MovedProgramsTest::place))
        .toList();
  }

  private static String movedWord(MatchResult word) {
    return switch (word.group(1)) {
      case "X" -> "X" + new BigDecimal(word.group(2)).add(X_MM).toPlainString();
      case "Y" -> "Y" + new BigDecimal(word.group(2)).add(Y_MM).toPlainString();
      default -> word.group();
    };
  }

  /** X becomes Y, and Y becomes -X; then it is moved. */
  private static String turnedWord(MatchResult word) {
    BigDecimal value = new BigDecimal(word.group(2));
    return switch (word.group(1)) {
      case "X" -> "Y" + value.add(Y_MM).toPlainString();
      case "Y" -> "X" + value.negate().add(X_MM).toPlainString();
      case "I" -> "J" + value.toPlainString();
      case "J" -> "I" + value.negate().toPlainString();
      default -> throw new AssertionError(word.group());
    };
  }

  private static String movedRanges(MatchResult ranges) {
    return ranges(
        decimal(ranges, 1).add(X_MM),
        decimal(ranges, 2).add(X_MM),
        decimal(ranges, 3).add(Y_MM),
        decimal(ranges, 4).add(Y_MM));
  }

  private static String turnedRanges(MatchResult ranges) {
    return ranges(
        decimal(ranges, 4).negate().add(X_MM),
        decimal(ranges, 3).negate().add(X_MM),
        decimal(ranges, 1).add(Y_MM),
        decimal(ranges, 2).add(Y_MM));
  }

  private static BigDecimal decimal(MatchResult ranges, int group) {
    return new BigDecimal(ranges.group(group));
  }

  private static String ranges(BigDecimal x0, BigDecimal x1, BigDecimal y0, BigDecimal y1) {
    return "x: ["
        + x0.toPlainString()
        + " mm, "
        + x1.toPlainString()
        + " mm], y: ["
        + y0.toPlainString()
        + " mm, "
        + y1.toPlainString()
        + " mm]";
  }

  private static String eachWord(String text, Function<MatchResult, String> change) {
    StringBuilder changed = new StringBuilder();
    for (String line : text.split("(?<=\\n)", -1)) {
      Matcher comment = COMMENT.matcher(line);
      int end = comment.find() ? comment.start() : line.length();
      changed
          .append(WORD.matcher(line.substring(0, end)).replaceAll(change))
          .append(line.substring(end));
    }
    return changed.toString();
  }
}
