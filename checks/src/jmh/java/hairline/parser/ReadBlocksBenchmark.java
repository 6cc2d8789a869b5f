package hairline.parser;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
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
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/** The time to read one block, of a finishing pass and of a program that calculates. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(ReadBlocksBenchmark.BLOCKS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class ReadBlocksBenchmark {
  static final int BLOCKS = 10_000;

  /** Whether plain lines are read by the scanner, or every line with the grammar. */
  @Param({"true", "false"})
  boolean scanner;

  private byte[] finishing = {};
  private byte[] calculating = {};

  /** Writes the two programs. */
  @Setup
  public void write() {
    System.setProperty("hairline.grammarOnly", Boolean.toString(!scanner));
    StringBuilder plain = new StringBuilder();
    StringBuilder parameters = new StringBuilder();
    for (int i = 0; i < BLOCKS; i++) {
      plain.append(
          String.format(
              Locale.ROOT, "N%d X%.4f Y%.4f Z-%.4f%n", i, i * 0.0013, i % 7 * 0.01, i % 5 * 0.002));
      parameters.append(
          String.format(
              Locale.ROOT,
              "#%d=[#%d+%d.5]*SIN[%d] G1 X#%d%n",
              i % 99 + 1,
              i % 98 + 1,
              i,
              i,
              i % 99 + 1));
    }
    finishing = plain.toString().getBytes(StandardCharsets.UTF_8);
    calculating = parameters.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** Three axis words and a sequence number. */
  @Benchmark
  public void finishingPass(Blackhole blackhole) throws IOException {
    read(finishing, blackhole);
  }

  /** The same, as a first look at the file reads it. */
  @Benchmark
  public void finishingPassSkimmed(Blackhole blackhole) throws IOException {
    try (SkimmedBlocks blocks = PartPrograms.of("benchmark", finishing).skim()) {
      for (Optional<Block> block = blocks.next(); block.isPresent(); block = blocks.next()) {
        blackhole.consume(block.get());
      }
    }
  }

  /** A setting with an expression, and a word whose value is a parameter. */
  @Benchmark
  public void calculatingProgram(Blackhole blackhole) throws IOException {
    read(calculating, blackhole);
  }

  private static void read(byte[] bytes, Blackhole blackhole) throws IOException {
    try (BlockSource blocks = PartPrograms.of("benchmark", bytes).blocks()) {
      for (Optional<Block> block = blocks.next(); block.isPresent(); block = blocks.next()) {
        blackhole.consume(block.get());
      }
    }
  }
}
