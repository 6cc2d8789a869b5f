package hairline.parser;

import java.util.Arrays;

/**
 * Reads a line without the grammar's machinery where it is simple: ASCII, words with plain numbers
 * of at most 18 digits, closed comments, remarks. It decides from the line alone and never reports:
 * whatever it does not know for sure is left to the grammar, which defines the language. What it
 * reads is the same block, to the last column, that the grammar would make of the line.
 */
final class LineScanner {
  static final int MOST_WORDS = 64;
  static final int MOST_COMMENTS = 16;

  /** Any number of so many digits fits a long. */
  private static final int MOST_DIGITS = 18;

  /** The bit that lower case has. */
  private static final int CASE = 0x20;

  /** A letter, what is looked at behind it and one more. */
  private static final int LONGEST_LOOK = 2 + Eight.BYTES;

  private static final long[] POWERS = {
    1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000
  };
  private static final int LENGTHS = set("XYZUVWIJRQ");
  private static final int NOT_PLAIN = set("NOM");

  /** So many longs hold a line packed. */
  static final int MOST_LONGS = Words.longs(MOST_WORDS) + MOST_COMMENTS;

  private final long[] own = new long[MOST_LONGS];

  /** The words of the line read last, as {@link Words} packs them, then its comments. */
  private long[] packed = own;

  /** Where they begin there. */
  private int first;

  private int words;

  /** What the digits read last make. */
  private long number;

  private boolean lengthWithPoint;
  private boolean lengthWithoutPoint;

  private final int[] commentStarts = new int[MOST_COMMENTS];
  private final int[] commentEnds = new int[MOST_COMMENTS];
  private int comments;

  private static int set(String letters) {
    int set = 0;
    for (int i = 0; i < letters.length(); i++) {
      set |= 1 << (letters.charAt(i) - 'A');
    }
    return set;
  }

  /** Packs the lines that follow into these longs from an index on. */
  void packInto(long[] longs, int from) {
    packed = longs;
    first = from;
  }

  /** Packs the lines that follow where nobody else sees it. */
  void packForItself() {
    packInto(own, 0);
  }

  /** Reads a line; false where the grammar has to. */
  boolean scan(Line line) {
    return scan(line.bytes, line.from, line.to) == line.to;
  }

  /**
   * Reads the line that begins at an index.
   *
   * @param to where the bytes end that are known; a line end may stand before
   * @return the index of its line end, {@code to} where there is none; -1 where the grammar has to
   *     read it
   */
  int scan(byte[] bytes, int from, int to) {
    comments = 0;
    long[] out = packed;
    int next = first;
    int most = first + Words.longs(MOST_WORDS);
    int lastLook = bytes.length - LONGEST_LOOK;
    int at = from;
    while (at < to) {
      int c = bytes[at];
      int letter = (c & 0xDF) - 'A';
      if (letter >= 0 && letter < 26) {
        if (next == most || (letter == 'N' - 'A' && isSecondNumber(next))) {
          return -1;
        }
        int end = -1;
        if (at <= lastLook) {
          long values = Eight.values(Eight.at(bytes, at + 1));
          int minus = Eight.minus(values);
          long others = Eight.othersBehindFirst(values);
          values = Eight.withoutMinus(values, minus);
          int bits = Eight.bitsBefore(others);
          int scale = 0;
          if (bits < Long.SIZE && Eight.isPoint(values, bits)) {
            int pointBits = bits;
            others &= others - 1;
            values = Eight.without(values, pointBits);
            bits = Eight.bitsBefore(others) - Byte.SIZE;
            scale = Byte.SIZE + bits - pointBits;
          }
          end = at + 1 + Eight.bytesBefore(others);
          if ((others == 0 && goesOn(bytes[end]))
              || Eight.isOther(values)
              || bits <= minus * Byte.SIZE
              || end > to) {
            end = -1;
          } else {
            long sum = Eight.joined(values << (Long.SIZE - bits));
            out[next] = (sum ^ -minus) + minus;
            out[next + 1] = Words.pack(c & ~CASE, scale / Byte.SIZE, at - from + 1, end - from + 1);
          }
        }
        if (end < 0) {
          end = longWord(bytes, at, to, out, next, at - from + 1);
          if (end < 0) {
            return -1;
          }
        }
        next += Words.longs(1);
        at = end;
        if (at < to && bytes[at] == ' ') {
          at++;
        }
      } else if (c == ' ' || c == '\t') {
        at++;
      } else if (CommentText.isLineEnd(c)) {
        break;
      } else {
        at = comment(bytes, at, to);
        if (at < 0) {
          return -1;
        }
      }
    }
    words = (next - first) / Words.longs(1);
    for (int i = 0; i < comments; i++) {
      out[next + i] = PackedComments.pack(commentStarts[i] - from + 1, commentEnds[i] - from + 1);
    }
    return at;
  }

  /** Whether all that stands in the line so far is a sequence number. */
  private boolean isSecondNumber(int next) {
    return next == first + Words.longs(1)
        && comments == 0
        && Words.letter(packed[first + 1]) == 'N';
  }

  /** Reads and packs the number of any word that it may; gives where it ends, or -1. */
  private int longWord(byte[] bytes, int from, int to, long[] out, int next, int column) {
    int at = skipBlanks(bytes, from + 1, to);
    boolean negative = false;
    if (at < to && (bytes[at] == '-' || bytes[at] == '+')) {
      negative = bytes[at] == '-';
      at = skipBlanks(bytes, at + 1, to);
    }
    int first = at;
    at = digits(bytes, at, to, 0);
    int digits = at - first;
    int scale = 0;
    if (at < to && bytes[at] == '.') {
      int point = at + 1;
      at = digits(bytes, point, to, number);
      digits += at - point;
      scale = at - point + 1;
    }
    if (digits == 0 || digits > MOST_DIGITS) {
      return -1;
    }
    out[next] = negative ? -number : number;
    out[next + 1] = Words.pack(bytes[from] & ~CASE, scale, column, column + at - from);
    return at;
  }

  /**
   * Reads digits behind the number read so far, and leaves in {@link #number} what they make
   * together; what more digits than a long holds make there is not used. Gives where they end.
   */
  private int digits(byte[] bytes, int from, int to, long before) {
    long sum = before;
    int at = from;
    while (at <= bytes.length - Eight.BYTES) {
      long eight = Eight.at(bytes, at);
      int count = Math.min(Eight.digits(eight), to - at);
      if (count == 0) {
        break;
      }
      sum = sum * POWERS[count] + Eight.number(eight, count);
      at += count;
      if (count < Eight.BYTES) {
        number = sum;
        return at;
      }
    }
    int digit;
    while (at < to && (digit = bytes[at] - '0') >= 0 && digit <= 9) {
      sum = sum * 10 + digit;
      at++;
    }
    number = sum;
    return at;
  }

  /** Reads a comment or a remark; gives where it ends, or -1 where there is none or it is open. */
  private int comment(byte[] bytes, int from, int to) {
    int text = from + commentMark(bytes, from, to);
    if (comments == MOST_COMMENTS || text == from) {
      return -1;
    }
    int end =
        bytes[from] == '('
            ? CommentText.endOfComment(bytes, text, to)
            : CommentText.endOfRemark(bytes, text, to);
    if (end >= 0) {
      commentStarts[comments] = from;
      commentEnds[comments] = end;
      comments++;
    }
    return end;
  }

  /** How many characters mark the beginning of a comment or remark here; 0 where none begins. */
  static int commentMark(byte[] bytes, int from, int to) {
    return switch (bytes[from]) {
      case '(', ';' -> 1;
      case '/' -> from + 1 < to && bytes[from + 1] == '/' ? 2 : 0;
      default -> 0;
    };
  }

  private static int skipBlanks(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && (bytes[at] == ' ' || bytes[at] == '\t')) {
      at++;
    }
    return at;
  }

  /** Whether a word of this letter, the index in the alphabet, may stand in a plain line. */
  static boolean isPlainLetter(int letter) {
    return ((NOT_PLAIN >>> letter) & 1) == 0;
  }

  /** One where a word of this letter, the index in the alphabet, is a length, else 0. */
  static int lengthBit(int letter) {
    return (LENGTHS >>> letter) & 1;
  }

  /** Whether a number goes on with this character. */
  static boolean goesOn(byte c) {
    return c >= '.' && c <= '9';
  }

  static boolean isG(int letter) {
    return letter == 'G' - 'A';
  }

  /** Whether a code written without a point is none whose words are of another kind. */
  static boolean isPlainCode(long number) {
    return number != 4 && number != 10 && number != 65 && number != 66;
  }

  /** Where the words of the line read last stand, which has some. */
  Span spanOfWords() {
    return new Span(
        Words.column(packed[first + 1]), Words.endColumn(packed[first + Words.longs(words) - 1]));
  }

  /** How many words the line read last has. */
  int words() {
    return words;
  }

  /** How many comments the line read last has. */
  int comments() {
    return comments;
  }

  /** Whether the line read last has a word. */
  boolean hasWords() {
    return words > 0;
  }

  /**
   * Whether the line read last is plain, as {@link PlainRun} has it, or would be without the
   * sequence number before its words.
   *
   * @param bytes where it stands
   * @param to where it ends there
   */
  boolean isPlainButForNumber(byte[] bytes, int to) {
    for (int i = 0; i < comments; i++) {
      int start = commentStarts[i];
      int text = start + commentMark(bytes, start, to);
      if (CommentText.maySpeak(bytes, text, commentEnds[i])) {
        return false;
      }
    }
    int end = first + Words.longs(words);
    int from = first + (isNumbered() ? Words.longs(1) : 0);
    int with = 0;
    int without = 0;
    int letters = 0;
    for (int i = from; i < end; i += Words.longs(1)) {
      long word = packed[i + 1];
      int letter = Words.letter(word) - 'A';
      letters |= 1 << letter;
      if (isG(letter) && (Words.hasPoint(word) || !isPlainCode(packed[i]))) {
        return false;
      }
      int length = packed[i] == 0 ? 0 : lengthBit(letter);
      int point = Words.hasPoint(word) ? length : 0;
      with |= point;
      without |= length - point;
    }
    lengthWithPoint = with != 0;
    lengthWithoutPoint = without != 0;
    return (letters & NOT_PLAIN) == 0;
  }

  /** Whether the line read last has a sequence number without a point before other words. */
  boolean isNumbered() {
    return words > 1
        && Words.letter(packed[first + 1]) == 'N'
        && packed[first] >= 0
        && !Words.hasPoint(packed[first + 1]);
  }

  /** The sequence number of the line read last, which {@link #isNumbered}. */
  long sequenceNumber() {
    return packed[first];
  }

  /** Whether {@link #isPlainButForNumber} has seen a length other than zero with a point. */
  boolean hasLengthWithPoint() {
    return lengthWithPoint;
  }

  /** Whether {@link #isPlainButForNumber} has seen a length other than zero without one. */
  boolean hasLengthWithoutPoint() {
    return lengthWithoutPoint;
  }

  /** The block that the line read last makes. */
  Block block(Line line) {
    int longs = Words.longs(words) + comments;
    return Block.plain(
        line.number,
        line.byteOffset,
        line.byteLength,
        longs == 0
            ? Words.NONE
            : Words.ofPacked(Arrays.copyOfRange(packed, first, first + longs), 0, words),
        Arrays.copyOfRange(line.bytes, line.from, line.to),
        0,
        comments);
  }
}
