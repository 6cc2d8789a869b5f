package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.rules.Rules;
import hairline.checks.setup.SheetReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands beside {@code check}. */
class CommandsTest {
  @TempDir private Path folder;

  private Path program(String text) throws IOException {
    return Files.writeString(folder.resolve("part.nc"), text);
  }

  @Test
  void rulesAreListedAndExplained() {
    Ran list = Ran.of("rules");
    assertThat(list.status()).isZero();
    Rules.all()
        .forEach(
            rule -> {
              String name = rule.info().name();
              assertThat(list.out()).contains(name).contains(rule.info().summary());
              assertThat(Ran.of("explain", name).out()).startsWith("# " + name + "\n");
            });
  }

  @Test
  void anUnknownRuleIsAnsweredByTheNearest() {
    Ran ran = Ran.of("explain", "digits-below-resolutoin");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err()).contains("nearest is `digits-below-resolution`");
    assertThat(Ran.of("explain").status()).isEqualTo(2);
  }

  @Test
  void aStarterSheetReadsAsItIsAndNamesToolsAndSpeeds() throws Exception {
    Path program = program("G21 G90\nG54\nT3 M6\nS30000 M3\nG0 X0.\nM30\n");
    Ran ran = Ran.of("init", program.toString());
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("- number: 3").contains("30000 rpm");
    assertThat(new SheetReader().parse(ran.out(), "starter").tools()).hasSize(1);
  }

  @Test
  void aStarterSheetReplacesNothingUnasked() throws IOException {
    Path program = program("G21 G90\nM30\n");
    Path sheet = folder.resolve("setup.yaml");
    String[] args = {"init", program.toString(), "-o", sheet.toString()};
    assertThat(Ran.of(args))
        .isEqualTo(new Ran(0, "", "hairline: wrote `" + Inputs.name(sheet) + "`\n"));
    assertThat(sheet).content().startsWith("# Setup sheet for ");
    Files.writeString(sheet, "mine");
    Ran again = Ran.of(args);
    assertThat(again.status()).isEqualTo(2);
    assertThat(again.err()).contains("is there already").contains("--force");
    assertThat(sheet).hasContent("mine");
    assertThat(Ran.of("init", "--force", program.toString(), "-o", sheet.toString()).status())
        .isZero();
    Ran over = Ran.of("init", "--force", program.toString(), "-o", program.toString());
    assertThat(over.status()).isEqualTo(2);
    assertThat(over.err()).contains("over an input");
    assertThat(program).hasContent("G21 G90\nM30\n");
    for (String name : List.of("other.nc", "O77", "7001", "deep.TAP")) {
      Path other = Files.writeString(folder.resolve(name), "kept");
      Ran onto = Ran.of("init", "--force", program.toString(), "-o", other.toString());
      assertThat(onto.status()).as(name).isEqualTo(2);
      assertThat(onto.err()).contains("calls a part program");
      assertThat(other).hasContent("kept");
    }
  }

  @Test
  void initSaysWhatIsWrongWithItsInput() throws IOException {
    assertThat(Ran.of("init", folder.toString()).err()).contains("is a folder");
    assertThat(Ran.of("init", folder.resolve("gone.nc").toString()).status()).isEqualTo(3);
    assertThat(Ran.of("init", program("").toString()).err()).contains("is empty");
    String missing = folder.resolve("no/such/setup.yaml").toString();
    assertThat(Ran.of("init", program("M30\n").toString(), "-o", missing).err())
        .contains("its folder does not exist");
  }

  @Test
  void initSaysWhereTheStepBudgetEndedIt() throws Exception {
    Path program = program("T3 M6\nM98 P7 L1000000000\nT4 M6\nM30\nO7\nT5 M6\nM99\n");
    Ran ran = Ran.of("init", program.toString());
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.err())
        .contains("was not read to its end: the budget of 50000000 steps was used up at line 2\n");
    assertThat(new SheetReader().parse(ran.out(), "starter").tools())
        .extracting(tool -> tool.number())
        .containsExactly(3, 5);
  }

  @Test
  void initReadsStandardInputAndWritesNoFileCalledDash() throws IOException {
    Ran ran = Ran.withInput("G21 G90\nG55 G0 X0.\nT3 M6\nG43 H7 Z1.\nM30\n", "init", "-");
    assertThat(ran.status()).isZero();
    assertThat(ran.out())
        .startsWith("# Setup sheet for standard input")
        .contains("# length_offset: 7", "# G55: ");
    assertThat(Ran.withInput("", "init", "-").err()).contains("`standard input` is empty");
    Ran dash = Ran.of("init", program("M30\n").toString(), "-o", "-");
    assertThat(dash.status()).isEqualTo(2);
    assertThat(dash.err()).contains("`-` is no file to write");
  }

  @Test
  void keysThatAreMissingAreOneItemAndHideNoOther() throws IOException {
    Path program =
        program("G21 G90 G17 G94\nG54\nM199\nT3 M6\nG43 H3 Z1.\nS30000 M3\nG1 Z-0.01 F60.\nM30\n");
    Files.writeString(folder.resolve("setup.yaml"), "tools: [{number: 3}]\n");
    String out = Ran.of("check", program.toString()).out().replaceAll("\\s+", " ");
    assertThat(out)
        .containsPattern(
            "· not on the sheet: [^·]*machine\\.resolution, [^·]*; for: \\S+, \\S+, \\S+, \\S+ and"
                + " [0-9]+ more rules \\(--verbose names them\\)")
        .doesNotContain("machine.resolution is not on the sheet");
    assertThat(Ran.of("check", "--verbose", program.toString()).out())
        .contains("machine.resolution is not on the sheet: ", "digits-below-resolution")
        .doesNotContain("more rules (");
  }

  /** Programs in many shops begin with a bare retract behind the length offset. */
  @Test
  void aRetractWithoutAMotionCodeIsToldAsSuch() throws IOException {
    Path program = program("G21 G90 G17 G94\nG54\nT3 M6\nG43 H3 Z5.\nM30\n");
    assertThat(Ran.of("check", "--only=feed-missing", program.toString()).out())
        .contains("nor G0 to G3, so that G1 is assumed", "cure  G0 in this block where");
    Path stated = program("G21 G90 G17 G94\nG54\nT3 M6\nG1 G43 H3 Z5.\nM30\n");
    assertThat(Ran.of("check", "--only=feed-missing", stated.toString()).out())
        .contains("cure  F in this block or before it")
        .doesNotContain("assumed");
  }

  @Test
  void theSummaryTellsWhatTheProgramDoes() throws IOException {
    Path program =
        program(
            """
            G21 G90 G17 G94
            G54
            T3 M6
            S30000 M3
            G0 X0. Y0. Z1.
            G1 Z-0.5 F60.
            X6. F120.
            G2 X8. Y2. I0. J2.
            M30
            """);
    Ran ran = Ran.of("check", "--only=digits-below-resolution", "--summary", program.toString());
    assertThat(ran.out())
        .contains("moves  4 in 9 blocks: 1 rapid, 2 straight, 1 arc (1 clockwise)")
        .contains("G54 at feed: ")
        .contains("T3 from line")
        .contains("end  line 9, M30");
    assertThat(Ran.of("check", program.toString()).out()).doesNotContain("moves  ");
  }

  @Test
  void completionNamesCommandsAndOptions() {
    assertThat(Ran.of("completion").out())
        .contains("explain")
        .contains("--fail-on")
        .contains("chip-below-minimum")
        .contains("junit");
  }

  @Test
  void helpAndVersionGoToStandardOutput() {
    for (String command :
        new String[] {"check", "rules", "explain", "init", "completion", "view"}) {
      Ran ran = Ran.of(command, "--help");
      assertThat(ran.status()).isZero();
      assertThat(ran.err()).isEmpty();
      assertThat(ran.out()).startsWith("Usage: hairline " + command).doesNotContain("\n\n\n");
      assertThat(ran.out().contains("  1   something found")).isEqualTo(command.equals("check"));
      assertThat(ran.out()).contains("  2   wrong usage", "  3   ", "  4   ");
    }
    assertThat(Ran.of("check", "--help").out().replaceAll("\\s+", " "))
        .contains("(hairline: accept RULE: reason)", "(hairline: accept RULE until end: reason)");
    assertThat(Ran.of("--version").out()).startsWith("hairline ");
    assertThat(Ran.of("--help").out()).contains("no prove-out");
  }

  @Test
  void withoutTheWindowViewSaysHowToGetIt() {
    Ran ran = Ran.of("view", "programs/mixer-insert/mixer-insert.nc");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err())
        .contains("the window is not installed", "hairline-viewer.jar", "viewer/target");
  }

  @Test
  void rulesStandBelowTheQuestionTheyBelongTo() {
    String text = Ran.of("rules").out();
    for (String heading : List.of("numbers", "steps", "chips", "warmth", "motion", "state")) {
      assertThat(text.lines().filter(heading::equals)).as(heading).hasSize(1);
    }
    assertThat(text.indexOf("  chip-below-minimum "))
        .isGreaterThan(text.indexOf("\n\nchips\n"))
        .isPositive();
    assertThat(text).as("no empty line before the first").doesNotStartWith("\n");
  }
}
