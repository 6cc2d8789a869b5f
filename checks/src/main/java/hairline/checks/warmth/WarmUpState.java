package hairline.checks.warmth;

import hairline.checks.motion.Place;
import hairline.checks.timing.TimeTaken;
import java.util.Optional;

/**
 * Follows a warm-up through stretches of running and standing whose times are taken as they are
 * given. What is not known is followed by two of these, one told the best, one the worst.
 */
final class WarmUpState {
  private final double neededSeconds;
  private final double validForSeconds;
  private final double idleSeconds;
  private boolean valid;
  private Optional<Place> since = Optional.empty();
  private Optional<Place> expiredAt = Optional.empty();
  private double runSeconds;
  private double stopSeconds;

  WarmUpState(
      double neededSeconds, double validForSeconds, double idleSeconds, boolean validFromStart) {
    this.neededSeconds = neededSeconds;
    this.validForSeconds = validForSeconds;
    this.idleSeconds = idleSeconds;
    this.valid = validFromStart;
  }

  /** The spindle turns fast enough for this time. */
  void run(double seconds, Place at) {
    stopSeconds = 0;
    if (!valid) {
      runSeconds += seconds;
      if (TimeTaken.reaches(runSeconds, neededSeconds)) {
        warm(at);
      }
    }
  }

  /** The spindle turns, not fast enough. */
  void turn() {
    stopSeconds = 0;
  }

  /** The spindle stands for this time; an infinite one is longer than any limit. */
  void stand(double seconds, Place at) {
    stopSeconds += seconds;
    if (stopSeconds == Double.POSITIVE_INFINITY) {
      expire(at);
      runSeconds = 0;
    } else {
      if (TimeTaken.exceeds(stopSeconds, validForSeconds)) {
        expire(at);
      }
      if (TimeTaken.exceeds(stopSeconds, idleSeconds)) {
        runSeconds = 0;
      }
    }
  }

  /** A whole warm-up takes place. */
  void warm(Place at) {
    stopSeconds = 0;
    runSeconds = 0;
    if (!valid) {
      valid = true;
      since = Optional.of(at);
      expiredAt = Optional.empty();
    }
  }

  private void expire(Place at) {
    if (valid) {
      valid = false;
      since = Optional.empty();
      expiredAt = Optional.of(at);
      runSeconds = 0;
    }
  }

  boolean valid() {
    return valid;
  }

  Optional<Place> since() {
    return since;
  }

  Optional<Place> expiredAt() {
    return expiredAt;
  }

  /** Whether the present stop is too long for a warm-up to go on after it. */
  boolean brokenOff() {
    return TimeTaken.exceeds(stopSeconds, idleSeconds);
  }

  /** Whether both are in the same state, so that nothing of what differed counts any more. */
  boolean agreesWith(WarmUpState other) {
    return valid == other.valid
        && runSeconds == other.runSeconds
        && stopSeconds == other.stopSeconds;
  }
}
