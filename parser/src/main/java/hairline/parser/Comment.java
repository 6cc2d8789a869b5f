package hairline.parser;

import java.util.Locale;

/**
 * A remark.
 *
 * @param text the text inside, without the marks around it
 * @param closed false for a parenthesis that nobody closed in its line
 * @param span where the comment stands, marks included
 */
public record Comment(String text, boolean closed, Span span) {
  /** How a comment begins that speaks to the checker, in lower case. */
  static final String MARK = "hairline";

  /** Whether it speaks to the checker, not to people: it begins with the checker's name. */
  public boolean speaksToChecker() {
    return text.strip().toLowerCase(Locale.ROOT).startsWith(MARK);
  }
}
