package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Quantities against BigDecimal: nothing is lost from text to value. */
class QuantityPropertyTest {
  /** How many of its dimension's first unit each unit is; SI prefixes, 1 in = 25.4 mm exactly. */
  private static final Map<Dimension, Map<String, String>> FACTORS =
      Map.ofEntries(
          Map.entry(
              Dimension.LENGTH,
              Map.ofEntries(
                  Map.entry("mm", "1"),
                  Map.entry("um", "1e-3"),
                  Map.entry("µm", "1e-3"),
                  Map.entry("μm", "1e-3"),
                  Map.entry("nm", "1e-6"),
                  Map.entry("cm", "1e1"),
                  Map.entry("m", "1e3"),
                  Map.entry("in", "25.4"))),
          Map.entry(
              Dimension.FEED,
              Map.of(
                  "mm/min", "1", "m/min", "1000", "mm / s", "60", "m/s", "60000", "in/min",
                  "25.4")),
          Map.entry(Dimension.SURFACE_SPEED, Map.of("m/min", "1", "m/s", "60", "mm/min", "0.001")),
          Map.entry(Dimension.ROTATION, Map.of("rpm", "1", "1/min", "1", "/min", "1", "1/s", "60")),
          Map.entry(Dimension.TIME, Map.of("s", "1", "ms", "0.001", "min", "60", "h", "3600")),
          Map.entry(
              Dimension.ACCELERATION,
              Map.of("mm/s^2", "1", "m/s^2", "1000", "m/s²", "1000", "mm/s²", "1")),
          Map.entry(Dimension.JERK, Map.of("mm/s^3", "1", "m/s^3", "1000", "m/s³", "1000")),
          Map.entry(
              Dimension.STRESS,
              Map.of("MPa", "1", "GPa", "1000", "N/mm^2", "1", "N/mm²", "1", "kN/mm^2", "1000")),
          Map.entry(
              Dimension.EXPANSION,
              Map.of(
                  "um/(m K)",
                  "1",
                  "µm/(m·K)",
                  "1",
                  "μm/(m * K)",
                  "1",
                  "um/m/K",
                  "1",
                  "ppm/K",
                  "1",
                  "1/K",
                  "1e6")),
          Map.entry(Dimension.TEMPERATURE, Map.of("degC", "1", "°C", "1")),
          Map.entry(Dimension.TEMPERATURE_DIFFERENCE, Map.of("K", "1", "degC", "1", "°C", "1")),
          Map.entry(Dimension.ANGLE, Map.of("deg", "1", "°", "1")),
          Map.entry(Dimension.NUMBER, Map.of("", "1")));

  record Written(Dimension dimension, String number, String unit, String blanks) {
    String text() {
      return number + blanks + unit;
    }
  }

  @Property(tries = 2000)
  void theValueIsTheNumberTimesItsUnit(@ForAll("quantities") Written written) throws Misread {
    String factor =
        FACTORS.getOrDefault(written.dimension(), Map.of()).getOrDefault(written.unit(), "");
    assertThat(written.dimension().read(written.text()))
        .isEqualByComparingTo(new BigDecimal(written.number()).multiply(new BigDecimal(factor)));
  }

  @Property
  void everyUnitIsTestedHere(@ForAll Dimension dimension) {
    assertThat(FACTORS.getOrDefault(dimension, Map.of()).keySet())
        .containsAll(
            dimension.units().stream()
                .map(Dimension.Unit::name)
                .map(name -> name.equals("mm/s") && dimension == Dimension.FEED ? "mm / s" : name)
                .toList());
  }

  @Property
  void aUnitInTheWrongPlaceIsNamedAsWhatItIs(@ForAll("quantities") Written written) {
    for (Dimension other : Dimension.values()) {
      boolean fits =
          FACTORS.getOrDefault(other, Map.of()).containsKey(written.unit())
              || written.dimension() == Dimension.NUMBER;
      if (!fits && other != Dimension.NUMBER && !sharesUnit(other, written.unit())) {
        Misread misread = catchThrowableOfType(Misread.class, () -> other.read(written.text()));
        assertThat(misread.sentence()).endsWith(", not " + other.noun());
      }
    }
  }

  private static boolean sharesUnit(Dimension dimension, String unit) {
    return dimension.units().stream().anyMatch(known -> known.name().equals(unit.replace(" ", "")));
  }

  @Property
  void aLengthIsWrittenAsItIsRead(@ForAll long pm) throws Misread {
    Length length = new Length(pm % 100_000_000_000_000L);
    ScalarType<Length> type = Types.length(Bounds.between("-100000000", "100000000"));
    assertThat(type.parse(type.format(length))).isEqualTo(length);
    assertThat(Length.ofMm(length.exactMm())).isEqualTo(length);
    assertThat(length.mm())
        .isEqualTo(Double.parseDouble(BigDecimal.valueOf(length.pm(), 9).toString()));
    assertThat(length.um())
        .isEqualTo(Double.parseDouble(BigDecimal.valueOf(length.pm(), 6).toString()));
  }

  @Provide
  Arbitrary<Written> quantities() {
    Arbitrary<String> number =
        Arbitraries.oneOf(
            Arbitraries.longs().between(-1_000_000_000L, 1_000_000_000L).map(String::valueOf),
            Arbitraries.bigDecimals()
                .between(new BigDecimal("-1000000"), new BigDecimal("1000000"))
                .ofScale(9)
                .map(BigDecimal::toPlainString),
            Arbitraries.integers().between(0, 99_999).map(n -> "." + n),
            Arbitraries.integers().between(0, 99_999).map(n -> "+" + n + "."),
            Combinators.combine(
                    Arbitraries.integers().between(-9999, 9999),
                    Arbitraries.integers().between(-12, 12))
                .as((n, e) -> String.format(Locale.ROOT, "%d.5e%d", n, e)));
    Arbitrary<Dimension> dimension = Arbitraries.of(Dimension.class);
    return dimension.flatMap(
        d ->
            Combinators.combine(
                    number,
                    Arbitraries.of(List.copyOf(FACTORS.getOrDefault(d, Map.of()).keySet())),
                    Arbitraries.of("", " ", "  "))
                .as(
                    (n, unit, blanks) ->
                        new Written(d, n, unit, unit.startsWith("1") ? " " + blanks : blanks)));
  }
}
