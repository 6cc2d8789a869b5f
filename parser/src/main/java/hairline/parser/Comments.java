package hairline.parser;

import hairline.parser.grammar.PartProgramLexer;
import org.antlr.v4.runtime.Token;

/** Comment tokens to comments. */
final class Comments {
  private Comments() {}

  static Comment of(Token token) {
    String text = token.getText();
    return switch (token.getType()) {
      case PartProgramLexer.COMMENT ->
          new Comment(text.substring(1, text.length() - 1), true, Spans.of(token));
      case PartProgramLexer.UNCLOSED_COMMENT ->
          new Comment(text.substring(1), false, Spans.of(token));
      default -> new Comment(text.substring(text.startsWith("//") ? 2 : 1), true, Spans.of(token));
    };
  }
}
