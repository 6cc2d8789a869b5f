package hairline.parser;

import hairline.parser.grammar.PartProgramLexer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.misc.IntervalSet;

/** Says in a machinist's words what is wrong with a block that breaks the grammar. */
final class SyntaxProblems {
  private final Line line;
  private final List<Token> tokens;

  SyntaxProblems(Line line, List<Token> tokens) {
    this.line = line;
    this.tokens = tokens;
  }

  /** The problem of a line beyond {@link Limits#LINE_BYTES}. */
  static Problem lineTooLong() {
    return new Problem(
        Problem.Kind.SYNTAX,
        new Span(1, 1),
        "a line of more than " + Limits.LINE_BYTES + " bytes",
        "a line end");
  }

  /** Something beyond a limit, which begins at a token. */
  static Problem tooMuch(Token token, String found, String expected) {
    return new Problem(Problem.Kind.SYNTAX, Spans.of(token), found, expected);
  }

  /** A piece of a program in quotes, shortened. */
  static String quote(String text) {
    if (text.codePointCount(0, text.length()) <= Limits.FOUND_CODE_POINTS) {
      return "'" + text + "'";
    }
    return "'" + text.substring(0, text.offsetByCodePoints(0, Limits.FOUND_CODE_POINTS)) + "…'";
  }

  /**
   * The problem of a block that stopped to fit the grammar.
   *
   * @param offender the first token that does not fit
   * @param expected the types of token that would
   */
  Problem problem(Token offender, IntervalSet expected) {
    Optional<Problem> macro = Macros.problem(line, tokens, offender);
    if (macro.isPresent()) {
      return macro.get();
    }
    int at = offender.getTokenIndex();
    if (offender.getType() == PartProgramLexer.UNCLOSED_COMMENT) {
      return syntax(Spans.of(offender), "a comment that nobody closed", "')'");
    }
    if (at > 0 && expected.contains(PartProgramLexer.NUMBER)) {
      Token before = tokens.get(at - 1);
      if (Letters.is(before) || before.getType() == PartProgramLexer.COLON) {
        return syntax(
            Spans.of(before), "'" + before.getText() + "' with no number behind it", "a number");
      }
    }
    return syntax(Spans.of(offender), found(offender), words(expected));
  }

  private static Problem syntax(Span span, String found, String expected) {
    return new Problem(Problem.Kind.SYNTAX, span, found, expected);
  }

  private static String found(Token token) {
    if (token.getType() == Token.EOF) {
      return "the end of the block";
    }
    String text = token.getText();
    int c = text.codePointAt(0);
    if (Character.isISOControl(c)) {
      return String.format(Locale.ROOT, "a control character (U+%04X)", c);
    }
    return quote(text);
  }

  private static String words(IntervalSet expected) {
    if (expected.contains(PartProgramLexer.NUMBER)) {
      return "a number";
    }
    if (expected.contains(PartProgramLexer.X) && expected.contains(Token.EOF)) {
      return "an address letter or the end of the block";
    }
    if (expected.contains(Token.EOF)) {
      return "the end of the block";
    }
    if (expected.contains(PartProgramLexer.EQUALS)) {
      return "'='";
    }
    if (expected.contains(PartProgramLexer.RBRACKET)) {
      return "an operator or ']'";
    }
    if (expected.contains(PartProgramLexer.LBRACKET)) {
      return "'['";
    }
    return "'/'";
  }
}
