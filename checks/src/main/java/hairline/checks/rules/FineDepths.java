package hairline.checks.rules;

import hairline.checks.setup.Tool;
import hairline.checks.stock.Cut;

/** The axial depths of fine cuts, for the rules about what an end edge can take. */
final class FineDepths {
  /** Takes a fine cut, its tool and its depth. */
  interface Taker {
    void take(Cut cut, Tool tool, long depthPm);
  }

  private FineDepths() {}

  /** Calls the taker for each fine cut whose depth is known; spring passes are left out. */
  static void each(RuleContext context, Subscriptions on, Taker taker) {
    on.event(
        Cut.class,
        cut -> {
          if (!cut.inContact() || cut.spring() || !cut.runsAtLevel()) {
            return;
          }
          if (cut.fineUndecided() || (cut.fine() && cut.surfacePartlyUnknown())) {
            context.notChecked("the surface before the cut is not known", cut.at());
          } else if (cut.fine() && cut.tool().isEmpty()) {
            context.notChecked("the tool is not known or not on the sheet", cut.at());
          } else if (cut.fine() && !cut.stepDowns().isEmpty()) {
            taker.take(cut, cut.tool().orElseThrow(), cut.stepDowns().get(0).storedPm());
          }
        });
  }
}
