package hairline.parser;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * Blocks on their way from the thread that reads them to the one that wants them. Plain ones travel
 * as the figures of their words, one behind the other, and are made where they arrive: what one
 * core has written is slow to read for another, the slower the more it is and the less in a row.
 */
final class BlockBatch {
  /**
   * So many that threads are seldom woken, so few that most die before they are collected; a block
   * that is kept keeps all of its batch.
   */
  static final int MOST_BLOCKS = 1_024;

  private static final int MOST_TEXT_BYTES = 65_536;

  /** Stands in place of a plain block where one is that was made by the reader. */
  private static final long MADE = -1;

  private static final int HEADER = 2;
  private static final int WORDS_SHIFT = 32;
  private static final int COMMENTS_SHIFT = 40;
  private static final int LENGTH_SHIFT = 45;
  private static final int WORDS = 0xFF;
  private static final int COMMENTS = 0x1F;

  private final long[] packed;
  private final byte[] text;

  /** Where in the file the text begins. */
  private final long textOffset;

  private final Deque<Block> made;
  private final int count;
  private int next;
  private int taken;

  private BlockBatch(long[] packed, byte[] text, long textOffset, Deque<Block> made, int count) {
    this.packed = packed;
    this.text = text;
    this.textOffset = textOffset;
    this.made = made;
    this.count = count;
  }

  /** A batch without blocks. */
  static BlockBatch empty() {
    return new BlockBatch(new long[0], new byte[0], 0, new ArrayDeque<>(), 0);
  }

  boolean isEmpty() {
    return count == 0;
  }

  /** Whether every block was taken. */
  boolean isUsedUp() {
    return taken == count;
  }

  /** The next block, of which there must be one. */
  Block take() {
    taken++;
    long byteOffset = packed[next];
    if (byteOffset == MADE) {
      next++;
      return made.remove();
    }
    long header = packed[next + 1];
    int words = (int) (header >>> WORDS_SHIFT) & WORDS;
    int comments = (int) (header >>> COMMENTS_SHIFT) & COMMENTS;
    int from = next + HEADER;
    next = from + Words.longs(words) + comments;
    return Block.plain(
        (int) header,
        byteOffset,
        (int) (header >>> LENGTH_SHIFT),
        Words.ofPacked(packed, from, words),
        text,
        (int) (byteOffset - textOffset),
        comments);
  }

  /** Puts batches together, one after the other; serves one thread. */
  static final class Builder {
    private static final int ROOM = HEADER + LineScanner.MOST_LONGS;

    private final long[] packed = new long[16 * MOST_BLOCKS + ROOM];
    private int used;
    private int count;
    private byte[] text = {};
    private long textOffset;
    private Deque<Block> made = new ArrayDeque<>();

    /** Whether no more blocks should be added. */
    boolean isFull() {
      return count == MOST_BLOCKS || used > packed.length - ROOM;
    }

    /** Where the words of the next plain block are to be packed, and its comments behind them. */
    long[] packed() {
      return packed;
    }

    /** The index from which on. */
    int wordsFrom() {
      return used + HEADER;
    }

    /** Adds a plain block, whose words are packed already. */
    void addPlain(int line, long byteOffset, int byteLength, int words, int comments) {
      packed[used] = byteOffset;
      packed[used + 1] =
          line
              | (long) words << WORDS_SHIFT
              | (long) comments << COMMENTS_SHIFT
              | (long) byteLength << LENGTH_SHIFT;
      used += HEADER + Words.longs(words) + comments;
      count++;
    }

    /** Adds any block. */
    void add(Block block) {
      made.add(block);
      packed[used++] = MADE;
      count++;
    }

    /** Whether the text from a place in the file on would make the batch too long. */
    boolean isTooFar(long offset) {
      return text.length > 0 && offset - textOffset > MOST_TEXT_BYTES;
    }

    /**
     * Adds the text of plain blocks.
     *
     * @param offset where it stands in the file
     */
    void addText(byte[] bytes, int from, int to, long offset) {
      if (from == to) {
        return;
      }
      if (text.length == 0) {
        text = Arrays.copyOfRange(bytes, from, to);
        textOffset = offset;
        return;
      }
      int at = (int) (offset - textOffset);
      text = Arrays.copyOf(text, at + to - from);
      System.arraycopy(bytes, from, text, at, to - from);
    }

    /** The batch; another begins. */
    BlockBatch build() {
      BlockBatch batch = new BlockBatch(Arrays.copyOf(packed, used), text, textOffset, made, count);
      used = 0;
      count = 0;
      text = new byte[0];
      if (!made.isEmpty()) {
        made = new ArrayDeque<>();
      }
      return batch;
    }
  }
}
