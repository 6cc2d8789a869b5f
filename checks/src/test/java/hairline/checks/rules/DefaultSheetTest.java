package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.SheetReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * A user without a setup sheet is told of each rule that could not decide: a program in which a
 * rule speaks under its own sheet makes it speak, or be listed as not checked, under the embedded
 * one too.
 */
class DefaultSheetTest {
  /** Programs in which the embedded sheet itself decides, and why nothing is wrong under it. */
  private static final Map<String, String> DECIDED =
      Map.of(
          "drift-in-incremental/speaks.nc", "the drift is less than the embedded increment",
          "drift-in-incremental/speaks-last-digit.nc", "the same",
          "inch-rounding/speaks-last-digit.nc", "a whole number of the embedded increments",
          "budget-of-steps-reached/speaks.nc", "the default budget is larger",
          "macro-unread/speaks-budget.nc", "the default budget is larger",
          "spindle-not-up-to-speed/speaks-way-down.nc", "by default the control waits",
          "spindle-not-up-to-speed/speaks-helix.nc", "by default the control waits",
          "subprogram-endless/speaks-deep.nc", "the default depth is larger");

  @TestFactory
  Stream<DynamicTest> aRuleThatSpeaksIsNeverMute() throws Exception {
    return AnnotatedProgramsTest.programs().stream()
        .filter(program -> !DECIDED.containsKey(name(program)))
        .filter(program -> !wanted(program).isEmpty())
        .map(
            program ->
                DynamicTest.dynamicTest(
                    name(program),
                    () -> {
                      ProgramResult result =
                          ProgramCheck.of(Selection.ALL)
                              .check(program, new SheetReader().embedded());
                      assertThat(told(result)).containsAll(wanted(program));
                    }));
  }

  private static String name(Path program) {
    return Programs.ROOT.resolve("rules").relativize(program).toString();
  }

  private static List<String> wanted(Path program) {
    try {
      return Annotations.read(Files.readString(program)).findings().stream()
          .map(Annotations.Expected::rule)
          .distinct()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> told(ProgramResult result) {
    return Stream.concat(
            result.findings().stream().map(Finding::rule),
            result.notChecked().stream().map(NotChecked::rule))
        .distinct()
        .toList();
  }
}
