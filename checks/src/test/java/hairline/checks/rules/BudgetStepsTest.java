package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Place;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Length;
import hairline.checks.stock.ApproachDirection;
import hairline.checks.stock.Cut;
import hairline.checks.stock.StepFound;
import hairline.checks.stock.Terrace;
import hairline.parser.Span;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Which steps a budget is drawn up for, and what is asked of them; heights in µm. */
class BudgetStepsTest {
  private static final long UM = 1_000_000;
  private static final double TOP = 0;

  private static Feature flight(double stepUm) {
    return new Feature(
        "flight",
        Optional.empty(),
        Optional.empty(),
        Optional.of(new Length(pm(stepUm))),
        List.of(),
        Optional.empty());
  }

  private static Feature levels(double... levelsUm) {
    return new Feature(
        "ladder",
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Arrays.stream(levelsUm).mapToObj(um -> new Length(pm(um))).toList(),
        Optional.empty());
  }

  private static long pm(double um) {
    return Math.round(um * UM);
  }

  private static Place at(int line) {
    return new Place(0, line, new Span(1, 2));
  }

  /** A terrace at a level; that of 0 µm is the uncut top. */
  private static Terrace terrace(double um) {
    boolean uncut = um == TOP;
    return new Terrace(
        uncut ? Cut.UNCUT : (int) -pm(um * 10) / 1_000_000,
        pm(um),
        pm(um),
        uncut ? Optional.empty() : Optional.of(at(1)),
        uncut ? Optional.empty() : Optional.of(at(1)),
        Optional.empty(),
        0,
        0,
        ApproachDirection.FROM_ABOVE);
  }

  private static StepFound step(double upperUm, double lowerUm) {
    return new StepFound(
        at(1),
        terrace(upperUm),
        terrace(lowerUm),
        pm(upperUm) - pm(lowerUm),
        pm(upperUm) - pm(lowerUm),
        Optional.empty(),
        "G54",
        1);
  }

  /** "4 of 4 declared" for each step asked. */
  private static List<String> asked(Feature feature, StepFound... found) {
    return BudgetSteps.of(feature, List.of(found)).stream()
        .map(
            a ->
                a.step().heightPm() / (double) UM
                    + " of "
                    + a.step().nominalPm() / (double) UM
                    + (a.step().declared() ? " declared" : " written"))
        .toList();
  }

  @Test
  void theTopHasAStepToTheFirstLevelOnly() {
    assertThat(
            asked(levels(-4, -8, -14), step(TOP, -4), step(TOP, -8), step(-4, -8), step(-8, -14)))
        .containsExactly("4.0 of 4.0 declared", "4.0 of 4.0 declared", "6.0 of 6.0 declared");
  }

  @Test
  void aLevelStandsForTheDeclaredOneThatIsNear() {
    assertThat(asked(levels(-4, -8, -14), step(-4.3, -8))).containsExactly("3.7 of 4.0 declared");
    assertThat(asked(levels(-4, -8, -14), step(-4, -14))).containsExactly("10.0 of 10.0 declared");
    // Halfway between two: nobody knows which is meant.
    assertThat(asked(levels(-4, -8, -14), step(-6, -8))).containsExactly("2.0 of 2.0 written");
    // Both stand for one declared level.
    assertThat(asked(levels(-4, -8, -14), step(-7.5, -8.5))).containsExactly("1.0 of 1.0 written");
  }

  @Test
  void ofAFlightTheHeightsNearOneStepCount() {
    assertThat(
            asked(
                flight(4),
                step(TOP, -4),
                step(-4, -7),
                step(-7, -12.9),
                step(-4, -10),
                step(-4, -12)))
        .containsExactly("4.0 of 4.0 declared", "3.0 of 4.0 declared", "5.9 of 4.0 declared");
    // A flight at the bottom of a pocket: the top is no step of it.
    assertThat(asked(flight(4), step(TOP, -20), step(-20, -24)))
        .containsExactly("4.0 of 4.0 declared");
  }

  @Test
  void withoutAFeatureTheFinestCounts() {
    assertThat(
            BudgetSteps.finest(List.of(step(TOP, -20), step(-20, -23), step(-23, -26)))
                .orElseThrow()
                .found())
        .isEqualTo(step(-20, -23));
    assertThat(BudgetSteps.finest(List.of())).isEmpty();
  }
}
