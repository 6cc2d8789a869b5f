package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** A first look in stretches, on several threads, finds what one reading from end to end finds. */
class SkimAheadProperties {
  private static final List<String> LINE_ENDS = List.of("\n", "\r\n", "\r");

  /** The bytes, a few at a time. */
  private static StoredProgram.Opener opener(byte[] bytes) {
    return () -> new FakeSource(bytes, 97, () -> {});
  }

  /** All that is told, as text. */
  private static List<String> told(SkimmedBlocks blocks) throws IOException {
    List<String> told = new ArrayList<>();
    Optional<Block> next = blocks.next();
    while (next.isPresent()) {
      told.add(told(blocks.plain()));
      told.add(next.get().toString());
      next = blocks.next();
    }
    told.add(told(blocks.plain()));
    assertThat(blocks.next()).isEmpty();
    assertThat(blocks.plain().isEmpty()).isTrue();
    return told;
  }

  private static String told(PlainRun run) {
    return run.isEmpty()
        ? "none"
        : run.firstLineWithWords()
            + " "
            + run.firstWords()
            + " to "
            + run.lastLine()
            + " at "
            + run.endByteOffset()
            + run.withPoint()
            + run.withoutPoint();
  }

  private static List<String> inOneGo(byte[] bytes, long leaderEnd) throws IOException {
    List<String> told = new ArrayList<>();
    BlockParser parser = new BlockParser();
    LineReader lines = new LineReader(opener(bytes).open(), 0, 1);
    Line line = new Line();
    PlainRun run = new PlainRun();
    while (lines.read(line)) {
      Optional<Block> block = parser.unlessPlain(line, leaderEnd, run);
      if (block.isPresent()) {
        told.add(told(run));
        told.add(block.get().toString());
        run.clear();
      }
    }
    told.add(told(run));
    return told;
  }

  @Property(tries = 500)
  void sameAsInOneGo(
      @ForAll long seed,
      @ForAll @IntRange(min = 1, max = 300) int stretchBytes,
      @ForAll @IntRange(min = 1, max = 3) int threads,
      @ForAll @IntRange(max = 60) int leaderEnd)
      throws IOException {
    Random random = new Random(seed);
    RandomLines lines = new RandomLines(seed);
    StringBuilder text = new StringBuilder();
    int count = random.nextInt(60);
    for (int i = 0; i < count; i++) {
      String line = random.nextInt(3) == 0 ? lines.next() : "X" + random.nextInt(99) + ". Y1";
      text.append(line).append(LINE_ENDS.get(random.nextInt(LINE_ENDS.size())));
    }
    text.append(random.nextBoolean() ? "" : "Z1");
    byte[] bytes = text.toString().getBytes(UTF_8);
    try (SkimAhead ahead = new SkimAhead(opener(bytes), leaderEnd, stretchBytes, threads)) {
      assertThat(told(ahead)).isEqualTo(inOneGo(bytes, leaderEnd));
    }
  }

  /** A line far longer than a stretch belongs to the one where it begins. */
  @Example
  void longLine() throws IOException {
    String text = "G1 X1.\n(" + "a".repeat(200_000) + ")\nX2.\n";
    byte[] bytes = text.getBytes(UTF_8);
    try (SkimAhead ahead = new SkimAhead(opener(bytes), 0, 1_000, 2)) {
      assertThat(told(ahead)).isEqualTo(inOneGo(bytes, 0));
    }
  }

  /** What goes wrong on another thread goes wrong here. */
  @Example
  void faultOfTheSource() throws IOException {
    StoredProgram.Opener broken =
        () ->
            new ByteSource() {
              @Override
              public int read(long position, byte[] target, int at, int length) throws IOException {
                if (position > 100_000) {
                  throw new IOException("the disk is gone");
                }
                Arrays.fill(target, at, at + length, (byte) '\n');
                return length;
              }

              @Override
              public void close() {}
            };
    try (SkimAhead ahead = new SkimAhead(broken, 0, 10_000, 2)) {
      assertThatThrownBy(() -> told(ahead))
          .isInstanceOf(IOException.class)
          .hasMessage("the disk is gone");
    }
  }

  @Example
  void textsOfLines() throws IOException {
    PartProgram program = PartPrograms.of("a.nc", "G1 X1.\r\n(é)\n\n%\nX2.".getBytes(UTF_8));
    assertThat(program.texts(new TreeSet<>(List.of(1, 2, 5, 9))))
        .isEqualTo(Map.of(1, "G1 X1.", 2, "(é)", 5, "X2."));
  }
}
