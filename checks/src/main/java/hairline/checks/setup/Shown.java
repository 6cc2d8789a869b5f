package hairline.checks.setup;

/** What a problem shows of a text from a sheet: little enough to read, and on one line. */
final class Shown {
  private static final int MOST_CHARACTERS = 60;
  private static final int CONTROL_PICTURES = 0x2400;

  private Shown() {}

  /** The text, cut where it is longer than anybody types on purpose. */
  static String cut(String text) {
    return text.codePointCount(0, text.length()) > MOST_CHARACTERS
        ? text.substring(0, text.offsetByCodePoints(0, MOST_CHARACTERS)) + "…"
        : text;
  }

  /** The text on one line: a line end or another control character is seen as a picture of it. */
  static String onOneLine(String text) {
    StringBuilder line = new StringBuilder(text.length());
    text.codePoints().forEach(c -> line.appendCodePoint(c < ' ' ? CONTROL_PICTURES + c : c));
    return line.toString();
  }
}
