package hairline.checks.floors;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchRule;
import java.io.Serializable;
import java.time.Clock;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The order of the packages as rules, for the packages below one root. */
final class Floors {
  private Floors() {}

  /** From the ground up; a package may use its own floor and those below. */
  private static final List<List<String>> FLOORS =
      List.of(
          List.of("setup", "cutting"),
          List.of("motion"),
          List.of("stock", "timing", "warmth", "budget"),
          List.of("finding"),
          List.of("rules", "compare"),
          List.of("report"),
          List.of("cli"));

  /** Which packages may use which library. */
  private static final Map<String, Set<String>> LIBRARIES =
      Map.of(
          "org.antlr..", Set.of(),
          "javafx..", Set.of(),
          "org.yaml.snakeyaml..", Set.of("setup"),
          "com.fasterxml.jackson..", Set.of("report", "setup"),
          "gg.jte..", Set.of("report"),
          "picocli..", Set.of("cli"));

  private static final String[] CALCULATING = {"cutting", "warmth", "timing", "budget"};

  /** Every class stands on one of the floors. */
  static ArchRule everyClassHasAFloor(String root) {
    return classes()
        .that(resideInAPackage(root + ".."))
        .should()
        .resideInAnyPackage(
            FLOORS.stream()
                .flatMap(List::stream)
                .map(name -> below(root, name))
                .toArray(String[]::new))
        .as("every class stands in a package that has a floor");
  }

  /** Nothing uses a floor above its own. */
  static List<ArchRule> noUpwardImport(String root) {
    List<ArchRule> rules = new ArrayList<>();
    for (int floor = 0; floor < FLOORS.size() - 1; floor++) {
      String[] above =
          FLOORS.subList(floor + 1, FLOORS.size()).stream()
              .flatMap(List::stream)
              .map(name -> below(root, name))
              .toArray(String[]::new);
      for (String name : FLOORS.get(floor)) {
        rules.add(
            noClasses()
                .that()
                .resideInAPackage(below(root, name))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(above)
                .as(name + " uses no package of a higher floor"));
      }
    }
    return rules;
  }

  /** No package uses another that uses it. */
  static ArchRule noCycle(String root) {
    return slices().matching(root + ".(*)..").should().beFreeOfCycles();
  }

  /** Each library is used where it belongs, and no grammar shows outside the parser. */
  static List<ArchRule> librariesKeptIn(String root) {
    List<ArchRule> rules = new ArrayList<>();
    LIBRARIES.forEach(
        (library, users) -> {
          DescribedPredicate<JavaClass> outside =
              users.isEmpty()
                  ? resideInAPackage(root + "..")
                  : not(
                      resideInAnyPackage(
                          users.stream().map(name -> below(root, name)).toArray(String[]::new)));
          rules.add(
              noClasses()
                  .that(outside)
                  .should()
                  .dependOnClassesThat()
                  .resideInAPackage(library)
                  .as(library + " is used only in " + users));
        });
    rules.add(
        noClasses()
            .that(resideInAPackage(root + ".."))
            .should()
            .dependOnClassesThat(
                describe(
                    "come from the grammar",
                    used ->
                        used.getAllRawSuperclasses().stream()
                            .anyMatch(parent -> parent.getPackageName().startsWith("org.antlr"))))
            .as("the grammar's own classes are used only in the parser"));
    return rules;
  }

  /** What calculates reads no file and no clock. */
  static List<ArchRule> calculatingTouchesNothing(String root) {
    String[] calculating = new String[CALCULATING.length];
    for (int i = 0; i < calculating.length; i++) {
      calculating[i] = below(root, CALCULATING[i]);
    }
    return List.of(
        noClasses()
            .that()
            .resideInAnyPackage(calculating)
            .should()
            .dependOnClassesThat(
                resideInAnyPackage(
                        "java.io", "java.nio.file..", "java.nio.channels..", "java.net..")
                    .and(not(type(Serializable.class))))
            .as("cutting, warmth, timing and budget touch no file"),
        noClasses()
            .that()
            .resideInAnyPackage(calculating)
            .should()
            .dependOnClassesThat(
                type(Clock.class)
                    .or(type(InstantSource.class))
                    .or(type(Date.class))
                    .or(type(Calendar.class)))
            .orShould()
            .accessTargetWhere(
                describe(
                    "reads the time of day or a running clock",
                    access ->
                        (access.getTargetOwner().isEquivalentTo(System.class)
                                && Set.of("nanoTime", "currentTimeMillis")
                                    .contains(access.getTarget().getName()))
                            || (access.getTargetOwner().getPackageName().startsWith("java.time")
                                && access.getTarget().getName().equals("now"))))
            .as("cutting, warmth, timing and budget touch no clock"));
  }

  private static String below(String root, String name) {
    return root + "." + name + "..";
  }
}
