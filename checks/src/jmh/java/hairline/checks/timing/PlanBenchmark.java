package hairline.checks.timing;

import hairline.checks.motion.BenchmarkPrograms;
import hairline.checks.motion.Event;
import hairline.checks.setup.AxisValues;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * The time to plan the feed of one block, on the programs of the benchmark of interpretation;
 * limits are those of the demo's machine.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(BenchmarkPrograms.BLOCKS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class PlanBenchmark {
  private static final double ACCELERATION = 8_000;
  private static final double JERK = 400_000;

  private final List<List<Event>> programs = new ArrayList<>();

  /** Interprets the programs. */
  @Setup
  public void interpret() throws IOException {
    programs.clear();
    for (String block : List.of(BenchmarkPrograms.FINISHING, BenchmarkPrograms.ARCS)) {
      List<Event> events = new ArrayList<>();
      BenchmarkPrograms.interpreter(block).run(events::add, false);
      programs.add(events);
    }
  }

  private static MotionLimits limits(Optional<AxisValues> jerk) {
    return new MotionLimits(
        Optional.of(AxisValues.alongPath(15_000)),
        Optional.of(AxisValues.alongPath(ACCELERATION)),
        jerk,
        OptionalDouble.of(0.0004),
        OptionalDouble.of(0.001),
        OptionalInt.of(200));
  }

  private void plan(int program, Optional<AxisValues> jerk, Blackhole blackhole) {
    PlannedFeed feed = new PlannedFeed();
    FeedPlanner planner = new FeedPlanner(limits(jerk), true, feed, blackhole::consume);
    for (Event event : programs.get(program)) {
      planner.accept(event);
    }
  }

  /** Three axis words, jerk limited. */
  @Benchmark
  public void finishingPass(Blackhole blackhole) {
    plan(0, Optional.of(AxisValues.alongPath(JERK)), blackhole);
  }

  /** The same, jerk not limited. */
  @Benchmark
  public void finishingPassWithoutJerk(Blackhole blackhole) {
    plan(0, Optional.empty(), blackhole);
  }

  /** Arcs with a centre, jerk limited. */
  @Benchmark
  public void arcs(Blackhole blackhole) {
    plan(1, Optional.of(AxisValues.alongPath(JERK)), blackhole);
  }
}
