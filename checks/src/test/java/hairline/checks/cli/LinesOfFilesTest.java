package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A number of a line tells nothing where a program is made of several files and the file is not
 * said. The demo's terraces stand in a file of their own here, tool change and measuring in the
 * program that calls it.
 */
class LinesOfFilesTest {
  /** The terraces with what is cut between them, without tool change, speed and measuring. */
  private static final int FIRST = 43;

  private static final int LAST = 131;
  private static final Pattern LINE =
      Pattern.compile("\\blines? (\\d+)(?: to (?:line )?(\\d+))?(?! of|,? of|\\d)");

  @TempDir private Path folder;
  private Path main;
  private int linesOfMain;

  @BeforeEach
  void split() throws IOException {
    Path demo = Path.of("../programs/mixer-insert");
    for (String name : List.of("setup.yaml", "machine.yaml", "tools.yaml")) {
      Files.copy(demo.resolve(name), folder.resolve(name));
    }
    List<String> lines = Files.readAllLines(demo.resolve("mixer-insert-faulty.nc"));
    StringBuilder caller = new StringBuilder();
    StringBuilder called = new StringBuilder("O1\n");
    lines.subList(0, FIRST - 1).forEach(line -> caller.append(line).append('\n'));
    lines.subList(FIRST - 1, LAST).forEach(line -> called.append(line).append('\n'));
    caller.append("M98 P1\nM5\nG53 G0 Z0.\nM30\n%\n");
    linesOfMain = (int) caller.chars().filter(c -> c == '\n').count();
    main = Files.writeString(folder.resolve("main.nc"), caller);
    Files.writeString(folder.resolve("O0001.nc"), called.append("M99\n"));
  }

  private String report(String... options) {
    String[] all = new String[options.length + 1];
    System.arraycopy(options, 0, all, 0, options.length);
    all[options.length] = main.toString();
    // As one line each: how far a word is wrapped says nothing.
    return Ran.of(all).out().replaceAll("\\s+", " ");
  }

  /** Lines that the program itself hasn't, and of which no file is said. */
  private List<String> bareLines(String text) {
    return LINE.matcher(text)
        .results()
        .filter(
            match -> Integer.parseInt(match.group(match.group(2) == null ? 1 : 2)) > linesOfMain)
        .map(MatchResult::group)
        .toList();
  }

  @Test
  void timelineAndDepthsNameTheFile() {
    String text = report("check", "--only=suppression-unused", "--timeline", "--depths");
    assertThat(text).contains("O0001.nc");
    assertThat(bareLines(text)).isEmpty();
  }

  @Test
  void theSummaryNamesTheFile() throws IOException {
    Files.writeString(
        folder.resolve("O0001.nc"), "O1\n\n\n\n\n\nT3 M6\nS30000 M3\nG1 X#9 F100.\nM99\n");
    Files.writeString(main, "%\nG21 G90 G17 G94 G54\nM98 P1\nM30\n%\n");
    linesOfMain = 5;
    String text = report("check", "--only=suppression-unused", "--summary");
    assertThat(text)
        .containsPattern("T3 from line 7 of \\S*O0001.nc")
        .containsPattern("; line 9 of \\S*O0001.nc");
    assertThat(bareLines(text)).isEmpty();
  }

  @Test
  void briefAndWindowNameTheFile() {
    String brief = report("brief");
    assertThat(bareLines(brief)).isEmpty();
    assertThat(brief).contains("2–90 of");
    String window = report("window");
    assertThat(bareLines(window)).isEmpty();
    assertThat(window).containsPattern("from line 2 of \\S*O0001.nc");
  }

  @Test
  void factsOfGrowthAndBudgetNameTheFileOfTheMeasuring() {
    String budget = report("check", "--only=budget-exceeds-tolerance", "--budget");
    assertThat(budget).contains("from measuring at line 38 of main.nc to line 64;");
    String growth =
        report(
            "check",
            "--only=growth-exceeds-share",
            "--set=limits.growth_share=0.01",
            "--set=machine.spindle.warm_up.where=before");
    assertThat(growth)
        .containsPattern("measuring: growth [^(]* at line 38 of main.nc \\(")
        .doesNotContain("line 38 (");
  }

  @Test
  void aRepeatInAnotherFileThanTheFirstNamesItsFile() throws IOException {
    Files.writeString(folder.resolve("O0001.nc"), "O1\nG1 X1.00001 F100.\nM99\n");
    Files.writeString(main, "%\nG21 G90 G17 G94 G54\nG0 Z1.\nM98 P1\nG1 X2.00001\nM30\n%\n");
    assertThat(report("check", "--only=digits-below-resolution"))
        .containsPattern("found 2 times, the last time at line 5 of \\S*main.nc");
  }

  @Test
  void aParameterNamesTheFileThatMadeItUnknown() throws IOException {
    Files.writeString(folder.resolve("O0001.nc"), "O1\n#[#7] = 1\nM99\n");
    Files.writeString(main, "%\nG21 G90 G17 G94 G54\nG0 Z1.\nM98 P1\nG1 X#5 F100.\nM30\n%\n");
    assertThat(report("check")).contains("line 2 of O0001.nc may have set #5 to anything");
  }

  @Test
  void aMacroNamesTheFilesOfTheMovesThatItLeavesUnchecked() throws IOException {
    Files.writeString(folder.resolve("O0001.nc"), "O1\nX1.\nX2.\nM99\n");
    Files.writeString(
        main,
        "%\nG21 G90 G17 G94 G54\nG0 X0. Y0. Z1.\nG1 F100.\nWHILE [#1 LT 5] DO1\nM98 P1\nM30\n%\n");
    assertThat(report("check", "--only=macro-unread"))
        .contains("moves of 2 blocks, from line 2 of O0001.nc to line 3 of O0001.nc");
  }
}
