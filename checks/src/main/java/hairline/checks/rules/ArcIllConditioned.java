package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Arc;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Length;
import hairline.checks.setup.MachineKeys;

/** An arc in radius form near a half or a full circle. */
@AutoService(Rule.class)
public final class ArcIllConditioned implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "arc-ill-conditioned",
          Level.WARNING,
          Group.NUMBERS,
          "an arc in radius form whose centre hangs on the last digit",
          Need.WORDS);

  private static final double HALF_FROM_DEG = 165;
  private static final double HALF_TO_DEG = 195;
  private static final double NEARLY_FULL_DEG = 345;

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    context
        .need(MachineKeys.RESOLUTION)
        .ifPresent(
            resolution ->
                on.arc(
                    (move, arc) -> {
                      if (arc.radiusForm()) {
                        judge(context, move, arc, resolution);
                      }
                    }));
  }

  private static void judge(RuleContext context, Move move, Arc arc, Length resolution) {
    double sweepDeg = Math.abs(StrictMath.toDegrees(arc.sweepRad()));
    boolean nearHalf = sweepDeg > HALF_FROM_DEG && sweepDeg < HALF_TO_DEG;
    if (!nearHalf && sweepDeg <= NEARLY_FULL_DEG) {
      return;
    }
    double endMovesMm = resolution.mm() / 2;
    // From 165° to 195° and beyond 345° this is 1.9 increments or more.
    double centreMovesUm = centreMovesMm(move, arc.startRadiusMm(), endMovesMm) * 1000;
    context.report(
        context
            .occurrence(
                move.at(),
                "an arc of "
                    + Quantities.significant(sweepDeg, 5)
                    + "° in radius form: "
                    + (Double.isInfinite(centreMovesUm)
                        ? "no circle is left when an end moves by "
                        : "the centre moves by "
                            + Quantities.um(centreMovesUm, resolution.um())
                            + " when an end moves by ")
                    + Quantities.um(endMovesMm * 1000)
                    + ", allowed "
                    + Quantities.um(resolution.pm()))
            .fact(
                nearHalf
                    ? "radius form is safe up to 165° (NISTIR 6556 section 3.5.3.1)"
                    : "a nearly full circle hangs on a very short chord")
            .cure("the centre with I, J, K; or two arcs of half the sweep")
            .figure("sweep", sweepDeg, "°")
            .figure("centreMoves", centreMovesUm, "µm")
            .figure("allowed", resolution.um(), "µm")
            .figure("endMoves", endMovesMm * 1000, "µm")
            .operation(move.modes().operation())
            .cause("radius form")
            .severity(centreMovesUm));
  }

  /** How far the centre moves at most when the end moves along or across the chord. */
  private static double centreMovesMm(Move move, double radiusMm, double endMovesMm) {
    double chordMm = chordMm(move);
    double heightMm = centreHeightMm(radiusMm, chordMm);
    // The height falls the faster the longer the chord.
    double along =
        chordMm + endMovesMm > 2 * radiusMm
            ? Double.POSITIVE_INFINITY
            : heightMm - centreHeightMm(radiusMm, chordMm + endMovesMm);
    double across = radiusMm * endMovesMm / chordMm;
    return Math.max(along, across);
  }

  /** Distance of the centre from the chord; 0 where the chord is the diameter or longer. */
  private static double centreHeightMm(double radiusMm, double chordMm) {
    return StrictMath.sqrt(Math.max(0, radiusMm * radiusMm - chordMm * chordMm / 4));
  }

  private static double chordMm(Move move) {
    Modes.Plane plane = move.modes().plane().value().orElse(Modes.Plane.XY);
    double first = (move.to().get(plane.first()) - move.from().get(plane.first())) / 1e9;
    double second = (move.to().get(plane.second()) - move.from().get(plane.second())) / 1e9;
    return StrictMath.hypot(first, second);
  }
}
