package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.ProgramResult;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The program on a rule's page makes it speak, and its cure makes everything silent. */
class PageExampleTest {
  @TempDir private Path folder;

  static Stream<String> names() {
    return Rules.all().stream().map(rule -> rule.info().name());
  }

  @ParameterizedTest
  @MethodSource("names")
  void programMakesTheRuleSpeak(String name) throws Exception {
    assertThat(example(name).program(folder).findings()).extracting(Finding::rule).contains(name);
  }

  @ParameterizedTest
  @MethodSource("names")
  void cureMakesItSilentBecauseTheRuleDecided(String name) throws Exception {
    ProgramResult cured = example(name).cure(folder);
    assertThat(cured.findings()).isEmpty();
    assertThat(cured.notChecked()).extracting(NotChecked::rule).doesNotContain(name);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "no block at all",
        "```nc\nM30\n```\na program and no cure",
        "```nc\nM30\n```\n```text\nM30\n```",
        "```nc\nM30\n```\n```nc\nnever closed",
        "```nc\nM30\n```\n```nc\nM30\n```\n```nc\nM30\n```"
      })
  void anythingButAProgramAndItsCureIsRefused(String section) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PageExample.of(new RulePage("some-rule", page(section))));
  }

  @Test
  void sheetAloneMayCure() {
    PageExample example =
        PageExample.of(
            new RulePage("some-rule", page("```nc\nM30\n```\n```yaml\na\n```\n```yaml\nb\n```")));
    assertThat(example).isEqualTo(new PageExample(List.of("M30\n"), List.of("a\n", "b\n")));
  }

  private static String page(String section) {
    return "# some-rule\n\n## " + RulePage.HEADINGS.get(2) + "\n\n" + section + "\n";
  }

  private static PageExample example(String name) {
    return PageExample.of(
        RulePage.of(name).orElseThrow(() -> new AssertionError("no page of " + name)));
  }
}
