package hairline.checks.rules;

import hairline.checks.motion.Place;
import hairline.checks.timing.Gap;
import hairline.checks.timing.TimeTaken;
import hairline.checks.warmth.Doubt;
import hairline.checks.warmth.WarmUp;
import java.util.List;
import java.util.Optional;

/** Says why time or warmth is not known well enough for a rule. */
final class Unsure {
  private Unsure() {}

  /** Lists what keeps a warm-up in doubt. */
  static void of(RuleContext context, WarmUp warmUp, Place at) {
    of(context, warmUp.doubts(), at);
  }

  /** Lists what keeps something about the spindle in doubt. */
  static void of(RuleContext context, List<Doubt> doubts, Place at) {
    for (Doubt doubt : doubts) {
      if (doubt.key().isPresent() && doubt.at().isEmpty()) {
        context.notChecked(doubt.key().get() + " is not on the sheet", at);
      } else {
        context.notChecked(text(doubt.reason(), doubt.key()), doubt.at().orElse(at));
      }
    }
  }

  /** Lists what of a time is not known. */
  static void of(RuleContext context, TimeTaken taken) {
    for (Gap gap : taken.gaps()) {
      context.notChecked(text(gap.cause().reason(), gap.cause().key()), gap.at());
    }
  }

  private static String text(String reason, Optional<String> key) {
    return key.map(k -> reason + " (" + k + " would tell)").orElse(reason);
  }
}
