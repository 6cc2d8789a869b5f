package hairline.checks.report;

/**
 * The colour map cividis: from blue over grey to yellow, its lightness rising evenly, and alike for
 * readers with and without red-green colour blindness. Published in PLoS ONE 13(7), e0199239
 * (2018); here its colours at every tenth, and straight lines between.
 */
public final class Cividis {
  private static final int[] TENTHS = {
    0x00224E, 0x083370, 0x35456C, 0x4F576C, 0x666970, 0x7D7C78, 0x948E77, 0xAEA371, 0xC8B866,
    0xE5CF52, 0xFEE838
  };

  private Cividis() {}

  /** The colour as 0xRRGGBB at a place from 0, dark, to 1, light. */
  public static int at(double place) {
    double tenths = Math.max(0, Math.min(1, place)) * (TENTHS.length - 1);
    int k = Math.min(TENTHS.length - 2, (int) tenths);
    double share = tenths - k;
    int colour = 0;
    for (int shift = 16; shift >= 0; shift -= 8) {
      int low = (TENTHS[k] >> shift) & 0xFF;
      int high = (TENTHS[k + 1] >> shift) & 0xFF;
      colour |= (int) (low + share * (high - low) + 0.5) << shift;
    }
    return colour;
  }
}
