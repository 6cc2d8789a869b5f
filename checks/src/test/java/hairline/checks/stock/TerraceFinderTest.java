package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.ToolShape;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Terraces of parts whose heights and areas are known in closed form. */
class TerraceFinderTest {
  private static final long TENTH_OF_RESOLUTION = 10_000;
  private static final double UM2_PER_MM2 = 1e6;

  private static SurfaceLeft left(Bench bench) {
    bench.end();
    return bench.all(PartLeft.class).get(0).surfaces().get(0);
  }

  private static Terraces terraces(Bench bench) {
    return left(bench).terraces(TENTH_OF_RESOLUTION);
  }

  /** Cuts a rectangle, its outline at the tool's radius from the given edges. */
  private static void pocket(
      Bench bench, double x0, double x1, double y0, double y1, double z, double radius) {
    bench.g0(x0 + radius, y0 + radius, 50).g1(x0 + radius, y0 + radius, z);
    for (double y = y0 + radius; y < y1 - radius; y += radius) {
      bench.g1(x0 + radius, y, z).g1(x1 - radius, y, z).g1(x0 + radius, y, z);
    }
    bench.g1(x0 + radius, y1 - radius, z).g1(x1 - radius, y1 - radius, z);
    bench.g1(x1 - radius, y0 + radius, z).g0(0, 0, 50);
  }

  private static double uncutMm2(double cutMm2) {
    return 12.0 * 8.0 - cutMm2;
  }

  @Test
  void aPocketHasItsHeightAndTheAreaOfARectangleWithRoundedCorners() {
    Bench bench = Bench.flat().cell(5).stock().g0(0, 0, 50);
    pocket(bench, -1000, 1000, -500, 500, -15.3, 200);
    Terraces found = terraces(bench);
    assertThat(found.areas()).hasSize(2);
    assertThat(found.otherAreas()).isZero();
    TerraceArea top = found.areas().get(0);
    TerraceArea floor = found.areas().get(1);
    assertThat(top.uncut()).isTrue();
    assertThat(top.heightPm()).isZero();
    assertThat(floor.heightPm()).isEqualTo(-15_300_000);
    assertThat(floor.lowestPm()).isEqualTo(floor.highestPm()).isEqualTo(-15_300_000);
    // Four corners: squares of the radius less their quarter circles.
    double area = (2000.0 * 1000 - (4 - Math.PI) * 200 * 200) / UM2_PER_MM2;
    double perimeter = (2 * 1600 + 2 * 600 + 2 * Math.PI * 200) / 1e3;
    assertThat(floor.areaMm2()).isEqualTo(area, within(perimeter * 0.005));
    assertThat(top.areaMm2()).isEqualTo(uncutMm2(area), within(perimeter * 0.005));
    assertThat(floor.xMinPm()).isEqualTo(Bench.pm(-1000));
    assertThat(floor.xMaxPm()).isEqualTo(Bench.pm(1000));
    assertThat(floor.yMinPm()).isEqualTo(Bench.pm(-500));
    assertThat(floor.yMaxPm()).isEqualTo(Bench.pm(500));
    assertThat(floor.neighbours())
        .extracting(TerraceArea.Neighbour::id, TerraceArea.Neighbour::stepPm)
        .containsExactly(org.assertj.core.groups.Tuple.tuple(1, 15_300_000L));
    assertThat(top.neighbours())
        .extracting(TerraceArea.Neighbour::id, TerraceArea.Neighbour::stepPm)
        .containsExactly(org.assertj.core.groups.Tuple.tuple(2, -15_300_000L));
    // The edges of cells around a rectangle, rounded or not, are those of its outline box.
    assertThat(floor.neighbours().get(0).borderMm()).isEqualTo(6.0, within(1e-9));
    assertThat(floor.beside()).isEmpty();
    assertThat(top.beside()).containsExactly(Stands.OUTSIDE);
  }

  @Test
  void aSlotIsACapsule() {
    Bench bench = Bench.flat().cell(4).stock().g0(0, 0, 50);
    bench.g0(-700, -300, 50).g1(-700, -300, -7).g1(500, 600, -7).g0(0, 0, 50);
    TerraceArea slot = terraces(bench).areas().get(1);
    double length = 1500;
    double area = (length * 400 + Math.PI * 200 * 200) / UM2_PER_MM2;
    double perimeter = (2 * length + 2 * Math.PI * 200) / 1e3;
    assertThat(slot.areaMm2()).isEqualTo(area, within(perimeter * 0.004));
    assertThat(slot.heightPm()).isEqualTo(-7_000_000);
  }

  @Test
  void levelsOfOneHeightThatDoNotTouchAreTwoTerraces() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    for (double x : List.of(-2000.0, 2000.0)) {
      bench.g0(x, -500, 50).g1(x, -500, -4).g1(x, 500, -4).g0(x, 500, 50);
    }
    assertThat(terraces(bench).areas())
        .extracting(TerraceArea::heightPm)
        .containsExactly(0L, -4_000_000L, -4_000_000L);
  }

  @Test
  void idsFollowTheFirstCellByYThenByX() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    bench.g0(2000, -500, 50).g1(2000, -500, -4).g1(2000, 500, -4).g0(0, 0, 50);
    bench.g0(-2000, -500, 50).g1(-2000, -500, -6).g1(-2000, 500, -6).g0(0, 0, 50);
    bench.g0(0, -900, 50).g1(0, -900, -8).g1(0, 500, -8).g0(0, 0, 50);
    assertThat(terraces(bench).areas())
        .extracting(TerraceArea::heightPm)
        .containsExactly(0L, -8_000_000L, -6_000_000L, -4_000_000L);
  }

  @Test
  void aCascadeHasTheStepsOfTheDrawing() {
    Bench bench = Bench.flat().stock(-1500, 1500, -2000, 2000, 0, -3000).g0(0, 0, 50);
    pocket(bench, -1700, 1700, -2200, 2200, -4, 200);
    pocket(bench, -500, 1700, -2200, 2200, -8, 200);
    pocket(bench, 500, 1700, -2200, 2200, -14, 200);
    Terraces found = terraces(bench);
    assertThat(found.areas())
        .extracting(TerraceArea::heightPm)
        .containsExactly(-4_000_000L, -8_000_000L, -14_000_000L);
    assertThat(found.areas())
        .extracting(a -> a.neighbours().stream().map(n -> n.id() + ":" + n.stepPm()).toList())
        .containsExactly(
            List.of("2:-4000000"), List.of("1:4000000", "3:-6000000"), List.of("2:6000000"));
    assertThat(found.areas()).extracting(TerraceArea::levelId).containsExactly(1, 2, 3);
  }

  @Test
  void aContouredBasinIsNoTerrace() {
    Bench bench =
        Bench.flat().tool(2, ToolShape.BALL, 600, 0, 1).cell(5).stock().g0(0, 0, 50).change(2);
    bench.g0(0, 0, 50);
    for (int k = -20; k <= 20; k++) {
      double depth = -20 + k * k / 20.0;
      bench.g0(-500, 30 * k, 50).g1(-500, 30 * k, depth).g1(500, 30 * k, depth).g0(0, 0, 50);
    }
    Terraces found = terraces(bench);
    assertThat(found.areas()).allMatch(TerraceArea::uncut);
    assertThat(found.otherAreas()).isGreaterThan(1000);
    double all = found.otherMm2() + found.areas().stream().mapToDouble(TerraceArea::areaMm2).sum();
    assertThat(all).isEqualTo(96.0, within(1e-6));
  }

  @Test
  void aRampIsNoTerraceAndItsEndIs() {
    Bench bench = Bench.flat().cell(5).stock().g0(0, 0, 50);
    bench.g0(-1000, 0, 50).g1(-1000, 0, 0).g1(0, 0, -20).g1(1000, 0, -20).g0(0, 0, 50);
    Terraces found = terraces(bench);
    assertThat(found.areas()).extracting(TerraceArea::heightPm).containsExactly(0L, -20_000_000L);
    assertThat(found.otherAreas()).isGreaterThan(100);
  }

  @Test
  void theGroundOfAPlungeIsATerraceOfNoLevel() {
    Bench bench = Bench.flat().cell(5).stock().g0(0, 0, 50);
    bench.g0(100, 100, 50).g1(100, 100, -30).g0(0, 0, 50);
    TerraceArea ground = terraces(bench).areas().get(1);
    assertThat(ground.heightPm()).isEqualTo(-30_000_000);
    assertThat(ground.levelId()).isEqualTo(Cut.NO_LEVEL);
    assertThat(ground.areaMm2()).isEqualTo(Math.PI * 0.04, within(2 * Math.PI * 0.2 * 0.005));
  }

  @Test
  void aWallThatACornerRadiusLeavesDividesNeighbours() {
    // Both floors are cut by a corner of 50 µm; the wall between is 4 µm high.
    Bench bench =
        Bench.flat().tool(2, ToolShape.BULL, 400, 50, 1).cell(5).stock().change(2).g0(0, 0, 50);
    pocket(bench, -1000, 1000, -500, 500, -4, 200);
    pocket(bench, 0, 1000, -500, 500, -8, 200);
    List<TerraceArea> areas = terraces(bench).areas();
    TerraceArea upper =
        areas.stream().filter(a -> a.heightPm() == -4_000_000).findFirst().orElseThrow();
    assertThat(upper.neighbours())
        .extracting(TerraceArea.Neighbour::stepPm)
        .containsExactlyInAnyOrder(4_000_000L, -4_000_000L);
  }

  @Test
  void aGrooveOrARidgeBetweenTwoTerracesIsNoWall() {
    Bench bench = Bench.flat().tool(2, ToolShape.BALL, 40, 0, 1).cell(5).stock().g0(0, 0, 50);
    pocket(bench, -1000, 400, -500, 500, -4, 200);
    bench.change(2).g0(0, 0, 50).g0(10, -5000, 50).g1(10, -5000, -12).g1(10, 5000, -12);
    List<TerraceArea> areas = terraces(bench).areas();
    // The groove parts the top and the floor; left and right of it each floor adjoins its top only,
    // on three sides: 990 + 990 + 1000 and 370 + 370 + 1000 µm.
    assertThat(areas)
        .extracting(a -> a.heightPm() / 1e6, a -> a.neighbours().size())
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(0.0, 1),
            org.assertj.core.groups.Tuple.tuple(0.0, 1),
            org.assertj.core.groups.Tuple.tuple(-4.0, 1),
            org.assertj.core.groups.Tuple.tuple(-4.0, 1));
    assertThat(areas.get(2).neighbours().get(0).borderMm()).isEqualTo(2.98, within(0.011));
    assertThat(areas.get(3).neighbours().get(0).borderMm()).isEqualTo(1.74, within(0.011));
  }

  @Test
  void withoutStockTheTopIsNotKnownAndIsNoTerrace() {
    Bench bench = Bench.flat().g0(0, 0, 50);
    bench.g0(0, 0, 50).g1(0, 0, -4).g1(1000, 0, -4).g0(0, 0, 50);
    SurfaceLeft surface = left(bench);
    assertThat(surface.stock()).isEmpty();
    assertThat(surface.standsAt(0, 2e9)).isEqualTo(Stands.TOP_UNKNOWN);
    assertThat(surface.heightPm(0, 2e9)).isEmpty();
    assertThat(surface.heightPm(0, 0)).hasValue(-4_000_000);
    List<TerraceArea> areas = surface.terraces(TENTH_OF_RESOLUTION).areas();
    assertThat(areas).hasSize(1);
    assertThat(areas.get(0).heightPm()).isEqualTo(-4_000_000);
    assertThat(areas.get(0).beside()).containsExactly(Stands.TOP_UNKNOWN);
    assertThat(areas.get(0).neighbours()).isEmpty();
  }

  @Test
  void whatIsCutThroughIsNoTerrace() {
    Bench bench = Bench.flat().stock(-2000, 2000, -1000, 1000, 0, -100).g0(0, 0, 50);
    bench.g0(0, -1500, 50).g1(0, -1500, -120).g1(0, 1500, -120).g0(0, 0, 50);
    SurfaceLeft surface = left(bench);
    assertThat(surface.standsAt(0, 0)).isEqualTo(Stands.CUT_THROUGH);
    assertThat(surface.standsAt(0, 2e9)).isEqualTo(Stands.OUTSIDE);
    assertThat(surface.terraces(TENTH_OF_RESOLUTION).areas())
        .hasSize(2)
        .allMatch(TerraceArea::uncut)
        .allMatch(a -> a.beside().contains(Stands.CUT_THROUGH));
  }

  @Test
  void whereAMoveOfUnknownCourseMayHaveCutNothingIsTold() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(Double.NaN, 0, -4);
    SurfaceLeft surface = left(bench);
    assertThat(surface.known()).isFalse();
    assertThat(surface.standsAt(0, 0)).isEqualTo(Stands.NOT_KNOWN);
    assertThat(surface.heightPm(0, 0)).isEmpty();
    assertThat(surface.terraces(TENTH_OF_RESOLUTION).areas()).isEmpty();
  }

  @Test
  void capsAreTold() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    bench.g0(-2000, 0, 50).g1(-2000, 0, -4).g1(2000, 0, -4).g0(0, 0, 50);
    SurfaceLeft surface = left(bench);
    Terraces none = new TerraceFinder(surface, 1, 1, 10).find().terraces();
    assertThat(none.areas()).isEmpty();
    assertThat(none.left())
        .containsExactly("terraces: more than 1 tiles of cells with several heights");
    Terraces one = new TerraceFinder(surface, 1, 100, 1).find().terraces();
    assertThat(one.areas()).hasSize(1);
    assertThat(one.otherAreas()).isEqualTo(1);
    assertThat(one.left()).containsExactly("terraces: more than 1");
    assertThat(surface.terraces(1).left()).isEmpty();
  }

  @Test
  void everyOffsetHasASurfaceOfItsOwn() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(1000, 0, -4).g0(0, 0, 50).offset("G55").g0(0, 0, 50);
    bench.g1(0, 0, -6).g1(1000, 0, -6).g0(0, 0, 50).offset("G56").g0(0, 0, 50).end();
    List<SurfaceLeft> surfaces = bench.all(PartLeft.class).get(0).surfaces();
    assertThat(surfaces).extracting(SurfaceLeft::offset).containsExactly("G54", "G55");
    assertThat(surfaces.get(1).terraces(1).areas())
        .extracting(TerraceArea::heightPm)
        .containsExactly(-6_000_000L);
  }

  /** Each field is followed by itself: what was cut under another offset is not gone here. */
  @Test
  void goingBackToAnOffsetFindsItsFieldAsItWas() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(1000, 0, -4).g0(1000, 0, 50).offset("G55").g0(0, 0, 50);
    bench.g1(0, 0, -6).g1(1000, 0, -6).g0(1000, 0, 50).offset("G54").g0(0, 0, 50);
    bench.g1(0, 0, -5).g1(1000, 0, -5);
    assertThat(bench.last().removal().deepestPm()).isEqualTo(1_000_000L);
    bench.end();
    List<SurfaceLeft> surfaces = bench.all(PartLeft.class).get(0).surfaces();
    assertThat(surfaces.get(0).heightPm(5e8, 0)).hasValue(-5_000_000L);
    assertThat(surfaces.get(1).heightPm(5e8, 0)).hasValue(-6_000_000L);
    assertThat(surfaces.get(0).heightPm(0, 3e9)).hasValue(0);
    assertThat(surfaces.get(1).heightPm(0, 3e9)).isEmpty();
  }

  @Test
  void withoutStockTheBoxOfTheCutsIsAssumedUpToTheHighestFloor() {
    Bench bench = Bench.flat().cell(4).g0(0, 0, 0).g1(0, 0, -10).g1(500, 300, -10);
    bench.g1(500, 300, -14).g1(0, 300, -14).g0(0, 300, 50).end();
    SurfaceLeft surface = bench.all(PartLeft.class).get(0).surfaces().get(0);
    StockModel.Box box = surface.assumedStock().orElseThrow();
    // Radius 0.2 mm; a cell is 4 µm.
    assertThat((double) box.xMinPm()).isCloseTo(-2e8, within(4e6));
    assertThat((double) box.xMaxPm()).isCloseTo(7e8, within(4e6));
    assertThat((double) box.yMinPm()).isCloseTo(-2e8, within(4e6));
    assertThat((double) box.yMaxPm()).isCloseTo(5e8, within(4e6));
    assertThat(box.topPm()).isEqualTo(-10_000_000L);
    assertThat(box.bottomPm()).isEmpty();
    Bench given = Bench.flat().stock().g0(0, 0, 0).g1(0, 0, -10).g1(500, 300, -10).end();
    assertThat(given.all(PartLeft.class).get(0).surfaces().get(0).assumedStock()).isEmpty();
  }
}
