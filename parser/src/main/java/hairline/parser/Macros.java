package hairline.parser;

import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.Token;

/** Tells statements of macro languages from mere slips. */
final class Macros {
  private Macros() {}

  static Optional<Problem> problem(Line line, List<Token> tokens, Token offender) {
    return Optional.empty();
  }
}
