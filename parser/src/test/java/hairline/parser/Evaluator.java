package hairline.parser;

import java.util.HashMap;
import java.util.Map;

/** Computes values with doubles, as NISTIR 6556 §3.3.2 describes them; for tests of the grammar. */
final class Evaluator {
  private final Map<Integer, Double> parameters = new HashMap<>();

  double value(Value value) {
    if (value instanceof Value.Literal literal) {
      return literal.toBigDecimal().doubleValue();
    }
    if (value instanceof Value.Parameter parameter) {
      return parameters.getOrDefault((int) value(parameter.index()), 0.0);
    }
    if (value instanceof Value.Negated negated) {
      return -value(negated.operand());
    }
    if (value instanceof Value.Binary binary) {
      return binary(binary.operator(), value(binary.left()), value(binary.right()));
    }
    if (value instanceof Value.Call call) {
      return call(call.function(), value(call.argument()));
    }
    Value.ArcTangent arc = (Value.ArcTangent) value;
    return StrictMath.toDegrees(StrictMath.atan2(value(arc.y()), value(arc.x())));
  }

  /** Lets the settings of a block act; to be called once its words have been computed. */
  void apply(Block block) {
    Map<Integer, Double> changes = new HashMap<>();
    for (Setting setting : block.settings()) {
      changes.put((int) value(setting.index()), value(setting.value()));
    }
    parameters.putAll(changes);
  }

  private static double binary(Value.Operator operator, double a, double b) {
    return switch (operator) {
      case POWER -> StrictMath.pow(a, b);
      case MULTIPLY -> a * b;
      case DIVIDE -> a / b;
      case MODULO -> a - b * StrictMath.floor(a / b);
      case ADD -> a + b;
      case SUBTRACT -> a - b;
      case AND -> a != 0 && b != 0 ? 1 : 0;
      case OR -> a != 0 || b != 0 ? 1 : 0;
      case XOR -> (a != 0) != (b != 0) ? 1 : 0;
    };
  }

  private static double call(Value.Function function, double a) {
    return switch (function) {
      case ABS -> Math.abs(a);
      case ACOS -> StrictMath.toDegrees(StrictMath.acos(a));
      case ASIN -> StrictMath.toDegrees(StrictMath.asin(a));
      case COS -> StrictMath.cos(StrictMath.toRadians(a));
      case EXP -> StrictMath.exp(a);
      case FIX -> StrictMath.floor(a);
      case FUP -> StrictMath.ceil(a);
      case LN -> StrictMath.log(a);
      case ROUND -> StrictMath.rint(a);
      case SIN -> StrictMath.sin(StrictMath.toRadians(a));
      case SQRT -> StrictMath.sqrt(a);
      case TAN -> StrictMath.tan(StrictMath.toRadians(a));
    };
  }
}
