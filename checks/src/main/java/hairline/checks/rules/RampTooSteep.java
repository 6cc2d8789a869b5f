package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;

/** A ramp or helix into stock is steeper than the tool bears. */
@AutoService(Rule.class)
public final class RampTooSteep implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "ramp-too-steep",
          Level.WARNING,
          Group.MOTION,
          "a ramp into stock is steeper than the tool bears",
          Need.OVERLAP);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** Equal angles must stay equal however they are computed. */
  private static final double EQUAL_WITHIN_DEG = 1e-9;

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        Cut.class,
        cut -> {
          if (cut.inContact() && goesDown(cut.move()) && cut.tool().isPresent()) {
            double flatMm = flatLengthMm(cut.move());
            if (flatMm > 0) {
              judge(context, cut, cut.tool().get(), flatMm);
            }
          }
        });
  }

  private static boolean goesDown(Move move) {
    return move.isFeed()
        && move.source() == Move.Source.BLOCK
        && move.from().knowsXyz()
        && move.to().knowsXyz()
        && move.to().zPm() < move.from().zPm()
        && (move.arc().isPresent()
            || move.from().xPm() != move.to().xPm()
            || move.from().yPm() != move.to().yPm());
  }

  private static double fallMm(Move move) {
    return (move.from().zPm() - move.to().zPm()) / 1e9;
  }

  /** Length of the path seen from above; of a helix as well. */
  private static double flatLengthMm(Move move) {
    double fallMm = fallMm(move);
    return StrictMath.sqrt(Math.max(0, move.lengthMm() * move.lengthMm() - fallMm * fallMm));
  }

  private static void judge(RuleContext context, Cut cut, Tool tool, double flatMm) {
    double angleDeg = StrictMath.toDegrees(StrictMath.atan2(fallMm(cut.move()), flatMm));
    context
        .need(tool, ToolKeys.MAX_RAMP_ANGLE_DEG, cut.at())
        .filter(limit -> angleDeg > limit + EQUAL_WITHIN_DEG)
        .ifPresent(
            limit ->
                context.report(
                    context
                        .occurrence(
                            cut.at(),
                            "a ramp of "
                                + Quantities.apart(angleDeg, limit)
                                + "° into stock, the tool bears "
                                + Quantities.significant(limit, 4)
                                + "°")
                        .fact(
                            Quantities.mm(fallMm(cut.move()))
                                + " down over "
                                + Quantities.mm(flatMm)
                                + "; limit from "
                                + tool.path(ToolKeys.MAX_RAMP_ANGLE_DEG))
                        .cure("a longer ramp, or more turns of the helix")
                        .figure("angle", angleDeg, "°")
                        .figure("limit", limit, "°")
                        .operation(cut.move().modes().operation())
                        .cause("tool " + tool.number())
                        .severity(angleDeg)));
  }
}
