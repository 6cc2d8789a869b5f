package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The colour map against what makes one perceptually uniform. */
class CividisTest {

  private static double linear(int value) {
    double v = value / 255.0;
    return v <= 0.04045 ? v / 12.92 : StrictMath.pow((v + 0.055) / 1.055, 2.4);
  }

  /** Lightness L* (CIE 15, D65) of an sRGB colour (IEC 61966-2-1); formulas from memory. */
  private static double lightness(int colour) {
    double luminance =
        0.2126 * linear((colour >> 16) & 0xFF)
            + 0.7152 * linear((colour >> 8) & 0xFF)
            + 0.0722 * linear(colour & 0xFF);
    return luminance > 216.0 / 24389
        ? 116 * StrictMath.cbrt(luminance) - 16
        : luminance * 24389.0 / 27;
  }

  @Test
  void lightnessRisesEvenly() {
    double dark = lightness(Cividis.at(0));
    double light = lightness(Cividis.at(1));
    assertThat(dark).isLessThan(15);
    assertThat(light).isGreaterThan(90);
    double before = dark - 0.01;
    for (int k = 0; k <= 100; k++) {
      double now = lightness(Cividis.at(k / 100.0));
      assertThat(now).as("at %d %%", k).isGreaterThan(before - 0.5);
      // Within 2 of 100 of the straight line from dark to light.
      assertThat(Math.abs(now - (dark + (light - dark) * k / 100))).isLessThan(2);
      before = now;
    }
  }

  @Test
  void placesBeyondTheEndsTakeTheEnds() {
    assertThat(Cividis.at(-1)).isEqualTo(Cividis.at(0)).isEqualTo(0x00224E);
    assertThat(Cividis.at(2)).isEqualTo(Cividis.at(1)).isEqualTo(0xFEE838);
  }
}
