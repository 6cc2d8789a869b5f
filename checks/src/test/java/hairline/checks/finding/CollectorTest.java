package hairline.checks.finding;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CollectorTest {
  private final Accepts accepts = new Accepts();
  private final Collector collector =
      new Collector(accepts, Map.of("syntax", List.of("*"), "feed-missing", List.of("chip")));

  private static Place line(int line) {
    return new Place(0, line, new Span(1, 2));
  }

  private void report(String rule, Level level, int line, String cause, double severity) {
    collector.report(
        Occurrence.of(rule, level, line(line), rule + " " + line)
            .operation(1)
            .cause(cause)
            .severity(severity)
            .build());
  }

  private List<String> found() {
    return collector.findings().values().stream()
        .map(f -> f.rule() + " " + f.at().line() + " x" + f.count())
        .toList();
  }

  @Test
  void makesOneFindingOfOneFaultAndNamesItsWorstPlace() {
    report("step", Level.ERROR, 3, "a", 1);
    collector.endBlock();
    report("step", Level.ERROR, 5, "a", 9);
    report("step", Level.ERROR, 7, "a", 4);
    report("step", Level.ERROR, 7, "b", 4);
    assertThat(found()).containsExactly("step 3 x3", "step 7 x1");
    Finding first = collector.findings().values().iterator().next();
    assertThat(first.worst().at().line()).isEqualTo(5);
    assertThat(first.last().line()).isEqualTo(7);
  }

  @Test
  void aHigherLevelIsWorseThanAnySeverity() {
    report("step", Level.WARNING, 3, "a", 100);
    report("step", Level.ERROR, 4, "a", 1);
    report("step", Level.WARNING, 5, "a", 200);
    Finding finding = collector.findings().values().iterator().next();
    assertThat(finding.level()).isEqualTo(Level.ERROR);
    assertThat(finding.worst().at().line()).isEqualTo(4);
  }

  @Test
  void explainsAwayWithinTheBlockWhicheverSpeaksFirst() {
    report("chip", Level.ERROR, 3, "", 0);
    report("feed-missing", Level.ERROR, 3, "", 0);
    report("other", Level.ERROR, 3, "", 0);
    collector.endBlock();
    report("chip", Level.ERROR, 4, "", 0);
    assertThat(found()).containsExactly("feed-missing 3 x1", "other 3 x1", "chip 4 x1");
  }

  @Test
  void aLineThatCannotBeReadHidesWhatIsSaidOfItLater() {
    report("syntax", Level.ERROR, 3, "", 0);
    collector.endBlock();
    report("end-missing", Level.ERROR, 3, "", 0);
    report("end-missing", Level.ERROR, 4, "", 0);
    assertThat(found()).containsExactly("syntax 3 x1", "end-missing 4 x1");
  }

  @Test
  void keepsWhatIsAcceptedApart() {
    accepts.add(Accept.read(line(4), "hairline: accept step: why", false).get(0), 4);
    report("step", Level.ERROR, 3, "a", 1);
    report("step", Level.ERROR, 4, "a", 1);
    assertThat(collector.findings().values())
        .extracting(Finding::acceptedBecause)
        .containsExactly(Optional.empty(), Optional.of("why"));
  }

  @Test
  void countsWhatCouldNotBeDecided() {
    collector.notChecked("step", "a key", Optional.empty());
    collector.notChecked("step", "a key", Optional.of(line(3)));
    collector.notChecked("step", "a key", Optional.of(line(4)));
    assertThat(collector.notChecked())
        .containsExactly(new NotChecked("step", "a key", Optional.of(line(3)), 3));
  }

  @Test
  void tellsThatThereAreMoreGroupsThanItKeeps() {
    for (int k = 0; k < Collector.MOST_GROUPS + 2; k++) {
      report("step", Level.ERROR, k + 1, "cause " + k, 0);
      collector.endBlock();
    }
    assertThat(collector.findings()).hasSize(Collector.MOST_GROUPS);
    assertThat(collector.notChecked()).singleElement().matches(n -> n.count() == 2);
  }

  @Test
  void asksForTheTextsOfTheFirstAndTheWorstOnly() {
    List<String> asked = new ArrayList<>();
    double[] severities = {1, 9, 4, 9};
    for (int k = 0; k < severities.length; k++) {
      String name = "line " + (k + 1);
      collector.report(
          Occurrence.of(
                  "step",
                  Level.ERROR,
                  line(k + 1),
                  () -> {
                    asked.add(name);
                    return name;
                  })
              .fact(() -> "fact of " + name)
              .cure(() -> "cure of " + name)
              .severity(severities[k]));
      collector.endBlock();
    }
    Finding finding = collector.findings().values().iterator().next();
    assertThat(asked).containsExactly("line 1", "line 2");
    assertThat(finding.count()).isEqualTo(4);
    assertThat(finding.first().message()).isEqualTo("line 1");
    assertThat(finding.worst().message()).isEqualTo("line 2");
    assertThat(finding.worst().facts()).containsExactly("fact of line 2");
    assertThat(finding.worst().cure()).contains("cure of line 2");
  }

  @Test
  void tellsThatMoreLinesCannotBeReadThanItHides() {
    for (int k = 0; k < Collector.MOST_HIDING_LINES; k++) {
      collector.hideOthers(line(k + 1));
    }
    collector.hideOthers(line(Collector.MOST_HIDING_LINES));
    assertThat(collector.notChecked()).isEmpty();
    collector.hideOthers(line(Collector.MOST_HIDING_LINES + 1));
    assertThat(collector.notChecked())
        .singleElement()
        .matches(n -> n.reason().contains("more than " + Collector.MOST_HIDING_LINES));
  }

  @Test
  void keepsAssumptionsOnce() {
    Assumption assumption = new Assumption("limits.flex_share", "0.33", "default of the sheet");
    collector.assumed(assumption);
    collector.assumed(assumption);
    assertThat(collector.assumptions()).containsExactly(assumption);
  }
}
