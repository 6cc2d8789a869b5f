package hairline.parser;

/**
 * Passes over a line without keeping its words, if it is plain, as {@link PlainRun} has it, and
 * written in the common way: no blanks within a word, no more than {@value #MOST_DIGITS} digits on
 * each side of a point. Any other line, plain or not, it leaves alone.
 */
final class LineSkimmer {
  /** Eight digits may be the beginning of more. */
  private static final int MOST_DIGITS = Eight.BYTES - 1;

  /** A letter and what is looked at behind it. */
  private static final int LONGEST_LOOK = 1 + Eight.BYTES;

  private static final int BYTE_SHIFT = 3;

  private static final int WITHOUT_POINT = 1;
  private static final int WITH_POINT = 2;

  private int firstWord;
  private int behindWords;

  /** Which lengths other than zero there are: with a point, without one. */
  private int lengths;

  /**
   * Passes over the line that begins at an index.
   *
   * @param to where the bytes end that are known; a line end may stand before
   * @return the index of its line end, {@code to} where there is none; -1 where it is left alone
   */
  int skim(byte[] bytes, int from, int to) {
    int words = 0;
    int comments = 0;
    int seen = 0;
    int at = from;
    int lastLook = bytes.length - LONGEST_LOOK;
    behindWords = 0;
    while (at < to) {
      int c = bytes[at];
      int letter = (c & 0xDF) - 'A';
      if (letter >= 0 && letter < 26) {
        if (at > lastLook || !LineScanner.isPlainLetter(letter)) {
          return -1;
        }
        if (words == 0) {
          firstWord = at;
        }
        if (++words > LineScanner.MOST_WORDS) {
          return -1;
        }
        long values = Eight.values(Eight.at(bytes, at + 1));
        int minus = Eight.minus(values);
        long others = Eight.unmarked(Eight.others(values), minus);
        values = Eight.withoutMinus(values, minus);
        int digitBits = Eight.bitsBefore(others);
        boolean point = digitBits < Long.SIZE && Eight.isPoint(values, digitBits);
        int bits = digitBits;
        if (point) {
          others &= others - 1;
          values = Eight.without(values, digitBits);
          bits = Eight.bitsBefore(others) - Byte.SIZE;
        }
        int end = at + 1 + (bits >>> BYTE_SHIFT) + (point ? 1 : 0);
        if (others == 0 || bits <= minus << BYTE_SHIFT || end > to) {
          end = longWord(bytes, at + 1, to, letter);
          if (end < 0) {
            return -1;
          }
          seen |= lengths;
        } else {
          long digits = values << (Long.SIZE - bits);
          if (LineScanner.isG(letter)
              && (point || !LineScanner.isPlainCode(Eight.joined(digits)))) {
            return -1;
          }
          int length = LineScanner.lengthBit(letter) & (int) ((digits | -digits) >>> 63);
          seen |= point ? length << 1 : length;
        }
        behindWords = end;
        at = end;
        if (at < to && bytes[at] == ' ') {
          at++;
        }
      } else if (c == ' ' || c == '\t') {
        at++;
      } else if (CommentText.isLineEnd(c)) {
        break;
      } else {
        at = ++comments > LineScanner.MOST_COMMENTS ? -1 : quietComment(bytes, at, to);
        if (at < 0) {
          return -1;
        }
      }
    }
    lengths = seen;
    return at;
  }

  /**
   * Passes over the number of a word that has a plus sign or more than seven characters behind its
   * letter; leaves in {@link #lengths} what it is if it is a length. Gives where it ends, or -1.
   */
  private int longWord(byte[] bytes, int from, int to, int letter) {
    int at = from;
    if (at < to && (bytes[at] == '-' || bytes[at] == '+')) {
      at++;
    }
    int last = bytes.length - Eight.BYTES;
    if (at > last || LineScanner.isG(letter)) {
      return -1;
    }
    long whole = Eight.at(bytes, at);
    int digits = Math.min(Eight.digits(whole), to - at);
    boolean nonzero = digits > 0 && Eight.isNonzero(whole, digits);
    at += digits;
    boolean point = at < to && bytes[at] == '.';
    int more = 0;
    if (point) {
      if (++at > last) {
        return -1;
      }
      long part = Eight.at(bytes, at);
      more = Math.min(Eight.digits(part), to - at);
      nonzero |= more > 0 && Eight.isNonzero(part, more);
      at += more;
    }
    if (digits + more == 0 || digits > MOST_DIGITS || more > MOST_DIGITS) {
      return -1;
    }
    boolean length = nonzero && LineScanner.lengthBit(letter) != 0;
    lengths = length ? (point ? WITH_POINT : WITHOUT_POINT) : 0;
    return at;
  }

  /** Where a comment that does not speak to the checker ends, given where it begins; or -1. */
  private static int quietComment(byte[] bytes, int from, int to) {
    int text = from + LineScanner.commentMark(bytes, from, to);
    if (text == from || CommentText.maySpeak(bytes, text, to)) {
      return -1;
    }
    return bytes[from] == '('
        ? CommentText.endOfComment(bytes, text, to)
        : CommentText.endOfRemark(bytes, text, to);
  }

  /** Whether the line passed over last has a word. */
  boolean hasWords() {
    return behindWords > 0;
  }

  /** Where the words of the line passed over last stand, which has some. */
  Span spanOfWords(int from) {
    return new Span(firstWord - from + 1, behindWords - from + 1);
  }

  /** Whether a length other than zero in the line passed over last has a decimal point. */
  boolean hasLengthWithPoint() {
    return (lengths & WITH_POINT) != 0;
  }

  /** Whether a length other than zero in the line passed over last has none. */
  boolean hasLengthWithoutPoint() {
    return (lengths & WITHOUT_POINT) != 0;
  }
}
