package hairline.parser;

import hairline.parser.Value.Function;
import hairline.parser.Value.Operator;
import hairline.parser.grammar.PartProgramLexer;
import hairline.parser.grammar.PartProgramParser.ArcTangentContext;
import hairline.parser.grammar.PartProgramParser.FunctionContext;
import hairline.parser.grammar.PartProgramParser.PowerContext;
import hairline.parser.grammar.PartProgramParser.ProductContext;
import hairline.parser.grammar.PartProgramParser.ProductOperatorContext;
import hairline.parser.grammar.PartProgramParser.SumContext;
import hairline.parser.grammar.PartProgramParser.SumOperatorContext;
import hairline.parser.grammar.PartProgramParser.ValueContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.TerminalNode;

/**
 * Turns trees into values, and notes what lies beyond the limits. Recursion follows the nesting of
 * brackets and {@code #}, which {@link Nesting} has limited before.
 */
final class ValueBuilder {
  private final NumberReader numbers = new NumberReader();
  private final List<Problem> spaceProblems = new ArrayList<>();
  private Optional<Problem> limitProblem = Optional.empty();
  private int operations;

  /** The value of a word, or the index of a setting. */
  Value value(ValueContext tree) {
    operations = 0;
    return checked(tree, build(tree));
  }

  /** The right side of a setting. */
  Value sum(SumContext tree) {
    operations = 0;
    return checked(tree, build(tree));
  }

  /** Takes the number behind a block delete, which is a digit from 1 to 9. */
  void checkSwitch(Token number) {
    String text = number.getText();
    if (text.length() != 1 || text.charAt(0) == '0') {
      limit(
          new Problem(
              Problem.Kind.SYNTAX,
              Spans.of(number),
              SyntaxProblems.quote(text),
              "a switch number from 1 to 9 behind '/'"));
    }
  }

  Optional<Problem> limitProblem() {
    return limitProblem;
  }

  List<Problem> spaceProblems() {
    return spaceProblems;
  }

  private Value checked(ParserRuleContext tree, Value value) {
    if (operations > Limits.OPERATIONS) {
      limit(
          SyntaxProblems.tooMuch(
              tree.getStart(),
              operations + " operations in one value",
              "at most " + Limits.OPERATIONS));
    }
    return value;
  }

  private void limit(Problem problem) {
    if (limitProblem.isEmpty()) {
      limitProblem = Optional.of(problem);
    }
  }

  private Value build(ValueContext tree) {
    boolean negative = tree.MINUS() != null;
    TerminalNode number = tree.NUMBER();
    if (number != null) {
      return literal(number.getSymbol(), negative);
    }
    Value value = unsigned(tree);
    if (negative) {
      operations++;
      return new Value.Negated(value);
    }
    return value;
  }

  private Value unsigned(ValueContext tree) {
    if (tree.parameter() != null) {
      operations++;
      return new Value.Parameter(build(tree.parameter().value()));
    }
    if (tree.expression() != null) {
      return build(tree.expression().sum());
    }
    operations++;
    FunctionContext function = tree.function();
    if (function != null) {
      return new Value.Call(
          Function.valueOf(name(function.functionName())), build(function.expression().sum()));
    }
    ArcTangentContext arcTangent = tree.arcTangent();
    return new Value.ArcTangent(
        build(arcTangent.expression(0).sum()), build(arcTangent.expression(1).sum()));
  }

  private static String name(ParserRuleContext letters) {
    StringBuilder name = new StringBuilder();
    for (int i = 0; i < letters.getChildCount(); i++) {
      name.append(Letters.of(((TerminalNode) letters.getChild(i)).getSymbol()));
    }
    return name.toString();
  }

  /** Operands and operators alternate among the children; the left ones go first. */
  private Value build(SumContext tree) {
    Value value = build((ProductContext) tree.getChild(0));
    for (int i = 1; i < tree.getChildCount(); i += 2) {
      SumOperatorContext operator = (SumOperatorContext) tree.getChild(i);
      Value right = build((ProductContext) tree.getChild(i + 1));
      value = binary(sumOperator(operator.getStart()), value, right);
    }
    return value;
  }

  private static Operator sumOperator(Token first) {
    return switch (first.getType()) {
      case PartProgramLexer.PLUS -> Operator.ADD;
      case PartProgramLexer.MINUS -> Operator.SUBTRACT;
      case PartProgramLexer.A -> Operator.AND;
      case PartProgramLexer.O -> Operator.OR;
      default -> Operator.XOR;
    };
  }

  private Value build(ProductContext tree) {
    Value value = build((PowerContext) tree.getChild(0));
    for (int i = 1; i < tree.getChildCount(); i += 2) {
      ProductOperatorContext operator = (ProductOperatorContext) tree.getChild(i);
      Value right = build((PowerContext) tree.getChild(i + 1));
      value = binary(productOperator(operator.getStart()), value, right);
    }
    return value;
  }

  private static Operator productOperator(Token first) {
    return switch (first.getType()) {
      case PartProgramLexer.TIMES -> Operator.MULTIPLY;
      case PartProgramLexer.SLASH -> Operator.DIVIDE;
      default -> Operator.MODULO;
    };
  }

  private Value build(PowerContext tree) {
    Value value = build((ValueContext) tree.getChild(0));
    for (int i = 1; i < tree.getChildCount(); i += 2) {
      value = binary(Operator.POWER, value, build((ValueContext) tree.getChild(i + 1)));
    }
    return value;
  }

  private Value binary(Operator operator, Value left, Value right) {
    operations++;
    return new Value.Binary(operator, left, right);
  }

  private Value literal(Token token, boolean negative) {
    String text = token.getText();
    numbers.read(text, negative);
    if (numbers.digits() > Limits.NUMBER_DIGITS) {
      limit(
          SyntaxProblems.tooMuch(
              token,
              "a number of " + numbers.digits() + " digits",
              "at most " + Limits.NUMBER_DIGITS + " digits"));
    }
    if (numbers.hasBlanks() && spaceProblems.size() < Limits.SPACE_PROBLEMS) {
      spaceProblems.add(
          new Problem(
              Problem.Kind.SPACE_INSIDE_NUMBER,
              Spans.of(token),
              SyntaxProblems.quote(text),
              numbers.withoutBlanks()));
    }
    return numbers.literal();
  }
}
