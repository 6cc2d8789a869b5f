package hairline.parser;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/**
 * Reads a line without the grammar's machinery where it is simple: ASCII, words with plain numbers
 * of at most 18 digits, closed comments, remarks. It decides from the line alone and never reports:
 * whatever it does not know for sure is left to the grammar, which defines the language. What it
 * reads is the same block, to the last column, that the grammar would make of the line.
 */
final class LineScanner {
  /** Any number of so many digits fits a long. */
  private static final int MOST_DIGITS = 18;

  private static final int MOST_WORDS = 64;
  private static final int MOST_COMMENTS = 16;
  private static final byte NO_POINT = -1;

  /** The bit that lower case has. */
  private static final int CASE = 0x20;

  /** Eight digits may be the beginning of more. */
  private static final int MOST_SKIMMED = Eight.BYTES - 1;

  private static final long[] POWERS = {
    1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000
  };
  private static final int LENGTHS = set("XYZUVWIJRQ");
  private static final int NOT_PLAIN = set("NOM");

  private final byte[] letters = new byte[MOST_WORDS];
  private final long[] numbers = new long[MOST_WORDS];

  /** Digits behind the point; {@link #NO_POINT} where there is no point. */
  private final byte[] scales = new byte[MOST_WORDS];

  private final int[] starts = new int[MOST_WORDS];
  private final int[] ends = new int[MOST_WORDS];
  private int words;
  private int letterSet;
  private int skimmedTo;
  private boolean skimmedWithPoint;
  private boolean skimmedWithoutPoint;

  /** What the digits read last make. */
  private long number;

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

  /** Reads a line; false where the grammar has to. */
  boolean scan(Line line) {
    words = 0;
    comments = 0;
    letterSet = 0;
    byte[] bytes = line.bytes;
    int to = line.to;
    int at = line.from;
    while (at < to) {
      int c = bytes[at];
      if (c == ' ' || c == '\t') {
        at++;
        continue;
      }
      int letter = (c & 0xDF) - 'A';
      if (letter >= 0 && letter < 26 && c > 0) {
        at = word(bytes, at, to, letter);
      } else {
        at = comment(bytes, at, to);
      }
      if (at < 0) {
        return false;
      }
    }
    return true;
  }

  /** Reads a word; gives where it ends, or -1. */
  private int word(byte[] bytes, int from, int to, int letter) {
    int at = skipBlanks(bytes, from + 1, to);
    boolean negative = false;
    if (at < to && (bytes[at] == '-' || bytes[at] == '+')) {
      negative = bytes[at] == '-';
      at = skipBlanks(bytes, at + 1, to);
    }
    int first = at;
    at = digits(bytes, at, to, 0);
    int digits = at - first;
    byte scale = NO_POINT;
    if (at < to && bytes[at] == '.') {
      int point = at + 1;
      at = digits(bytes, point, to, number);
      digits += at - point;
      if (digits > MOST_DIGITS) {
        return -1;
      }
      scale = (byte) (at - point);
    }
    if (digits == 0 || digits > MOST_DIGITS || words == MOST_WORDS) {
      return -1;
    }
    int next = skipBlanks(bytes, at, to);
    if (next < to && (bytes[next] == '.' || (bytes[next] >= '0' && bytes[next] <= '9'))) {
      // A number goes on behind blanks.
      return -1;
    }
    int bit = 1 << letter;
    if (letter == 'N' - 'A' && words == 1 && comments == 0 && letters[0] == 'N') {
      return -1;
    }
    letters[words] = (byte) ('A' + letter);
    numbers[words] = negative ? -number : number;
    scales[words] = scale;
    starts[words] = from;
    ends[words] = at;
    letterSet |= bit;
    words++;
    return next;
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
    if (comments == MOST_COMMENTS) {
      return -1;
    }
    int end;
    switch (bytes[from]) {
      case '(' -> {
        end = from + 1;
        while (end < to && bytes[end] != ')') {
          if (bytes[end++] < 0) {
            return -1;
          }
        }
        if (end == to) {
          return -1;
        }
        end++;
      }
      case ';' -> end = isAscii(bytes, from, to) ? to : -1;
      case '/' ->
          end = from + 1 < to && bytes[from + 1] == '/' && isAscii(bytes, from, to) ? to : -1;
      default -> end = -1;
    }
    if (end >= 0) {
      commentStarts[comments] = from;
      commentEnds[comments] = end;
      comments++;
    }
    return end;
  }

  private static boolean isAscii(byte[] bytes, int from, int to) {
    for (int i = from; i < to; i++) {
      if (bytes[i] < 0) {
        return false;
      }
    }
    return true;
  }

  private static int skipBlanks(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && (bytes[at] == ' ' || bytes[at] == '\t')) {
      at++;
    }
    return at;
  }

  /**
   * Reads a line without keeping its words, if it is plain, as {@link PlainRun} has it, and written
   * in the common way: no blanks within a word, no more than {@value #MOST_SKIMMED} digits on each
   * side of a point, comments in round brackets only. False for any other line, plain or not.
   */
  boolean skim(Line line) {
    words = 0;
    comments = 0;
    skimmedWithPoint = false;
    skimmedWithoutPoint = false;
    byte[] bytes = line.bytes;
    int to = line.to;
    int last = bytes.length - Eight.BYTES;
    int at = line.from;
    while (at < to) {
      int c = bytes[at++];
      if (c == ' ' || c == '\t') {
        continue;
      }
      if (c == '(') {
        at = ++comments > MOST_COMMENTS ? -1 : quietComment(bytes, at, to);
        if (at < 0) {
          return false;
        }
        continue;
      }
      if (words == 0) {
        starts[0] = at - 1;
      }
      int letter = (c & 0xDF) - 'A';
      if (letter < 0 || letter >= 26 || c < 0 || (NOT_PLAIN & 1 << letter) != 0) {
        return false;
      }
      if (at < to && (bytes[at] == '-' || bytes[at] == '+')) {
        at++;
      }
      if (at > last || ++words > MOST_WORDS) {
        return false;
      }
      long whole = Eight.at(bytes, at);
      int digits = Math.min(Eight.digits(whole), to - at);
      boolean nonzero = digits > 0 && Eight.isNonzero(whole, digits);
      at += digits;
      boolean point = at < to && bytes[at] == '.';
      int more = 0;
      if (point) {
        if (++at > last) {
          return false;
        }
        long part = Eight.at(bytes, at);
        more = Math.min(Eight.digits(part), to - at);
        nonzero |= more > 0 && Eight.isNonzero(part, more);
        at += more;
      }
      skimmedTo = at;
      if (digits + more == 0 || digits > MOST_SKIMMED || more > MOST_SKIMMED) {
        return false;
      }
      if (letter == 'G' - 'A'
          && (point || digits == 0 || !isPlainCode(Eight.number(whole, digits), NO_POINT))) {
        return false;
      }
      if (nonzero && (LENGTHS & 1 << letter) != 0) {
        skimmedWithPoint |= point;
        skimmedWithoutPoint |= !point;
      }
    }
    return true;
  }

  /**
   * Where a comment that does not speak to the checker ends, given where its text begins; or -1.
   */
  private static int quietComment(byte[] bytes, int from, int to) {
    if (maySpeak(bytes, from, to)) {
      return -1;
    }
    int at = from;
    while (at < to && bytes[at] != ')') {
      if (bytes[at++] < 0) {
        return -1;
      }
    }
    return at < to ? at + 1 : -1;
  }

  /** Whether the text of a comment may begin with the name of the checker. */
  private static boolean maySpeak(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && bytes[at] <= ' ' && bytes[at] >= 0) {
      at++;
    }
    return at < to && (bytes[at] | CASE) == Comment.MARK.charAt(0);
  }

  /** Where the words of the line read last stand, which has some. */
  Span spanOfWords(Line line) {
    return span(line, ends[words - 1]);
  }

  /** Where the words of the line skimmed last stand, which has some. */
  Span spanOfSkimmedWords(Line line) {
    return span(line, skimmedTo);
  }

  private Span span(Line line, int to) {
    return new Span(starts[0] - line.from + 1, to - line.from + 1);
  }

  /** Whether a length other than zero in the line skimmed last has a decimal point. */
  boolean skimmedWithPoint() {
    return skimmedWithPoint;
  }

  /** Whether a length other than zero in the line skimmed last has none. */
  boolean skimmedWithoutPoint() {
    return skimmedWithoutPoint;
  }

  /** Whether the line read or skimmed last has a word. */
  boolean hasWords() {
    return words > 0;
  }

  /** Whether the line read last, this one, is plain, as {@link PlainRun} has it. */
  boolean isPlain(Line line) {
    if ((letterSet & NOT_PLAIN) != 0) {
      return false;
    }
    for (int i = 0; i < comments; i++) {
      if (maySpeak(line.bytes, textStart(line, i), commentEnds[i])) {
        return false;
      }
    }
    if ((letterSet & 1 << ('G' - 'A')) != 0) {
      for (int i = 0; i < words; i++) {
        if (letters[i] == 'G' && !isPlainCode(numbers[i], scales[i])) {
          return false;
        }
      }
    }
    return true;
  }

  /** A code written in the plainest way, and none whose words are of another kind. */
  private static boolean isPlainCode(long number, byte scale) {
    return scale == NO_POINT && number != 4 && number != 10 && number != 65 && number != 66;
  }

  /** Whether a length other than zero in the line read last has a decimal point. */
  boolean hasLengthWithPoint() {
    return hasLength(true);
  }

  /** Whether a length other than zero in the line read last has no decimal point. */
  boolean hasLengthWithoutPoint() {
    return hasLength(false);
  }

  private boolean hasLength(boolean withPoint) {
    for (int i = 0; i < words; i++) {
      boolean length = (LENGTHS & 1 << (letters[i] - 'A')) != 0;
      if (length && numbers[i] != 0 && (scales[i] != NO_POINT) == withPoint) {
        return true;
      }
    }
    return false;
  }

  /** The block that the line read last makes. */
  Block block(Line line) {
    return new Block(
        line.number,
        line.byteOffset,
        line.byteLength,
        line.shortAscii(),
        Block.Kind.BLOCK,
        false,
        words(line.from),
        List.of(),
        comments == 0 ? List.of() : comments(line),
        List.of());
  }

  private Words words(int from) {
    if (words == 0) {
      return Words.NONE;
    }
    Words all = Words.room(words);
    for (int i = 0; i < words; i++) {
      all.put(i, letters[i], numbers[i], scales[i] + 1, starts[i] - from + 1, ends[i] - from + 1);
    }
    return all;
  }

  private int textStart(Line line, int i) {
    int start = commentStarts[i];
    return line.bytes[start] == '/' ? start + 2 : start + 1;
  }

  private List<Comment> comments(Line line) {
    Comment[] all = new Comment[comments];
    for (int i = 0; i < comments; i++) {
      int start = commentStarts[i];
      int end = commentEnds[i];
      int text = textStart(line, i);
      int textEnd = line.bytes[start] == '(' ? end - 1 : end;
      all[i] =
          new Comment(
              new String(line.bytes, text, textEnd - text, StandardCharsets.ISO_8859_1),
              true,
              new Span(start - line.from + 1, end - line.from + 1));
    }
    return Arrays.asList(all);
  }
}
