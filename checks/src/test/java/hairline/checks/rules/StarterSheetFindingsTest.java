package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Assumption;
import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.motion.UsageCollector;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetReader;
import hairline.checks.setup.StarterSheet;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * A starter sheet that nobody has filled in yet finds whatever is found without a sheet, and says
 * what it assumes.
 */
class StarterSheetFindingsTest {
  @TestFactory
  Stream<DynamicTest> noFindingIsLost() throws Exception {
    return AnnotatedProgramsTest.programs().stream()
        .map(
            program ->
                DynamicTest.dynamicTest(
                    Programs.ROOT.relativize(program).toString(),
                    () -> {
                      ProgramResult with = check(program, starter(program));
                      ProgramResult without = check(program, new SheetReader().embedded());
                      assertThat(found(with)).containsAll(found(without));
                      assertThat(with.assumptions())
                          .extracting(Assumption::what)
                          .contains("machine.resolution", "machine.control.arc_tolerance");
                    }));
  }

  private static ProgramResult check(Path program, Setup sheet) throws IOException {
    return ProgramCheck.of(Selection.ALL).check(program, sheet);
  }

  private static Setup starter(Path program) throws Exception {
    UsageCollector usage = new UsageCollector();
    new Interpreter(SheetControl.of(new SheetReader().embedded()), ProgramFiles.of(program, usage))
        .run(usage, false);
    return new SheetReader().parse(StarterSheet.write(usage.usage(program.toString())), "starter");
  }

  /** Rule, line and message of each. */
  private static List<String> found(ProgramResult result) {
    return result.findings().stream().map(StarterSheetFindingsTest::text).toList();
  }

  private static String text(Finding finding) {
    return String.format(
        Locale.ROOT,
        "%s line %d: %s",
        finding.rule(),
        finding.at().line(),
        finding.first().message());
  }
}
