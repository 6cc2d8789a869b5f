package hairline.checks.rules;

import hairline.checks.finding.Quantities;
import hairline.checks.timing.TimeTaken;
import java.math.BigDecimal;

/** Times as messages print them: in seconds, so that two that differ little read differently. */
final class Seconds {
  private Seconds() {}

  /** "720 s": to the millisecond, below a second to three significant digits. */
  static String of(double seconds) {
    boolean known = !Double.isNaN(seconds) && !Double.isInfinite(seconds);
    if (!known || StrictMath.abs(seconds) < 1) {
      return Quantities.significant(seconds, 3) + " s";
    }
    int wholeDigits = BigDecimal.valueOf(seconds).toBigInteger().abs().toString().length();
    return Quantities.significant(seconds, wholeDigits + 3) + " s";
  }

  /** "720 s", "at least 720 s" where more may come to it, or that the operator decides. */
  static String of(TimeTaken taken) {
    if (taken.waitsForOperator()) {
      return "as long as the operator takes";
    }
    return (taken.isKnown() ? "" : "at least ") + of(taken.atLeastSeconds());
  }
}
