package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Event;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthRange;
import hairline.checks.setup.ToolShape;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The three ways to be a fine cut, and what leads to one. */
class FineCutTest {

  private static Cut pass(Bench bench, double z) {
    bench.g0(0, 0, 50).g1(0, 0, z).g1(900, 0, z);
    return bench.last();
  }

  @ParameterizedTest
  @CsvSource({"-20, true", "-20.000001, false", "-4, true", "-100, false"})
  void byTheHeightItTakes(double z, boolean fine) {
    assertThat(pass(Bench.flat().stock(), z).fine()).isEqualTo(fine);
    assertThat(pass(Bench.flat().stock(), z).fineUndecided()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"-30, true", "-30.000001, false"})
  void byTheStepOfItsFeature(double z, boolean fine) {
    Bench inside = Bench.flat().stock().feature("cascade", -1000, 1000, -500, 500, 30);
    Cut cut = pass(inside, z);
    assertThat(cut.fine()).isEqualTo(fine);
    assertThat(cut.feature().map(Feature::name)).contains("cascade");
    Bench outside = Bench.flat().stock().feature("cascade", -1000, 440, -500, 500, 30);
    assertThat(pass(outside, z).fine()).isFalse();
    assertThat(outside.last().feature()).isEmpty();
  }

  @Test
  void aFeaturesStepBelowTheFineStepChangesNothing() {
    Bench bench = Bench.flat().stock().feature("cascade", -1000, 1000, -500, 500, 4);
    assertThat(pass(bench, -20).fine()).isTrue();
  }

  @Test
  void levelsOfAFeatureGiveItsLargestStep() {
    Feature ladder =
        new Feature(
            "ladder",
            Optional.of(new LengthRange(Length.ofMm("0"), Length.ofMm("1"))),
            Optional.empty(),
            Optional.empty(),
            List.of(Length.ofUm("-4"), Length.ofUm("-8"), Length.ofUm("-14")),
            Optional.empty());
    Feature plain =
        new Feature(
            "plain",
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.empty());
    FeatureAreas areas = new FeatureAreas(List.of(plain, ladder));
    assertThat(areas.stepPm(ladder)).isEqualTo(OptionalLong.of(Bench.pm(6)));
    assertThat(areas.stepPm(plain)).isEmpty();
    // The smaller one wins; one without bounds is everywhere.
    assertThat(areas.at(5e8, 9e12)).contains(ladder);
    assertThat(areas.at(1e9, 0)).contains(ladder);
    assertThat(areas.at(1.1e9, 0)).contains(plain);
    assertThat(areas.at(-1, 0)).contains(plain);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0, 900, 0, true",
    "0, 0, 2000, 0, true",
    "0, 0, 2001, 0, false",
    "-1000, 0, 1000, 0, true",
    "-1001, 0, 999, 0, false",
    "500, -2000, 500, 2000, false",
    "500, -1000, 500, 1000, true",
    "1000, 500, 1000, 0, true",
    "1000.1, 500, 1000.1, 0, false"
  })
  void aMoveLiesInAFeatureWithHalfOfItsPath(
      double x0, double y0, double x1, double y1, boolean inside) {
    Bench bench = Bench.flat().stock().feature("square", 0, 1000, -500, 500, 0);
    bench.g0(x0, y0, 50).g1(x0, y0, -4).g1(x1, y1, -4);
    assertThat(bench.last().feature().isPresent()).isEqualTo(inside);
  }

  @Test
  void anArcLiesInAFeatureWithHalfOfItsPath() {
    Bench bench = Bench.flat().stock().feature("half", 0, 2000, -2000, 2000, 0);
    bench.g0(0, -1000, 50).g1(0, -1000, -4).arc(0, 0, 170, -4);
    assertThat(bench.last().feature()).isPresent();
    bench.g0(0, 1000, 50).g1(0, 1000, -4).arc(0, 0, 170, -4);
    assertThat(bench.last().feature()).isEmpty();
  }

  private static Bench ball(double diameter) {
    return new Bench().tool(1, ToolShape.BALL, diameter, diameter / 2, 1.5).stock().change(1);
  }

  @Test
  void byContouringWithASmallTool() {
    // 60 to 40 µm deep, so not by its height.
    Bench small = ball(1000).g0(0, 0, 50).g1(0, 0, -60).g1(900, 0, -40);
    assertThat(small.last().fine()).isTrue();
    assertThat(small.cuts().get(1).fine()).isFalse();
    Bench large = ball(1000.001).g0(0, 0, 50).g1(0, 0, -60).g1(900, 0, -40);
    assertThat(large.last().fine()).isFalse();
    // At constant Z it is no contour.
    assertThat(ball(1000).g0(0, 0, 50).g1(0, 0, -60).g1(900, 0, -60).last().fine()).isFalse();
  }

  @Test
  void aRampThatLeadsToALevelCountsLikeTheLevel() {
    // A zigzag ramp down to 100 µm, whose first turns are shallow, then the level: rough.
    Bench rough = Bench.flat().stock().g0(0, 0, 50);
    for (int k = 1; k <= 10; k++) {
      rough.g1(k % 2 == 0 ? 0 : 900, 0, -10 * k);
    }
    assertThat(rough.cuts()).hasSize(1);
    rough.g1(900, 0, -100).g0(0, 0, 50).end();
    assertThat(rough.cuts()).noneMatch(Cut::fine);
    assertThat(rough.all(PassEnded.class)).hasSize(2).noneMatch(PassEnded::fine);

    Bench fine = Bench.flat().stock().g0(0, 0, 50);
    fine.g1(900, 0, -10).g1(0, 0, -20).g1(900, 0, -20).g0(0, 0, 50).end();
    assertThat(fine.cuts()).filteredOn(Cut::inContact).hasSize(3).allMatch(Cut::fine);
    assertThat(fine.all(PassEnded.class)).hasSize(2).allMatch(PassEnded::fine);
  }

  @Test
  void whereNoLevelFollowsAnOperationOfAFlatToolIsContouring() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    bench.g1(0, 0, -60).g1(900, 0, -40).g1(1800, 0, -60).g0(0, 0, 50);
    assertThat(bench.cuts()).hasSize(1);
    bench.speed().g0(0, 2000, 50);
    assertThat(bench.cuts())
        .filteredOn(Cut::inContact)
        .extracting(Cut::fine)
        .containsExactly(false, true, true);
    bench.g1(0, 2000, -60).g1(900, 2000, -60).g0(0, 0, 50);
    bench.g0(0, 3000, 50).g1(0, 3000, -60).g1(900, 3000, -40).g0(0, 0, 50);
    // With levels, a ramp that leads to none counts by its own depth.
    assertThat(bench.last().fine()).isFalse();
    assertThat(bench.cuts().get(bench.cuts().size() - 2).fine()).isFalse();
    bench.g0(0, -3000, 50).g1(0, -3000, -10).g1(900, -3000, -15).g0(0, 0, 50);
    assertThat(bench.cuts().get(bench.cuts().size() - 2).fine()).isTrue();
  }

  @Test
  void aLongOperationWithoutLevelsIsNotHeldBackForEver() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -60);
    for (int k = 1; k <= Outlet.MOST_HELD; k++) {
      bench.g1(k % 1000, 0, -40 - (k % 2));
      int out = bench.events.size();
      assertThat(out <= 1 || out > Outlet.MOST_HELD).as("%d events", out).isTrue();
    }
    assertThat(bench.events).hasSizeGreaterThan(Outlet.MOST_HELD);
    bench.g1(3000, 0, -60);
    bench.g1(3900, 0, -40);
    assertThat(bench.last().fine()).isTrue();
    bench.g1(3900, 0, -60);
    assertThat(bench.last().fine()).isFalse();
  }

  @Test
  void theEndDecidesToo() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -60).g1(900, 0, -40).end();
    assertThat(bench.cuts()).extracting(Cut::fine).containsExactly(false, false, true);
    assertThat(bench.events.get(bench.events.size() - 1)).isInstanceOf(Event.Ended.class);
  }

  @Test
  void unknownHeightsAreUndecided() {
    Bench bench = Bench.flat().g0(0, 0, 50).g1(0, 0, -4).g1(900, 0, -4);
    assertThat(bench.last().fine()).isFalse();
    assertThat(bench.last().fineUndecided()).isTrue();
    assertThat(bench.all(PassEnded.class)).noneMatch(PassEnded::fine);
  }

  @Test
  void aDecidedCutIsNoLongerUndecided() {
    Bench bench = ball(400).g0(0, 0, 50).g1(0, 0, -60).g1(900, 0, -40);
    Cut cut = bench.last();
    assertThat(cut.withFine(false).fine()).isFalse();
    Bench open =
        new Bench().tool(1, ToolShape.BALL, 400, 200, 1.5).change(1).g0(0, 0, 50).g1(0, 0, -60);
    open.g1(900, 0, -40);
    assertThat(open.last().fine()).isTrue();
    assertThat(open.last().fineUndecided()).isFalse();
  }
}
