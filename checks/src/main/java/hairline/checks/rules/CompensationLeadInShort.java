package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.CompensationSet;
import hairline.checks.motion.Modes;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.CompensationShift;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.Length;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import java.util.Optional;

/** Compensation is switched on over less than the tool radius. */
@AutoService(Rule.class)
public final class CompensationLeadInShort implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "compensation-lead-in-short",
          Level.ERROR,
          Group.MOTION,
          "radius compensation is switched on by a move shorter than the tool radius",
          Need.OVERLAP);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  private static final class Waiting {
    Optional<CompensationSet> set = Optional.empty();
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Waiting waiting = new Waiting();
    on.event(
        CompensationSet.class,
        set ->
            waiting.set =
                set.before() != Modes.Compensation.OFF || set.after() == Modes.Compensation.OFF
                    ? Optional.empty()
                    : Optional.of(set));
    on.event(
        Cut.class,
        cut -> {
          if (waiting.set.isEmpty()) {
            return;
          }
          if (!cut.move().from().knowsXy() || !cut.move().to().knowsXy()) {
            context.notChecked("where the move begins or ends is not known", cut.at());
            waiting.set = Optional.empty();
          } else if (flatMm(cut) > 0) {
            judge(context, cut);
            waiting.set = Optional.empty();
          }
        });
  }

  /** Length of the move in the plane of X and Y. */
  private static double flatMm(Cut cut) {
    return StrictMath.hypot(
        (cut.move().to().xPm() - cut.move().from().xPm()) / 1e9,
        (cut.move().to().yPm() - cut.move().from().yPm()) / 1e9);
  }

  private static void judge(RuleContext context, Cut cut) {
    Optional<CompensationShift> shift = context.need(ControlKeys.COMPENSATION, cut.at());
    if (!shift.equals(Optional.of(CompensationShift.RADIUS))) {
      return;
    }
    if (cut.tool().isEmpty()) {
      context.notChecked("the tool in the spindle is not known or not on the sheet", cut.at());
      return;
    }
    context
        .need(cut.tool().get(), ToolKeys.DIAMETER, cut.at())
        .filter(diameter -> flatMm(cut) * 2 < diameter.mm() * (1 - 1e-12))
        .ifPresent(diameter -> speak(context, cut, diameter));
  }

  private static void speak(RuleContext context, Cut cut, Length diameter) {
    context.report(
        context
            .occurrence(
                cut.at(),
                "compensation is switched on over "
                    + Quantities.mm(flatMm(cut))
                    + ", the tool's radius is "
                    + Quantities.mm(diameter.pm() / 2))
            .fact("radius from the tool's diameter; machine.control.compensation is radius")
            .cure("a straight move of " + Quantities.mm(diameter.pm() / 2) + " or more")
            .figure("length", flatMm(cut), "mm")
            .figure("radius", diameter.mm() / 2, "mm")
            .operation(cut.move().modes().operation())
            .cause("lead-in"));
  }
}
