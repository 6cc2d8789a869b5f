package hairline.checks.cli;

import hairline.checks.finding.Level;
import java.util.Locale;
import java.util.Optional;

/** The lowest level at which a finding makes the exit status 1. */
enum FailOn {
  ERROR(Optional.of(Level.ERROR)),
  WARNING(Optional.of(Level.WARNING)),
  NOTE(Optional.of(Level.NOTE)),
  NEVER(Optional.empty());

  private final Optional<Level> level;

  FailOn(Optional<Level> level) {
    this.level = level;
  }

  Optional<Level> level() {
    return level;
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
