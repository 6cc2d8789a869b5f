package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Extent;
import hairline.checks.motion.Modes.Plane;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import java.util.Optional;
import java.util.OptionalDouble;

/** A ramp or helix into stock is steeper than the tool bears. */
@AutoService(Rule.class)
public final class RampTooSteep implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "ramp-too-steep",
          Level.WARNING,
          Group.MOTION,
          "a ramp into stock is steeper than the tool bears",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** Equal angles must stay equal however they are computed. */
  private static final double EQUAL_WITHIN_DEG = 1e-9;

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.contact(
        cut -> {
          Move move = cut.move();
          if (cut.tool().isEmpty()
              || !move.isFeed()
              || move.source() != Move.Source.BLOCK
              || !move.from().knowsXyz()
              || !move.to().knowsXyz()) {
            return;
          }
          if (isArc(move) && move.arc().isEmpty() && mayFall(move)) {
            context.notChecked("the circle of an arc is not known", cut.at());
          } else if (UprightArc.is(move)) {
            judgeUpright(context, cut, cut.tool().get());
          } else if (goesDown(move)) {
            double flatMm = flatLengthMm(move);
            if (flatMm > 0) {
              double angleDeg = StrictMath.toDegrees(StrictMath.atan2(fallMm(move), flatMm));
              String sum = Quantities.mm(fallMm(move)) + " down over " + Quantities.mm(flatMm);
              judge(context, cut, cut.tool().get(), angleDeg, sum);
            }
          }
        });
  }

  /** Upright arcs fall somewhere wherever they end. */
  private static boolean mayFall(Move move) {
    return !move.modes().plane().is(Plane.XY) || move.to().zPm() < move.from().zPm();
  }

  private static boolean isArc(Move move) {
    return move.kind() == Move.Kind.ARC_CW || move.kind() == Move.Kind.ARC_CCW;
  }

  /** An arc in the ZX or YZ plane: what counts is where it falls steepest in the material. */
  private static void judgeUpright(RuleContext context, Cut cut, Tool tool) {
    Move move = cut.move();
    OptionalDouble topMm = materialTopMm(cut);
    if (topMm.isEmpty()) {
      context.notChecked("the height that the arc takes is not known", cut.at());
      return;
    }
    UprightArc.steepest(move, topMm.getAsDouble())
        .ifPresent(
            point ->
                judge(
                    context,
                    cut,
                    tool,
                    point.angleDeg(),
                    "steepest at Z "
                        + Quantities.mm(point.zMm())
                        + " on an arc of radius "
                        + Quantities.mm(move.arc().orElseThrow().startRadiusMm())
                        + " in the "
                        + move.modes().plane().value().orElseThrow()
                        + " plane"));
  }

  /** The height at which an arc meets the material: what it takes, above its lowest point. */
  private static OptionalDouble materialTopMm(Cut cut) {
    Optional<Extent> reach = Extent.of(cut.move(), Axis.Z);
    long takenPm = Math.max(cut.removal().deepestPm(), cut.stepDownPm().orElse(0));
    return reach.isEmpty() || takenPm <= 0 || cut.surfacePartlyUnknown()
        ? OptionalDouble.empty()
        : OptionalDouble.of((reach.get().lowest() + takenPm) / 1e9);
  }

  private static boolean goesDown(Move move) {
    return move.to().zPm() < move.from().zPm()
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

  private static void judge(RuleContext context, Cut cut, Tool tool, double angleDeg, String sum) {
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
                                + Quantities.apart(limit, angleDeg)
                                + "°")
                        .fact(sum + "; limit from " + tool.path(ToolKeys.MAX_RAMP_ANGLE_DEG))
                        .cure("a longer ramp, or more turns of the helix")
                        .figure("angle", angleDeg, "°")
                        .figure("limit", limit, "°")
                        .operation(cut.move().modes().operation())
                        .cause("tool " + tool.number())
                        .severity(angleDeg)));
  }
}
