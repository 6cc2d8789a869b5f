package hairline.checks.rules;

import hairline.checks.finding.Quantities;
import hairline.checks.timing.TimeTaken;

/** Times as messages print them: in seconds, so that two that differ little read differently. */
final class Seconds {
  private Seconds() {}

  /** "720 s". */
  static String of(double seconds) {
    return Quantities.significant(seconds, 7) + " s";
  }

  /** "720 s", "at least 720 s" where more may come to it, or that the operator decides. */
  static String of(TimeTaken taken) {
    if (taken.waitsForOperator()) {
      return "as long as the operator takes";
    }
    return (taken.isKnown() ? "" : "at least ") + of(taken.atLeastSeconds());
  }
}
