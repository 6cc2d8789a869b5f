package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Arc;
import hairline.checks.motion.Event.ArcImpossible;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.Length;

/** An arc with ends that lie at different distances from its centre. */
@AutoService(Rule.class)
public final class ArcEndsDisagree implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "arc-ends-disagree",
          Level.ERROR,
          Group.NUMBERS,
          "start and end of an arc lie at different distances from its centre",
          Need.WORDS);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.arc(
        (move, arc) -> {
          if (!arc.radiusForm()) {
            context
                .need(ControlKeys.ARC_TOLERANCE, move.at())
                .ifPresent(tolerance -> judge(context, move, arc, tolerance));
          }
        });
    on.event(ArcImpossible.class, arc -> impossible(context, arc));
  }

  private static void impossible(RuleContext context, ArcImpossible arc) {
    Occurrence.Builder occurrence =
        context
            .occurrence(arc.at(), "no such arc: " + arc.reason())
            .fact("the move is left out; the axes are taken to be at its end")
            .operation(arc.modes().operation())
            .cause("impossible");
    if (arc.startRadiusMm().isPresent() && arc.endRadiusMm().isPresent()) {
      double radiusMm = arc.startRadiusMm().getAsDouble();
      double halfChordMm = arc.endRadiusMm().getAsDouble();
      occurrence
          .fact(
              "half the distance of the ends is "
                  + Quantities.apart(halfChordMm, radiusMm)
                  + " mm, the radius "
                  + Quantities.apart(radiusMm, halfChordMm)
                  + " mm")
          .figure("halfChord", halfChordMm, "mm")
          .figure("radius", radiusMm, "mm");
    }
    context.report(occurrence);
  }

  private static void judge(RuleContext context, Move move, Arc arc, Length tolerance) {
    double differenceUm = Math.abs(arc.startRadiusMm() - arc.endRadiusMm()) * 1000;
    // The radii are doubles of stored values: their error is far below a picometre's thousandth.
    if (differenceUm <= tolerance.um() + 1e-6) {
      return;
    }
    context.report(
        context
            .occurrence(
                move.at(),
                "radius "
                    + Quantities.significant(arc.startRadiusMm(), 7)
                    + " mm at the start, "
                    + Quantities.significant(arc.endRadiusMm(), 7)
                    + " mm at the end: difference "
                    + Quantities.um(differenceUm, tolerance.um())
                    + ", allowed "
                    + Quantities.um(tolerance.pm()))
            .fact("radii from stored values; allowed is machine.control.arc_tolerance")
            .cure("I, J, K and the end from one computation, with digits that the control keeps")
            .figure("startRadius", arc.startRadiusMm(), "mm")
            .figure("endRadius", arc.endRadiusMm(), "mm")
            .figure("difference", differenceUm, "µm")
            .figure("allowed", tolerance.um(), "µm")
            .operation(move.modes().operation())
            .cause("radii")
            .severity(differenceUm));
  }
}
