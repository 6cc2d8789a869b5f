package hairline.checks.motion;

import hairline.checks.motion.Evaluated.Known;
import hairline.checks.motion.Evaluated.Refused;
import hairline.parser.Setting;
import hairline.parser.Span;
import hairline.parser.Value;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Computes parameters and expressions as NISTIR 6556 §3.3.2 has them.
 *
 * <p>Sums, differences and products are exact up to {@value #DIGITS} digits and rounded to 34
 * beyond. Quotients, roots and powers carry 34 digits. The other functions are computed in double
 * and rounded to 15 digits; their relative error stays below 2·10^-15 of the result for the
 * argument rounded to a double. A number that was rounded on the way leaves the evaluator rounded
 * to {@value #PLACES} decimal places, a thousandth of a picometre in millimetres, so that {@code
 * [1/3*3]} is 1.
 *
 * <p>A result beyond 10^15 is refused, one below 10^-60 is 0, so no expression takes long.
 */
public final class Evaluator {
  private static final int DIGITS = 40;
  private static final int PLACES = 12;
  private static final int DEEPEST = 1000;
  private static final int SMALLEST_EXPONENT = -60;
  private static final BigDecimal LARGEST = BigDecimal.TEN.pow(15);
  private static final MathContext CARRIED = MathContext.DECIMAL128;
  private static final MathContext POWERS = new MathContext(DIGITS + 10, RoundingMode.HALF_EVEN);
  private static final MathContext DOUBLES = new MathContext(15, RoundingMode.HALF_EVEN);
  private static final BigDecimal LARGEST_WHOLE_POWER = BigDecimal.valueOf(999_999_999L);
  // "A decimal number which is supposed be close to an integer is considered close enough if it is
  // within 0.0001 of an integer" (NISTIR 6556 §3.3.2.1).
  private static final BigDecimal CLOSE_TO_WHOLE = new BigDecimal("0.0001");
  private static final BigDecimal FULL_TURN = BigDecimal.valueOf(360);
  private static final BigDecimal HALF_TURN = BigDecimal.valueOf(180);
  private static final BigDecimal QUARTER_TURN = BigDecimal.valueOf(90);

  private final Parameters parameters;

  /** An evaluator that reads and sets these parameters. */
  public Evaluator(Parameters parameters) {
    this.parameters = parameters;
  }

  /** What a value comes to with the parameters as they stand now. */
  public Evaluated evaluate(Value value) {
    if (value instanceof Value.Literal literal) {
      return Known.of(literal.toBigDecimal());
    }
    Evaluated result = compute(value, 0);
    return result instanceof Known known && !known.exact() ? settled(known) : result;
  }

  /**
   * The whole number nearest to this one, where it is within 0.0001 of it and fits a long (NISTIR
   * 6556 §3.3.2.1).
   */
  public static Optional<Long> whole(BigDecimal number) {
    BigDecimal nearest = number.setScale(0, RoundingMode.HALF_UP);
    if (number.subtract(nearest).abs().compareTo(CLOSE_TO_WHOLE) > 0
        || nearest.unscaledValue().bitLength() > 63) {
      return Optional.empty();
    }
    return Optional.of(nearest.longValueExact());
  }

  /**
   * A setting that could not be computed; its parameter is unknown from here on.
   *
   * @param span where the setting stands
   * @param why the reason
   */
  public record Refusal(Span span, String why) {}

  /**
   * Lets the settings of a block act, after its words were evaluated: all are computed with the
   * values from before the block, then stored in the order written (NISTIR 6556 §3.3.3). A setting
   * whose parameter number is unknown makes every parameter unknown.
   *
   * @param line the line of the block
   * @return what could not be computed
   */
  public List<Refusal> apply(List<Setting> settings, int line) {
    if (settings.isEmpty()) {
      return List.of();
    }
    List<Evaluated> indexes = new ArrayList<>();
    List<Evaluated> values = new ArrayList<>();
    for (Setting setting : settings) {
      indexes.add(index(setting.index(), 0));
      values.add(compute(setting.value(), 0));
    }
    List<Refusal> refusals = new ArrayList<>();
    for (int i = 0; i < settings.size(); i++) {
      Span span = settings.get(i).span();
      Evaluated index = indexes.get(i);
      Evaluated value = values.get(i);
      if (value instanceof Refused refused) {
        refusals.add(new Refusal(span, refused.why()));
      }
      if (index instanceof Known known) {
        parameters.set(known.number().intValueExact(), value, line);
      } else if (index instanceof Refused refused) {
        refusals.add(new Refusal(span, refused.why()));
      } else {
        parameters.forgetAll(line);
      }
    }
    return refusals;
  }

  /** The value unsettled, so that what was rounded is not rounded again on the way. */
  private Evaluated compute(Value value, int depth) {
    if (depth > DEEPEST) {
      return new Refused("the expression nests deeper than " + DEEPEST + " levels");
    }
    if (value instanceof Value.Literal literal) {
      return Known.of(literal.toBigDecimal());
    }
    if (value instanceof Value.Parameter parameter) {
      Evaluated index = index(parameter.index(), depth + 1);
      return index instanceof Known known ? parameters.get(known.number().intValueExact()) : index;
    }
    if (value instanceof Value.Negated negated) {
      Evaluated operand = compute(negated.operand(), depth + 1);
      return operand instanceof Known known
          ? new Known(known.number().negate(), known.exact())
          : operand;
    }
    if (value instanceof Value.Call call) {
      Evaluated argument = compute(call.argument(), depth + 1);
      return argument instanceof Known known ? call(call.function(), known) : argument;
    }
    if (value instanceof Value.ArcTangent tangent) {
      return both(
          compute(tangent.y(), depth + 1), compute(tangent.x(), depth + 1), Evaluator::arcTangent);
    }
    return chain((Value.Binary) value, depth);
  }

  /** A chain of operators leans to the left and may be long: it is walked, not recursed into. */
  private Evaluated chain(Value.Binary last, int depth) {
    Deque<Value.Binary> operations = new ArrayDeque<>();
    Value first = last;
    while (first instanceof Value.Binary binary) {
      operations.push(binary);
      first = binary.left();
    }
    Evaluated result = compute(first, depth + 1);
    while (!operations.isEmpty()) {
      Value.Binary operation = operations.pop();
      Evaluated right = compute(operation.right(), depth + 1);
      result = both(result, right, (a, b) -> operate(operation.operator(), a, b));
    }
    return result;
  }

  private interface OfTwo {
    Evaluated of(Known left, Known right);
  }

  private static Evaluated both(Evaluated left, Evaluated right, OfTwo function) {
    if (left instanceof Known a && right instanceof Known b) {
      return function.of(a, b);
    }
    if (left instanceof Refused || right instanceof Known) {
      return left;
    }
    return right instanceof Refused || left instanceof Known ? right : left;
  }

  private Evaluated index(Value value, int depth) {
    Evaluated computed = compute(value, depth);
    if (!(computed instanceof Known known)) {
      return computed;
    }
    BigDecimal number = settled(known).number();
    Optional<Long> whole = whole(number);
    if (whole.isEmpty()) {
      return new Refused("parameter number " + shortly(number) + " is not whole");
    }
    if (whole.get() < 1 || whole.get() > Parameters.LAST) {
      return new Refused(
          "parameter number " + shortly(number) + " is not between 1 and " + Parameters.LAST);
    }
    return Known.of(whole.get());
  }

  private static Evaluated operate(Value.Operator operator, Known left, Known right) {
    BigDecimal a = left.number();
    BigDecimal b = right.number();
    boolean exact = left.exact() && right.exact();
    return switch (operator) {
      case ADD -> bounded(a.add(b), exact);
      case SUBTRACT -> bounded(a.subtract(b), exact);
      case MULTIPLY -> bounded(a.multiply(b), exact);
      case DIVIDE -> divide(a, b, exact);
      case MODULO -> modulo(settled(left).number(), settled(right).number(), exact);
      case POWER -> power(a, b, exact);
      case AND -> truth(isTrue(left) && isTrue(right), exact);
      case OR -> truth(isTrue(left) || isTrue(right), exact);
      case XOR -> truth(isTrue(left) != isTrue(right), exact);
    };
  }

  private static boolean isTrue(Known known) {
    return settled(known).number().signum() != 0;
  }

  private static Evaluated truth(boolean value, boolean exact) {
    return new Known(value ? BigDecimal.ONE : BigDecimal.ZERO, exact);
  }

  private static Evaluated divide(BigDecimal a, BigDecimal b, boolean exact) {
    if (b.signum() == 0) {
      return new Refused("division by zero");
    }
    BigDecimal quotient = a.divide(b, CARRIED);
    return bounded(quotient, exact && quotient.multiply(b).compareTo(a) == 0);
  }

  /** The remainder, never negative. */
  private static Evaluated modulo(BigDecimal a, BigDecimal b, boolean exact) {
    if (b.signum() == 0) {
      return new Refused("MOD by zero");
    }
    BigDecimal rest = a.remainder(b);
    return bounded(rest.signum() < 0 ? rest.add(b.abs()) : rest, exact);
  }

  private static Evaluated power(BigDecimal a, BigDecimal b, boolean exact) {
    if (a.signum() == 0) {
      return b.signum() < 0
          ? new Refused("zero to a negative power")
          : truth(b.signum() == 0, exact);
    }
    BigDecimal whole = b.setScale(0, RoundingMode.HALF_EVEN);
    boolean isWhole = whole.compareTo(b) == 0;
    if (a.signum() < 0 && !isWhole) {
      return new Refused("a negative number to a power that is not whole");
    }
    double estimate = StrictMath.pow(a.doubleValue(), b.doubleValue());
    if (Math.abs(estimate) > 2 * LARGEST.doubleValue()) {
      return tooLarge();
    }
    if (Math.abs(estimate) < StrictMath.pow(10, SMALLEST_EXPONENT - 1)) {
      return new Known(BigDecimal.ZERO, false);
    }
    if (!isWhole || whole.abs().compareTo(LARGEST_WHOLE_POWER) > 0) {
      return ofDouble(estimate);
    }
    int exponent = whole.intValueExact();
    BigDecimal result = a.pow(Math.abs(exponent), POWERS).stripTrailingZeros();
    // A result of fewer digits than were carried was not rounded.
    boolean unrounded = exact && result.precision() <= DIGITS;
    return exponent < 0 ? divide(BigDecimal.ONE, result, unrounded) : bounded(result, unrounded);
  }

  private static Evaluated call(Value.Function function, Known argument) {
    BigDecimal x = argument.number();
    boolean exact = argument.exact();
    return switch (function) {
      case ABS -> new Known(x.abs(), exact);
      case FIX -> bounded(settled(argument).number().setScale(0, RoundingMode.FLOOR), exact);
      case FUP -> bounded(settled(argument).number().setScale(0, RoundingMode.CEILING), exact);
      case ROUND -> bounded(settled(argument).number().setScale(0, RoundingMode.HALF_UP), exact);
      case SQRT -> squareRoot(x, exact);
      case SIN -> sine(x);
      case COS -> sine(QUARTER_TURN.subtract(x));
      case TAN -> tangent(x);
      case ASIN -> arc(x, "arc sine", StrictMath.asin(x.doubleValue()));
      case ACOS -> arc(x, "arc cosine", StrictMath.acos(x.doubleValue()));
      case EXP -> ofDouble(StrictMath.exp(x.doubleValue()));
      case LN ->
          x.signum() <= 0
              ? new Refused("the logarithm of " + shortly(x) + ", which is not positive")
              : ofDouble(StrictMath.log(x.doubleValue()));
    };
  }

  private static Evaluated squareRoot(BigDecimal x, boolean exact) {
    if (x.signum() < 0) {
      return new Refused("the square root of " + shortly(x) + ", which is negative");
    }
    BigDecimal root = x.sqrt(CARRIED);
    return bounded(root, exact && root.multiply(root).compareTo(x) == 0);
  }

  private static Evaluated sine(BigDecimal degrees) {
    return ofDouble(sineOf(degrees));
  }

  private static Evaluated tangent(BigDecimal degrees) {
    double cosine = sineOf(QUARTER_TURN.subtract(degrees));
    return cosine == 0
        ? new Refused("the tangent of " + shortly(degrees) + "°, which is infinite")
        : ofDouble(sineOf(degrees) / cosine);
  }

  /**
   * The sine of an angle, reduced exactly to the first half quadrant, so that whole turns lose
   * nothing and multiples of 90° are exact.
   */
  private static double sineOf(BigDecimal degrees) {
    BigDecimal angle = degrees.remainder(FULL_TURN);
    if (angle.signum() < 0) {
      angle = angle.add(FULL_TURN);
    }
    boolean negative = angle.compareTo(HALF_TURN) >= 0;
    if (negative) {
      angle = angle.subtract(HALF_TURN);
    }
    if (angle.compareTo(QUARTER_TURN) > 0) {
      angle = HALF_TURN.subtract(angle);
    }
    BigDecimal complement = QUARTER_TURN.subtract(angle);
    double sine =
        angle.compareTo(complement) <= 0
            ? StrictMath.sin(StrictMath.toRadians(angle.doubleValue()))
            : StrictMath.cos(StrictMath.toRadians(complement.doubleValue()));
    return negative ? -sine : sine;
  }

  private static Evaluated arc(BigDecimal x, String name, double radians) {
    return x.abs().compareTo(BigDecimal.ONE) > 0
        ? new Refused("the " + name + " of " + shortly(x) + ", which lies beyond 1")
        : ofDouble(StrictMath.toDegrees(radians));
  }

  private static Evaluated arcTangent(Known y, Known x) {
    if (y.number().signum() == 0 && x.number().signum() == 0) {
      return new Refused("the arc tangent of 0/0");
    }
    return ofDouble(
        StrictMath.toDegrees(StrictMath.atan2(y.number().doubleValue(), x.number().doubleValue())));
  }

  private static Evaluated ofDouble(double value) {
    return Math.abs(value) > 2 * LARGEST.doubleValue()
        ? tooLarge()
        : bounded(new BigDecimal(value).round(DOUBLES), false);
  }

  private static Evaluated bounded(BigDecimal number, boolean exact) {
    if (number.abs().compareTo(LARGEST) > 0) {
      return tooLarge();
    }
    if (number.precision() - number.scale() < SMALLEST_EXPONENT) {
      return new Known(BigDecimal.ZERO, exact && number.signum() == 0);
    }
    BigDecimal carried = number.precision() > DIGITS ? number.round(CARRIED) : number;
    return new Known(
        carried.scale() < 0 ? carried.setScale(0) : carried,
        exact && carried.compareTo(number) == 0);
  }

  private static Refused tooLarge() {
    return new Refused("a result beyond 10^15");
  }

  private static Known settled(Known known) {
    if (known.exact() || known.number().scale() <= PLACES) {
      return known;
    }
    BigDecimal rounded =
        known.number().setScale(PLACES, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return new Known(rounded.scale() < 0 ? rounded.setScale(0) : rounded, false);
  }

  /** A number for a message. */
  private static String shortly(BigDecimal number) {
    BigDecimal rounded = number.round(new MathContext(6));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
