package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Blocks read ahead by the batch are those that are read one by one. */
class ReadAheadProperties {
  private static final List<String> LINE_ENDS = List.of("\n", "\r\n", "\r");

  private static PartProgram program(byte[] bytes, int most) {
    return new StoredProgram("test", () -> new FakeSource(bytes, most, () -> {}));
  }

  private static List<Block> ahead(BlockSource source) throws IOException {
    try (ReadAhead ahead = new ReadAhead(source)) {
      return Read.rest(ahead);
    }
  }

  /** Compares all that a block tells, its text as a report shows it too. */
  private static void assertSame(List<Block> blocks, List<Block> expected) {
    assertThat(blocks).isEqualTo(expected);
    assertThat(blocks.toString()).isEqualTo(expected.toString());
    assertThat(expected).isEqualTo(blocks);
    assertThat(blocks.hashCode()).isEqualTo(expected.hashCode());
  }

  private static byte[] text(Random random, long seed, int count) {
    RandomLines lines = new RandomLines(seed);
    StringBuilder text = new StringBuilder(random.nextInt(9) == 0 ? "\uFEFF" : "");
    String end = LINE_ENDS.get(random.nextInt(LINE_ENDS.size()));
    for (int i = 0; i < count; i++) {
      text.append(
          switch (random.nextInt(40)) {
            case 0 -> "%";
            case 1 -> "(" + "long ".repeat(random.nextInt(500)) + ")";
            case 2, 3, 4, 5, 6 -> lines.next();
            default -> "G1 X" + (random.nextInt(2_000_000) - 1_000_000) / 1e4 + " Y-.5 (side)";
          });
      text.append(end);
    }
    return text.append(random.nextBoolean() ? "" : "Z1").toString().getBytes(UTF_8);
  }

  @Property(tries = 300)
  void sameAsOneByOne(
      @ForAll long seed, @ForAll @IntRange(max = 900) int count, @ForAll boolean trickles)
      throws IOException {
    Random random = new Random(seed);
    byte[] bytes = text(random, seed, count);
    PartProgram program = program(bytes, trickles ? 97 : Integer.MAX_VALUE);
    List<Block> all = Read.all(program);
    assertSame(ahead(program.blocks()), all);
    // From any line to any place.
    int from = all.isEmpty() ? 0 : random.nextInt(all.size());
    long offset = all.isEmpty() ? 0 : all.get(from).byteOffset();
    int line = all.isEmpty() ? 1 : all.get(from).line();
    long end = random.nextInt(bytes.length + 2);
    List<Block> part = new ArrayList<>();
    try (BlockSource one = new ProgramBlocks(program.blocksFrom(offset, line), end)) {
      part.addAll(Read.rest(one));
    }
    assertSame(ahead(program.blocksOf(offset, line, end)), part);
    try (BlockSource one = program.blocksOf(offset, line, end)) {
      assertSame(Read.rest(one), part);
    }
  }

  /** Lines beyond every limit, among plain ones. */
  @Example
  void longLines() throws IOException {
    String plain = "G1 X-1.5 Y2.25 (side)\n".repeat(40);
    String full = "X1 ".repeat(64) + "(c)".repeat(16) + "\n";
    String text =
        plain
            + ("(" + "a".repeat(65_000) + ")\n").repeat(3)
            + plain
            + ("(" + "b".repeat(400_000) + ")\n")
            + plain
            + full.repeat(600)
            + (" ".repeat(2_000) + "X1\n").repeat(100)
            + "\n".repeat(1_000)
            + plain;
    PartProgram program = program(text.getBytes(UTF_8), Integer.MAX_VALUE);
    assertSame(ahead(program.blocks()), Read.all(program));
  }

  /** A source of another kind is read ahead as well. */
  @Example
  void anySource() throws IOException {
    List<Block> all = Read.program("G1 X1\n".repeat(1_000) + "%\n#1=2\n");
    List<Block> rest = new ArrayList<>(all);
    BlockSource source =
        new BlockSource() {
          @Override
          public Optional<Block> next() {
            return rest.isEmpty() ? Optional.empty() : Optional.of(rest.remove(0));
          }

          @Override
          public void close() {}
        };
    assertSame(ahead(source), all);
  }

  /** What goes wrong while reading does so behind the same block. */
  @Example
  void aFaultStandsAtItsPlace() throws IOException {
    byte[] bytes = "G1 X1.5\nX#1\n".repeat(9_000).getBytes(UTF_8);
    StoredProgram.Opener broken =
        () ->
            new ByteSource() {
              private final ByteSource good = new FakeSource(bytes, 1_000, () -> {});

              @Override
              public int read(long position, byte[] target, int at, int length) throws IOException {
                if (position > 50_000) {
                  throw new IOException("the disk is gone");
                }
                return good.read(position, target, at, length);
              }

              @Override
              public void close() {}
            };
    PartProgram program = new StoredProgram("test", broken);
    List<Block> expected = new ArrayList<>();
    try (BlockSource one = program.blocks()) {
      assertThatThrownBy(() -> takeAll(one, expected)).hasMessage("the disk is gone");
    }
    List<Block> blocks = new ArrayList<>();
    try (ReadAhead ahead = new ReadAhead(program.blocks())) {
      assertThatThrownBy(() -> takeAll(ahead, blocks))
          .isInstanceOf(IOException.class)
          .hasMessage("the disk is gone");
    }
    assertThat(expected).hasSizeGreaterThan(5_000);
    assertSame(blocks, expected);
  }

  private static void takeAll(BlockSource source, List<Block> blocks) throws IOException {
    for (Optional<Block> next = source.next(); next.isPresent(); next = source.next()) {
      blocks.add(next.get());
    }
  }
}
