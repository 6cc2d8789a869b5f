package hairline.parser;

import java.util.AbstractList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.RandomAccess;
import org.jspecify.annotations.Nullable;

/**
 * The words of a block in the order written. A plain number is kept as two integers, and its word
 * is made when somebody asks for it: of ten million blocks hardly anybody does.
 */
public final class Words extends AbstractList<Word> implements RandomAccess {
  /** No words. */
  static final Words NONE = new Words(new long[0], 0, 0, null);

  private static final int LONGS_A_WORD = 2;
  private static final int SCALE_SHIFT = 8;
  private static final int COLUMN_SHIFT = 16;
  private static final int END_SHIFT = 40;
  private static final int BYTE = 0xFF;
  private static final int COLUMN = 0xFF_FFFF;

  /** Stands for the scale where the value is no number of 18 digits or fewer. */
  private static final int NOT_PLAIN = BYTE;

  private static final int LARGEST_SCALE = 18;

  /**
   * Two for each word: the digits with their sign, and from the lowest bit on the letter, one more
   * than the scale or 0 where there is no point, the first column and the column behind the last.
   */
  private final long[] packed;

  private final int from;
  private final int count;

  /** Every word, where one of them is not plain. */
  private final Word @Nullable [] made;

  private Words(long[] packed, int from, int count, Word @Nullable [] made) {
    this.packed = packed;
    this.from = from;
    this.count = count;
    this.made = made;
  }

  /** These words. */
  public static Words of(List<Word> words) {
    if (words instanceof Words same) {
      return same;
    }
    Word[] made = words.toArray(new Word[0]);
    long[] packed = new long[LONGS_A_WORD * made.length];
    for (int i = 0; i < made.length; i++) {
      Word word = made[i];
      boolean plain =
          word.value() instanceof Value.Literal literal
              && literal.big().isEmpty()
              && literal.scale() <= LARGEST_SCALE;
      packed[LONGS_A_WORD * i] = plain ? ((Value.Literal) word.value()).unscaled() : 0;
      packed[LONGS_A_WORD * i + 1] =
          pack(
              word.letter(),
              plain ? scaleOrNoPoint((Value.Literal) word.value()) : NOT_PLAIN,
              word.span().column(),
              word.span().endColumn());
    }
    return new Words(packed, 0, made.length, made);
  }

  private static int scaleOrNoPoint(Value.Literal literal) {
    return literal.hasPoint() ? literal.scale() + 1 : 0;
  }

  /**
   * The words that longs hold from an index on, two for each; the longs are not copied and must not
   * change.
   */
  static Words ofPacked(long[] packed, int from, int count) {
    return new Words(packed, from, count, null);
  }

  /** One of the longs that stand behind the words. */
  long behind(int index) {
    return packed[from + longs(count) + index];
  }

  /** How many longs hold so many words. */
  static int longs(int words) {
    return LONGS_A_WORD * words;
  }

  /**
   * What is kept of a word beside its digits.
   *
   * @param scaleOrNoPoint one more than the digits behind the point, 0 without a point
   */
  static long pack(int letter, int scaleOrNoPoint, int column, int endColumn) {
    return letter
        | (long) scaleOrNoPoint << SCALE_SHIFT
        | (long) column << COLUMN_SHIFT
        | (long) endColumn << END_SHIFT;
  }

  /** The letter of a word packed. */
  static int letter(long pack) {
    return (int) pack & BYTE;
  }

  /** Whether a plain number packed has a point. */
  static boolean hasPoint(long pack) {
    return ((int) (pack >>> SCALE_SHIFT) & BYTE) != 0;
  }

  /** The column where a word packed begins. */
  static int column(long pack) {
    return (int) (pack >>> COLUMN_SHIFT) & COLUMN;
  }

  /** The column behind the end of a word packed. */
  static int endColumn(long pack) {
    return (int) (pack >>> END_SHIFT) & COLUMN;
  }

  private int bits(int i, int shift, int mask) {
    return (int) (packed[from + LONGS_A_WORD * i + 1] >>> shift) & mask;
  }

  @Override
  public int size() {
    return count;
  }

  @Override
  public Word get(int index) {
    if (made != null) {
      return made[index];
    }
    Objects.checkIndex(index, size());
    return new Word(
        letter(index),
        new Value.Literal(unscaled(index), scale(index), Optional.empty(), hasPoint(index)),
        span(index));
  }

  /** The address of a word. */
  public char letter(int i) {
    return (char) bits(i, 0, BYTE);
  }

  /**
   * Whether the value of a word is a plain number: then {@link #unscaled}, {@link #scale} and
   * {@link #hasPoint} are those of its {@link Value.Literal}.
   */
  public boolean isPlain(int i) {
    return bits(i, SCALE_SHIFT, BYTE) != NOT_PLAIN;
  }

  /** The digits of a plain number with their sign. */
  public long unscaled(int i) {
    return packed[from + LONGS_A_WORD * i];
  }

  /** How many digits of a plain number follow its point. */
  public int scale(int i) {
    return Math.max(0, bits(i, SCALE_SHIFT, BYTE) - 1);
  }

  /** Whether a plain number has a point. */
  public boolean hasPoint(int i) {
    return bits(i, SCALE_SHIFT, BYTE) != 0;
  }

  /** The column where a word begins, from 1. */
  public int column(int i) {
    return bits(i, COLUMN_SHIFT, COLUMN);
  }

  /** The column behind the end of a word. */
  public int endColumn(int i) {
    return bits(i, END_SHIFT, COLUMN);
  }

  /** The columns of a word. */
  public Span span(int i) {
    return new Span(column(i), endColumn(i));
  }
}
