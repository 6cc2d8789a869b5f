package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.ToolShape;
import hairline.checks.stock.HeightGridProperties.Line;
import hairline.checks.stock.HeightGridProperties.Round;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** What must hold of any field of removed material, however it is computed. */
class FieldProperties {
  private static final long CELL = 25_000_000;
  private static final double CELL_MM = 0.025;
  private static final int REACH = 80;
  private static final double PM_PER_MM = 1e9;

  /** Segments of a circle's quarter: the polygon lies inside by 0.0002 of the radius. */
  private static final int QUARTER = 40;

  private static final GeometryFactory PLANE = new GeometryFactory();

  @Provide
  Arbitrary<Cutter> cutter() {
    return Arbitraries.of(
        new Cutter(ToolShape.FLAT, 2e8, 0, 0),
        new Cutter(ToolShape.FLAT, 7.3e8, 0, 0),
        new Cutter(ToolShape.BALL, 2e8, 2e8, 0),
        new Cutter(ToolShape.BALL, 7.3e8, 7.3e8, 0),
        new Cutter(ToolShape.BULL, 5e8, 1e8, 0));
  }

  /** Chained lines: offsets in cells or parts of them, Z in picometres. */
  @Provide
  Arbitrary<List<Line>> chain() {
    Arbitrary<Long> way =
        Arbitraries.oneOf(
            Arbitraries.longs().between(-5, 5).map(k -> k * CELL),
            Arbitraries.longs().between(-10 * CELL, 10 * CELL));
    Arbitrary<Long> z =
        Arbitraries.oneOf(Arbitraries.just(0L), Arbitraries.longs().between(-6000000, 6000000));
    return Combinators.combine(way, way, z)
        .as((x, y, down) -> new Line(0, 0, 0, x, y, down))
        .list()
        .ofMinSize(2)
        .ofMaxSize(40)
        .map(FieldProperties::chained);
  }

  private static List<Line> chained(List<Line> steps) {
    List<Line> lines = new ArrayList<>();
    long x = 3_000_017;
    long y = -5_000_003;
    long z = -20_000_000;
    for (Line step : steps) {
      long x2 = Math.max(-1_000_000_000, Math.min(1_000_000_000, x + step.x1()));
      long y2 = Math.max(-1_000_000_000, Math.min(1_000_000_000, y + step.y1()));
      long z2 = Math.max(-60_000_000, Math.min(-1_000_000, z + step.z1()));
      lines.add(new Line(x, y, z, x2, y2, z2));
      x = x2;
      y = y2;
      z = z2;
    }
    return lines;
  }

  private static double cut(Surface surface, List<Line> lines, Cutter cutter) {
    Removed found = new Removed(CELL);
    double volume = 0;
    for (Line line : lines) {
      Path path = HeightGridProperties.path(line);
      surface.cut(path, cutter, 1, 1, found);
      if (!found.nothing()) {
        volume += found.removal(path).volumeMm3().orElseThrow();
      }
    }
    return volume;
  }

  private static double missing(Surface surface) {
    double missing = 0;
    for (int row = -REACH; row < REACH; row++) {
      for (int column = -REACH; column < REACH; column++) {
        missing -= surface.grid.height(column, row) / PM_PER_MM * CELL_MM * CELL_MM;
      }
    }
    return missing;
  }

  /** Against a field that asks every cell for every move. */
  @Property(tries = 40)
  void shortMovesThatGoOnFromOneAnotherAreExact(
      @ForAll("chain") List<Line> lines, @ForAll("cutter") Cutter cutter) {
    Surface surface = HeightGridProperties.surface();
    NaiveSurface naive = new NaiveSurface(HeightGridProperties.SIDE, CELL);
    Removed found = new Removed(CELL);
    for (Line line : lines) {
      Line level = new Line(line.x0(), line.y0(), line.z1(), line.x1(), line.y1(), line.z1());
      surface.cut(HeightGridProperties.path(level), cutter, 1, 2, found);
      naive.cut(
          level.x0(),
          level.y0(),
          level.z0(),
          level.x1(),
          level.y1(),
          level.z1(),
          cutter.radiusPm(),
          cutter.cornerPm(),
          1,
          2);
    }
    HeightGridProperties.compare(surface, naive, cutter.flat() ? 0 : 1);
  }

  @Property(tries = 150)
  void whatIsRemovedIsMissing(@ForAll("chain") List<Line> lines, @ForAll("cutter") Cutter cutter) {
    Surface surface = HeightGridProperties.surface();
    double volume = cut(surface, lines, cutter);
    assertThat(volume).isPositive();
    assertThat(volume).isCloseTo(missing(surface), within(1e-12 * volume));
  }

  /** A floor is the lowest that any pass leaves: their order must not matter. */
  @Property(tries = 100)
  void theOrderOfCutsDoesNotMatter(
      @ForAll("chain") List<Line> lines, @ForAll("cutter") Cutter cutter, @ForAll long seed) {
    Surface forwards = HeightGridProperties.surface();
    cut(forwards, lines, cutter);
    List<Line> mixed = new ArrayList<>(lines);
    Collections.shuffle(mixed, new Random(seed));
    Surface shuffled = HeightGridProperties.surface();
    cut(shuffled, mixed, cutter);
    same(forwards, shuffled, 0, 0, 0);
  }

  @Property(tries = 100)
  void movingByWholeCellsMovesTheField(
      @ForAll("chain") List<Line> lines, @ForAll("cutter") Cutter cutter, @ForAll("few") int dx) {
    Surface here = HeightGridProperties.surface();
    double volume = cut(here, lines, cutter);
    int dy = 3 - dx;
    List<Line> moved = new ArrayList<>();
    for (Line l : lines) {
      moved.add(
          new Line(
              l.x0() + dx * CELL,
              l.y0() + dy * CELL,
              l.z0(),
              l.x1() + dx * CELL,
              l.y1() + dy * CELL,
              l.z1()));
    }
    Surface there = HeightGridProperties.surface();
    cut(there, moved, cutter);
    if (cutter.radiusPm() < 3e8) {
      // Nothing reached the edge of the stock.
      assertThat(missing(there)).isCloseTo(volume, within(1e-7 * volume));
    }
    // Points off the origin are rounded otherwise; heights keep to a picometre but at the rim.
    same(here, there, dx, dy, 1);
  }

  @Provide
  Arbitrary<Integer> few() {
    return Arbitraries.integers().between(-9, 9);
  }

  @Property(tries = 100)
  void mirroringMirrorsTheField(
      @ForAll("chain") List<Line> lines, @ForAll("cutter") Cutter cutter) {
    Surface plain = HeightGridProperties.surface();
    cut(plain, lines, cutter);
    List<Line> mirror = new ArrayList<>();
    for (Line l : lines) {
      mirror.add(new Line(-l.x0(), l.y0(), l.z0(), -l.x1(), l.y1(), l.z1()));
    }
    Surface mirrored = HeightGridProperties.surface();
    cut(mirrored, mirror, cutter);
    for (int row = -REACH; row < REACH; row++) {
      for (int column = -REACH; column < REACH; column++) {
        near(plain.grid.height(column, row), mirrored.grid.height(-1 - column, row), 1);
      }
    }
  }

  private static void same(Surface a, Surface b, int dx, int dy, long tolerance) {
    for (int row = -REACH + 10; row < REACH - 10; row++) {
      for (int column = -REACH + 10; column < REACH - 10; column++) {
        near(a.grid.height(column, row), b.grid.height(column + dx, row + dy), tolerance);
      }
    }
  }

  private static void near(long a, long b, long tolerance) {
    if (Math.abs(a - b) > tolerance) {
      assertThat(a).isCloseTo(b, within(tolerance));
    }
  }

  // Areas, against polygons.

  /** Corners of a polyline in millimetres. */
  @Provide
  Arbitrary<List<double[]>> polyline() {
    return Combinators.combine(
            Arbitraries.doubles().between(-1, 1), Arbitraries.doubles().between(-1, 1))
        .as((x, y) -> new double[] {x, y})
        .list()
        .ofMinSize(2)
        .ofMaxSize(12);
  }

  private static Geometry buffer(List<double[]> points, double radiusMm) {
    Coordinate[] corners =
        points.stream().map(p -> new Coordinate(p[0], p[1])).toArray(Coordinate[]::new);
    return BufferOp.bufferOp(
        PLANE.createLineString(corners), radiusMm, new BufferParameters(QUARTER));
  }

  /**
   * A cell counts when its centre is covered: the area is that of the buffer within half a diagonal
   * of a cell along its border, and mostly far nearer.
   */
  private static void sameArea(double volumeMm3, double depthMm, Geometry buffer) {
    double border = buffer.getLength() * CELL_MM / 2;
    double polygon = 1e-3 * buffer.getArea();
    assertThat(volumeMm3 / depthMm).isCloseTo(buffer.getArea(), within(border + polygon));
  }

  @Property(tries = 150)
  void polylinesSweepTheirBuffer(
      @ForAll("polyline") List<double[]> points, @ForAll("radius") double radiusMm) {
    Surface surface = HeightGridProperties.surface();
    List<Line> lines = new ArrayList<>();
    for (int k = 1; k < points.size(); k++) {
      lines.add(
          new Line(
              pm(points.get(k - 1)[0]),
              pm(points.get(k - 1)[1]),
              -10_000_000,
              pm(points.get(k)[0]),
              pm(points.get(k)[1]),
              -10_000_000));
    }
    double volume = cut(surface, lines, new Cutter(ToolShape.FLAT, radiusMm * PM_PER_MM, 0, 0));
    sameArea(volume, 0.01, buffer(points, radiusMm));
  }

  @Provide
  Arbitrary<Double> radius() {
    return Arbitraries.doubles().between(0.1, 0.9);
  }

  @Property(tries = 100)
  void arcsSweepTheirBuffer(
      @ForAll("radius") double arcMm,
      @ForAll("sweep") double sweep,
      @ForAll("start") double start) {
    Surface surface = HeightGridProperties.surface();
    Removed found = new Removed(CELL);
    Path path =
        HeightGridProperties.path(
            new Round(1.3e7, -2.1e7, arcMm * PM_PER_MM, start, sweep, -10_000_000));
    surface.cut(path, new Cutter(ToolShape.FLAT, 3e8, 0, 0), 1, 1, found);
    // In eighths, as the buffer of a small closed ring would come out with a hole.
    Geometry buffer = PLANE.createPolygon();
    for (int eighth = 0; eighth < 8; eighth++) {
      List<double[]> points = new ArrayList<>();
      for (int k = 0; k <= 50; k++) {
        double angle = start + sweep * (50 * eighth + k) / 400;
        points.add(
            new double[] {
              0.013 + arcMm * StrictMath.cos(angle), -0.021 + arcMm * StrictMath.sin(angle)
            });
      }
      buffer = buffer.union(buffer(points, 0.3));
    }
    sameArea(found.removal(path).volumeMm3().orElseThrow(), 0.01, buffer);
  }

  @Provide
  Arbitrary<Double> sweep() {
    return Arbitraries.oneOf(
        Arbitraries.doubles().between(0.2, 6.2),
        Arbitraries.doubles().between(-6.2, -0.2),
        Arbitraries.of(2 * Math.PI, -2 * Math.PI));
  }

  @Provide
  Arbitrary<Double> start() {
    return Arbitraries.doubles().between(-3, 3);
  }

  private static long pm(double mm) {
    return Math.round(mm * PM_PER_MM);
  }

  // Balls, against closed forms.

  /** A cap of height h has π h² (3R − h)/3: exact geometry. */
  @ParameterizedTest
  @CsvSource({"1.0, 0.2", "1.0, 0.05", "0.5, 0.3", "0.8, 0.8"})
  void aBallSetDownLeavesACap(double radiusMm, double deepMm) {
    Surface surface = HeightGridProperties.surface();
    long z = -pm(deepMm);
    double volume =
        cut(
            surface,
            List.of(new Line(1_000, 2_000, 0, 1_000, 2_000, z)),
            new Cutter(ToolShape.BALL, radiusMm * PM_PER_MM, radiusMm * PM_PER_MM, 0));
    double cap = Math.PI * deepMm * deepMm * (3 * radiusMm - deepMm) / 3;
    assertThat(volume).isCloseTo(cap, within(0.01 * cap));
  }

  /** A trough has the area of its segment times its length, and half a cap at each end: exact. */
  @ParameterizedTest
  @CsvSource({"0.6, 0.1, 0", "0.6, 0.1, 0.9", "0.6, 0.3, 0.4", "0.3, 0.3, -0.8"})
  void aBallDrawnAlongLeavesATrough(double radiusMm, double deepMm, double slantMm) {
    Surface surface = HeightGridProperties.surface();
    long z = -pm(deepMm);
    // In short moves that go on from one another.
    List<Line> lines = new ArrayList<>();
    for (int k = 0; k < 25; k++) {
      lines.add(
          new Line(
              pm(-1 + k * 0.08),
              pm(slantMm * (k / 25.0 - 0.5)),
              z,
              pm(-1 + (k + 1) * 0.08),
              pm(slantMm * ((k + 1) / 25.0 - 0.5)),
              z));
    }
    double volume =
        cut(
            surface,
            lines,
            new Cutter(ToolShape.BALL, radiusMm * PM_PER_MM, radiusMm * PM_PER_MM, 0));
    double length = StrictMath.hypot(2, slantMm);
    double half = StrictMath.acos(1 - deepMm / radiusMm);
    double segment = radiusMm * radiusMm * (half - StrictMath.sin(half) * StrictMath.cos(half));
    double cap = Math.PI * deepMm * deepMm * (3 * radiusMm - deepMm) / 3;
    double exact = segment * length + cap;
    assertThat(volume).isCloseTo(exact, within(0.01 * exact));
  }

  /** h = R − √(R² − (s/2)²), exact geometry; the heights were worked out by hand. */
  @ParameterizedTest
  @CsvSource({"0.25, 0.1, 5.05103", "0.5, 0.2, 10.10205", "3, 0.5, 10.43481"})
  void ballPassesLeaveCusps(double radiusMm, double stepoverMm, double cuspUm) {
    double formula = radiusMm - Math.sqrt(radiusMm * radiusMm - stepoverMm * stepoverMm / 4);
    assertThat(formula * 1e3).isCloseTo(cuspUm, within(1e-5));
    Surface surface = HeightGridProperties.surface();
    List<Line> lines = new ArrayList<>();
    // Passes through the borders of cells: between two of them lies a row of borders as well, so
    // the highest centres are half a cell beside the cusp.
    for (double y = -3 * stepoverMm; y <= 3 * stepoverMm; y += stepoverMm) {
      for (int k = 0; k < 20; k++) {
        lines.add(
            new Line(
                pm(-1 + k * 0.1), pm(y), -100_000_000, pm(-0.9 + k * 0.1), pm(y), -100_000_000));
      }
    }
    cut(surface, lines, new Cutter(ToolShape.BALL, radiusMm * 1e9, radiusMm * 1e9, 0));
    long highest = Long.MIN_VALUE;
    for (int row = 0; row < stepoverMm / CELL_MM; row++) {
      highest = Math.max(highest, surface.grid.height(0, row));
    }
    double beside = stepoverMm / 2 - CELL_MM / 2;
    double expected = radiusMm - Math.sqrt(radiusMm * radiusMm - beside * beside);
    assertThat(highest + 100_000_000L).isCloseTo(Math.round(expected * 1e9), within(1L));
    assertThat(highest + 100_000_000L).isLessThan(pm(formula));
  }
}
