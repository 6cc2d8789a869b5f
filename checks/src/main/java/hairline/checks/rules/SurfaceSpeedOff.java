package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.EndMill;
import hairline.checks.cutting.SurfaceSpeed;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.NumberRange;
import hairline.checks.setup.ToolKeys;

/** The effective surface speed lies outside the range of the tool. */
@AutoService(Rule.class)
public final class SurfaceSpeedOff implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "surface-speed-off",
          Level.WARNING,
          Group.CHIPS,
          "the surface speed lies outside the range of the tool",
          Need.OVERLAP);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** Equal figures must stay equal however products round. */
  private static final double EQUAL_WITHIN = 1e-9;

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    ToothCuts.judgeEachByStretch(
        context,
        on,
        tooth ->
            context
                .need(tooth.tool(), ToolKeys.SURFACE_SPEED_M_PER_MIN, tooth.cut().at())
                .ifPresent(range -> judge(context, tooth, range)));
  }

  private static void judge(RuleContext context, ToothCuts.ToothCut tooth, NumberRange range) {
    boolean flat = tooth.mill().shape() == EndMill.Shape.FLAT;
    if (!flat && tooth.depthMm().isEmpty()) {
      double mostMPerMin = SurfaceSpeed.mPerMin(tooth.mill().diameterMm(), tooth.rpm());
      if (mostMPerMin < range.lo() * (1 - EQUAL_WITHIN)) {
        speak(context, tooth, range, tooth.mill().diameterMm(), mostMPerMin);
      } else {
        context.notChecked(
            "the depth of cut is not known, nor the diameter that cuts", tooth.cut().at());
      }
      return;
    }
    double diameterMm =
        flat
            ? tooth.mill().diameterMm()
            : tooth.mill().effectiveDiameterMm(tooth.depthMm().getAsDouble());
    double speedMPerMin = SurfaceSpeed.mPerMin(diameterMm, tooth.rpm());
    if (speedMPerMin < range.lo() * (1 - EQUAL_WITHIN)
        || speedMPerMin > range.hi() * (1 + EQUAL_WITHIN)) {
      speak(context, tooth, range, diameterMm, speedMPerMin);
    }
  }

  private static void speak(
      RuleContext context,
      ToothCuts.ToothCut tooth,
      NumberRange range,
      double diameterMm,
      double speedMPerMin) {
    boolean known = tooth.mill().shape() == EndMill.Shape.FLAT || tooth.depthMm().isPresent();
    boolean slow = speedMPerMin < range.lo();
    double limit = slow ? range.lo() : range.hi();
    double rpm = SurfaceSpeed.rpm(limit, diameterMm);
    // To the side on which the limit holds; the least doubt of a product must not add a turn.
    double enough =
        slow
            ? StrictMath.ceil(rpm * (1 - EQUAL_WITHIN))
            : StrictMath.floor(rpm * (1 + EQUAL_WITHIN));
    context.report(
        context
            .occurrence(
                tooth.cut().at(),
                (known ? "surface speed " : "surface speed at most ")
                    + Quantities.apart(speedMPerMin, limit)
                    + " m/min, the tool wants "
                    + end(range.lo(), limit, speedMPerMin)
                    + " m/min to "
                    + end(range.hi(), limit, speedMPerMin)
                    + " m/min")
            .fact(
                "π × "
                    + Quantities.mm(diameterMm)
                    + " × "
                    + Quantities.rpm(tooth.rpm())
                    + (known ? "" : ", the whole diameter, as the depth of cut is not known")
                    + "; range from "
                    + tooth.tool().path(ToolKeys.SURFACE_SPEED_M_PER_MIN))
            .cure("S" + Quantities.significant(enough, 9) + (slow ? " or more" : " or less"))
            .figure("speedThatWouldDo", enough, "rpm")
            .figure("surfaceSpeed", speedMPerMin, "m/min")
            .figure("limit", limit, "m/min")
            .figure("diameter", diameterMm, "mm")
            .operation(tooth.cut().move().modes().operation())
            .cause("tool " + tooth.tool().number() + " " + Quantities.rpm(tooth.rpm()))
            .severity(Math.abs(speedMPerMin - limit)));
  }

  /** An end of the range; the one that is the limit is told from the speed. */
  private static String end(double mPerMin, double limit, double speedMPerMin) {
    return mPerMin == limit
        ? Quantities.apart(limit, speedMPerMin)
        : Quantities.significant(mPerMin, 4);
  }
}
