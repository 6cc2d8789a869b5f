package hairline.checks.floors;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The packages keep their order. Beside each rule stands a set of wrong classes, kept under {@code
 * fixture}, that it must refuse.
 */
class FloorsTest {
  private static final String ROOT = "hairline.checks";
  private static final String WRONG = "hairline.checks.floors.fixture";

  private static final JavaClasses PROGRAM =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages(ROOT);
  private static final JavaClasses WRONG_CLASSES = new ClassFileImporter().importPackages(WRONG);

  @Test
  void everyClassHasAFloor() {
    Floors.everyClassHasAFloor(ROOT).check(PROGRAM);
    assertThat(refused(List.of(Floors.everyClassHasAFloor(WRONG)))).contains("Homeless");
  }

  @Test
  void noUpwardImport() {
    Floors.noUpwardImport(ROOT).forEach(rule -> rule.check(PROGRAM));
    assertThat(refused(Floors.noUpwardImport(WRONG))).contains("SetupAsksRules");
  }

  @Test
  void noCycle() {
    Floors.noCycle(ROOT).check(PROGRAM);
    assertThat(refused(List.of(Floors.noCycle(WRONG)))).contains("SetupAsksRules", "RulesAskSetup");
  }

  @Test
  void librariesStayWhereTheyBelong() {
    Floors.librariesKeptIn(ROOT).forEach(rule -> rule.check(PROGRAM));
    assertThat(refused(Floors.librariesKeptIn(WRONG)))
        .contains("org.antlr.. is used only in []", "MotionReadsAParseTree")
        .contains("the grammar's own classes are used only in the parser")
        .contains("org.yaml.snakeyaml.. is used only in [setup]", "MotionReadsYaml")
        .contains("com.fasterxml.jackson.. is used only in", "BudgetReadsJson")
        .contains("picocli.. is used only in [cli]", "TimingPrintsHelp");
  }

  @Test
  void calculationTouchesNoFileAndNoClock() {
    Floors.calculatingTouchesNothing(ROOT).forEach(rule -> rule.check(PROGRAM));
    assertThat(refused(Floors.calculatingTouchesNothing(WRONG)))
        .contains("touch no file", "WarmthReadsAFile")
        .contains("touch no clock", "TimingAsksTheTime")
        .contains("BudgetAsksTheDate.now()", "BudgetAsksTheDate.clock()");
  }

  private static String refused(List<ArchRule> rules) {
    StringBuilder report = new StringBuilder();
    rules.forEach(
        rule ->
            report.append(rule.allowEmptyShould(true).evaluate(WRONG_CLASSES).getFailureReport()));
    return report.toString();
  }
}
