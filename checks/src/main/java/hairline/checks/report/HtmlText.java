package hairline.checks.report;

/** Builds the text of an HTML page: our own markup as it is, all else escaped. */
final class HtmlText {
  private final StringBuilder out = new StringBuilder();

  /** Markup of our own. */
  HtmlText raw(String markup) {
    out.append(markup);
    return this;
  }

  /** Text from anywhere; safe between tags and within a quoted attribute. */
  HtmlText text(String text) {
    out.append(new SvgText().text(text));
    return this;
  }

  /** An element with nothing but text in it. */
  HtmlText element(String tag, String text) {
    int blank = tag.indexOf(' ');
    String name = blank < 0 ? tag : tag.substring(0, blank);
    return raw("<").raw(tag).raw(">").text(text).raw("</").raw(name).raw(">\n");
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
