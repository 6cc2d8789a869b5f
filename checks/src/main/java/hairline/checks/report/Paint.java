package hairline.checks.report;

import hairline.checks.finding.Level;

/**
 * The few colours of the text report. They were chosen by calculation: each stands out from black
 * and from white alike (a contrast of 3.8 or more by the formula of WCAG 2.1; letters in these
 * colours are bold or only repeat what words say), and the pair that matters, vermilion against
 * blue, stays apart with every common deficiency of colour vision. Nothing is told by colour alone.
 */
enum Paint {
  ERROR(166, 0xD75F00, true),
  WARNING(31, 0x0087AF, true),
  NOTE(243, 0x767676, true),
  QUIET(243, 0x767676, false),
  STRONG(-1, -1, true);

  private final int index;
  private final int rgb;
  private final boolean bold;

  Paint(int index, int rgb, boolean bold) {
    this.index = index;
    this.rgb = rgb;
    this.bold = bold;
  }

  static Paint of(Level level) {
    return switch (level) {
      case ERROR -> ERROR;
      case WARNING -> WARNING;
      case NOTE -> NOTE;
    };
  }

  /** The red, green and blue of its place in the 256-colour table; -1 for the terminal's own. */
  int rgb() {
    return rgb;
  }

  /** The text between the sequences that switch this colour on and off. */
  String on(String text) {
    String colour = index < 0 ? "" : "38;5;" + index;
    String codes = bold ? (colour.isEmpty() ? "1" : "1;" + colour) : colour;
    return "\u001b[" + codes + "m" + text + "\u001b[0m";
  }
}
