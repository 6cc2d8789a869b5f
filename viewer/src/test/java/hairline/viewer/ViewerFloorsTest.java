package hairline.viewer;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** The model knows no window, and no part of the window one above it. */
class ViewerFloorsTest {
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("hairline.viewer");

  @Test
  void theModelKnowsNoToolkit() {
    noClasses()
        .that()
        .resideInAPackage("hairline.viewer.model..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("javafx..", "com.sun.javafx..", "hairline.viewer.draw..")
        .check(CLASSES);
  }

  @Test
  void drawingKnowsNoPane() {
    noClasses()
        .that()
        .resideInAPackage("hairline.viewer.draw..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("hairline.viewer", "hairline.viewer.panes..")
        .check(CLASSES);
    slices().matching("hairline.viewer.(*)..").should().beFreeOfCycles().check(CLASSES);
  }
}
