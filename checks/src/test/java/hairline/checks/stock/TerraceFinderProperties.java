package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.setup.Feature;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthRange;
import hairline.checks.setup.ToolShape;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Terraces of random fields against a plain flood fill, and under shift and mirror. */
class TerraceFinderProperties {
  private static final int CELL_UM = 20;
  private static final long CELL = CELL_UM * Bench.UM;
  private static final long TOLERANCE = 10_000;

  @Provide
  Arbitrary<List<Consumer<Bench>>> program() {
    return program(10);
  }

  @Provide
  Arbitrary<List<Consumer<Bench>>> wideProgram() {
    return program(45);
  }

  private static Arbitrary<List<Consumer<Bench>>> program(double scale) {
    Arbitrary<Double> x = Arbitraries.integers().between(-130, 130).map(k -> scale * k);
    Arbitrary<Double> z = Arbitraries.integers().between(1, 6).map(k -> -4.0 * k);
    Arbitrary<Integer> tool = Arbitraries.of(1, 1, 1, 2, 3);
    Arbitrary<Consumer<Bench>> level =
        Combinators.combine(x, x, z, x, x, tool)
            .as((x0, y0, low, x1, y1, t) -> b -> pass(b, t, x0, y0, low, x1, y1, low));
    Arbitrary<Consumer<Bench>> ramp =
        Combinators.combine(x, x, z, x, x, z, tool)
            .as((x0, y0, z0, x1, y1, z1, t) -> b -> pass(b, t, x0, y0, z0, x1, y1, z1));
    Arbitrary<Consumer<Bench>> plunge =
        Combinators.combine(x, x, z).as((x0, y0, low) -> b -> pass(b, 1, x0, y0, low, x0, y0, low));
    // To the underside of the stock.
    Arbitrary<Consumer<Bench>> through =
        Combinators.combine(x, x, x)
            .as((x0, y0, x1) -> b -> pass(b, 1, x0, y0, -30.0, x1, y0, -30.0));
    // The last coordinate is unknown: what it may have cut is lost.
    Arbitrary<Consumer<Bench>> lost =
        Combinators.combine(x, x, x)
            .as((x0, y0, x1) -> b -> pass(b, 1, x0, y0, -5.0, x1, y0, Double.NaN));
    return Arbitraries.frequencyOf(
            net.jqwik.api.Tuple.of(6, level),
            net.jqwik.api.Tuple.of(2, ramp),
            net.jqwik.api.Tuple.of(1, plunge),
            net.jqwik.api.Tuple.of(1, through),
            net.jqwik.api.Tuple.of(1, lost))
        .list()
        .ofMinSize(1)
        .ofMaxSize(8);
  }

  private static void pass(
      Bench bench, int tool, double x0, double y0, double z0, double x1, double y1, double z1) {
    bench.change(tool).g0(x0, y0, 50).g1(x0, y0, z0).g1(x1, y1, z1);
  }

  private static Bench bench() {
    return Bench.flat()
        .tool(2, ToolShape.BALL, 600, 0, 1)
        .tool(3, ToolShape.BULL, 500, 60, 1)
        .cell(CELL_UM);
  }

  private static SurfaceLeft run(Bench bench, List<Consumer<Bench>> program) {
    bench.g0(0, 0, 50);
    program.forEach(part -> part.accept(bench));
    bench.end();
    return bench.all(PartLeft.class).get(0).surfaces().get(0);
  }

  private static void compare(SurfaceLeft surface, long tolerance, int reach) {
    NaiveTerraces naive =
        new NaiveTerraces(
            surface, tolerance, surface.widestCornerPm() / CELL, -reach, reach, -reach, reach);
    Terraces terraces = surface.terraces(tolerance);
    assertThat(NaiveTerraces.words(terraces, CELL)).isEqualTo(naive.words());
    assertThat(terraces.otherAreas()).isEqualTo(naive.others());
  }

  @Property(tries = 60)
  void areThoseOfAFloodFill(@ForAll("program") List<Consumer<Bench>> program) {
    // Narrower than some of the paths: tiles inside, across and outside of the stock.
    compare(run(bench().stock(-1250, 1710, -990, 1330, 0, -30), program), TOLERANCE, 130);
  }

  @Property(tries = 60)
  void areThoseOfAFloodFillWhereMostOfTheStockIsUncut(
      @ForAll("wideProgram") List<Consumer<Bench>> program) {
    // Gaps between tiles, and whole rows of tiles without a cut.
    compare(run(bench().stock(-5990, 5130, -4010, 5270, 0, -30), program), TOLERANCE, 300);
  }

  @Property(tries = 60)
  void joinHeightsWithinATolerance(@ForAll("program") List<Consumer<Bench>> program) {
    SurfaceLeft surface = run(bench().stock(-1250, 1710, -990, 1330, 0, -30), program);
    // Multiples of 10 µm: levels of 8 and 12 µm become one.
    Terraces terraces = surface.terraces(10 * Bench.UM);
    NaiveTerraces naive =
        new NaiveTerraces(
            surface, 10 * Bench.UM, surface.widestCornerPm() / CELL, -130, 130, -130, 130);
    assertThat(terraces.areas()).extracting(TerraceArea::cells).isEqualTo(naive.cells());
    assertThat(terraces.areas()).allMatch(a -> a.highestPm() - a.lowestPm() < 10 * Bench.UM);
  }

  @Property(tries = 60)
  void areThoseOfAFloodFillWithoutStock(@ForAll("program") List<Consumer<Bench>> program) {
    List<SurfaceLeft> surfaces = run0(program);
    if (!surfaces.isEmpty()) {
      compare(surfaces.get(0), TOLERANCE, 130);
    }
  }

  private static List<SurfaceLeft> run0(List<Consumer<Bench>> program) {
    Bench bench = bench().g0(0, 0, 50).change(2).g0(0, 0, 50).change(3).g0(0, 0, 50);
    program.forEach(part -> part.accept(bench));
    bench.end();
    return bench.all(PartLeft.class).get(0).surfaces();
  }

  @Property(tries = 60)
  void doNotChangeWhenThePartIsShiftedByCellsOrMirrored(
      @ForAll("program") List<Consumer<Bench>> program) {
    Terraces plain =
        run(bench().stock(-1200, 1200, -1000, 1000, 0, -30), program).terraces(TOLERANCE);
    Terraces shifted =
        run(
                bench()
                    .stock(-1200 + 37 * CELL_UM, 1200 + 37 * CELL_UM, -1000 - 640, 360, 0, -30)
                    .shifted(37 * CELL_UM, -640),
                program)
            .terraces(TOLERANCE);
    assertThat(shifted.areas())
        .extracting(TerraceArea::heightPm, TerraceArea::cells, a -> a.xMinPm() - 37 * CELL)
        .isEqualTo(
            plain.areas().stream()
                .map(a -> org.assertj.core.groups.Tuple.tuple(a.heightPm(), a.cells(), a.xMinPm()))
                .toList());
    Terraces mirrored =
        run(bench().stock(-1200, 1200, -1000, 1000, 0, -30).mirrored(), program)
            .terraces(TOLERANCE);
    assertThat(mirrored.areas())
        .extracting(TerraceArea::heightPm)
        .containsExactlyInAnyOrderElementsOf(
            plain.areas().stream().map(TerraceArea::heightPm).toList());
  }

  @Provide
  Arbitrary<List<Feature>> features() {
    Arbitrary<Integer> edge = Arbitraries.integers().between(-150, 150).map(k -> k * 11);
    Arbitrary<Feature> one =
        Combinators.combine(edge, edge, edge, edge, Arbitraries.integers().between(0, 9))
            .as(
                (a, b, c, d, open) ->
                    new Feature(
                        "feature " + a + " " + b + " " + c + " " + d,
                        open == 0 ? Optional.empty() : Optional.of(range(a, b)),
                        open == 1 ? Optional.empty() : Optional.of(range(c, d)),
                        Optional.empty(),
                        List.of(),
                        Optional.empty()));
    return one.list().ofMinSize(1).ofMaxSize(4).uniqueElements();
  }

  private static LengthRange range(int aUm, int bUm) {
    return new LengthRange(
        new Length(Math.min(aUm, bUm) * Bench.UM),
        new Length((Math.max(aUm, bUm) + 3L) * Bench.UM));
  }

  /** Each cell asked for itself. */
  @Property(tries = 60)
  void floorsOfFeaturesAreThoseOfTheirCells(
      @ForAll("program") List<Consumer<Bench>> program,
      @ForAll("features") List<Feature> features) {
    SurfaceLeft surface = run(bench().stock(-1250, 1710, -990, 1330, 0, -30), program);
    HeightGrid grid = surface.grid();
    TerraceFinder.TerraceAt at = new TerraceFinder(surface, 1).find().at();
    FeatureAreas areas = new FeatureAreas(features);
    for (FeatureFloors floors : surface.floors(features)) {
      Map<Integer, Long> cells = new TreeMap<>();
      boolean known = surface.known();
      for (int row = grid.boxRowFrom(); row <= grid.boxRowTo(); row++) {
        for (int column = grid.boxFrom(); column <= grid.boxTo(); column++) {
          if (!areas
              .at((double) grid.centre(column), (double) grid.centre(row))
              .equals(Optional.of(floors.feature()))) {
            continue;
          }
          int id = at.id(column, row);
          if (id > 0) {
            cells.merge(id, 1L, Long::sum);
          } else {
            known &= surface.stands(column, row) != Stands.NOT_KNOWN;
          }
        }
      }
      assertThat(floors.known()).isEqualTo(known);
      Map<Integer, Long> found = new TreeMap<>();
      floors
          .floors()
          .forEach(
              floor ->
                  found.put(
                      floor.terrace().id(),
                      Math.round(floor.areaMm2() / (CELL * 1e-9) / (CELL * 1e-9))));
      assertThat(found).isEqualTo(cells);
    }
  }
}
