package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Dwelled;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.stock.Cut;
import java.util.Optional;

/** A dwell while the tool touches the part. */
@AutoService(Rule.class)
public final class DwellInCut implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "dwell-in-cut",
              Level.WARNING,
              Group.MOTION,
              "a dwell while the tool touches the part",
              Need.OVERLAP)
          .withoutLimit("no dwell in a cut is short enough");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  private static final class Last {
    Optional<Cut> cut = Optional.empty();
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Last last = new Last();
    on.event(Cut.class, cut -> last.cut = Optional.of(cut));
    on.event(
        Dwelled.class,
        dwell ->
            last.cut
                .filter(cut -> cut.inContact() && cut.move().source() == Move.Source.BLOCK)
                .ifPresent(cut -> speak(context, dwell, cut)));
  }

  private static void speak(RuleContext context, Dwelled dwell, Cut cut) {
    context.report(
        context
            .occurrence(
                dwell.at(),
                "a dwell"
                    + (dwell.seconds().isPresent()
                        ? " of " + Quantities.time(dwell.seconds().getAsDouble())
                        : "")
                    + " while the tool touches the part")
            .fact("in contact since the move at line " + cut.at().line())
            .cure("the dwell before the cut or behind the retract")
            .operation(dwell.modes().operation())
            .cause("dwell"));
  }
}
