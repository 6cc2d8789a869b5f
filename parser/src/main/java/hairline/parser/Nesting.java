package hairline.parser;

import hairline.parser.grammar.PartProgramLexer;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.Token;

/** Refuses what nests too deep, before the parser descends into it. */
final class Nesting {
  private Nesting() {}

  static Optional<Problem> problem(List<Token> tokens) {
    int brackets = 0;
    int hashes = 0;
    for (Token token : tokens) {
      switch (token.getType()) {
        case PartProgramLexer.LBRACKET -> brackets++;
        case PartProgramLexer.RBRACKET -> {
          brackets--;
          hashes = 0;
        }
        case PartProgramLexer.HASH -> hashes++;
        case PartProgramLexer.NUMBER -> hashes = 0;
        default -> {}
      }
      if (brackets > Limits.NESTING) {
        return Optional.of(
            SyntaxProblems.tooMuch(
                token, "brackets", "brackets nested at most " + Limits.NESTING + " deep"));
      }
      if (hashes > Limits.NESTING) {
        return Optional.of(
            SyntaxProblems.tooMuch(token, "'#'", "'#' nested at most " + Limits.NESTING + " deep"));
      }
    }
    return Optional.empty();
  }
}
