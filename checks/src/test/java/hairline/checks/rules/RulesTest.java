package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every rule owes its readers. */
class RulesTest {
  static Stream<String> names() {
    return Rules.all().stream().map(rule -> rule.info().name());
  }

  @Test
  void namesAreWellFormedAndStandOnce() {
    assertThat(names()).isNotEmpty().doesNotHaveDuplicates().allMatch(n -> n.matches("[a-z-]+"));
  }

  @Test
  void hiddenRulesExist() {
    List<String> names = names().toList();
    for (Rule rule : Rules.all()) {
      for (RuleInfo.Hides hides : rule.info().hides()) {
        if (!hides.rule().equals("*") && !AWAITED.contains(hides.rule())) {
          assertThat(names).as(rule.info().name() + " hides").contains(hides.rule());
        }
      }
    }
  }

  /** Rules that come with the removal model and the planner. */
  private static final List<String> AWAITED =
      List.of("growth-exceeds-share", "speed-changed-since-measuring");

  @ParameterizedTest
  @MethodSource("names")
  void hasAPageWithAllHeadingsAndASource(String name) {
    RulePage page = RulePage.of(name).orElseThrow(() -> new AssertionError("no page"));
    assertThat(page.markdown()).startsWith("# " + name + "\n");
    assertThat(page.sections().keySet()).containsExactlyElementsOf(RulePage.HEADINGS);
    assertThat(page.sections().values()).noneMatch(String::isBlank);
    assertThat(page.sections().get("Why it matters"))
        .as("a source, or 'common practice', or 'from memory', or 'exact'")
        .containsPattern(
            "(?i)common practice|from memory|exact|ISO \\d|NISTIR|GUM|doi|as quoted|our choice");
  }

  @ParameterizedTest
  @MethodSource("names")
  void hasProgramsThatTriggerItAndOnesThatDoNot(String name) throws IOException {
    Path folder = Programs.ROOT.resolve("rules").resolve(name);
    assertThat(folder).isDirectory();
    try (Stream<Path> files = Files.list(folder)) {
      List<String> names = files.map(f -> String.valueOf(f.getFileName())).toList();
      assertThat(names).anyMatch(n -> n.startsWith("speaks") && n.endsWith(".nc"));
      assertThat(names).anyMatch(n -> n.startsWith("silent") && n.endsWith(".nc"));
    }
  }
}
