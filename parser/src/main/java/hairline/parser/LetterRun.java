package hairline.parser;

import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.Token;

/**
 * Letters side by side, with no blank between them, in a block that broke the grammar.
 *
 * @param first the index of the first letter token
 * @param last the index of the last
 * @param word the letters in upper case
 */
record LetterRun(int first, int last, String word) {

  /** The run that holds the token at an index, or else the one before it. */
  static Optional<LetterRun> around(List<Token> tokens, int at) {
    int first = Letters.is(tokens.get(at)) ? at : at - 1;
    if (first < 0 || !Letters.is(tokens.get(first))) {
      return Optional.empty();
    }
    int last = first;
    while (isRun(tokens.get(last), tokens.get(last + 1))) {
      last++;
    }
    while (first > 0 && isRun(tokens.get(first - 1), tokens.get(first))) {
      first--;
    }
    StringBuilder word = new StringBuilder();
    for (Token token : tokens.subList(first, last + 1)) {
      word.append(Letters.of(token));
    }
    return Optional.of(new LetterRun(first, last, word.toString()));
  }

  private static boolean isRun(Token left, Token right) {
    return Letters.is(left)
        && Letters.is(right)
        && left.getStopIndex() + 1 == right.getStartIndex();
  }
}
