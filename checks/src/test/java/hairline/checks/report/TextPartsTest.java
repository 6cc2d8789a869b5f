package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.parser.Span;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The small parts of the text report: what is harmless, how wide it is, where marks stand. */
class TextPartsTest {

  @Test
  void showsWhatWouldSteerOrHide() {
    assertThat(Visible.of("G1 X1. (µm, 幅)")).isEqualTo("G1 X1. (µm, 幅)");
    assertThat(Visible.of("\u001b[31m\u0007\n")).isEqualTo("␛[31m␇␊");
    assertThat(Visible.of("a\u202eb\u2066c\u200d\ufeff\u00ad\u009b\u007f"))
        .isEqualTo("a<U+202E>b<U+2066>c<U+200D><U+FEFF><U+00AD><U+009B>␡");
    assertThat(Visible.of("\ud800x\udb40\udc41")).isEqualTo("<U+D800>x<U+E0041>");
    assertThat(Visible.oneForOne("a\u202eb\u001bc")).isEqualTo("a\ufffdb␛c");
  }

  @Test
  void theEdgesOfWhatIsHarmless() {
    // U+0080 to U+009F are the controls C1 of ISO 6429; U+00A0 is a blank that does not break.
    assertThat(Visible.of("\u0080\u009f")).isEqualTo("<U+0080><U+009F>");
    assertThat(Visible.of("\u00a0\u00ac\u00ae ~")).isEqualTo("\u00a0\u00ac\u00ae ~");
    assertThat(Visible.of("\udfff\ud800")).isEqualTo("<U+DFFF><U+D800>");
  }

  /** Unicode Standard Annex 11: letters of east Asia are wide; combining marks take no room. */
  @Test
  void columnsAreThoseOfATerminal() {
    assertThat(DisplayWidth.of("aµ±²")).isEqualTo(4);
    assertThat(DisplayWidth.of("\u02ff")).isEqualTo(1);
    assertThat(DisplayWidth.of("\u0300")).isZero();
    assertThat(DisplayWidth.of("\u20dd")).isZero();
    assertThat(DisplayWidth.of("\u1100")).isEqualTo(2);
    assertThat(DisplayWidth.of("\u115f")).isEqualTo(2);
    assertThat(DisplayWidth.of("\u1160")).isEqualTo(1);
    assertThat(DisplayWidth.of("\u4e00\u9fff")).isEqualTo(4);
    assertThat(DisplayWidth.of("▔█…·")).isEqualTo(4);
    assertThat(DisplayWidth.of("\ud83d\ude4f")).isEqualTo(2);
  }

  @Test
  void fileNamesAreReferencesOfRfc3986() {
    assertThat(Uris.of("a b/ü~-._9.nc")).isEqualTo("a%20b/%C3%BC~-._9.nc");
    assertThat(Uris.of("a:b")).isEqualTo("a%3Ab");
    assertThat(Uris.of("A")).isEqualTo("A");
    assertThat(Uris.of("/p/q.nc")).isEqualTo("file:///p/q.nc");
  }

  @Test
  void aLineThatFitsIsNotCut() {
    assertThat(Wrap.at(7, "one two three")).containsExactly("one two", "three");
    assertThat(Wrap.at(6, "one two")).containsExactly("one", "two");
    // A tool and its number belong together, a line that is no number does not.
    assertThat(Wrap.at(4, "line of")).containsExactly("line", "of");
    assertThat(Wrap.at(4, "a tool 3")).containsExactly("a", "tool 3");
    // Twelve columns take twelve letters, the last of them a mark where more follow.
    assertThat(Excerpt.of("G1 X1. Y2.Z3", new Span(1, 3), 12).text()).isEqualTo("G1 X1. Y2.Z3");
    assertThat(Excerpt.of("G1 X1. Y2.Z34", new Span(1, 3), 12).text()).isEqualTo("G1 X1. Y2.Z…");
    // What ends within the width is shown from the line's beginning on.
    String line = "X1. ".repeat(9) + "Y2.";
    assertThat(Excerpt.of(line, new Span(37, 40), 40).text()).isEqualTo(line);
    assertThat(Excerpt.of(line, new Span(37, 40), 39).text()).startsWith("…").endsWith("Y2.");
  }

  @Test
  void marksStandBelowTheirWords() {
    Excerpt plain = Excerpt.of("G1 X1.00005 F100.", new Span(4, 12), 80);
    assertThat(plain.text()).isEqualTo("G1 X1.00005 F100.");
    assertThat(plain.marks()).isEqualTo("   ▔▔▔▔▔▔▔▔");
    Excerpt tab = Excerpt.of("N7\tX1.", new Span(4, 7), 80);
    assertThat(tab.text()).isEqualTo("N7  X1.");
    assertThat(tab.marks()).isEqualTo("    ▔▔▔");
    Excerpt wide = Excerpt.of("(幅e\u0301) X1.", new Span(7, 10), 80);
    assertThat(wide.marks()).as("two columns and none").isEqualTo("      ▔▔▔");
    Excerpt hidden = Excerpt.of("(\u202e) X1.", new Span(5, 8), 80);
    assertThat(hidden.text()).isEqualTo("(<U+202E>) X1.");
    assertThat(hidden.marks()).isEqualTo(" ".repeat(11) + "▔▔▔");
  }

  @Test
  void ofALongLineTheStretchConcernedIsShown() {
    String line = "X1. ".repeat(1000) + "Y2. " + "Z3. ".repeat(1000);
    Excerpt far = Excerpt.of(line, new Span(4001, 4004), 60);
    assertThat(DisplayWidth.of(far.text())).isLessThanOrEqualTo(60);
    assertThat(far.text()).startsWith("…").endsWith("…").contains("Y2.");
    assertThat(far.text().substring(far.marks().indexOf('▔'), far.marks().length()))
        .isEqualTo("Y2.");
  }

  @Test
  void aPlaceWithoutWidthOrBehindTheEndHasAMark() {
    assertThat(Excerpt.of("G1", new Span(3, 3), 80).marks()).isEqualTo("  ▔");
    assertThat(Excerpt.of("G1", new Span(1, 1), 80).marks()).endsWith("▔");
    assertThat(Excerpt.of("", new Span(1, 1), 80).marks()).isEqualTo("▔");
  }

  @Test
  void breaksAtBlanks() {
    assertThat(Wrap.at(10, "one two three four")).containsExactly("one two", "three four");
    assertThat(Wrap.at(5, "a longwordhere b")).containsExactly("a", "longwordhere", "b");
    assertThat(Wrap.at(5, "")).containsExactly("");
  }

  @Test
  void keepsANumberWithItsUnit() {
    assertThat(Wrap.at(20, "the spindle ran 720 s, 12 µm below"))
        .containsExactly("the spindle ran", "720 s, 12 µm below");
    assertThat(Wrap.at(9, "found at line 43")).containsExactly("found at", "line 43");
    assertThat(Wrap.at(6, "G54 in 3 mm (0.25 µm)")).containsExactly("G54 in", "3 mm", "(0.25 µm)");
  }

  /** Contrast as WCAG 2.1 defines it, section "relative luminance" and "contrast ratio". */
  @ParameterizedTest
  @EnumSource(
      value = Paint.class,
      names = {"ERROR", "WARNING", "NOTE", "QUIET"})
  void coloursStandOutFromBlackAndFromWhite(Paint paint) {
    double luminance = luminance(paint.rgb());
    assertThat((luminance + 0.05) / 0.05).isGreaterThan(3.8);
    assertThat(1.05 / (luminance + 0.05)).isGreaterThan(3.8);
  }

  private static double luminance(int rgb) {
    return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8) + 0.0722 * linear(rgb);
  }

  private static double linear(int channel) {
    double c = (channel & 0xFF) / 255.0;
    return c <= 0.03928 ? c / 12.92 : StrictMath.pow((c + 0.055) / 1.055, 2.4);
  }
}
