package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Event;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.setup.AxisValues;
import hairline.parser.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The feed that the machine reaches: worked values, and a plan integrated in small steps. */
class FeedPlannerTest {
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  /** A block of a plan: length, speed and the speed of the corner before it, in mm and mm/s. */
  record Block(double length, double cap, double corner) {}

  private static List<PlannedMove> plan(
      List<Block> blocks, double acceleration, double jerk, int lookAhead) {
    List<PlannedMove> planned = new ArrayList<>();
    FeedPlan plan = new FeedPlan(lookAhead);
    for (Block b : blocks) {
      plan.add(b.length, b.cap, acceleration, jerk, b.corner, due -> planned.add(due.planned()));
    }
    plan.rest(due -> planned.add(due.planned()));
    assertThat(planned).hasSameSizeAs(blocks);
    return planned;
  }

  private static double seconds(List<PlannedMove> planned) {
    return planned.stream().mapToDouble(PlannedMove::seconds).sum();
  }

  // Worked values of exact mechanics.

  private static MotionLimits limits(double acceleration, double jerk, double toleranceMm) {
    return new MotionLimits(
        Optional.of(AxisValues.alongPath(15_000)),
        Optional.of(AxisValues.alongPath(acceleration)),
        Double.isInfinite(jerk) ? Optional.empty() : Optional.of(AxisValues.alongPath(jerk)),
        OptionalDouble.of(0.001),
        OptionalDouble.of(toleranceMm),
        OptionalInt.of(200));
  }

  /** The plans of the moves of a program, by line. */
  private static List<PlannedMove> run(
      MotionLimits limits, java.util.function.Consumer<Programs> of) {
    PlannedFeed feed = new PlannedFeed();
    List<PlannedMove> planned = new ArrayList<>();
    Programs program =
        new Programs(
            new FeedPlanner(
                limits,
                true,
                feed,
                event -> {
                  if (event instanceof Move) {
                    planned.add(feed.ofThisMove().orElse(PlannedMove.NONE));
                  } else {
                    assertThat(feed.ofThisMove()).isEmpty();
                  }
                }));
    of.accept(program);
    program.end();
    return planned;
  }

  /** v ≤ L/T: blocks of 5 µm at 1 ms a block hold 300 mm/min (exact). */
  @Test
  void shortBlocksStarve() {
    List<PlannedMove> planned =
        run(
            limits(2000, INFINITE, 0.002),
            program -> {
              program.g0(0, 0, 0);
              for (int k = 1; k <= 400; k++) {
                program.g1(0.005 * k, 0, 0, 600);
              }
            });
    assertThat(planned.get(200).meanMmPerMin()).isCloseTo(300, within(1e-6));
    assertThat(planned.get(200).entryMmPerMin()).isCloseTo(300, within(1e-6));
  }

  /** v² = a d s/(1 − s): d 2 µm, a 2000 mm/s², 90° → 186.45 mm/min (from memory). */
  @Test
  void cornersKeepToThePathTolerance() {
    List<PlannedMove> planned =
        run(
            limits(2000, INFINITE, 0.002),
            program -> program.g0(0, 0, 0).g1(1, 0, 0, 600).g1(1, 1, 0, 600));
    PlannedMove first = planned.get(planned.size() - 2);
    assertThat(first.exitMmPerMin()).isCloseTo(186.45, within(0.005));
    assertThat(first.peakMmPerMin()).isEqualTo(600);
    assertThat(first.entryMmPerMin()).isZero();
  }

  private static final Modes MODES = new Programs(event -> {}).modes();

  private static Move move(
      double x0, double y0, double x1, double y1, Optional<Arc> arc, boolean exactStop) {
    Place at = new Place(0, 1, new Span(1, 2));
    Position from = new Position(pm(x0), pm(y0), 0, 0, 0, 0, 0);
    Position to = new Position(pm(x1), pm(y1), 0, 0, 0, 0, 0);
    double length =
        arc.map(a -> a.startRadiusMm() * Math.abs(a.sweepRad()))
            .orElse(StrictMath.hypot(x1 - x0, y1 - y0));
    return new Move(
        at,
        arc.isPresent() ? Move.Kind.ARC_CCW : Move.Kind.LINE,
        Move.Source.BLOCK,
        MODES,
        from,
        to,
        from,
        to,
        arc,
        length,
        OptionalDouble.of(6000),
        exactStop);
  }

  private static long pm(double mm) {
    return Math.round(mm * 1e9);
  }

  private static List<PlannedMove> run(MotionLimits limits, List<Move> moves) {
    PlannedFeed feed = new PlannedFeed();
    List<PlannedMove> planned = new ArrayList<>();
    FeedPlanner planner =
        new FeedPlanner(
            limits,
            true,
            feed,
            event -> {
              if (event instanceof Move) {
                planned.add(feed.ofThisMove().orElseThrow());
              }
            });
    moves.forEach(planner::accept);
    planner.accept(new Event.Ended(moves.get(0).at(), Optional.of("M30"), MODES));
    return planned;
  }

  /** v ≤ √(a r); a 2000 mm/s², r 0.1 mm → 848.53 mm/min (exact). */
  @Test
  void arcsAreLimitedByTheirCentripetalAcceleration() {
    Arc turns = new Arc(0, 0, 0.1, 0.1, 20 * Math.PI, false);
    List<PlannedMove> planned =
        run(
            limits(2000, INFINITE, 0.002),
            List.of(move(0.1, 0, 0.1, 0, Optional.of(turns), false)));
    assertThat(planned.get(0).peakMmPerMin()).isCloseTo(848.53, within(0.005));
    // v³ ≤ J r²: 100 000 · 0.01 → 10 mm/s.
    List<PlannedMove> jerky =
        run(limits(2000, 1e5, 0.002), List.of(move(0.1, 0, 0.1, 0, Optional.of(turns), false)));
    assertThat(jerky.get(0).peakMmPerMin()).isCloseTo(600, within(1e-6));
  }

  @Test
  void anExactStopEndsAtRestWhereTheWayGoesStraightOn() {
    for (boolean stops : new boolean[] {true, false}) {
      List<PlannedMove> planned =
          run(
              limits(2000, INFINITE, 0.002),
              List.of(
                  move(0, 0, 5, 0, Optional.empty(), stops),
                  move(5, 0, 10, 0, Optional.empty(), false)));
      if (stops) {
        assertThat(planned.get(0).exitMmPerMin()).isZero();
      } else {
        assertThat(planned.get(0).exitMmPerMin()).isCloseTo(6000, within(1e-6));
      }
    }
  }

  /** A 3-4-5 direction: the axis that reaches its own limit first sets that of the path. */
  @Test
  void eachAxisKeepsItsOwnAcceleration() {
    MotionLimits limits =
        new MotionLimits(
            Optional.of(AxisValues.alongPath(60_000)),
            Optional.of(
                AxisValues.perAxis(
                    OptionalDouble.of(600), OptionalDouble.of(2000), OptionalDouble.of(2000))),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.of(0.002),
            OptionalInt.of(200));
    List<PlannedMove> planned =
        run(limits, List.of(move(0, 0, 0.03, 0.04, Optional.empty(), false)));
    // 600 / 0.6 = 1000 mm/s² along the path; rest to rest √(a L).
    assertThat(planned.get(0).peakMmPerMin() / 60)
        .isCloseTo(StrictMath.sqrt(1000 * 0.05), within(1e-9));
  }

  @Test
  void goingStraightBackStops() {
    List<PlannedMove> planned =
        run(
            limits(2000, INFINITE, 0.002),
            program -> program.g0(0, 0, 0).g1(1, 0, 0, 600).g1(0, 0, 0, 600));
    assertThat(planned.get(planned.size() - 2).exitMmPerMin()).isCloseTo(0, within(1e-3));
  }

  @Test
  void aDwellComesBetweenRests() {
    List<PlannedMove> planned =
        run(
            limits(2000, INFINITE, 0.002),
            program -> program.g0(0, 0, 0).g1(1, 0, 0, 600).dwell(1).g1(2, 0, 0, 600));
    assertThat(planned.get(planned.size() - 2).exitMmPerMin()).isZero();
    assertThat(planned.get(planned.size() - 1).entryMmPerMin()).isZero();
  }

  @Test
  void withoutAccelerationNothingIsPlanned() {
    MotionLimits none =
        new MotionLimits(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.of(0.001),
            OptionalInt.empty());
    assertThat(run(none, program -> program.g0(0, 0, 0).g1(1, 0, 0, 600)))
        .containsOnly(PlannedMove.NONE);
  }

  @Test
  void eventsKeepTheirOrder() {
    List<Event> in = new ArrayList<>();
    List<Event> out = new ArrayList<>();
    PlannedFeed feed = new PlannedFeed();
    FeedPlanner planner = new FeedPlanner(limits(2000, 1e5, 0.002), true, feed, out::add);
    Programs program =
        new Programs(
            event -> {
              in.add(event);
              planner.accept(event);
            });
    program.g0(0, 0, 0);
    for (int k = 1; k < 1000; k++) {
      program.g1(0.01 * k, 0.001 * (k % 3), 0, 600);
      if (k % 100 == 0) {
        program.dwell(0.1);
      }
    }
    program.end();
    assertThat(out).isEqualTo(in);
  }

  /** A line of 1 mm from rest to rest, a 2000 mm/s², 600 mm/min: 10 mm/s for all but 2 · v²/2a. */
  @Test
  void theSummaryComparesThePlanWithTheCommandedFeeds() {
    PlannedFeed feed = new PlannedFeed();
    ProgramTime time = new ProgramTime();
    Summarizer summarizer = new Summarizer(time, feed);
    TimeTable table =
        new TimeTable(
            Optional.of(AxisValues.alongPath(15_000)),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            true);
    Programs program =
        new Programs(
            new FeedPlanner(
                limits(2000, INFINITE, 0.002),
                true,
                feed,
                new Timeline(table, feed, time, summarizer)));
    program.g0(0, 0, 0).dwell(0).g1(1, 0, 0, 600).end();
    ProgramSummary.Plan plan = summarizer.summary().plan().orElseThrow();
    assertThat(plan.programmedSeconds()).isCloseTo(0.1, within(1e-12));
    // Two ramps of 5 ms at half the speed cost 5 ms more.
    assertThat(plan.plannedSeconds()).isCloseTo(0.105, within(1e-12));
    assertThat(plan.shareBelowFeed()).isCloseTo(0.05, within(1e-6));
    assertThat(plan.shareOfTimeBelowFeed()).isCloseTo(0.010 / 0.105, within(1e-6));
    assertThat(summarizer.summary().time().atLeastSeconds()).isCloseTo(0.105, within(1e-12));
  }

  // Against an integration in small steps.

  @Provide
  Arbitrary<List<Block>> blocks() {
    Arbitrary<Double> cap = Arbitraries.of(2.0, 5.0, 5.0, 10.0);
    Arbitrary<Double> corner =
        Arbitraries.oneOf(
            Arbitraries.just(INFINITE),
            Arbitraries.doubles().between(0, 8).ofScale(4),
            Arbitraries.just(0.0));
    Arbitrary<Double> length =
        Arbitraries.oneOf(
            Arbitraries.doubles().between(0.002, 0.05).ofScale(6),
            Arbitraries.doubles().between(0.02, 1).ofScale(6));
    return Combinators.combine(length, cap, corner)
        .as(Block::new)
        .list()
        .ofMinSize(1)
        .ofMaxSize(30);
  }

  /** Speeds on a fine grid, lowered from both sides until acceleration is kept. */
  private static double brute(List<Block> blocks, double acceleration) {
    List<Double> limit = new ArrayList<>();
    List<Double> step = new ArrayList<>();
    limit.add(0.0);
    for (int k = 0; k < blocks.size(); k++) {
      Block b = blocks.get(k);
      if (k > 0) {
        int last = limit.size() - 1;
        limit.set(last, Math.min(limit.get(last), Math.min(b.cap, b.corner)));
      }
      int parts = (int) Math.ceil(b.length / 0.0001);
      for (int i = 0; i < parts; i++) {
        limit.add(b.cap);
        step.add(b.length / parts);
      }
    }
    int n = limit.size();
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      v[i] = limit.get(i);
    }
    v[n - 1] = 0;
    for (int i = n - 2; i >= 0; i--) {
      v[i] = Math.min(v[i], Math.sqrt(v[i + 1] * v[i + 1] + 2 * acceleration * step.get(i)));
    }
    double time = 0;
    for (int i = 1; i < n; i++) {
      v[i] = Math.min(v[i], Math.sqrt(v[i - 1] * v[i - 1] + 2 * acceleration * step.get(i - 1)));
      time += 2 * step.get(i - 1) / (v[i] + v[i - 1]);
    }
    return time;
  }

  @Property(tries = 300)
  void withoutJerkItIsTheFastest(@ForAll("blocks") List<Block> blocks) {
    double brute = brute(blocks, 2000);
    assertThat(seconds(plan(blocks, 2000, INFINITE, 1000))).isCloseTo(brute, within(0.01 * brute));
  }

  @Property(tries = 1000)
  void noLimitIsExceeded(@ForAll("blocks") List<Block> blocks) {
    for (double jerk : new double[] {INFINITE, 50_000, 1_000_000}) {
      List<PlannedMove> planned = plan(blocks, 2000, jerk, 1000);
      double before = 0;
      for (int k = 0; k < blocks.size(); k++) {
        PlannedMove move = planned.get(k);
        Block b = blocks.get(k);
        assertThat(move.entryMmPerMin()).isCloseTo(before, within(1e-6 * before + 1e-9));
        assertThat(move.peakMmPerMin()).isLessThanOrEqualTo(b.cap * 60 * (1 + 1e-8));
        assertThat(move.peakMmPerMin())
            .isGreaterThanOrEqualTo(
                Math.max(move.entryMmPerMin(), move.exitMmPerMin()) * (1 - 1e-8));
        if (k > 0) {
          assertThat(move.entryMmPerMin()).isLessThanOrEqualTo(b.corner * 60 * (1 + 1e-8));
        }
        // The change of speed fits the length within the acceleration.
        double v0 = move.entryMmPerMin() / 60;
        double v1 = move.exitMmPerMin() / 60;
        assertThat(Math.abs(v1 * v1 - v0 * v0))
            .isLessThanOrEqualTo(2 * 2000 * b.length * (1 + 1e-6) + 1e-9);
        assertThat(move.seconds()).isGreaterThanOrEqualTo(b.length / b.cap * (1 - 1e-9));
        before = move.exitMmPerMin();
      }
      assertThat(before).isZero();
    }
  }

  /**
   * Not only at the ends of moves: each block is planned in sixteen pieces, and between their
   * borders mean acceleration and its change keep to the limits, even if few pieces are seen ahead.
   */
  @Property(tries = 100)
  void noLimitIsExceededWithinAMove(
      @ForAll("blocks") List<Block> blocks,
      @ForAll @IntRange(min = 1, max = 200) int lookAhead,
      @ForAll boolean all) {
    int parts = 16;
    List<Block> pieces = new ArrayList<>();
    for (Block b : blocks) {
      for (int i = 0; i < parts; i++) {
        pieces.add(new Block(b.length / parts, b.cap, i == 0 ? b.corner : INFINITE));
      }
    }
    for (double jerk : new double[] {INFINITE, 50_000, 1_000_000}) {
      List<PlannedMove> planned = plan(pieces, 2000, jerk, all ? 1000 : lookAhead);
      double before = 0;
      double secondsBefore = 0;
      for (int k = 0; k < planned.size(); k++) {
        PlannedMove move = planned.get(k);
        assertThat(move.peakMmPerMin()).isLessThanOrEqualTo(pieces.get(k).cap * 60 * (1 + 1e-8));
        // Where the peak lies within a piece, acceleration turns round in it.
        double change = (move.exitMmPerMin() - move.entryMmPerMin()) / 60;
        double mean = change / move.seconds();
        assertThat(Math.abs(mean)).isLessThanOrEqualTo(2000 * (1 + 1e-6));
        // Means over two stretches differ by no more than jerk can do between their middles.
        double between = (secondsBefore + move.seconds()) / 2;
        assertThat(Math.abs(mean - before)).isLessThanOrEqualTo(jerk * between * (1 + 1e-3) + 1e-3);
        before = mean;
        secondsBefore = move.seconds();
      }
    }
  }

  @Property(tries = 300)
  void aJerkLimitIsNeverFaster(@ForAll("blocks") List<Block> blocks) {
    double free = seconds(plan(blocks, 2000, INFINITE, 1000));
    double mild = seconds(plan(blocks, 2000, 1e9, 1000));
    assertThat(seconds(plan(blocks, 2000, 50_000, 1000))).isGreaterThanOrEqualTo(free * (1 - 1e-9));
    assertThat(mild).isCloseTo(free, within(0.01 * free + 1e-4));
  }

  @Property(tries = 200)
  void lookingFartherAheadIsNeverSlower(@ForAll("blocks") List<Block> blocks) {
    double all = seconds(plan(blocks, 2000, INFINITE, 1000));
    double some = seconds(plan(blocks, 2000, INFINITE, 5));
    double one = seconds(plan(blocks, 2000, INFINITE, 1));
    assertThat(all).isLessThanOrEqualTo(some * (1 + 1e-6) + 1e-9);
    assertThat(some).isLessThanOrEqualTo(one * (1 + 1e-6) + 1e-9);
  }

  /**
   * Under a jerk limit the plan is within 1 % of the fastest ({@link FeedPlanInStepsTest}), so
   * where blocks are shorter than braking takes (0.14 mm from 10 mm/s here) a longer look-ahead may
   * lose that; where none is shorter it loses nothing.
   */
  @Property(tries = 200)
  void lookingFartherAheadUnderJerkIsNoSlowerThanThePlanIsWrong(
      @ForAll("blocks") List<Block> blocks) {
    double all = seconds(plan(blocks, 2000, 50_000, 1000));
    for (int lookAhead : new int[] {1, 5, 20}) {
      double some = seconds(plan(blocks, 2000, 50_000, lookAhead));
      assertThat(all).isLessThanOrEqualTo(some * 1.01);
    }
    List<Block> longer =
        blocks.stream().map(b -> new Block(b.length + 0.3, b.cap, b.corner)).toList();
    double allOfLonger = seconds(plan(longer, 2000, 50_000, 1000));
    double oneOfLonger = seconds(plan(longer, 2000, 50_000, 1));
    assertThat(allOfLonger).isLessThanOrEqualTo(oneOfLonger * (1 + 1e-6) + 1e-6);
  }

  @Property(tries = 200)
  void aLineInTwoPiecesTakesHardlyLonger(@ForAll("blocks") List<Block> blocks) {
    for (double jerk : new double[] {INFINITE, 50_000}) {
      List<Block> pieces = new ArrayList<>();
      for (Block b : blocks) {
        pieces.add(new Block(b.length / 3, b.cap, b.corner));
        pieces.add(new Block(b.length * 2 / 3, b.cap, INFINITE));
      }
      double whole = seconds(plan(blocks, 2000, jerk, 1000));
      double split = seconds(plan(pieces, 2000, jerk, 1000));
      assertThat(split).isCloseTo(whole, within(blocks.size() * 0.0004));
    }
  }
}
