package hairline.parser;

import hairline.parser.grammar.PartProgramLexer;
import org.antlr.v4.runtime.Token;

/** Letter tokens; the grammar numbers them in the order of the alphabet. */
final class Letters {
  private Letters() {}

  static boolean is(Token token) {
    return token.getType() >= PartProgramLexer.A && token.getType() <= PartProgramLexer.Z;
  }

  /** The letter in upper case. */
  static char of(Token token) {
    return (char) ('A' + token.getType() - PartProgramLexer.A);
  }
}
