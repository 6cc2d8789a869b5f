package hairline.parser;

/**
 * Passes over a line without keeping its words, if it is plain, as {@link PlainRun} has it, and
 * written in the common way: no blanks within a word, no more than {@value #MOST_DIGITS} digits on
 * each side of a point. Any other line, plain or not, it leaves alone.
 */
final class LineSkimmer {
  /** Eight digits may be the beginning of more. */
  private static final int MOST_DIGITS = Eight.BYTES - 1;

  /** A letter, what is looked at behind it and one more. */
  private static final int LONGEST_LOOK = 2 + Eight.BYTES;

  private static final Span NOWHERE = new Span(1, 1);
  private static final int WITHOUT_POINT = 1;
  private static final int WITH_POINT = 2;

  private int firstWord;
  private int behindWords;

  /** Which lengths other than zero there are: with a point, without one. */
  private int lengths;

  /** The same of the long word passed over last. */
  private int longLength;

  private int lines;
  private int lastEnd;

  /** Which of the lines, from zero, is the first that has words; -1 where none has. */
  private int worded;

  private Span wordedSpan = NOWHERE;

  /**
   * Passes over lines, one behind the other, as long as it can.
   *
   * @param known where the bytes end that are known
   * @param stop no line is begun from there on
   * @return where the first line begins that was left alone
   */
  int skimLines(byte[] bytes, int from, int known, int stop) {
    lines = 0;
    lengths = 0;
    worded = -1;
    int line = from;
    while (line < stop) {
      int before = lengths;
      int end = skim(bytes, line, known);
      int next = end < 0 ? -1 : behindLineEnd(bytes, end, known);
      if (next < 0 || end - line > Limits.LINE_BYTES) {
        lengths = before;
        break;
      }
      if (worded < 0 && behindWords > 0) {
        worded = lines;
        wordedSpan = new Span(firstWord - line + 1, behindWords - line + 1);
      }
      lines++;
      lastEnd = end;
      line = next;
    }
    return line;
  }

  /** Where the line begins behind this line end; -1 where that is not known. */
  private static int behindLineEnd(byte[] bytes, int end, int known) {
    if (end < known && bytes[end] == '\n') {
      return end + 1;
    }
    if (end + 1 < known && bytes[end] == '\r') {
      return bytes[end + 1] == '\n' ? end + 2 : end + 1;
    }
    return -1;
  }

  /**
   * Passes over the line that begins at an index, and adds to {@link #lengths}.
   *
   * @param to where the bytes end that are known; a line end may stand before
   * @return the index of its line end, {@code to} where there is none; -1 where it is left alone
   */
  private int skim(byte[] bytes, int from, int to) {
    int words = 0;
    int comments = 0;
    int seen = lengths;
    int at = from;
    int lastLook = bytes.length - LONGEST_LOOK;
    behindWords = 0;
    while (at < to) {
      int c = bytes[at];
      int letter = (c & 0xDF) - 'A';
      if (letter >= 0 && letter < 26) {
        if (at > lastLook
            || !LineScanner.isPlainLetter(letter)
            || ++words > LineScanner.MOST_WORDS) {
          return -1;
        }
        if (behindWords == 0) {
          firstWord = at;
        }
        long values = Eight.values(Eight.at(bytes, at + 1));
        int minus = Eight.minus(values);
        long others = Eight.othersBehindFirst(values);
        values = Eight.withoutMinus(values, minus);
        int pointBits = Eight.bitsBefore(others);
        int kind = WITHOUT_POINT;
        int bits = pointBits;
        if (bits < Long.SIZE && Eight.isPoint(values, bits)) {
          others &= others - 1;
          bits = Eight.bitsBefore(others) - Byte.SIZE;
          kind = WITH_POINT;
        }
        int end = at + 1 + Eight.bytesBefore(others);
        if ((others == 0 && LineScanner.goesOn(bytes[end]))
            || Eight.isOther(values)
            || bits <= minus * Byte.SIZE
            || end > to) {
          end = longWord(bytes, at + 1, to, letter);
          if (end < 0) {
            return -1;
          }
          seen |= longLength;
        } else if ((seen & kind) == 0 || LineScanner.isG(letter)) {
          // Else there is such a length already.
          values = kind == WITH_POINT ? Eight.without(values, pointBits) : values;
          long digits = values << (Long.SIZE - bits);
          if (LineScanner.isG(letter)
              && (kind == WITH_POINT || !LineScanner.isPlainCode(Eight.joined(digits)))) {
            return -1;
          }
          seen |= digits == 0 || LineScanner.lengthBit(letter) == 0 ? 0 : kind;
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
   * Passes over the number of a word that has a plus sign or more than eight characters behind its
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
    longLength = length ? (point ? WITH_POINT : WITHOUT_POINT) : 0;
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

  /** How many lines were passed over by {@link #skimLines}. */
  int lines() {
    return lines;
  }

  /** The index of the line end of the last of them. */
  int lastEnd() {
    return lastEnd;
  }

  /** Which of them, from zero, is the first that has words; -1 where none has. */
  int worded() {
    return worded;
  }

  /** Where its words stand. */
  Span wordedSpan() {
    return wordedSpan;
  }

  /** Whether a length other than zero in what was passed over last has a decimal point. */
  boolean hasLengthWithPoint() {
    return (lengths & WITH_POINT) != 0;
  }

  /** Whether a length other than zero in what was passed over last has none. */
  boolean hasLengthWithoutPoint() {
    return (lengths & WITHOUT_POINT) != 0;
  }
}
