package hairline.checks.report;

/**
 * How many columns of a terminal a character takes: 0, 1 or 2, after Unicode Standard Annex 11
 * (wide and fullwidth take two) and the general category (marks that combine take none).
 */
final class DisplayWidth {
  private static final int[] WIDE = {
    0x1100, 0x115F, 0x2E80, 0x303E, 0x3041, 0x33FF, 0x3400, 0x4DBF, 0x4E00, 0x9FFF, 0xA000, 0xA4CF,
    0xAC00, 0xD7A3, 0xF900, 0xFAFF, 0xFE30, 0xFE6F, 0xFF01, 0xFF60, 0xFFE0, 0xFFE6, 0x1F300,
        0x1F64F,
    0x1F680, 0x1F6FF, 0x1F900, 0x1F9FF, 0x20000, 0x3FFFD
  };

  private DisplayWidth() {}

  /** The columns of a text of harmless characters. */
  static int of(String text) {
    int width = 0;
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      width += of(text.codePointAt(i));
    }
    return width;
  }

  /** The columns of one character. */
  static int of(int c) {
    if (c < 0x300) {
      return 1;
    }
    int type = Character.getType(c);
    if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
      return 0;
    }
    for (int i = 0; i < WIDE.length; i += 2) {
      if (c >= WIDE[i] && c <= WIDE[i + 1]) {
        return 2;
      }
    }
    return 1;
  }
}
