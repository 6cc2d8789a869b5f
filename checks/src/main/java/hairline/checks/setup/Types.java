package hairline.checks.setup;

import hairline.checks.cutting.Band;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;

/** The kinds of values that keys take. */
final class Types {
  private Types() {}

  static ScalarType<String> text() {
    return new TextType();
  }

  /** The constants of an enumeration by their names in lower case. */
  static <E extends Enum<E>> ScalarType<E> choice(Class<E> type) {
    return ChoiceType.of(type, constant -> constant.name().toLowerCase(Locale.ROOT));
  }

  /** The constants of an enumeration by their names as they are. */
  static <E extends Enum<E>> ScalarType<E> capitals(Class<E> type) {
    return ChoiceType.of(type, Enum::name);
  }

  static ScalarType<Boolean> flag() {
    return ChoiceType.flag();
  }

  static WholeType whole(long lo, long hi) {
    return new WholeType(lo, hi);
  }

  static ScalarType<Integer> integer(int lo, int hi) {
    return new MappedType<>(whole(lo, hi), Math::toIntExact, Integer::longValue);
  }

  static QuantityType<Double> number(Bounds bounds) {
    return quantity(Dimension.NUMBER, bounds);
  }

  static QuantityType<Double> quantity(Dimension dimension, Bounds bounds) {
    return new QuantityType<>(
        dimension,
        bounds,
        BigDecimal::doubleValue,
        value -> dimension.format(BigDecimal.valueOf(value)));
  }

  /** Lengths within bounds in millimetres. */
  static QuantityType<Length> length(Bounds bounds) {
    return new QuantityType<>(Dimension.LENGTH, bounds, Types::exactLength, Length::toString);
  }

  private static Length exactLength(BigDecimal mm) throws Misread {
    try {
      return Length.ofMm(mm);
    } catch (ArithmeticException e) {
      throw new Misread(
          "the length has digits below a picometre", "at most 12 digits below a metre");
    }
  }

  static ValueType<LengthBand> lengthBand(Bounds bounds) {
    QuantityType<Length> length = length(bounds);
    return new EitherType<>(
        new MappedType<>(length, LengthBand::of, LengthBand::typical),
        new ListType<>(
            length,
            3,
            3,
            "[low, typical, high]",
            three -> {
              checkOrder(
                  three.get(0).compareTo(three.get(1)), three.get(1).compareTo(three.get(2)));
              return new LengthBand(three.get(0), three.get(1), three.get(2));
            },
            band -> List.of(band.low(), band.typical(), band.high())),
        band -> band.low().equals(band.high()));
  }

  static ValueType<Band> band(Dimension dimension, Bounds bounds) {
    return band(quantity(dimension, bounds));
  }

  static ValueType<Band> band(ScalarType<Double> number) {
    return new EitherType<>(
        new MappedType<>(number, Band::ofExact, Band::typical),
        new ListType<>(
            number,
            3,
            3,
            "[low, typical, high]",
            three -> {
              checkOrder(
                  three.get(0).compareTo(three.get(1)), three.get(1).compareTo(three.get(2)));
              return new Band(three.get(0), three.get(1), three.get(2));
            },
            band -> List.of(band.low(), band.typical(), band.high())),
        Band::isExact);
  }

  private static void checkOrder(int lowToTypical, int typicalToHigh) throws Misread {
    if (lowToTypical > 0 || typicalToHigh > 0) {
      throw new Misread("the three values of a band fall", "a band rises: [low, typical, high]");
    }
  }

  static ValueType<LengthRange> lengthRange(Bounds bounds) {
    return new ListType<>(
        length(bounds),
        2,
        2,
        "two lengths [from, to]",
        two -> {
          checkRise(two.get(0).compareTo(two.get(1)));
          return new LengthRange(two.get(0), two.get(1));
        },
        range -> List.of(range.lo(), range.hi()));
  }

  static ValueType<NumberRange> range(Dimension dimension, Bounds bounds) {
    return new ListType<>(
        quantity(dimension, bounds),
        2,
        2,
        "two values [from, to]",
        two -> {
          checkRise(two.get(0).compareTo(two.get(1)));
          return new NumberRange(two.get(0), two.get(1));
        },
        range -> List.of(range.lo(), range.hi()));
  }

  private static void checkRise(int fromTo) throws Misread {
    if (fromTo >= 0) {
      throw new Misread("the second value is not above the first", "a range rises: [from, to]");
    }
  }

  /** A tolerance of at most this half width, in millimetres. */
  static ValueType<Tolerance> tolerance(String mostMm) {
    return new EitherType<>(
        new ToleranceType(length(Bounds.positive(mostMm))),
        new ListType<>(
            length(Bounds.between("-" + mostMm, mostMm)),
            2,
            2,
            "two deviations [from, to]",
            two -> {
              checkRise(two.get(0).compareTo(two.get(1)));
              return new Tolerance(two.get(0), two.get(1));
            },
            tolerance -> List.of(tolerance.lo(), tolerance.hi())),
        tolerance -> tolerance.lo().pm() == -tolerance.hi().pm());
  }

  static ValueType<AxisValues> axisValues(Dimension dimension, Bounds bounds) {
    QuantityType<Double> rate = quantity(dimension, bounds);
    return new EitherType<>(
        new MappedType<>(rate, AxisValues::alongPath, values -> values.alongPath().orElseThrow()),
        new AxisMapType(rate),
        values -> values.alongPath().isPresent());
  }

  /** A list of at least one and at most this many values. */
  static <E> ValueType<List<E>> list(ValueType<E> element, int least, int most) {
    return new ListType<>(
        element,
        least,
        most,
        "a list of at most " + most + ": " + element.takes(),
        elements -> elements,
        list -> list);
  }

  /** A modulus, kept in GPa. */
  static ScalarType<Double> gigapascals(Bounds bounds) {
    return new QuantityType<>(
        Dimension.STRESS,
        bounds,
        megapascals -> megapascals.movePointLeft(3).doubleValue(),
        gigapascals -> Numbers.plain(gigapascals) + " GPa");
  }

  /** m_c; tables that print 1 − m_c are told from those that print m_c by its size. */
  static ScalarType<Double> forceExponent() {
    return new QuantityType<>(
        Dimension.NUMBER,
        Bounds.between("0", "1"),
        number -> {
          if (number.compareTo(new BigDecimal("0.5")) > 0) {
            throw new Misread(
                "`" + Numbers.plain(number) + "` is too large for the exponent mc",
                "German tables often print 1 − mc; then mc is "
                    + Numbers.plain(BigDecimal.ONE.subtract(number)));
          }
          return number.doubleValue();
        },
        Numbers::plain);
  }
}
