package hairline.parser;

import java.util.Locale;

/** Prints values in one canonical form: every operation in brackets. */
final class Show {
  private Show() {}

  static String word(Word word) {
    return word.letter() + value(word.value());
  }

  static String setting(Setting setting) {
    return "#" + value(setting.index()) + "=" + value(setting.value());
  }

  static String value(Value value) {
    if (value instanceof Value.Literal literal) {
      return literal.toBigDecimal().toPlainString();
    }
    if (value instanceof Value.Parameter parameter) {
      return "#" + value(parameter.index());
    }
    if (value instanceof Value.Negated negated) {
      return "-" + value(negated.operand());
    }
    if (value instanceof Value.Binary binary) {
      return "["
          + value(binary.left())
          + " "
          + sign(binary.operator())
          + " "
          + value(binary.right())
          + "]";
    }
    if (value instanceof Value.Call call) {
      return call.function().name().toLowerCase(Locale.ROOT) + "[" + value(call.argument()) + "]";
    }
    Value.ArcTangent atan = (Value.ArcTangent) value;
    return "atan[" + value(atan.y()) + "]/[" + value(atan.x()) + "]";
  }

  private static String sign(Value.Operator operator) {
    return switch (operator) {
      case POWER -> "**";
      case MULTIPLY -> "*";
      case DIVIDE -> "/";
      case MODULO -> "mod";
      case ADD -> "+";
      case SUBTRACT -> "-";
      case AND -> "and";
      case OR -> "or";
      case XOR -> "xor";
    };
  }
}
