package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.setup.ToolShape;
import hairline.parser.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** The grid against one that asks every cell for every move. */
class HeightGridProperties {
  private static final long CELL = 25_000_000;
  static final int SIDE = 160;
  private static final long HALF = SIDE / 2 * CELL;

  /** A straight move, a plunge where both ends are equal in plan. */
  record Line(long x0, long y0, long z0, long x1, long y1, long z1) {}

  /** An arc at constant Z. */
  record Round(double cx, double cy, double r, double start, double sweep, long z) {}

  @Provide
  Arbitrary<Long> coordinate() {
    Arbitrary<Long> free = Arbitraries.longs().between(-1_400_000_000L, 1_400_000_000L);
    Arbitrary<Long> onGrid = Arbitraries.longs().between(-56, 56).map(k -> k * CELL);
    return Arbitraries.oneOf(free, onGrid, Arbitraries.just(0L));
  }

  @Provide
  Arbitrary<Long> height() {
    return Arbitraries.longs().between(1, 6).map(k -> -4_000_000L * k);
  }

  @Provide
  Arbitrary<List<Line>> levelLines() {
    Arbitrary<Line> any =
        Combinators.combine(coordinate(), coordinate(), coordinate(), coordinate(), height())
            .as((x0, y0, x1, y1, z) -> new Line(x0, y0, z, x1, y1, z));
    Arbitrary<Line> straight =
        Combinators.combine(coordinate(), coordinate(), coordinate(), height())
            .as((x0, y0, x1, z) -> new Line(x0, y0, z, x1, y0, z));
    return Arbitraries.oneOf(any, straight).list().ofMinSize(1).ofMaxSize(12);
  }

  @Provide
  Arbitrary<List<Line>> slopes() {
    return Combinators.combine(
            coordinate(), coordinate(), height(), coordinate(), coordinate(), height())
        .as(Line::new)
        .list()
        .ofMinSize(1)
        .ofMaxSize(3);
  }

  @Provide
  Arbitrary<List<Round>> arcs() {
    Arbitrary<Double> angle = Arbitraries.doubles().between(-3.1, 3.1);
    Arbitrary<Double> sweep =
        Arbitraries.oneOf(
            Arbitraries.doubles().between(0.01, 6.2),
            Arbitraries.doubles().between(-6.2, -0.01),
            Arbitraries.of(2 * Math.PI, -2 * Math.PI, Math.PI, -Math.PI));
    Arbitrary<Double> centre = Arbitraries.doubles().between(-6e8, 6e8);
    return Combinators.combine(
            centre, centre, Arbitraries.doubles().between(2e7, 9e8), angle, sweep, height())
        .as(Round::new)
        .list()
        .ofMinSize(1)
        .ofMaxSize(5);
  }

  static Surface surface() {
    StockModel.Box box =
        new StockModel.Box(-HALF, HALF, -HALF, HALF, 0, OptionalLong.empty(), "G54");
    StockModel model =
        new StockModel(
            Optional.of(box),
            Map.of(),
            List.of(),
            1,
            1,
            Optional.empty(),
            CELL,
            StockModel.chordError(CELL),
            StockModel.Limits.DEFAULT);
    return new Surface("G54", model, new HeightGrid.TileBudget(4096));
  }

  static Path path(Line line) {
    return Path.of(
        move(
            Move.Kind.LINE,
            line.x0,
            line.y0,
            line.z0,
            line.x1,
            line.y1,
            line.z1,
            Optional.empty()));
  }

  private static Move move(
      Move.Kind kind, long x0, long y0, long z0, long x1, long y1, long z1, Optional<Arc> arc) {
    Position from = new Position(x0, y0, z0, 0, 0, 0, 0);
    Position to = new Position(x1, y1, z1, 0, 0, 0, 0);
    Modes modes = Bench.start();
    return new Move(
        new Place(0, 1, new Span(1, 2)),
        kind,
        Move.Source.BLOCK,
        modes,
        from,
        to,
        from,
        to,
        arc,
        0,
        OptionalDouble.of(300),
        false);
  }

  static Path path(Round round) {
    return path(round, round.z);
  }

  /** An arc that ends at another Z: a helix. */
  static Path path(Round round, long z1) {
    long x0 = Math.round(round.cx + round.r * StrictMath.cos(round.start));
    long y0 = Math.round(round.cy + round.r * StrictMath.sin(round.start));
    double end = round.start + round.sweep;
    long x1 = Math.round(round.cx + round.r * StrictMath.cos(end));
    long y1 = Math.round(round.cy + round.r * StrictMath.sin(end));
    Arc arc =
        new Arc(round.cx / 1e9, round.cy / 1e9, round.r / 1e9, round.r / 1e9, round.sweep, false);
    return Path.of(move(Move.Kind.ARC_CCW, x0, y0, round.z, x1, y1, z1, Optional.of(arc)));
  }

  static void compare(Surface surface, NaiveSurface naive, double tolerance) {
    for (int j = 0; j < SIDE; j++) {
      for (int i = 0; i < SIDE; i++) {
        if (naive.doubtful[j][i]) {
          continue;
        }
        int column = i - SIDE / 2;
        int row = j - SIDE / 2;
        assertThat((double) surface.grid.height(column, row))
            .as("height at %d, %d", i, j)
            .isCloseTo((double) naive.heights[j][i], within(tolerance));
        if (tolerance == 0) {
          assertThat(surface.grid.id(column, row))
              .as("id at %d, %d", i, j)
              .isEqualTo(naive.ids[j][i]);
        }
      }
    }
  }

  private static Map<Integer, Integer> counts(Removed found) {
    Map<Integer, Integer> counts = new TreeMap<>();
    for (int k = 0; k < found.surfaces(); k++) {
      counts.put(found.id(k), found.extent(k).cells);
    }
    return counts;
  }

  @Property(tries = 150)
  void flatPassesAreExact(@ForAll("levelLines") List<Line> lines, @ForAll boolean wide) {
    // Wide: 5.2 mm, which covers whole tiles of 1.6 mm.
    double radius = wide ? 2.6e9 / 2 : 2e8;
    Surface surface = surface();
    NaiveSurface naive = new NaiveSurface(SIDE, CELL);
    Cutter cutter = new Cutter(ToolShape.FLAT, radius, 0, 0);
    Removed found = new Removed(CELL);
    int id = 0;
    for (Line line : lines) {
      id++;
      surface.cut(path(line), cutter, id, id, found);
      Map<Integer, Integer> lowered =
          naive.cut(line.x0, line.y0, line.z0, line.x1, line.y1, line.z1, radius, 0, id, id);
      if (!anyDoubt(naive)) {
        assertThat(counts(found)).isEqualTo(lowered);
        assertThat(found.all().cells).isEqualTo(lowered.values().stream().mapToInt(n -> n).sum());
      }
    }
    compare(surface, naive, 0);
  }

  private static boolean anyDoubt(NaiveSurface naive) {
    for (boolean[] row : naive.doubtful) {
      for (boolean cell : row) {
        if (cell) {
          return true;
        }
      }
    }
    return false;
  }

  @Property(tries = 100)
  void arcsAreExact(@ForAll("arcs") List<Round> arcs) {
    Surface surface = surface();
    NaiveSurface naive = new NaiveSurface(SIDE, CELL);
    Cutter cutter = new Cutter(ToolShape.FLAT, 2e8, 0, 0);
    Removed found = new Removed(CELL);
    int id = 0;
    for (Round round : arcs) {
      id++;
      surface.cut(path(round), cutter, id, id, found);
      naive.arc(round.cx, round.cy, round.r, round.start, round.sweep, (double) round.z, 2e8, id);
    }
    compare(surface, naive, 0);
  }

  @Property(tries = 25)
  void rampsOfFlatToolsAreExact(@ForAll("slopes") List<Line> slopes) {
    check(slopes, new Cutter(ToolShape.FLAT, 2e8, 0, 0));
  }

  @Property(tries = 25)
  void slopesOfBallToolsAreExact(@ForAll("slopes") List<Line> slopes) {
    check(slopes, new Cutter(ToolShape.BALL, 2e8, 2e8, 0));
  }

  private static void check(List<Line> slopes, Cutter cutter) {
    Surface surface = surface();
    NaiveSurface naive = new NaiveSurface(SIDE, CELL);
    Removed found = new Removed(CELL);
    double steepest = 0;
    for (Line line : slopes) {
      surface.cut(path(line), cutter, 1, 1, found);
      naive.cut(
          line.x0,
          line.y0,
          line.z0,
          line.x1,
          line.y1,
          line.z1,
          cutter.radiusPm(),
          cutter.cornerPm(),
          1,
          1);
      steepest = Math.max(steepest, Math.abs(line.z1 - line.z0) / 2000.0);
    }
    // The naive one samples the way at 2000 places.
    compare(surface, naive, steepest + 2);
  }

  @Property(tries = 25)
  void slopesWithCornerRadiusAreNeverTooDeepAndHardlyTooHigh(@ForAll("slopes") List<Line> slopes) {
    Surface surface = surface();
    NaiveSurface naive = new NaiveSurface(SIDE, CELL);
    Cutter cutter = new Cutter(ToolShape.BULL, 2e8, 5e7, 0);
    Removed found = new Removed(CELL);
    for (Line line : slopes) {
      surface.cut(path(line), cutter, 1, 1, found);
      naive.cut(line.x0, line.y0, line.z0, line.x1, line.y1, line.z1, 2e8, 5e7, 1, 1);
    }
    for (int j = 0; j < SIDE; j++) {
      for (int i = 0; i < SIDE; i++) {
        if (!naive.doubtful[j][i]) {
          assertThat(
                  (double) (surface.grid.height(i - SIDE / 2, j - SIDE / 2) - naive.heights[j][i]))
              .isBetween(-12_000.0, 1_000_000.0);
        }
      }
    }
  }

  @Property(tries = 40)
  void levelPassesWithCornerRadiusAndBallAreExact(
      @ForAll("levelLines") List<Line> lines, @ForAll boolean ball) {
    Surface surface = surface();
    NaiveSurface naive = new NaiveSurface(SIDE, CELL);
    double corner = ball ? 2e8 : 5e7;
    Cutter cutter = new Cutter(ball ? ToolShape.BALL : ToolShape.BULL, 2e8, corner, 0);
    Removed found = new Removed(CELL);
    for (Line line : lines) {
      surface.cut(path(line), cutter, 7, -1, found);
      naive.cut(line.x0, line.y0, line.z0, line.x1, line.y1, line.z1, 2e8, corner, 7, -1);
    }
    compare(surface, naive, 1);
  }

  @Property(tries = 60)
  void aMoveInPiecesCutsLikeAWhole(@ForAll("levelLines") List<Line> lines) {
    Surface whole = surface();
    Surface pieces = surface();
    Cutter cutter = new Cutter(ToolShape.FLAT, 2e8, 0, 0);
    Removed found = new Removed(CELL);
    for (Line line : lines) {
      whole.cut(path(line), cutter, 1, 1, found);
      long mx = (line.x0 + line.x1) / 2;
      long my = (line.y0 + line.y1) / 2;
      pieces.cut(path(new Line(line.x0, line.y0, line.z0, mx, my, line.z0)), cutter, 1, 1, found);
      pieces.cut(path(new Line(mx, my, line.z0, line.x1, line.y1, line.z0)), cutter, 1, 1, found);
    }
    List<String> different = new ArrayList<>();
    for (int row = -SIDE / 2; row < SIDE / 2; row++) {
      for (int column = -SIDE / 2; column < SIDE / 2; column++) {
        if (whole.grid.height(column, row) != pieces.grid.height(column, row)) {
          different.add(column + "," + row);
        }
      }
    }
    // The middle is rounded to a picometre: a cell may change only where its centre lies as near
    // to the border as that.
    assertThat(different).hasSizeLessThanOrEqualTo(lines.size());
  }
}
