package hairline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.viewer.WindowViewer;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToIntFunction;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

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

  // The window's own colours, which stand in its style sheet.

  private static String sheet() throws IOException {
    try (InputStream in = WindowViewer.class.getResourceAsStream("viewer.css")) {
      return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static ToIntFunction<String> colours(String selector) throws IOException {
    String sheet = sheet();
    int from = sheet.indexOf(selector + " {");
    String rule = sheet.substring(from, sheet.indexOf('}', from));
    Map<String, Integer> colours = new HashMap<>();
    Pattern.compile("(-[a-z-]+): #([0-9a-f]{6});")
        .matcher(rule)
        .results()
        .forEach(m -> colours.put(m.group(1), Integer.parseInt(m.group(2), 16)));
    return name -> Objects.requireNonNull(colours.get(name), name);
  }

  @ParameterizedTest
  @ValueSource(strings = {".root", ".root.dark"})
  void textOfTheWindowCanBeRead(String theme) throws IOException {
    ToIntFunction<String> colours = colours(theme);
    for (String text : List.of("-hl-ink", "-hl-quiet", "-hl-warn")) {
      for (String ground : List.of("-hl-ground", "-hl-band")) {
        assertThat(contrast(colours.applyAsInt(text), colours.applyAsInt(ground)))
            .as(text + " on " + ground)
            .isGreaterThanOrEqualTo(4.5);
      }
    }
    assertThat(contrast(colours.applyAsInt("-hl-ink"), colours.applyAsInt("-hl-selected")))
        .isGreaterThanOrEqualTo(4.5);
    // What has the focus is framed so that it can be seen (2.4.11 and 1.4.11).
    for (String ground : List.of("-hl-ground", "-hl-band")) {
      assertThat(contrast(colours.applyAsInt("-hl-cursor"), colours.applyAsInt(ground)))
          .isGreaterThanOrEqualTo(3);
    }
  }

  /** What the style sheet and the plots call by one name is one colour. */
  @ParameterizedTest
  @ValueSource(strings = {".root", ".root.dark"})
  void plotsAndControlsAgree(String theme) throws IOException {
    Palette palette = theme.equals(".root") ? Palette.LIGHT : Palette.DARK;
    ToIntFunction<String> colours = colours(theme);
    assertThat(colours.applyAsInt("-hl-ground")).isEqualTo(palette.ground() & 0xFFFFFF);
    assertThat(colours.applyAsInt("-hl-ink")).isEqualTo(palette.ink() & 0xFFFFFF);
    assertThat(colours.applyAsInt("-hl-quiet")).isEqualTo(palette.quiet() & 0xFFFFFF);
    assertThat(colours.applyAsInt("-hl-band")).isEqualTo(palette.band() & 0xFFFFFF);
    assertThat(colours.applyAsInt("-hl-cursor")).isEqualTo(palette.cursor() & 0xFFFFFF);
  }

  /** The formula against its own worked ends: black on white is 21 : 1. */
  @ParameterizedTest
  @MethodSource("themes")
  void blackOnWhiteIsTwentyOneToOne(Palette ignored) {
    assertThat(contrast(0, 0xFFFFFF)).isEqualTo(21);
    assertThat(contrast(ignored.ink(), ignored.ink())).isEqualTo(1);
  }
}
