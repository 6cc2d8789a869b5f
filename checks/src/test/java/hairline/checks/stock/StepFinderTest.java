package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.setup.ToolShape;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where levels adjoin: borders, slivers, and what lies between. */
class StepFinderTest {

  /** Passes along Y over a stock of 4 by 2 mm, each one 400 µm wide, from X-2000 on. */
  private static Bench stripes(double... depths) {
    Bench bench = Bench.flat().stock(-2000, 2000, -1000, 1000, 0, -3000).g0(0, 0, 50);
    for (int k = 0; k < depths.length; k++) {
      double x = -1800 + 400 * k;
      bench.g0(x, -1300, 50).g1(x, -1300, depths[k]).g1(x, 1300, depths[k]);
    }
    return bench.end();
  }

  @Test
  void eachPairThatAdjoinsIsAStep() {
    Bench bench = stripes(-4, -8, -4, -14);
    assertThat(bench.steps())
        .extracting(s -> s.upper().levelId() + " " + s.lower().levelId() + " " + s.heightPm() / 1e6)
        .containsExactly("1 2 4.0", "3 2 4.0", "0 4 14.0", "3 4 10.0");
    assertThat(bench.steps()).allMatch(s -> Math.abs(s.borderMm() - 2) < 1e-9);
    // At the block that made it, whichever side is the later.
    assertThat(bench.steps()).extracting(s -> s.at().line()).containsExactly(8, 11, 14, 14);
    assertThat(bench.steps().get(1).later().levelId()).isEqualTo(3);
    assertThat(bench.steps().get(1).earlier().levelId()).isEqualTo(2);
    assertThat(bench.steps().get(1).later()).isEqualTo(bench.steps().get(1).upper());
    assertThat(bench.steps().get(3).later()).isEqualTo(bench.steps().get(3).lower());
  }

  @Test
  void equalLevelsSideBySideAreNoStep() {
    assertThat(stripes(-4, -4, -4).steps())
        .extracting(StepFound::heightPm)
        .containsExactly(Bench.pm(4));
  }

  /** A wall of this width left standing between two grooves. */
  private static Bench wall(double width) {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g0(-1000, -200, 50).g1(-1000, -200, -4);
    bench.g1(1000, -200, -4).g0(0, 0, 50);
    bench.g0(-1000, 200 + width, 50).g1(-1000, 200 + width, -8).g1(1000, 200 + width, -8);
    return bench.end();
  }

  @Test
  void acrossASliverTheLevelsAdjoin() {
    // One cell wide: below what can be told.
    assertThat(wall(25).steps())
        .filteredOn(s -> !s.upper().uncut())
        .extracting(StepFound::heightPm)
        .containsExactly(Bench.pm(4));
  }

  @ParameterizedTest
  @ValueSource(doubles = {50, 75, 500})
  void acrossAWallTheyDoNot(double width) {
    assertThat(wall(width).steps()).allMatch(s -> s.upper().uncut()).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(doubles = {75, 100, 125})
  void aBorderBelowAQuarterOfTheToolIsNone(double width) {
    // Two passes across a strip of stock as wide as the border is long.
    Bench bench = Bench.flat().stock(-2000, 2000, 0, width, 0, -3000).g0(0, 0, 50);
    for (int k = 0; k < 2; k++) {
      double x = -1800 + 400 * k;
      bench.g0(x, -1300, 50).g1(x, -1300, -4 * (k + 1)).g1(x, 1300, -4 * (k + 1));
    }
    bench.end();
    assertThat(bench.steps()).hasSize(width >= 100 ? 2 : 0);
  }

  @Test
  void theSmallerToolOfTheTwoDecidesHowLongABorderMustBe() {
    // A strip of 100 µm: enough for 400 µm, too little for 600 µm alone.
    for (int other : new int[] {1, 2}) {
      Bench bench = Bench.flat().tool(2, ToolShape.FLAT, 600, 0, 1.5);
      bench.stock(-2000, 2000, 0, 100, 0, -3000).change(other).g0(-1700, -1300, 50);
      bench.g1(-1700, -1300, -4).g1(-1700, 1300, -4).change(2).g0(-1200, -1300, 50);
      bench.g1(-1200, -1300, -8).g1(-1200, 1300, -8).end();
      assertThat(bench.steps()).filteredOn(s -> !s.upper().uncut()).hasSize(other == 1 ? 1 : 0);
    }
  }

  @Test
  void stepsBelongToTheFeatureOfTheirBorder() {
    Bench bench =
        Bench.flat()
            .stock(-2000, 2000, -1000, 1000, 0, -3000)
            .feature("left", -2000, -1000, -1000, 1000, 0)
            .feature("right", -1000, 2000, 0, 1000, 0)
            .g0(0, 0, 50);
    for (int k = 0; k < 3; k++) {
      double x = -1800 + 400 * k;
      bench.g0(x, -1300, 50).g1(x, -1300, -4 - 3 * k).g1(x, 1300, -4 - 3 * k);
    }
    bench.end();
    assertThat(bench.steps())
        .extracting(
            s ->
                s.upper().levelId()
                    + " "
                    + s.lower().levelId()
                    + " "
                    + s.feature().map(f -> f.name()).orElse("-")
                    + " "
                    + Math.round(s.borderMm() * 10))
        .containsExactly("1 2 left 20", "0 3 - 10", "0 3 right 10", "2 3 left 20")
        .doesNotContain("2 3 - 10");
  }

  @Test
  void aSlantedBorderHasItsTrueLength() {
    // A groove at 45° through the stock: two borders of 2 · √2 mm with the top, joined.
    Bench bench = Bench.flat().stock(-1000, 1000, -1000, 1000, 0, -3000).g0(0, 0, 50);
    bench.g0(-3000, -3000, 50).g1(-3000, -3000, -4).g1(3000, 3000, -4).end();
    // Its edges lie 200 µm off the diagonal: each (2000 - 200 √2) √2 = 2428 µm long.
    assertThat(bench.steps()).hasSize(1);
    assertThat(bench.steps().get(0).borderMm()).isBetween(2 * 2.428 - 0.15, 2 * 2.428);
  }

  private static HeightGrid grid() {
    return new HeightGrid(
        Bench.pm(25),
        Optional.of(
            new StockModel.Box(
                Bench.pm(-20000),
                Bench.pm(20000),
                Bench.pm(-20000),
                Bench.pm(20000),
                0,
                OptionalLong.empty(),
                "G54")),
        new HeightGrid.TileBudget(1000));
  }

  @Test
  void tilesApartAreWalkedApart() {
    // Two floors on tiles that don't touch, a third on the far side of one empty tile.
    HeightGrid grid = grid();
    Spans spans = new Spans(grid);
    Removed found = new Removed(Bench.pm(25));
    double[] centres = {800, 800 + 2 * 1600, 800 + 6 * 1600};
    for (int k = 0; k < 3; k++) {
      found.clear();
      double x = (centres[k] - 3000) * Bench.UM;
      double y = 800.0 * Bench.UM;
      spans.segment(x, y, x, y, 200.0 * Bench.UM);
      grid.cutFlat(spans, -1000L * (k + 1), k + 1, found);
    }
    Map<StepFinder.Border, StepFinder.Length> borders =
        new StepFinder(grid, 0, 100, (x, y) -> -1, (a, b) -> false).find();
    assertThat(borders.keySet())
        .containsExactlyInAnyOrder(
            new StepFinder.Border(0, 1, -1),
            new StepFinder.Border(0, 2, -1),
            new StepFinder.Border(0, 3, -1));
    // Each a circle of 16 cells: 16 edges on each of four sides.
    borders.values().forEach(length -> assertThat(length.cells()).isEqualTo(Math.sqrt(2) * 32));
  }

  @Test
  void aTouchingTileEdgeIsWalkedAcross() {
    // A floor that ends exactly where its tile does.
    HeightGrid grid = grid();
    Spans spans = new Spans(grid);
    Removed found = new Removed(Bench.pm(25));
    spans.segment(0, 8e8, 1.4e9, 8e8, 2e8);
    grid.cutFlat(spans, -1000, 1, found);
    Map<StepFinder.Border, StepFinder.Length> borders =
        new StepFinder(grid, 0, 100, (x, y) -> x > Bench.pm(1500) ? 7 : -1, (a, b) -> false).find();
    assertThat(borders.keySet())
        .containsExactlyInAnyOrder(new StepFinder.Border(0, 1, -1), new StepFinder.Border(0, 1, 7));
  }

  @ParameterizedTest
  @ValueSource(doubles = {25, 50, 100})
  void theFootOfAWallIsLookedAcross(double corner) {
    Bench bench =
        new Bench()
            .tool(1, ToolShape.BULL, 800, corner, 1.5)
            .stock(-2000, 2000, -1000, 1000, 0, -3000)
            .change(1)
            .g0(0, 0, 50);
    for (int k = 0; k < 2; k++) {
      double z = -40 * (k + 1);
      bench.g0(-1600 + 800 * k, -1600, 50).g1(-1600 + 800 * k, -1600, z);
      bench.g1(-1600 + 800 * k, 1600, z);
    }
    bench.end();
    assertThat(bench.steps())
        .extracting(s -> s.upper().levelId() + " " + s.lower().levelId() + " " + s.heightPm() / 1e6)
        .containsExactly("0 2 80.0", "1 2 40.0");
  }

  @Test
  void aBroadRampBetweenTwoLevelsIsNoStep() {
    Bench bench = Bench.flat().stock(-2000, 2000, -200, 200, 0, -3000).g0(0, 0, 50);
    bench.g0(-2300, 0, 50).g1(-2300, 0, -4).g1(-1000, 0, -4).g1(1000, 0, -8).g1(2300, 0, -8);
    bench.end();
    assertThat(bench.levels()).hasSize(2);
    assertThat(bench.steps()).isEmpty();
    assertThat(List.of(bench.levels().get(1).stepDownPm()))
        .containsExactly(OptionalLong.of(Bench.pm(8)));
  }
}
