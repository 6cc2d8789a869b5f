package hairline.viewer.draw;

import hairline.checks.finding.Level;

/**
 * The colours of a theme, 0xAARRGGBB. Text stands at 4.5 : 1 or more against its ground, and
 * nothing is told by colour alone: paths differ by their stroke, findings by their shape. Heights
 * have the colours of the map cividis, in both themes alike.
 *
 * @param ground the ground of plots
 * @param ink text and frames
 * @param quiet remarks and ticks
 * @param grid faint lines
 * @param feed the path at feed
 * @param rapid the path at rapid
 * @param cursor the cursor
 * @param trace the second trace
 * @param limit what a trace is held against
 * @param measured a measured trace
 * @param error a finding that is an error
 * @param warning a warning
 * @param note a note
 * @param band the ground behind labels
 */
public record Palette(
    int ground,
    int ink,
    int quiet,
    int grid,
    int feed,
    int rapid,
    int cursor,
    int trace,
    int limit,
    int measured,
    int error,
    int warning,
    int note,
    int band) {

  /** Dark on light. */
  public static final Palette LIGHT =
      new Palette(
          0xFFFFFFFF,
          0xFF1A1D21,
          0xFF5B636C,
          0xFFE2E6EA,
          0xFF0B4F8A,
          0xFF8A7A66,
          0xFFB0007A,
          0xFF2B6E5A,
          0xFFB34700,
          0xFFB34700,
          0xFFB3161B,
          0xFF9A5B00,
          0xFF2F62A8,
          0xFFF3F5F7);

  /** Light on dark. */
  public static final Palette DARK =
      new Palette(
          0xFF16191D,
          0xFFECEFF2,
          0xFFA3ACB6,
          0xFF2C323A,
          0xFF6DB4F2,
          0xFFB5A58F,
          0xFFFF7AD0,
          0xFF6FCBAE,
          0xFFFFA05C,
          0xFFFFA05C,
          0xFFFF7B75,
          0xFFF0B04A,
          0xFF8FB8F5,
          0xFF1F242A);

  /** The colour of a finding. */
  public int of(Level level) {
    return switch (level) {
      case ERROR -> error;
      case WARNING -> warning;
      case NOTE -> note;
    };
  }
}
