package hairline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Contrast as WCAG 2.2 has it: 4.5 : 1 for text (1.4.3), 3 : 1 for lines and marks (1.4.11). */
class PaletteTest {
  static List<Palette> themes() {
    return List.of(Palette.LIGHT, Palette.DARK);
  }

  private static double contrast(int a, int b) {
    double la = PlanDrawing.luminance(a);
    double lb = PlanDrawing.luminance(b);
    return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
  }

  @ParameterizedTest
  @MethodSource("themes")
  void textCanBeRead(Palette palette) {
    for (int text : new int[] {palette.ink(), palette.quiet(), palette.trace(), palette.limit()}) {
      assertThat(contrast(text, palette.ground())).isGreaterThanOrEqualTo(4.5);
      assertThat(contrast(text, palette.band())).isGreaterThanOrEqualTo(4.5);
    }
  }

  @ParameterizedTest
  @MethodSource("themes")
  void linesAndMarksCanBeSeen(Palette palette) {
    for (int mark :
        new int[] {
          palette.feed(),
          palette.rapid(),
          palette.cursor(),
          palette.measured(),
          palette.error(),
          palette.warning(),
          palette.note()
        }) {
      assertThat(contrast(mark, palette.ground())).isGreaterThanOrEqualTo(3);
      assertThat(contrast(mark, palette.band())).isGreaterThanOrEqualTo(3);
    }
  }

  /** The formula against its own worked ends: black on white is 21 : 1. */
  @ParameterizedTest
  @MethodSource("themes")
  void blackOnWhiteIsTwentyOneToOne(Palette ignored) {
    assertThat(contrast(0, 0xFFFFFF)).isEqualTo(21);
    assertThat(contrast(ignored.ink(), ignored.ink())).isEqualTo(1);
  }
}
