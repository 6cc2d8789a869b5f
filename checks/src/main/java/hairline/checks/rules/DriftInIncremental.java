package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.IncrementalDrift;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.MachineKeys;

/** The sum of stored incremental moves leaves the sum as written. */
@AutoService(Rule.class)
public final class DriftInIncremental implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "drift-in-incremental",
          Level.ERROR,
          Group.NUMBERS,
          "rounded incremental moves drift away from their sum",
          Need.WORDS);

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
                on.event(
                    IncrementalDrift.class,
                    drift ->
                        context.report(
                            context
                                .occurrence(
                                    drift.at(),
                                    drift.axis()
                                        + " has drifted by "
                                        + Quantities.um(drift.driftPm())
                                        + ", allowed "
                                        + Quantities.um(resolution.pm()))
                                .fact(
                                    drift.roundedMoves()
                                        + " rounded moves under G91, the first at "
                                        + context.line(drift.since(), drift.at()))
                                .fact("allowed is one increment, machine.resolution")
                                .cure(
                                    "increments of whole "
                                        + Quantities.um(resolution.pm())
                                        + ", or G90")
                                .figure("drift", drift.driftPm() / 1e6, "µm")
                                .figure("resolution", resolution.um(), "µm")
                                .cause(drift.axis().name())
                                .severity(Math.abs((double) drift.driftPm())))));
  }
}
