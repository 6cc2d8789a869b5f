package hairline.parser;

import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;

/** Where tokens stand: an index counts from 0, a column from 1. */
final class Spans {
  private Spans() {}

  static Span of(Token token) {
    return between(token, token);
  }

  static Span of(ParserRuleContext context) {
    return between(context.getStart(), context.getStop());
  }

  static Span between(Token first, Token last) {
    int column = first.getStartIndex() + 1;
    // The end of the block has no width: its stop index lies before its start.
    return new Span(column, Math.max(column, last.getStopIndex() + 2));
  }
}
