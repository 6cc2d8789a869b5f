package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.setup.ToolShape;
import hairline.checks.stock.HeightGridProperties.Line;
import hairline.checks.stock.HeightGridProperties.Round;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/**
 * Cutting that leaves out blocks the tool passes above, against cutting that asks every cell: both
 * must agree to the bit, on programs of short moves that go on from one another as a control runs
 * them.
 */
class CarverProperties {
  private static final long CELL = 25_000_000;
  private static final int REACH = 80;

  /** How the next move goes on from where the last one ended; lengths in picometres. */
  record Step(Kind kind, long x, long y, long z, double radius, double sweep, int id) {}

  /** What the next move is. */
  enum Kind {
    LEVEL,
    SLOPING,
    ARC,
    CIRCLE,
    HELIX,
    PLUNGE,
    AGAIN,
    ELSEWHERE
  }

  @Provide
  Arbitrary<Cutter> cutter() {
    Arbitrary<Double> radius = Arbitraries.of(2e8, 2.1e8 + 13, 5e8, 12.5e8, 1e7);
    return Combinators.combine(Arbitraries.of(ToolShape.values()), radius)
        .as(
            (shape, r) ->
                new Cutter(
                    shape,
                    r,
                    switch (shape) {
                      case FLAT -> 0;
                      case BALL -> r;
                      case BULL -> r / 4;
                    },
                    0));
  }

  @Provide
  Arbitrary<List<Step>> steps() {
    Arbitrary<Long> way =
        Arbitraries.oneOf(
            Arbitraries.longs().between(-6, 6).map(k -> k * CELL),
            Arbitraries.longs().between(-8 * CELL, 8 * CELL),
            Arbitraries.just(0L),
            Arbitraries.longs().between(-60, 60).map(k -> k * CELL));
    Arbitrary<Long> down =
        Arbitraries.oneOf(
            Arbitraries.longs().between(-3, 3).map(k -> k * 4_000_000),
            Arbitraries.longs().between(-9_000_000, 9_000_000));
    Arbitrary<Kind> kind =
        Arbitraries.frequencyOf(
            net.jqwik.api.Tuple.of(8, Arbitraries.just(Kind.LEVEL)),
            net.jqwik.api.Tuple.of(6, Arbitraries.just(Kind.SLOPING)),
            net.jqwik.api.Tuple.of(4, Arbitraries.of(Kind.values())));
    return Combinators.combine(
            kind,
            way,
            way,
            down,
            Arbitraries.doubles().between(1e7, 6e8),
            Arbitraries.doubles().between(-6.2, 6.2),
            Arbitraries.integers().between(1, 3))
        .as(Step::new)
        .list()
        .ofMinSize(5)
        .ofMaxSize(200);
  }

  /** The paths of a program, from the middle of the field. */
  private static List<Path> paths(List<Step> steps) {
    List<Path> paths = new ArrayList<>();
    long x = 0;
    long y = 0;
    long z = -4_000_000;
    for (Step step : steps) {
      long z2 = Math.min(8_000_000, Math.max(-60_000_000, z + step.z));
      long x2 = within(x + step.x);
      long y2 = within(y + step.y);
      switch (step.kind) {
        case LEVEL -> paths.add(HeightGridProperties.path(new Line(x, y, z, x2, y2, z)));
        case SLOPING, ELSEWHERE ->
            paths.add(HeightGridProperties.path(new Line(x, y, z, x2, y2, z2)));
        case PLUNGE -> paths.add(HeightGridProperties.path(new Line(x, y, z, x, y, z2)));
        case AGAIN -> {
          if (!paths.isEmpty()) {
            paths.add(paths.get(paths.size() - 1));
          }
        }
        case ARC, CIRCLE, HELIX -> {
          boolean whole = step.kind == Kind.CIRCLE;
          double sweep = whole ? Math.copySign(2 * Math.PI, step.sweep) : step.sweep;
          double start = step.sweep * 7 % 3;
          double cx = x - step.radius * StrictMath.cos(start);
          double cy = y - step.radius * StrictMath.sin(start);
          long to = step.kind == Kind.HELIX ? z2 : z;
          paths.add(HeightGridProperties.path(new Round(cx, cy, step.radius, start, sweep, z), to));
        }
      }
      if (!paths.isEmpty()) {
        Path last = paths.get(paths.size() - 1);
        x = last.x1;
        y = last.y1;
        z = last.z1;
      }
      if (step.kind == Kind.ELSEWHERE) {
        x = within(-x - step.y);
        y = within(-y + step.x);
      }
    }
    return paths;
  }

  private static long within(long coordinate) {
    return Math.max(-1_600_000_000L, Math.min(1_600_000_000L, coordinate));
  }

  @Property(tries = 250)
  void leavingOutBlocksChangesNothing(
      @ForAll("cutter") Cutter first,
      @ForAll("cutter") Cutter second,
      @ForAll("steps") List<Step> steps) {
    Surface quick = HeightGridProperties.surface();
    Surface plain = HeightGridProperties.surface();
    plain.askEveryCell();
    Removed quickly = new Removed(CELL);
    Removed plainly = new Removed(CELL);
    List<Path> paths = paths(steps);
    for (int k = 0; k < paths.size(); k++) {
      Path path = paths.get(k);
      Cutter cutter = k % 40 < 30 ? first : second;
      boolean level = path.level() && path.movesInPlan();
      int id = level ? steps.get(k % steps.size()).id : -16 - k / 5;
      int otherId = level ? Cut.NO_LEVEL : id;
      quick.cut(path, cutter, id, otherId, quickly);
      plain.cut(path, cutter, id, otherId, plainly);
      assertThat(words(path, cutter, quickly)).isEqualTo(words(path, cutter, plainly));
      if (level && quickly.sawOther() && k % 3 == 0) {
        quick.relabel(path, cutter, HeightGrid.WHICHEVER, id);
        plain.relabel(path, cutter, HeightGrid.WHICHEVER, id);
      }
    }
    for (int row = -REACH; row < REACH; row++) {
      for (int column = -REACH; column < REACH; column++) {
        if (quick.grid.height(column, row) != plain.grid.height(column, row)
            || quick.grid.id(column, row) != plain.grid.id(column, row)) {
          assertThat(quick.grid.height(column, row) + " by " + quick.grid.id(column, row))
              .as("at %d, %d", column, row)
              .isEqualTo(plain.grid.height(column, row) + " by " + plain.grid.id(column, row));
        }
      }
    }
    assertThat(quick.grid.tiles()).hasSameSizeAs(plain.grid.tiles());
  }

  /** Against every cell about the end of the move; what is lost in places is told as well. */
  @Property(tries = 150)
  void theRimAheadIsThatOfItsCells(
      @ForAll("cutter") Cutter any, @ForAll("steps") List<Step> steps, @ForAll boolean losing) {
    Cutter cutter = new Cutter(ToolShape.FLAT, any.radiusPm(), 0, 0);
    Surface surface = HeightGridProperties.surface();
    AheadRim ahead = new AheadRim(surface.grid);
    Removed found = new Removed(CELL);
    Removed quickly = new Removed(CELL);
    Removed plainly = new Removed(CELL);
    List<Path> paths = paths(steps);
    for (int k = 0; k < paths.size(); k++) {
      Path path = paths.get(k);
      if (losing && k % 20 == 19) {
        surface.lose(path, cutter.radiusPm() / 2);
        continue;
      }
      int id = steps.get(k % steps.size()).id;
      surface.cut(path, cutter, id, Cut.NO_LEVEL, found);
      if (path.level() && path.movesInPlan()) {
        quickly.begin(path.planLength(), cutter);
        plainly.begin(path.planLength(), cutter);
        ahead.addTo(path, cutter, quickly);
        addRimByCells(surface.grid, path, cutter, plainly);
        assertThat(words(path, cutter, quickly)).isEqualTo(words(path, cutter, plainly));
      }
    }
  }

  private static void addRimByCells(HeightGrid grid, Path path, Cutter cutter, Removed found) {
    double[] u = path.direction(1);
    double outer = cutter.radiusPm() + CELL;
    Removed rim = new Removed(CELL);
    rim.alongLine((double) path.x1, (double) path.y1, u[0], u[1], 0, 0);
    boolean ahead = false;
    for (int row = grid.index(path.y1 - outer) - 1; row <= grid.index(path.y1 + outer); row++) {
      for (int i = grid.index(path.x1 - outer) - 1; i <= grid.index(path.x1 + outer); i++) {
        double dx = grid.centre(i) - path.x1;
        double dy = grid.centre(row) - path.y1;
        double distance = Math.sqrt(dx * dx + dy * dy);
        double forward = dx * u[0] + dy * u[1];
        if (distance > cutter.radiusPm() && distance <= outer && forward > 0) {
          long height = grid.height(i, row);
          if (height > path.z1) {
            rim.add(grid.id(i, row), height, path.z1, row, i, i);
            ahead |= forward >= distance / 2;
          } else if (height == HeightGrid.LOST_HEIGHT) {
            rim.lost();
          }
        }
      }
    }
    if (ahead) {
      found.add(rim);
    }
  }

  @Example
  void aSecondPlungeTakesWhatTheFirstOneLeft() {
    Surface quick = HeightGridProperties.surface();
    Cutter cutter = new Cutter(ToolShape.FLAT, 2e8, 0, 0);
    Removed found = new Removed(CELL);
    int id = -16;
    long apart = 250_000_000L;
    // Beside the second place lies a floor of the same id at the depth it will have.
    List<Line> plunges =
        List.of(
            new Line(0, -apart, 0, 0, -apart, -8_000_000),
            new Line(0, 0, 0, 0, 0, -4_000_000),
            new Line(0, 0, -4_000_000, 0, 0, -8_000_000));
    for (Line plunge : plunges) {
      quick.cut(HeightGridProperties.path(plunge), cutter, id, id, found);
    }
    for (int row = -7; row < 7; row++) {
      boolean within = (row + 0.5) * (row + 0.5) <= 64;
      assertThat(quick.grid.height(0, row)).isEqualTo(within ? -8_000_000 : 0);
    }
  }

  /** All that a move leaves to those who ask. */
  private static List<String> words(Path path, Cutter cutter, Removed found) {
    List<String> words = new ArrayList<>();
    words.add(found.removal(path).toString());
    words.add(words(found.all()));
    words.add(words(found.beside()));
    words.add(words(found.unknown()));
    for (int k = 0; k < found.surfaces(); k++) {
      words.add(found.id(k) + " up to " + found.deepest(k) + " " + words(found.extent(k)));
    }
    words.add("lost " + found.sawLost());
    if (cutter.leavesFloor() && path.level()) {
      words.add(found.sawOwn() + " " + found.sawOther() + " " + found.otherLevel());
    }
    return words;
  }

  private static String words(Extent extent) {
    return extent.cells == 0
        ? "none"
        : Objects.toString(
            List.of(extent.cells, extent.acrossLow, extent.acrossHigh, extent.width(CELL)));
  }
}
