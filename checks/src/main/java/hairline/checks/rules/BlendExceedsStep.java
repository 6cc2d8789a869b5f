package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.Length;
import hairline.checks.stock.Cut;
import java.util.Optional;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/** Corners in Z of a fine cut are blended within more than a quarter of its step. */
@AutoService(Rule.class)
public final class BlendExceedsStep implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "blend-exceeds-step",
          Level.WARNING,
          Group.MOTION,
          "blended corners in Z may eat a step",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  private static final class Last {
    @Nullable Cut cut;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Last last = new Last();
    on.event(
        Cut.class,
        cut -> {
          Cut before = last.cut;
          if (before != null && isCornerInZ(before.move(), cut.move())) {
            judge(context, before, cut);
          }
          last.cut = cut;
        });
  }

  /** Whether two feed moves meet at an angle seen from the side, with no stop between them. */
  private static boolean isCornerInZ(Move before, Move after) {
    return before.isFeed()
        && after.isFeed()
        && !before.exactStop()
        && before.lengthMm() > 0
        && after.lengthMm() > 0
        && Math.abs(slope(before) - slope(after)) > 1e-9;
  }

  private static double slope(Move move) {
    return (move.to().zPm() - move.from().zPm()) / 1e9 / move.lengthMm();
  }

  /** The height of the fine cut at the corner: the lower of the two. */
  private static OptionalLong stepPm(Cut before, Cut after) {
    OptionalLong first = height(before);
    OptionalLong second = height(after);
    if (first.isPresent() && second.isPresent()) {
      return OptionalLong.of(Math.min(first.getAsLong(), second.getAsLong()));
    }
    return first.isPresent() ? first : second;
  }

  private static OptionalLong height(Cut cut) {
    return cut.inContact() && cut.fine() && !cut.spring() && cut.runsAtLevel()
        ? cut.stepDownPm()
        : OptionalLong.empty();
  }

  private static void judge(RuleContext context, Cut before, Cut after) {
    OptionalLong stepPm = stepPm(before, after);
    if (stepPm.isEmpty()) {
      return;
    }
    Optional<Length> tolerance = context.need(ControlKeys.PATH_TOLERANCE, after.at());
    if (tolerance.isEmpty() || tolerance.get().pm() * 4 <= stepPm.getAsLong()) {
      return;
    }
    Modal<Modes.PathMode> mode = before.move().modes().pathMode();
    if (mode.value().isEmpty()) {
      context.notChecked(
          "the path mode was never stated, and blending would be too coarse", after.at());
    } else if (mode.is(Modes.PathMode.CONTINUOUS)) {
      speak(context, after, stepPm.getAsLong(), tolerance.get());
    }
  }

  private static void speak(RuleContext context, Cut cut, long stepPm, Length tolerance) {
    context.report(
        context
            .occurrence(
                cut.at(),
                "corners in Z are blended within "
                    + Quantities.um(tolerance.pm())
                    + ", a quarter of the step is "
                    + Quantities.um(stepPm / 4))
            .fact(
                "G64 in force; step " + Quantities.um(stepPm) + "; machine.control.path_tolerance")
            .cure("G61 or G9 at the corner, or a finer machine.control.path_tolerance")
            .figure("tolerance", tolerance.um(), "µm")
            .figure("step", stepPm / 1e6, "µm")
            .operation(cut.move().modes().operation())
            .cause("step")
            .severity((double) -stepPm));
  }
}
