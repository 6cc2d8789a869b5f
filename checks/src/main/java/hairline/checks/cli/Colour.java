package hairline.checks.cli;

import java.util.Locale;

/** When the text report has colour. */
enum Colour {
  AUTO,
  ALWAYS,
  NEVER;

  boolean on(Streams streams) {
    return this == ALWAYS || (this == AUTO && streams.wantsColour());
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
