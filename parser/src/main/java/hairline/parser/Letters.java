package hairline.parser;

import hairline.parser.grammar.PartProgramLexer;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.antlr.v4.runtime.Token;

/** Letter tokens; the grammar numbers them in the order of the alphabet. */
final class Letters {
  private static final Set<String> FUNCTIONS =
      Stream.concat(Stream.of("ATAN"), Stream.of(Value.Function.values()).map(Enum::name))
          .collect(Collectors.toUnmodifiableSet());

  private Letters() {}

  static boolean is(Token token) {
    return token.getType() >= PartProgramLexer.A && token.getType() <= PartProgramLexer.Z;
  }

  /** The letter in upper case. */
  static char of(Token token) {
    return (char) ('A' + token.getType() - PartProgramLexer.A);
  }

  /** Whether letters in upper case are the name of a function that the grammar has. */
  static boolean isFunction(String letters) {
    return FUNCTIONS.contains(letters);
  }
}
