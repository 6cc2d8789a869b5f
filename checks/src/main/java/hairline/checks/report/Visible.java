package hairline.checks.report;

/**
 * Makes text from outside harmless: characters that steer a terminal, reorder or hide text are
 * replaced by something that can be seen. The ranges are listed here and not asked of the Java
 * runtime, whose Unicode tables grow from version to version.
 */
public final class Visible {
  private static final int DELETE = 0x7F;
  private static final int CONTROL_PICTURES = 0x2400;
  private static final int DELETE_PICTURE = 0x2421;
  private static final int REPLACEMENT = 0xFFFD;

  private Visible() {}

  /** The text with such characters spelled out: a control picture, or {@code <U+202E>}. */
  public static String of(String text) {
    return replaced(text, false);
  }

  /** The same, one character for one, so that columns keep their place. */
  static String oneForOne(String text) {
    return replaced(text, true);
  }

  private static String replaced(String text, boolean oneForOne) {
    int at = 0;
    while (at < text.length() && isHarmless(text.codePointAt(at))) {
      at += Character.charCount(text.codePointAt(at));
    }
    if (at == text.length()) {
      return text;
    }
    StringBuilder out = new StringBuilder(text.length() + 16).append(text, 0, at);
    while (at < text.length()) {
      int c = text.codePointAt(at);
      out.append(oneForOne ? character(c) : of(c));
      at += Character.charCount(c);
    }
    return out.toString();
  }

  /** How one character is shown. */
  static String of(int c) {
    String shown = character(c);
    return shown.codePointAt(0) == REPLACEMENT && c != REPLACEMENT ? "<U+" + hex(c) + ">" : shown;
  }

  private static String character(int c) {
    if (isHarmless(c)) {
      return Character.toString(c);
    }
    if (c < ' ') {
      return Character.toString(CONTROL_PICTURES + c);
    }
    return Character.toString(c == DELETE ? DELETE_PICTURE : REPLACEMENT);
  }

  private static String hex(int c) {
    String digits = Integer.toHexString(c).toUpperCase(java.util.Locale.ROOT);
    return "0".repeat(Math.max(0, 4 - digits.length())) + digits;
  }

  /** Whether the character neither steers, nor reorders, nor hides, and is a character at all. */
  static boolean isHarmless(int c) {
    if (c < DELETE) {
      return c >= ' ';
    }
    if (c < 0xA0 || c == 0xAD) {
      return false;
    }
    return !(c == 0x061C
        || c == 0x180E
        || within(c, 0x200B, 0x200F)
        || within(c, 0x2028, 0x202E)
        || within(c, 0x2060, 0x206F)
        || within(c, 0xD800, 0xDFFF)
        || c == 0xFEFF
        || within(c, 0xFFF9, 0xFFFB)
        || within(c, 0xE0000, 0xE0FFF)
        || (c & 0xFFFE) == 0xFFFE);
  }

  private static boolean within(int c, int first, int last) {
    return c >= first && c <= last;
  }
}
