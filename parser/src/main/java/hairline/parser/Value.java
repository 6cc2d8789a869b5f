package hairline.parser;

import java.math.BigDecimal;

/**
 * What stands behind an address letter or in an expression, as NISTIR 6556 §3.3.2 has it. Nesting
 * is limited by the reader, so recursion over a value is bounded.
 */
public sealed interface Value {

  /**
   * A number as written: {@code unscaled · 10^-scale}, exact. Digits that do not fit a long stand
   * in {@code big}; then {@code unscaled} is 0.
   *
   * @param unscaled the digits with their sign
   * @param scale how many of them follow the decimal point, trailing zeros included
   * @param big the whole value where it does not fit a long, else absent
   * @param hasPoint whether a decimal point was written
   */
  record Literal(long unscaled, int scale, java.util.Optional<BigDecimal> big, boolean hasPoint)
      implements Value {

    /** A literal of this exact value. */
    public static Literal of(BigDecimal number, boolean hasPoint) {
      BigDecimal plain = number.scale() < 0 ? number.setScale(0) : number;
      if (plain.unscaledValue().bitLength() < 64) {
        return new Literal(
            plain.unscaledValue().longValueExact(),
            plain.scale(),
            java.util.Optional.empty(),
            hasPoint);
      }
      return new Literal(0, plain.scale(), java.util.Optional.of(plain), hasPoint);
    }

    /** The exact value. */
    public BigDecimal toBigDecimal() {
      return big.orElseGet(() -> BigDecimal.valueOf(unscaled, scale));
    }
  }

  /** {@code #index}: the value of a parameter. */
  record Parameter(Value index) implements Value {}

  /** A sign before a value that is no plain number: {@code -#4}, {@code -[#8/2]}. */
  record Negated(Value operand) implements Value {}

  /** {@code left operator right}. */
  record Binary(Operator operator, Value left, Value right) implements Value {}

  /** {@code function[argument]}; angles in degrees. */
  record Call(Function function, Value argument) implements Value {}

  /** {@code atan[y]/[x]}; degrees. */
  record ArcTangent(Value y, Value x) implements Value {}

  /** The operators of NISTIR 6556 §3.3.2.3, in their order of precedence. */
  enum Operator {
    POWER,
    MULTIPLY,
    DIVIDE,
    MODULO,
    ADD,
    SUBTRACT,
    AND,
    OR,
    XOR
  }

  /** The functions of NISTIR 6556 §3.3.2.4. */
  enum Function {
    ABS,
    ACOS,
    ASIN,
    COS,
    EXP,
    FIX,
    FUP,
    LN,
    ROUND,
    SIN,
    SQRT,
    TAN
  }
}
