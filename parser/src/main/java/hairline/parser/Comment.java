package hairline.parser;

/**
 * A remark.
 *
 * @param text the text inside, without the marks around it
 * @param closed false for a parenthesis that nobody closed in its line
 * @param span where the comment stands, marks included
 */
public record Comment(String text, boolean closed, Span span) {}
