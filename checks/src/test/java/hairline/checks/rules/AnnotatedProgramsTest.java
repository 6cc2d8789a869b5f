package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Runs every annotated program: each expectation is met, and each finding expected. */
class AnnotatedProgramsTest {

  @TestFactory
  Stream<DynamicTest> annotatedPrograms() throws IOException {
    return programs().stream()
        .map(
            program ->
                DynamicTest.dynamicTest(
                    Programs.ROOT.relativize(program).toString(),
                    () -> assertAsAnnotated(program)));
  }

  @Test
  void anExpectationThatIsNotMetAndAFindingThatIsNotExpectedAreBothSeen() {
    Annotations none = Annotations.read("G1 X1.");
    Annotations one = Annotations.read("G1 X1. ; expect some-rule error @4: text");
    assertThat(differences(none, List.of())).isEmpty();
    assertThat(differences(one, List.of())).hasSize(1);
  }

  static List<Path> programs() throws IOException {
    try (Stream<Path> files = Files.walk(Programs.ROOT)) {
      return files
          .filter(f -> f.toString().endsWith(".nc"))
          .filter(f -> !f.getFileName().toString().startsWith("sub-"))
          .sorted()
          .toList();
    }
  }

  private static void assertAsAnnotated(Path program) {
    ProgramResult result = Programs.check(program);
    Annotations annotations;
    try {
      annotations = Annotations.read(Files.readString(program));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    assertThat(differences(annotations, result.findings())).isEmpty();
    for (Annotations.Unchecked wanted : annotations.notChecked()) {
      assertThat(result.notChecked())
          .as("not checked: " + wanted)
          .anyMatch(n -> n.rule().equals(wanted.rule()) && n.reason().contains(wanted.text()));
    }
    if (program.getFileName().toString().startsWith("silent")) {
      assertThat(result.findings()).isEmpty();
      String rule = String.valueOf(program.resolveSibling(".").normalize().getFileName());
      assertThat(result.notChecked())
          .as("a silent program is silent because the rule decided, not because it could not")
          .extracting(NotChecked::rule)
          .doesNotContain(rule);
    }
  }

  private static List<String> differences(Annotations annotations, List<Finding> findings) {
    List<String> differences = new ArrayList<>();
    List<Finding> left = new ArrayList<>(findings);
    for (Annotations.Expected expected : annotations.findings()) {
      List<Finding> met = left.stream().filter(f -> meets(f, expected)).limit(1).toList();
      if (met.isEmpty()) {
        differences.add("expected, not found: " + expected);
      }
      left.removeAll(met);
    }
    for (Finding finding : left) {
      differences.add("found, not expected: " + finding);
    }
    return differences;
  }

  private static boolean meets(Finding finding, Annotations.Expected expected) {
    return finding.rule().equals(expected.rule())
        && finding.level() == expected.level()
        && finding.at().line() == expected.line()
        && finding.count() == expected.count()
        && expected.column().map(c -> finding.at().span().column() == c).orElse(true)
        && expected.texts().stream().allMatch(text -> says(finding.first(), text));
  }

  private static boolean says(Occurrence occurrence, String text) {
    return occurrence.message().contains(text)
        || occurrence.facts().stream().anyMatch(fact -> fact.contains(text))
        || occurrence.cure().map(cure -> cure.contains(text)).orElse(false);
  }
}
