package hairline.parser;

import hairline.parser.grammar.PartProgramLexer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.misc.IntervalSet;

/** Says in a machinist's words what is wrong with a block that breaks the grammar. */
final class SyntaxProblems {
  private static final String NUMBER = "a number";
  private static final int REPLACEMENT = 0xFFFD;
  private static final String END_OF_BLOCK = "the end of the block";

  private final List<Token> tokens;

  SyntaxProblems(List<Token> tokens) {
    this.tokens = tokens;
  }

  /**
   * The one problem of a block that breaks the grammar.
   *
   * @param offender the first token that does not fit
   * @param expected the types of token that would
   */
  Problem problem(Token offender, IntervalSet expected) {
    int at = offender.getTokenIndex();
    return commentInComment(at)
        .or(() -> new Macros(tokens).problem(at))
        .or(() -> decimalComma(at))
        .or(() -> functionAsAddress(at))
        .or(() -> secondPoint(at))
        .or(() -> missingNumber(at, expected))
        .orElseGet(() -> syntax(Spans.of(offender), found(offender), words(offender, expected)));
  }

  /** {@code (FINISH (ROUGH) D=0.4)}: the comment ends at the first ')', so the rest is no block. */
  private Optional<Problem> commentInComment(int at) {
    if (tokens.stream().skip(at).noneMatch(token -> token.getText().equals(")"))) {
      return Optional.empty();
    }
    for (Token token : tokens.subList(0, at)) {
      int inner = token.getText().indexOf('(', 1);
      if (token.getType() == PartProgramLexer.COMMENT && inner > 0) {
        int before = token.getText().codePointCount(0, inner);
        int column = token.getStartIndex() + before + 1;
        return Optional.of(
            syntax(
                new Span(column, column + 1), "'(' inside a comment", "')' before the next '('"));
      }
    }
    return Optional.empty();
  }

  private Optional<Problem> decimalComma(int at) {
    if (at > 0
        && tokens.get(at).getType() == PartProgramLexer.COMMA
        && tokens.get(at - 1).getType() == PartProgramLexer.NUMBER
        && tokens.get(at + 1).getType() == PartProgramLexer.NUMBER) {
      return Optional.of(syntax(Spans.of(tokens.get(at)), "','", "a decimal point"));
    }
    return Optional.empty();
  }

  /** {@code SIN[30]} with no address letter before it. */
  private Optional<Problem> functionAsAddress(int at) {
    return LetterRun.around(tokens, at)
        .filter(run -> run.first() < at && Letters.isFunction(run.word()))
        .filter(run -> tokens.get(run.last() + 1).getType() == PartProgramLexer.LBRACKET)
        .map(
            run ->
                syntax(
                    Spans.between(tokens.get(run.first()), tokens.get(run.last())),
                    "'" + run.word() + "'",
                    "an address letter"));
  }

  /** {@code X1.2.3} */
  private Optional<Problem> secondPoint(int at) {
    Token token = tokens.get(at);
    if (at > 0
        && tokens.get(at - 1).getType() == PartProgramLexer.NUMBER
        && token.getText().startsWith(".")) {
      return Optional.of(syntax(Spans.of(token), found(token), "a number with one decimal point"));
    }
    return Optional.empty();
  }

  /** An address letter with nothing behind it that could be its value. */
  private Optional<Problem> missingNumber(int at, IntervalSet expected) {
    if (at == 0 || !expected.contains(PartProgramLexer.NUMBER)) {
      return Optional.empty();
    }
    Token before = tokens.get(at - 1);
    if (!Letters.is(before) && before.getType() != PartProgramLexer.COLON) {
      return Optional.empty();
    }
    return Optional.of(
        syntax(Spans.of(before), "'" + before.getText() + "' with no number behind it", NUMBER));
  }

  private static String words(Token offender, IntervalSet expected) {
    if (offender.getType() == PartProgramLexer.UNCLOSED_COMMENT) {
      return "')'";
    }
    if (offender.getType() == PartProgramLexer.N && expected.contains(Token.EOF)) {
      return "one sequence number";
    }
    if (expected.contains(PartProgramLexer.NUMBER)) {
      return NUMBER;
    }
    if (expected.contains(Token.EOF)) {
      return expected.contains(PartProgramLexer.X)
          ? "an address letter or " + END_OF_BLOCK
          : END_OF_BLOCK;
    }
    if (expected.contains(PartProgramLexer.EQUALS)) {
      return "'='";
    }
    if (expected.contains(PartProgramLexer.RBRACKET)) {
      return "an operator or ']'";
    }
    return expected.contains(PartProgramLexer.LBRACKET) ? "'['" : "'/'";
  }

  private static String found(Token token) {
    return switch (token.getType()) {
      case Token.EOF -> END_OF_BLOCK;
      case PartProgramLexer.UNCLOSED_COMMENT -> "a comment that nobody closed";
      default -> {
        int c = token.getText().codePointAt(0);
        yield isPrintable(c)
            ? quote(token.getText())
            : String.format(Locale.ROOT, "the character U+%04X", c);
      }
    };
  }

  private static boolean isPrintable(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SPACE_SEPARATOR ->
          false;
      default -> true;
    };
  }

  private static Problem syntax(Span span, String found, String expected) {
    return new Problem(Problem.Kind.SYNTAX, span, found, expected);
  }

  /** The problem of a line beyond {@link Limits#LINE_BYTES}. */
  static Problem lineTooLong() {
    return syntax(
        new Span(1, 1), "a line longer than is read", "at most " + Limits.LINE_BYTES + " bytes");
  }

  /** Something beyond a limit, which shows at a token. */
  static Problem tooMuch(Token token, String found, String expected) {
    return syntax(Spans.of(token), found, expected);
  }

  /** A piece of a program in quotes, shortened. */
  static String quote(String text) {
    return "'" + shorten(text) + "'";
  }

  /**
   * At most {@link Limits#FOUND_CODE_POINTS} of a text, with tabs as blanks and U+FFFD for what
   * cannot be printed.
   */
  static String shorten(String text) {
    int[] codePoints =
        text.codePoints()
            .limit(Limits.FOUND_CODE_POINTS + 1L)
            .map(SyntaxProblems::printable)
            .toArray();
    if (codePoints.length <= Limits.FOUND_CODE_POINTS) {
      return new String(codePoints, 0, codePoints.length);
    }
    return new String(codePoints, 0, Limits.FOUND_CODE_POINTS - 1) + "…";
  }

  private static int printable(int codePoint) {
    if (codePoint == '\t' || codePoint == ' ') {
      return ' ';
    }
    return isPrintable(codePoint) ? codePoint : REPLACEMENT;
  }
}
