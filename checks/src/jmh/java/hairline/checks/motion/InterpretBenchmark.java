package hairline.checks.motion;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
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

/** The time to execute one block that has been read before. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(BenchmarkPrograms.BLOCKS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class InterpretBenchmark {
  private final List<Interpreter> interpreters = new ArrayList<>();

  /** Writes and reads the programs. */
  @Setup
  public void write() throws IOException {
    interpreters.clear();
    interpreters.add(BenchmarkPrograms.interpreter(BenchmarkPrograms.FINISHING));
    interpreters.add(BenchmarkPrograms.interpreter(BenchmarkPrograms.ROUNDED));
    interpreters.add(BenchmarkPrograms.interpreter(BenchmarkPrograms.ARCS));
  }

  /** Three axis words, all digits kept. */
  @Benchmark
  public void finishingPass(Blackhole blackhole) throws IOException {
    interpreters.get(0).run(blackhole::consume, false);
  }

  /** Three axis words, each with a digit that is rounded away. */
  @Benchmark
  public void roundedPass(Blackhole blackhole) throws IOException {
    interpreters.get(1).run(blackhole::consume, false);
  }

  /** Arcs with a centre. */
  @Benchmark
  public void arcs(Blackhole blackhole) throws IOException {
    interpreters.get(2).run(blackhole::consume, false);
  }
}
