package hairline.parser;

import hairline.parser.grammar.PartProgramParser;
import hairline.parser.grammar.PartProgramParser.BlockContext;
import java.util.Optional;
import org.antlr.v4.runtime.BailErrorStrategy;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.CommonTokenStream;
import org.antlr.v4.runtime.DefaultErrorStrategy;
import org.antlr.v4.runtime.InputMismatchException;
import org.antlr.v4.runtime.NoViableAltException;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.RuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.PredictionMode;
import org.antlr.v4.runtime.misc.IntervalSet;
import org.antlr.v4.runtime.misc.ParseCancellationException;

/**
 * Parses a block fast (SLL); where that fails, once more with full context (LL), stopping at the
 * first token that does not fit and keeping what was expected there.
 */
final class StopAtFirstError {
  private final BailErrorStrategy bail = new BailErrorStrategy();
  private final FirstError firstError = new FirstError();

  /** The tree, or nothing where the block breaks the grammar. */
  Optional<BlockContext> parse(PartProgramParser parser, CommonTokenStream tokens) {
    parser.setTokenStream(tokens);
    parser.setErrorHandler(bail);
    try {
      return Optional.of(parser.block());
    } catch (ParseCancellationException e) {
      return parseAgain(parser);
    }
  }

  /** Begins the block again from its first token. */
  private Optional<BlockContext> parseAgain(PartProgramParser parser) {
    parser.reset();
    parser.setErrorHandler(firstError);
    parser.getInterpreter().setPredictionMode(PredictionMode.LL);
    try {
      return Optional.of(parser.block());
    } catch (ParseCancellationException e) {
      return Optional.empty();
    } finally {
      parser.getInterpreter().setPredictionMode(PredictionMode.SLL);
    }
  }

  /** The token that did not fit. */
  Token offender() {
    return firstError.offender;
  }

  /** The token types that would have fitted. */
  IntervalSet expected() {
    return firstError.expected;
  }

  private static final class FirstError extends DefaultErrorStrategy {
    private Token offender = new CommonToken(Token.EOF);
    private IntervalSet expected = new IntervalSet();

    private ParseCancellationException stop(Parser parser, RecognitionException e) {
      offender = e.getOffendingToken();
      expected = parser.getExpectedTokens();
      if (e instanceof NoViableAltException noViable && noViable.getStartToken() != offender) {
        stopAtName(parser, noViable.getStartToken());
      } else if (isLetter(expected)) {
        stopAtName(parser, parser.getContext().getStart());
      }
      return new ParseCancellationException(e);
    }

    /** Only the letter that a name goes on with would have fitted. */
    private static boolean isLetter(IntervalSet types) {
      return types.getMinElement() >= PartProgramParser.A;
    }

    /**
     * What began like the name of a function or an operator went on differently. So its first
     * letter does not fit; or, behind a setting without brackets, it was an address letter.
     */
    private void stopAtName(Parser parser, Token first) {
      boolean operator =
          switch (parser.getContext().getRuleIndex()) {
            case PartProgramParser.RULE_value,
                PartProgramParser.RULE_functionName,
                PartProgramParser.RULE_arcTangent ->
                false;
            default -> true;
          };
      if (operator && isInExpression(parser.getContext())) {
        offender = first;
        expected = IntervalSet.of(PartProgramParser.RBRACKET);
      } else {
        offender = operator ? parser.getTokenStream().get(first.getTokenIndex() + 1) : first;
        expected = IntervalSet.of(PartProgramParser.NUMBER);
      }
    }

    private static boolean isInExpression(RuleContext context) {
      for (RuleContext rule = context; rule != null; rule = rule.getParent()) {
        if (rule.getRuleIndex() == PartProgramParser.RULE_expression) {
          return true;
        }
      }
      return false;
    }

    @Override
    public void recover(Parser recognizer, RecognitionException e) {
      throw stop(recognizer, e);
    }

    @Override
    public Token recoverInline(Parser recognizer) {
      throw stop(recognizer, new InputMismatchException(recognizer));
    }

    @Override
    public void reportError(Parser recognizer, RecognitionException e) {}

    /** Told at every choice, before the parser enters it: here all that could follow is known. */
    @Override
    public void sync(Parser recognizer) {
      ATNState state = recognizer.getATN().states.get(recognizer.getState());
      IntervalSet next = recognizer.getATN().nextTokens(state);
      if (!next.contains(recognizer.getInputStream().LA(1)) && !next.contains(Token.EPSILON)) {
        throw stop(recognizer, new InputMismatchException(recognizer));
      }
    }
  }
}
