package hairline.parser;

import hairline.parser.grammar.PartProgramLexer;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.Token;

/**
 * Tells statements of a macro language from mere slips, in a block that broke the grammar.
 *
 * <p>The languages differ from control to control, so only the kind of a statement is told. The
 * words are common practice of the trade, no source.
 */
final class Macros {
  private static final String OTHER = "a macro statement";

  private final List<Token> tokens;

  Macros(List<Token> tokens) {
    this.tokens = tokens;
  }

  /**
   * The problem of kind MACRO, if the block is a macro statement.
   *
   * @param at the index of the first token that does not fit the grammar
   */
  Optional<Problem> problem(int at) {
    return switch (tokens.get(at).getType()) {
      case PartProgramLexer.COMMA -> afterComma(at);
      case PartProgramLexer.OTHER -> name(at).or(() -> letters(at));
      default -> letters(at);
    };
  }

  /** {@code ,R0.2}. */
  private Optional<Problem> afterComma(int at) {
    return switch (tokens.get(at + 1).getType()) {
      case PartProgramLexer.R, PartProgramLexer.C ->
          macro(at, at + 1, "corner rounding or chamfer");
      case PartProgramLexer.A -> macro(at, at + 1, "a line given by its angle");
      default -> Optional.empty();
    };
  }

  /** {@code #<depth>}, {@code O<pocket>}, or {@code <pocket>} alone. */
  private Optional<Problem> name(int at) {
    boolean prefixed = isType(at - 1, PartProgramLexer.HASH) || isType(at - 1, PartProgramLexer.O);
    if (!"<".equals(tokens.get(at).getText()) || (at > 0 && !prefixed)) {
      return Optional.empty();
    }
    int last = at;
    while (last + 1 < tokens.size() - 1 && !">".equals(tokens.get(last).getText())) {
      last++;
    }
    return macro(prefixed ? at - 1 : at, last, "a name");
  }

  /** Letters where an address was due, or the name of a function or an operator. */
  private Optional<Problem> letters(int at) {
    boolean indexed =
        isType(at, PartProgramLexer.EQUALS) && isType(at - 1, PartProgramLexer.NUMBER);
    Optional<LetterRun> run = LetterRun.around(tokens, indexed ? at - 1 : at);
    return run.flatMap(this::assignment).or(() -> run.flatMap(this::keyword));
  }

  /** {@code X=5}, {@code R1=5}, {@code CR=0.2}. */
  private Optional<Problem> assignment(LetterRun run) {
    int equals = run.last() + (isType(run.last() + 1, PartProgramLexer.NUMBER) ? 2 : 1);
    return isType(equals, PartProgramLexer.EQUALS) && !inBrackets(run.first())
        ? macro(run.first(), equals, "an assignment")
        : Optional.empty();
  }

  private Optional<Problem> keyword(LetterRun run) {
    String kind = kind(run);
    return kind.isEmpty() ? Optional.empty() : macro(run.first(), run.last(), kind);
  }

  /** What a run of letters is; empty for a slip. */
  private String kind(LetterRun run) {
    String word = run.word();
    if (word.length() < 2 || Letters.isFunction(word)) {
      return "";
    }
    boolean inBrackets = inBrackets(run.first());
    String known = inBrackets ? comparison(word) : keyword(word);
    if (!known.isEmpty()) {
      return known;
    }
    int next = run.last() + 1;
    if (isType(next, PartProgramLexer.LBRACKET) && (inBrackets || isValueDue(run.first()))) {
      return "a function";
    }
    boolean arguments =
        isType(next, PartProgramLexer.LBRACKET)
            || isType(next, PartProgramLexer.COMMENT)
            || isType(next, PartProgramLexer.UNCLOSED_COMMENT);
    // Two letters are a letter without its number, more often than not: G1XY2.5.
    return word.length() > 2 || inBrackets || arguments ? OTHER : "";
  }

  private boolean isType(int at, int type) {
    return at >= 0 && at < tokens.size() && tokens.get(at).getType() == type;
  }

  /** Whether a value is due at a token outside brackets. */
  private boolean isValueDue(int at) {
    if (at == 0) {
      return false;
    }
    Token before = tokens.get(at - 1);
    return switch (before.getType()) {
      case PartProgramLexer.EQUALS,
          PartProgramLexer.HASH,
          PartProgramLexer.PLUS,
          PartProgramLexer.MINUS,
          PartProgramLexer.COLON ->
          true;
      default -> Letters.is(before);
    };
  }

  private static String keyword(String word) {
    return switch (word) {
      case "IF", "THEN", "ELSE", "ELSEIF", "ENDIF", "CASE" -> "a condition";
      case "DO", "END", "WHILE", "ENDWHILE", "FOR", "ENDFOR", "REPEAT", "ENDREPEAT", "UNTIL" ->
          "a loop";
      case "LOOP", "ENDLOOP", "BREAK", "CONTINUE" -> "a loop";
      case "GOTO", "GOTOF", "GOTOB" -> "a jump";
      case "POPEN", "PCLOS", "DPRNT", "BPRNT", "MSG", "PRINT" -> "text output";
      case "CALL", "SUB", "ENDSUB", "RETURN", "PROC" -> "a subprogram statement";
      default -> "";
    };
  }

  private static String comparison(String word) {
    return switch (word) {
      case "EQ", "NE", "GT", "GE", "LT", "LE" -> "a comparison";
      default -> "";
    };
  }

  private boolean inBrackets(int at) {
    int open = 0;
    for (Token token : tokens.subList(0, at)) {
      if (token.getType() == PartProgramLexer.LBRACKET) {
        open++;
      } else if (token.getType() == PartProgramLexer.RBRACKET) {
        open--;
      }
    }
    return open > 0;
  }

  private Optional<Problem> macro(int first, int last, String kind) {
    StringBuilder found = new StringBuilder();
    for (Token token : tokens.subList(first, last + 1)) {
      found.append(token.getText());
    }
    return Optional.of(
        new Problem(
            Problem.Kind.MACRO,
            Spans.between(tokens.get(first), tokens.get(last)),
            SyntaxProblems.shorten(found.toString()),
            kind));
  }
}
