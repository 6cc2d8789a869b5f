package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Assumption;
import hairline.checks.finding.Finding;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.Level;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What the text report puts together, leaves out and paints. */
class TextReportTest {
  private static final String RESET = "\u001b[0m";

  private static ReportOptions options(boolean colour, boolean quiet, boolean verbose) {
    return new ReportOptions(
        "1.2.3",
        Optional.of(Level.WARNING),
        colour,
        quiet,
        verbose,
        100,
        List.of(),
        Conditions.NONE);
  }

  private static CheckedProgram program(
      List<Finding> findings, List<NotChecked> notChecked, List<Assumption> assumptions) {
    return CheckedProgram.of(
        new ProgramResult(
            "a.nc",
            List.of("a.nc", "b.nc"),
            findings,
            List.of(),
            notChecked,
            assumptions,
            "setup.yaml",
            false,
            Map.of(),
            false,
            false,
            false),
        Optional.empty());
  }

  private static String report(CheckedProgram program, boolean verbose) {
    return SampleRun.report(ReportFormat.TEXT, options(false, false, verbose), List.of(program));
  }

  private static String verdict(Verdict verdict, boolean colour) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ReportWriter writer = ReportFormat.TEXT.writer(out, options(colour, false, false));
    writer.begin();
    writer.end(verdict);
    return out.toString(StandardCharsets.UTF_8);
  }

  // What is not checked.

  private static NotChecked missing(String rule, String reason, int line) {
    return new NotChecked(rule, reason, Optional.of(SampleRun.at(0, line, 1, 2)), 1);
  }

  @Test
  void fourMissingKeysAreOneItemAndThreeAreNot() {
    List<NotChecked> missing = new ArrayList<>();
    for (String key : List.of("machine.resolution", "stock.top", "tools.1.runout")) {
      missing.add(missing("rule-of-" + key.length(), key + " is not on the sheet", 3));
    }
    assertThat(report(program(List.of(), missing, List.of()), false))
        .contains("·  machine.resolution is not on the sheet: rule-of-18; line 3")
        .doesNotContain("not on the sheet: machine");
    missing.add(missing("cuts-air", "job.cusp is not on the sheet", 4));
    missing.add(missing("syntax", "Z is unknown from here on", 5));
    assertThat(report(program(List.of(), missing, List.of()), false).replaceAll("\\s+", " "))
        .contains(
            "· not on the sheet: job.cusp, machine.resolution, stock.top, tools.1.runout;"
                + " for: cuts-air, rule-of-14, rule-of-18, rule-of-9")
        .contains("· Z is unknown from here on: syntax; line 5")
        .doesNotContain("line 3");
    assertThat(report(program(List.of(), missing, List.of()), true))
        .as("the whole report has each with its line")
        .contains("·  job.cusp is not on the sheet: cuts-air; line 4")
        .doesNotContain("; for: ");
  }

  @Test
  void reasonsThatDifferInNumbersOnlyAreToldOnce() {
    List<NotChecked> missing =
        List.of(
            missing("syntax", "the arc's end is 1.5 µm off", 3),
            missing("syntax", "the arc's end is -12 µm off", 4),
            missing("cuts-air", "the arc's end is 7 µm off", 5));
    String text = report(program(List.of(), missing, List.of()), false);
    assertThat(text)
        .contains("·  the arc's end is -12 µm off: syntax; line 4; 1 more reason of this kind")
        .contains("·  the arc's end is 7 µm off: cuts-air; line 5\n")
        .doesNotContain("1.5 µm");
    assertThat(report(program(List.of(), missing, List.of()), true))
        .contains("1.5 µm off: syntax; line 3\n")
        .doesNotContain("of this kind");
  }

  @Test
  void oneReasonOfSeveralRulesCountsItsPlacesOnce() {
    List<NotChecked> missing =
        List.of(
            new NotChecked("syntax", "S is unknown", Optional.empty(), 1),
            new NotChecked("cuts-air", "S is unknown", Optional.of(SampleRun.at(1, 9, 1, 2)), 7),
            new NotChecked(
                "end-missing", "S is unknown", Optional.of(SampleRun.at(0, 8, 1, 2)), 3));
    assertThat(report(program(List.of(), missing, List.of()), false))
        .contains("·  S is unknown: cuts-air, end-missing, syntax; line 9 of b.nc and 6 more\n");
  }

  // Assumptions.

  @Test
  void whatSeveralToolsShareIsOneItemInTheOrderOfKeys() {
    List<Assumption> assumptions =
        List.of(
            new Assumption("tools.12.flutes", "2", "usual"),
            new Assumption("tools.3.flutes", "2", "usual"),
            new Assumption("tools.3.helix", "30 deg", ""),
            new Assumption("limits.step_margin", "3", "default"));
    String text = report(program(List.of(), List.of(), assumptions), false);
    assertThat(text.substring(text.indexOf("assumed")).lines().map(String::strip).limit(4))
        .containsExactly(
            "assumed",
            "·  limits.step_margin = 3 (default)",
            "·  tools 3, 12: flutes = 2 (usual)",
            "·  tools.3.helix = 30 deg");
  }

  @Test
  void twelveItemsAreShownAndTheRestIsCounted() {
    List<Assumption> assumptions = new ArrayList<>();
    for (int k = 0; k < 12; k++) {
      assumptions.add(new Assumption("key." + (char) ('a' + k), "1", ""));
    }
    assertThat(report(program(List.of(), List.of(), assumptions), false))
        .contains("key.l = 1")
        .doesNotContain("more; --verbose");
    assumptions.add(new Assumption("key.m", "1", ""));
    assumptions.add(new Assumption("key.n", "1", ""));
    assertThat(report(program(List.of(), List.of(), assumptions), false))
        .contains("key.l = 1", "…  2 more; --verbose lists them all")
        .doesNotContain("key.m");
    assertThat(report(program(List.of(), List.of(), assumptions), true))
        .contains("key.n = 1")
        .doesNotContain("more; --verbose");
  }

  // Findings.

  private static Occurrence occurrence(int line, String message, String fact, String cure) {
    return Occurrence.of("cuts-air", Level.WARNING, SampleRun.at(0, line, 1, 2), message)
        .fact(fact)
        .fact("common to all")
        .cure(cure)
        .build();
  }

  private static Finding finding(Occurrence first, Occurrence worst, int count, Place last) {
    return new Finding(first, worst, count, last, BlockDelete.BOTH, Optional.empty());
  }

  @Test
  void theWorstOfSeveralHasItsOwnArithmeticAndCure() {
    Occurrence first = occurrence(3, "4 µm of 5 µm", "5 - 1 = 4", "Z-0.005 cuts");
    Occurrence worst = occurrence(7, "2 µm of 5 µm", "5 - 3 = 2", "Z-0.007 cuts");
    CheckedProgram program =
        program(List.of(finding(first, worst, 3, SampleRun.at(0, 9, 1, 2))), List.of(), List.of());
    assertThat(report(program, false))
        .contains(
            "      why  5 - 1 = 4\n"
                + "           common to all\n"
                + "     cure  Z-0.005 cuts\n"
                + "    times  found 3 times, the last time at line 9; worst at line 7: 2 µm of 5"
                + " µm\n"
                + "      why  5 - 3 = 2\n"
                + "     cure  Z-0.007 cuts\n");
    for (ReportFormat format : List.of(ReportFormat.SARIF, ReportFormat.JUNIT)) {
      assertThat(SampleRun.report(format, options(false, false, false), List.of(program)))
          .containsOnlyOnce("common to all")
          .contains("cure at the worst: Z-0.007 cuts", "5 - 3 = 2");
    }
    CheckedProgram alike =
        program(List.of(finding(first, first, 2, SampleRun.at(0, 3, 1, 2))), List.of(), List.of());
    assertThat(report(alike, false))
        .contains("times  found 2 times, all there\n")
        .containsOnlyOnce("cure  ")
        .containsOnlyOnce("why  ");
    for (ReportFormat format : List.of(ReportFormat.SARIF, ReportFormat.JUNIT)) {
      assertThat(SampleRun.report(format, options(false, false, false), List.of(alike)))
          .doesNotContain("cure at the worst");
    }
  }

  @Test
  void theLineOfTheWorstSaysHowManyThereAre() {
    ProgramResult result = program(List.of(), List.of(), List.of()).result().orElseThrow();
    Occurrence first = occurrence(3, "m", "f", "c");
    Occurrence worst = occurrence(7, "n", "f", "c");
    Place last = SampleRun.at(0, 9, 1, 2);
    assertThat(Words.worstLine(result, finding(first, first, 1, first.at()))).isEqualTo("line 3");
    assertThat(Words.worstLine(result, finding(first, first, 2, last)))
        .isEqualTo("line 3, 2 times");
    assertThat(Words.worstLine(result, finding(first, worst, 4, last)))
        .isEqualTo("line 7, the worst of 4 from line 3 on");
  }

  @Test
  void oneTroubleOfManyProgramsIsToldOnce() {
    Trouble trouble = new Trouble("sheet", "`s.yaml` line 3: no number\nhere", "write one");
    List<CheckedProgram> programs =
        List.of(CheckedProgram.failed("a.nc", trouble), CheckedProgram.failed("b.nc", trouble));
    assertThat(SampleRun.report(ReportFormat.TEXT, options(false, false, false), programs))
        .contains("unchecked  `s.yaml` line 3: no number\n           here\n     cure  write one\n")
        .contains("unchecked  for the same reason as a.nc\n")
        .containsOnlyOnce("write one");
    assertThat(SampleRun.report(ReportFormat.TEXT, options(false, true, false), programs))
        .startsWith(
            """
            a.nc: not checked: `s.yaml` line 3: no number
              here
            b.nc: not checked: for the same reason as a.nc
            """);
  }

  @Test
  void withoutBudgetsItSaysWhy() {
    CheckedProgram none = program(List.of(), List.of(), List.of()).withBudgets(true);
    String why = "budget  none: no step is known to draw one up for, or budget-exceeds-tolerance";
    assertThat(report(none, false)).contains("\n\n   " + why);
    String quiet = SampleRun.report(ReportFormat.TEXT, options(false, true, false), List.of(none));
    assertThat(quiet).startsWith("a.nc\n\n   " + why);
    assertThat(
            SampleRun.report(
                ReportFormat.TEXT,
                options(false, true, false),
                List.of(program(List.of(), List.of(), List.of()))))
        .as("a quiet report of nothing begins with the verdict")
        .startsWith("\n  verdict");
  }

  // The verdict.

  private static final String ERROR = "\u001b[1;38;5;166m";
  private static final String WARNING = "\u001b[1;38;5;31m";
  private static final String STRONG = "\u001b[1m";

  /** The codes of ISO 6429 (8.3.117), select graphic rendition, and the usual 256 colours. */
  @Test
  void theVerdictHasTheColourOfTheWorst() throws IOException {
    assertThat(verdict(new Verdict(1, 0, 0, 0, 0, 0, 0, 0, 0), true))
        .contains(STRONG + "nothing found in 1 program" + RESET);
    assertThat(verdict(new Verdict(1, 0, 0, 0, 0, 2, 0, 0, 0), true))
        .contains(STRONG + "2 notes in 1 program" + RESET);
    assertThat(verdict(new Verdict(2, 0, 0, 0, 1, 0, 0, 0, 1), true))
        .contains(WARNING + "1 warning in 2 programs" + RESET);
    assertThat(verdict(new Verdict(1, 0, 0, 1, 1, 0, 0, 0, 1), true))
        .contains(ERROR + "1 error, 1 warning in 1 program" + RESET);
    assertThat(verdict(new Verdict(1, 1, 0, 0, 0, 0, 0, 0, 3), true))
        .contains(ERROR + "nothing found in 1 program; 1 input not checked" + RESET);
    assertThat(verdict(new Verdict(1, 0, 1, 0, 1, 0, 0, 0, 3), true))
        .contains(ERROR + "1 warning in 1 program; 1 program not analysed in full" + RESET);
    assertThat(verdict(new Verdict(0, 0, 0, 0, 0, 0, 0, 0, 0), false))
        .contains("  verdict  nothing was checked\n");
  }

  @Test
  void theRestOfTheReportIsPaintedAsWell() {
    String text = SampleRun.report(ReportFormat.TEXT, options(true, false, false), SampleRun.all());
    assertThat(text)
        .contains(STRONG + "parts/mixer insert.nc" + RESET)
        .contains("\u001b[38;5;243m" + "caution" + RESET)
        .contains(ERROR + "■ error" + RESET)
        .contains(WARNING + "▲ warning" + RESET)
        .contains("\u001b[1;38;5;243m" + "○ note" + RESET);
  }

  @Test
  void aVerdictCountsItsFindings() {
    assertThat(new Verdict(1, 0, 0, 4, 2, 1, 9, 9, 1).findings()).isEqualTo(7);
  }
}
