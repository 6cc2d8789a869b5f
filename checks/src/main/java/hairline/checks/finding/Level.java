package hairline.checks.finding;

import java.util.Locale;

/** How sure and how bad a finding is; in rising order. */
public enum Level {
  NOTE,
  WARNING,
  ERROR;

  /** One level lower; a note stays a note. */
  public Level lower() {
    return this == ERROR ? WARNING : NOTE;
  }

  /** The word in reports and on the sheet: note, warning, error. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
