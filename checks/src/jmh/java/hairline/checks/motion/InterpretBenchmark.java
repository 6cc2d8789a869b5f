package hairline.checks.motion;

import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.PartProgram;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
@OperationsPerInvocation(InterpretBenchmark.BLOCKS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class InterpretBenchmark {
  static final int BLOCKS = 20_000;

  private static final ControlProfile TENTH_UM = ControlProfile.UNKNOWN.withResolution(100_000);

  private final List<Interpreter> interpreters = new ArrayList<>();

  /** A program whose blocks have been read. */
  private record ReadBefore(List<Block> read) implements PartProgram {
    @Override
    public String name() {
      return "benchmark";
    }

    @Override
    public BlockSource blocksFrom(long byteOffset, int line) {
      Iterator<Block> rest = read.listIterator(line - 1);
      return new BlockSource() {
        @Override
        public Optional<Block> next() {
          return rest.hasNext() ? Optional.of(rest.next()) : Optional.empty();
        }

        @Override
        public void close() {}
      };
    }
  }

  /** Writes and reads the programs. */
  @Setup
  public void write() throws IOException {
    interpreters.clear();
    interpreters.add(program("N%d X%.4f Y%.4f Z-%.4f%n"));
    interpreters.add(program("N%d X%.5f Y%.5f Z-%.5f%n"));
    interpreters.add(program("N%d G2 X%.4f Y%.4f I5.0 J1.0%n"));
  }

  private static Interpreter program(String block) throws IOException {
    StringBuilder text = new StringBuilder("G21 G90 G94 G17 G54 G0 X0 Y0 Z1 G1 F200.\n");
    for (int i = 0; i < BLOCKS; i++) {
      text.append(
          String.format(Locale.ROOT, block, i, i * 0.0013, i % 7 * 0.01003, i % 5 * 0.00203));
    }
    byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
    List<Block> blocks = new ArrayList<>();
    try (BlockSource source = PartPrograms.of("benchmark", bytes).blocks()) {
      for (Optional<Block> next = source.next(); next.isPresent(); next = source.next()) {
        blocks.add(next.get());
      }
    }
    return new Interpreter(
        TENTH_UM, ProgramFiles.alone(new ReadBefore(List.copyOf(blocks)), event -> {}));
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
