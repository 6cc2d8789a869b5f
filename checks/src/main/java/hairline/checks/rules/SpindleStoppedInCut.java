package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import hairline.checks.stock.Cut;

/** The tool cuts while the spindle stands. */
@AutoService(Rule.class)
public final class SpindleStoppedInCut implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "spindle-stopped-in-cut",
              Level.ERROR,
              Group.STATE,
              "the tool cuts while the spindle stands",
              Need.OVERLAP)
          .withoutLimit("the spindle turns or it stands")
          .hiding(
              Scope.BLOCK,
              "chip-below-minimum",
              "feed-below-edge-radius",
              "chip-above-limit",
              "runout-exceeds-feed");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        Cut.class,
        cut -> {
          if (cut.inContact() && cut.move().isFeed()) {
            judge(context, cut);
          }
        });
  }

  private static void judge(RuleContext context, Cut cut) {
    Modal<Modes.Spindle> spindle = cut.move().modes().spindle();
    if (spindle.isUnknown()) {
      context.notChecked(
          "whether the spindle turns is unknown since " + context.line(spindle, cut.at()),
          cut.at());
    } else if (spindle.value().isEmpty() || spindle.is(Modes.Spindle.STOPPED)) {
      context.report(
          context
              .occurrence(cut.at(), "the tool cuts and the spindle stands")
              .fact(
                  spindle.line() > 0
                      ? "stopped since " + context.line(spindle, cut.at())
                      : "no M3 or M4 stands before")
              .cure("S and M3 before this move")
              .operation(cut.move().modes().operation())
              .cause("stopped"));
    }
  }
}
