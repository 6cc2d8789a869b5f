package hairline.checks.warmth;

/**
 * What is known of a speed.
 *
 * @param lowestRpm the slowest it can be, 0 standing
 * @param highestRpm the fastest it can be; infinite where nothing bounds it
 */
record Speeds(double lowestRpm, double highestRpm) {
  /** A speed that is known. */
  static Speeds of(double rpm) {
    return new Speeds(rpm, rpm);
  }

  /** The speeds at which a spindle in this state may turn. */
  static Speeds of(SpindleState spindle, GrowthFigures figures) {
    if (spindle.speedRpm().isPresent()) {
      return of(spindle.speedRpm().getAsDouble());
    }
    double fastest = figures.fastestRpm().orElse(Double.POSITIVE_INFINITY);
    double slowest = spindle.turns() ? Math.min(figures.slowestRpm(), fastest) : 0;
    return new Speeds(slowest, fastest);
  }

  boolean isKnown() {
    return lowestRpm == highestRpm;
  }
}
