package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.yaml.snakeyaml.nodes.Node;

/** The value types, and that each key writes what it reads. */
class ValuesTest {

  static Stream<Key<?>> keys() {
    return Stream.of(
            MachineKeys.ALL,
            SpindleKeys.ALL,
            ControlKeys.ALL,
            CodeKeys.ALL,
            ToolKeys.ALL,
            MaterialKeys.ALL,
            OffsetKeys.ALL,
            StockKeys.ALL,
            ShopKeys.ALL,
            JobKeys.ALL,
            FeatureKeys.ALL,
            LimitKeys.ALL,
            RuleKeys.ALL)
        .flatMap(List::stream);
  }

  private static <T> T read(Key<T> key, String text) {
    Problems problems = new Problems();
    Node node = SheetText.compose(text, "text", problems).orElseThrow();
    try {
      return key.type().read(node);
    } catch (Misread misread) {
      throw new AssertionError(key + ": " + misread.sentence(), misread);
    }
  }

  @ParameterizedTest
  @MethodSource("keys")
  <T> void theExampleReadsAndReadsAgainAsWritten(Key<T> key) {
    T value = read(key, key.example());
    assertThat(read(key, key.format(value))).isEqualTo(value);
    assertThat(key.doc()).isNotBlank();
  }

  @ParameterizedTest
  @MethodSource("keys")
  <T> void theExampleOfADefaultIsTheDefault(Key<T> key) {
    key.defaultValue()
        .ifPresent(
            value -> {
              assertThat(read(key, key.example())).isEqualTo(value);
              assertThat(read(key, key.format(value))).isEqualTo(value);
              assertThat(key.defaultSource()).isNotBlank();
            });
  }

  @Test
  void longerFormsReadAgainAsWritten() {
    writes(ToolKeys.RUNOUT, "[0.5 um, 1 um, 1.5 um]");
    writes(ToolKeys.YOUNGS_MODULUS_GPA, "[560 GPa, 580 GPa, 600 GPa]");
    writes(MaterialKeys.FORCE_EXPONENT, "[0.2, 0.25, 0.3]");
    writes(SpindleKeys.GROWTH_TIME_CONSTANT_S, "[300 s, 360 s, 420 s]");
    writes(MachineKeys.ACCELERATION_MM_PER_S2, "{X: 8000 mm/s^2, Z: 6000 mm/s^2}");
    writes(MachineKeys.RAPID_MM_PER_MIN, "{Y: 15000 mm/min}");
    writes(JobKeys.TOLERANCE, "[-0.5 um, 1 um]");
    writes(JobKeys.TOLERANCE, "±0.5 um");
    writes(RuleKeys.LEVEL, "{inch-rounding: error, cusp-above-limit: note}");
    writes(RuleKeys.SKIP, "[inch-rounding, cusp-above-limit]");
    writes(CodeKeys.WARM_UP, "[M71, G5.1, P9001]");
    writes(MachineKeys.NAME, "\"mill \\\\ 2: \\\"new\\\" # one\"");
    writes(MachineKeys.NAME, "\"a\\x0Ab\\x1B\\x85\"");
    writes(ToolKeys.LIFE, "20000 mm");
    writes(StockKeys.TOP, "-100 mm");
    writes(StockKeys.TOP, "-99.9 um");
    writes(StockKeys.TOP, "0.1 mm");
  }

  private static <T> void writes(Key<T> key, String text) {
    assertThat(key.format(read(key, text))).isEqualTo(text);
  }

  @Test
  void perAxisValues() {
    AxisValues values = read(MachineKeys.JERK_MM_PER_S3, "{X: 1 m/s^3, Y: 2 m/s^3}");
    assertThat(values)
        .isEqualTo(
            AxisValues.perAxis(
                OptionalDouble.of(1000), OptionalDouble.of(2000), OptionalDouble.empty()));
    assertThat(values.alongPath()).isEmpty();
    assertThat(AxisValues.alongPath(3).alongPath()).hasValue(3);
    assertThat(AxisValues.alongPath(3).x()).isEmpty();
  }

  @Test
  void aLopsidedToleranceHasItsMiddleAndHalfWidth() {
    // [−0.5, 1] µm: middle 0.25, half width 0.75.
    Tolerance tolerance = read(JobKeys.TOLERANCE, "[-0.5 um, 1 um]");
    assertThat(tolerance.shiftUm()).isEqualTo(0.25);
    assertThat(tolerance.halfWidthUm()).isEqualTo(0.75);
    assertThat(tolerance).hasToString("[-0.5 um, 1 um]");
    Tolerance even = read(JobKeys.TOLERANCE, "+-1 um");
    assertThat(even.shiftUm()).isZero();
    assertThat(even.halfWidthUm()).isEqualTo(1);
    assertThat(even).hasToString("±1 um").isEqualTo(read(JobKeys.TOLERANCE, "+/- 1 um"));
    Tolerance oneSided = new Tolerance(Length.ZERO, new Length(1));
    assertThat(oneSided.halfWidthUm()).isEqualTo(0.0000005);
    assertThatThrownBy(() -> new Tolerance(Length.ZERO, Length.ZERO))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void codesAreEqualWhateverTheirZeros() {
    assertThat(read(CodeKeys.IGNORE, "[m08, G0, G00.0, g54.10]"))
        .containsExactly(
            CodeWord.of('M', 8),
            CodeWord.of('G', 0),
            CodeWord.of('G', 0),
            new CodeWord('G', new BigDecimal("54.1")));
    assertThat(CodeWord.of('M', 90)).hasToString("M90");
    assertThat(new CodeWord('G', new BigDecimal("5.10"))).hasToString("G5.1");
    assertThat(CodeWord.of('P', 9000)).isEqualTo(new CodeWord('P', new BigDecimal("9000.0")));
  }

  @Test
  void rangesIncludeTheirEnds() {
    LengthRange range = new LengthRange(new Length(-1), new Length(2));
    assertThat(Stream.of(-2L, -1L, 0L, 2L, 3L).map(range::contains))
        .containsExactly(false, true, true, true, false);
    assertThat(range).hasToString("[-0.000001 um, 0.000002 um]");
    assertThatThrownBy(() -> new LengthRange(new Length(1), new Length(1)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new NumberRange(1, 1)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void bandsRise() {
    Length one = new Length(1);
    Length two = new Length(2);
    assertThat(new LengthBand(one, one, two))
        .hasToString("[0.000001 um, 0.000001 um, 0.000002 um]");
    assertThat(LengthBand.of(one)).hasToString("0.000001 um");
    assertThatThrownBy(() -> new LengthBand(two, one, two))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new LengthBand(one, two, one))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void featuresHoldTheirPlace() {
    LengthRange range = new LengthRange(new Length(0), new Length(10));
    Feature feature =
        new Feature(
            "a",
            Optional.of(range),
            Optional.of(range),
            Optional.empty(),
            List.of(),
            Optional.empty());
    assertThat(feature.contains(5, 5)).isTrue();
    assertThat(feature.contains(11, 5)).isFalse();
    assertThat(feature.contains(5, 11)).isFalse();
    Feature anywhere =
        new Feature(
            "a", Optional.empty(), Optional.empty(), Optional.empty(), List.of(), Optional.empty());
    assertThat(anywhere.contains(Long.MIN_VALUE, Long.MAX_VALUE)).isTrue();
  }

  @Test
  void lengthsAreExact() {
    assertThat(Length.ofMm("0.000000001")).isEqualTo(new Length(1));
    assertThat(Length.ofUm("0.000001")).isEqualTo(new Length(1));
    assertThatThrownBy(() -> Length.ofMm("0.0000000001")).isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> Length.ofUm("0.0000001")).isInstanceOf(ArithmeticException.class);
    assertThat(new Length(2)).isGreaterThan(new Length(1));
    assertThat(Stream.of(0L, 99_999_999L, -99_999_999L, 100_000_000L).map(Length::new))
        .extracting(Length::toString)
        .containsExactly("0 mm", "99.999999 um", "-99.999999 um", "0.1 mm");
  }

  @Test
  void nearestCountsInsertionsDeletionsChangesAndSwaps() {
    // From the definition of the optimal string alignment distance.
    assertThat(Nearest.distance("", "abc")).isEqualTo(3);
    assertThat(Nearest.distance("abc", "")).isEqualTo(3);
    assertThat(Nearest.distance("abc", "abc")).isZero();
    assertThat(Nearest.distance("abc", "abd")).isEqualTo(1);
    assertThat(Nearest.distance("abc", "acb")).isEqualTo(1);
    assertThat(Nearest.distance("abc", "ab")).isEqualTo(1);
    assertThat(Nearest.distance("ab", "xab")).isEqualTo(1);
    assertThat(Nearest.distance("ca", "abc")).isEqualTo(3);
    assertThat(Nearest.distance("kitten", "sitting")).isEqualTo(3);
    assertThat(Nearest.distance("abcdef", "badcfe")).isEqualTo(3);
  }

  @Test
  void nearestIsNotFarAway() {
    List<String> words = List.of("flutes", "runout", "life");
    assertThat(Nearest.of("FLUTE", words)).contains("flutes");
    assertThat(Nearest.of("run-out", words)).contains("runout");
    assertThat(Nearest.of("lif", words)).contains("life");
    assertThat(Nearest.of("live", words)).contains("life");
    assertThat(Nearest.of("luxs", words)).isEmpty();
    assertThat(Nearest.of("ab", List.of("cd"))).isEmpty();
    assertThat(Nearest.of("edge_radiuz_xy", List.of("edge_radius"))).contains("edge_radius");
    assertThat(Nearest.of("x".repeat(1_000_000), words)).isEmpty();
    assertThat(Nearest.of("", words)).isEmpty();
    assertThat(Nearest.of("ab", List.of("abx", "abc"))).contains("abx");
  }
}
