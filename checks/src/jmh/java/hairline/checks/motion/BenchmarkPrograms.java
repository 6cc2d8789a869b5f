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

/** Programs of blocks that have been read before, so that reading is not measured. */
public final class BenchmarkPrograms {
  /** How many blocks one has. */
  public static final int BLOCKS = 20_000;

  /** Three axis words, all digits kept. */
  public static final String FINISHING = "N%d X%.4f Y%.4f Z-%.4f%n";

  /** Three axis words, each with a digit that is rounded away. */
  public static final String ROUNDED = "N%d X%.5f Y%.5f Z-%.5f%n";

  /** Arcs with a centre. */
  public static final String ARCS = "N%d G2 X%.4f Y%.4f I5.0 J1.0%n";

  private static final ControlProfile TENTH_UM = ControlProfile.UNKNOWN.withResolution(100_000);

  private BenchmarkPrograms() {}

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

  /**
   * Writes and reads a program.
   *
   * @param block what each block looks like
   */
  public static Interpreter interpreter(String block) throws IOException {
    StringBuilder text = new StringBuilder("G21 G90 G94 G17 G54 G0 X0 Y0 Z1\nG1 F200.\n");
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
}
