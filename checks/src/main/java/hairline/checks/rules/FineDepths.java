package hairline.checks.rules;

import hairline.checks.setup.Tool;
import hairline.checks.stock.Cut;
import org.jspecify.annotations.Nullable;

/** The axial depths of fine cuts, for the rules about what an end edge can take. */
final class FineDepths {
  /** Takes a fine cut, its tool and its depth. */
  interface Taker {
    void take(Cut cut, Tool tool, long depthPm);
  }

  private FineDepths() {}

  /** The depth of which the taker had nothing to say last. */
  private static final class Settled {
    private @Nullable Tool tool;
    private long depthPm;

    // A sheet has one object for each of its tools.
    @SuppressWarnings("ReferenceEquality")
    void take(RuleContext context, Taker taker, Cut cut, Tool itsTool, long itsDepthPm) {
      if (itsTool == tool && itsDepthPm == depthPm) {
        return;
      }
      long said = context.said();
      taker.take(cut, itsTool, itsDepthPm);
      tool = context.said() == said ? itsTool : null;
      depthPm = itsDepthPm;
    }
  }

  /**
   * Calls the taker for each fine cut whose depth is known; spring passes are left out, and behind
   * one of which it said nothing those of the same tool and depth.
   */
  static void each(RuleContext context, Subscriptions on, Taker taker) {
    Settled settled = new Settled();
    on.contact(
        cut -> {
          if (cut.spring() || !cut.runsAtLevel()) {
            return;
          }
          if (cut.fineUndecided() || (cut.fine() && cut.surfacePartlyUnknown())) {
            context.notChecked("the surface before the cut is not known", cut.at());
          } else if (cut.fine() && cut.tool().isEmpty()) {
            context.notChecked("the tool is not known or not on the sheet", cut.at());
          } else if (cut.fine() && !cut.stepDowns().isEmpty()) {
            settled.take(
                context, taker, cut, cut.tool().orElseThrow(), cut.stepDowns().get(0).storedPm());
          }
        });
  }
}
