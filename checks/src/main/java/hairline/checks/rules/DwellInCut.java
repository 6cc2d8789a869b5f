package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Dwelled;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.stock.Contact;
import hairline.checks.stock.Cut;
import hairline.checks.stock.DwelledAt;
import hairline.checks.stock.DwelledAt.Touch;
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
        DwelledAt.class,
        dwell ->
            last.cut
                .filter(cut -> cut.move().source() == Move.Source.BLOCK)
                .ifPresent(
                    cut -> {
                      if (touches(dwell, cut)) {
                        speak(context, dwell, cut);
                      } else if (dwell.touch().isEmpty() && mayTouch(cut)) {
                        context.notChecked(
                            "whether the tool touches the part during a dwell is not known",
                            dwell.dwell().at());
                      }
                    }));
  }

  /** By the surface; where that is not known, by what the move before did. */
  private static boolean touches(DwelledAt dwell, Cut cut) {
    return dwell.touch().map(touch -> touch != Touch.NOTHING).orElse(cut.inContact());
  }

  private static boolean mayTouch(Cut cut) {
    return cut.contact() == Contact.UNKNOWN || !cut.move().to().knowsXyz();
  }

  private static String what(DwelledAt dwell) {
    return dwell
        .touch()
        .map(touch -> touch == Touch.WALL ? "a wall at its rim" : "its end on the floor")
        .orElse("in contact");
  }

  private static void speak(RuleContext context, DwelledAt at, Cut cut) {
    Dwelled dwell = at.dwell();
    context.report(
        context
            .occurrence(
                dwell.at(),
                "a dwell"
                    + (dwell.seconds().isPresent()
                        ? " of " + Quantities.time(dwell.seconds().getAsDouble())
                        : "")
                    + " while the tool touches the part")
            .fact(what(at) + " since the move at " + context.line(cut.at(), dwell.at()))
            .cure("the dwell before the cut or behind the retract")
            .operation(dwell.modes().operation())
            .cause("dwell"));
  }
}
