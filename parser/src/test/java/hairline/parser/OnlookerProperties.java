package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/**
 * Who looks on while a text is read in batches sees what there is to see block by block, and who
 * reads gets the same blocks.
 */
class OnlookerProperties {
  /** Sums up what it sees; wants nothing more from some line on. */
  private static final class Seen implements Onlooker {
    private final int lastWanted;
    private int blocks;
    private int lastLine;
    private int firstWithWords;
    private long end;
    private boolean withPoint;
    private boolean withoutPoint;
    private boolean ended;
    private final List<String> numbers = new ArrayList<>();
    private final List<String> others = new ArrayList<>();

    Seen(int lastWanted) {
      this.lastWanted = lastWanted;
    }

    @Override
    public void plain(PlainRun run) {
      see(run.lastLine(), run.firstLineWithWords(), run.endByteOffset());
      withPoint |= run.withPoint();
      withoutPoint |= run.withoutPoint();
    }

    @Override
    public void numbered(int line, long number) {
      numbers.add(line + " N" + number);
    }

    @Override
    public boolean other(Block block) {
      blocks++;
      LineScanner scanner = new LineScanner();
      Line line = new Line();
      byte[] bytes = block.text().getBytes(UTF_8);
      line.take(bytes, 0, bytes.length);
      boolean plain =
          block.kind() == Block.Kind.BLOCK
              && scanner.scan(line)
              && scanner.isPlainButForNumber(line.bytes, line.to);
      see(
          block.line(),
          plain && scanner.hasWords() ? block.line() : 0,
          block.byteOffset() + block.byteLength());
      if (!plain) {
        others.add(block.toString());
      } else {
        withPoint |= scanner.hasLengthWithPoint();
        withoutPoint |= scanner.hasLengthWithoutPoint();
        if (scanner.isNumbered()) {
          numbers.add(block.line() + " N" + scanner.sequenceNumber());
        }
      }
      return block.line() <= lastWanted || plain;
    }

    private void see(int line, int withWords, long endOffset) {
      assertThat(line).isGreaterThan(lastLine);
      lastLine = line;
      firstWithWords = firstWithWords == 0 ? withWords : firstWithWords;
      end = endOffset;
    }

    @Override
    public void ended() {
      assertThat(ended).isFalse();
      ended = true;
    }

    List<Object> all() {
      return List.of(
          lastLine, firstWithWords, end, withPoint, withoutPoint, ended, numbers, others);
    }
  }

  private static List<Block> all(BlockSource source) throws IOException {
    List<Block> all = new ArrayList<>();
    try (source) {
      for (Optional<Block> next = source.next(); next.isPresent(); next = source.next()) {
        all.add(next.get());
      }
    }
    return all;
  }

  @Property(tries = 300)
  void sameInBatches(@ForAll long seed, @ForAll @IntRange(max = 80) int lastWanted)
      throws IOException {
    Random random = new Random(seed);
    RandomLines lines = new RandomLines(seed);
    StringBuilder text = new StringBuilder();
    int count = random.nextInt(80);
    for (int i = 0; i < count; i++) {
      String plain = (random.nextInt(4) == 0 ? "N" + i + " " : "") + "X" + i + ". Y" + (i % 3);
      text.append(random.nextInt(8) == 0 ? lines.next() : plain)
          .append(random.nextBoolean() ? "\n" : "\r\n");
    }
    PartProgram program = PartPrograms.of("test", text.toString().getBytes(UTF_8));
    Seen oneByOne = new Seen(lastWanted);
    List<Block> due = all(new SeenBlocks(program.blocks(), oneByOne));
    Seen inBatches = new Seen(lastWanted);
    assertThat(all(new ReadAhead(program.blocksSeenBy(inBatches)))).isEqualTo(due);
    assertThat(inBatches.all()).isEqualTo(oneByOne.all());
    assertThat(oneByOne.blocks).isGreaterThanOrEqualTo(inBatches.blocks);
  }
}
