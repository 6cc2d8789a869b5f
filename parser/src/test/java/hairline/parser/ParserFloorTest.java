package hairline.parser;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Test;

/** The parser stands on the ground: it knows no machine, no setup sheet and no report. */
class ParserFloorTest {
  private static final ArchRule GROUND =
      classes()
          .that(resideInAPackage("hairline.parser.."))
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "hairline.parser..", "java..", "org.antlr.v4.runtime..", "org.jspecify..")
          .as("the parser uses the language, its grammar library and nothing else");

  @Test
  void usesNothingButItsGrammarLibrary() {
    GROUND.check(
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("hairline.parser"));
  }

  /** The tests themselves use other libraries, so the rule must refuse them. */
  @Test
  void theRuleRefusesOtherLibraries() {
    assertThat(
            GROUND
                .evaluate(new ClassFileImporter().importClasses(ParserFloorTest.class))
                .hasViolation())
        .isTrue();
  }
}
