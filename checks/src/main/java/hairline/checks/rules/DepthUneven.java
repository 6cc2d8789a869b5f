package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ToolKeys;
import hairline.checks.setup.ToolShape;
import hairline.checks.stock.Cut;
import hairline.checks.stock.StepDown;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A fine pass of a flat tool takes much more or much less than its step-down. */
@AutoService(Rule.class)
public final class DepthUneven implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "depth-uneven",
          Level.WARNING,
          Group.STEPS,
          "what a fine pass truly takes differs from its step-down by more than half of it",
          Need.SURFACE);

  /** What part of the step-down the true depth may differ by. */
  private static final double MOST_DIFFERENCE = 0.5;

  /** Half a picometre: equal figures must stay equal however products round. */
  private static final double ROUNDING_PM = 0.5;

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.contact(
        cut -> {
          if (cut.spring() || !cut.runsAtLevel() || !isFlat(cut)) {
            return;
          }
          if (cut.fineUndecided() || (cut.fine() && cut.surfacePartlyUnknown())) {
            context.notChecked("the surface before the cut is not known", cut.at());
          } else if (cut.fine()) {
            judge(context, cut);
          }
        });
  }

  private static boolean isFlat(Cut cut) {
    return cut.tool().flatMap(tool -> tool.get(ToolKeys.SHAPE)).equals(Optional.of(ToolShape.FLAT));
  }

  private static boolean allExact(List<StepDown> heights) {
    for (int k = 0; k < heights.size(); k++) {
      if (!heights.get(k).exact()) {
        return false;
      }
    }
    return true;
  }

  private static void judge(RuleContext context, Cut cut) {
    if (allExact(cut.stepDowns())) {
      // Terraces known before: whatever they differ by is meant.
      return;
    }
    List<StepDown> known = cut.stepDowns().stream().filter(StepDown::exact).toList();
    List<StepDown> others = cut.stepDowns().stream().filter(s -> !s.exact()).toList();
    if (known.isEmpty()) {
      judgeMean(context, cut, others.get(0));
      return;
    }
    long largestPm = known.get(0).storedPm();
    long smallestPm = known.get(known.size() - 1).storedPm();
    for (StepDown other : others) {
      if (other.storedPm() - largestPm > MOST_DIFFERENCE * largestPm + ROUNDING_PM) {
        speak(context, cut, other, "up to ", other.storedPm() / 1e6, largestPm);
      } else if (smallestPm - other.storedPm() > MOST_DIFFERENCE * smallestPm + ROUNDING_PM) {
        speak(context, cut, other, "no more than ", other.storedPm() / 1e6, smallestPm);
      }
    }
  }

  /** Over a surface that nowhere is a level: the largest height against the average. */
  private static void judgeMean(RuleContext context, Cut cut, StepDown largest) {
    OptionalDouble meanPm = cut.removal().meanDepthPm();
    if (meanPm.isPresent()
        && largest.storedPm() - meanPm.getAsDouble()
            > MOST_DIFFERENCE * largest.storedPm() + ROUNDING_PM) {
      speak(
          context, cut, largest, "on the average ", meanPm.getAsDouble() / 1e6, largest.storedPm());
    }
  }

  private static void speak(
      RuleContext context, Cut cut, StepDown over, String how, double depthUm, long stepDownPm) {
    double stepDownUm = stepDownPm / 1e6;
    Occurrence.Builder occurrence =
        context
            .occurrence(
                cut.at(),
                () ->
                    "the pass takes "
                        + how
                        + Quantities.um(depthUm)
                        + " where no level lies before it, its step-down is "
                        + Quantities.um(stepDownUm)
                        + ": they differ by more than half of it")
            .fact(
                () ->
                    "over "
                        + Quantities.mm(over.lengthMm())
                        + " of its way, good to a cell of the height field, lies what ramps,"
                        + " plunges, round tools or other passes left")
            .cure("that surface cut to a level first")
            .figure("depth", depthUm, "µm")
            .figure("stepDown", stepDownUm, "µm")
            .operation(cut.move().modes().operation())
            .cause(how + stepDownPm)
            .severity(Math.abs(depthUm - stepDownUm));
    context.report(occurrence);
  }
}
