package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Each finding of each annotated program states what was found and what is allowed. */
class StatedFiguresTest {
  /**
   * Messages, as patterns, of rules with a limit that have no figure to hold against it, and why.
   */
  private static final Map<String, String> NOTHING_MEASURED =
      Map.of(
          ".*as long as the operator takes.*", "how long an operator takes is not in the program",
          ".* is beyond 9 000 km, .*", "no figure of that size is kept",
          ".*no valid warm-up: the spindle ran 0 s",
              "not turning at all is none, whatever is asked");

  private static final Map<String, RuleInfo> RULES =
      Rules.all().stream()
          .map(Rule::info)
          .collect(Collectors.toMap(RuleInfo::name, Function.identity()));

  @TestFactory
  Stream<DynamicTest> findings() throws IOException {
    return AnnotatedProgramsTest.programs().stream()
        .map(
            program ->
                DynamicTest.dynamicTest(
                    Programs.ROOT.relativize(program).toString(), () -> assertStated(program)));
  }

  private static void assertStated(Path program) {
    for (Finding finding : Programs.check(program).findings()) {
      RuleInfo rule = Objects.requireNonNull(RULES.get(finding.rule()));
      if (rule.withoutLimit().isPresent()
          || NOTHING_MEASURED.keySet().stream().anyMatch(finding.first().message()::matches)) {
        continue;
      }
      for (Occurrence occurrence : List.of(finding.first(), finding.worst())) {
        assertThat(StatedFigures.missing(occurrence)).as(occurrence.toString()).isEmpty();
        assertThat(StatedFigures.unstated(occurrence)).as(occurrence.toString()).isEmpty();
      }
    }
  }

  @Test
  void aRuleWithoutALimitSaysWhy() {
    assertThat(RULES.values())
        .filteredOn(rule -> rule.withoutLimit().isPresent())
        .allMatch(rule -> !rule.withoutLimit().get().isBlank())
        .hasSizeLessThan(RULES.size());
  }

  @Test
  void aFigureFoundAndOneAllowedWithTheirUnitsAreEnough() {
    assertThat(StatedFigures.missing(chip("chip 0.4483 µm, minimum 0.45 µm", 0.44833333, 0.45)))
        .isEmpty();
    assertThat(StatedFigures.missing(chip("chip 0.0004483 mm, minimum 0.45 µm", 0.44833333, 0.45)))
        .isEmpty();
  }

  @Test
  void figuresThatAreNotPrintedOrHaveNoUnitOrReadAlikeAreSeen() {
    assertThat(StatedFigures.missing(chip("chip 0.4483 µm is too thin", 0.44833333, 0.45)))
        .isNotEmpty();
    assertThat(StatedFigures.missing(chip("chip 0.4483, minimum 0.45", 0.44833333, 0.45)))
        .isNotEmpty();
    assertThat(StatedFigures.missing(chip("chip 0.4482 µm, minimum 0.45 µm", 0.44833333, 0.45)))
        .isNotEmpty();
    assertThat(StatedFigures.missing(chip("chip 12 µm, limit 12 µm", 12.0017, 12))).isNotEmpty();
    assertThat(StatedFigures.missing(occurrence("chip 0.4483 µm, minimum 0.45 µm").build()))
        .isNotEmpty();
  }

  private static Occurrence chip(String message, double foundUm, double allowedUm) {
    return occurrence(message)
        .figure("chip", foundUm, "µm")
        .figure("allowed", allowedUm, "µm")
        .build();
  }

  private static Occurrence.Builder occurrence(String message) {
    return Occurrence.of("some-rule", Level.ERROR, new Place(0, 1, new Span(1, 2)), message);
  }
}
