package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.stock.WallCut;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The walls of one feature are cut partly climb, partly conventional. */
@AutoService(Rule.class)
public final class CutDirectionMixed implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "cut-direction-mixed",
              Level.NOTE,
              Group.MOTION,
              "walls of one feature are cut partly climb, partly conventional",
              Need.SURFACE)
          .withoutLimit("any wall cut both ways is one");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** What was seen of the walls of one feature. */
  private static final class Seen {
    private Optional<WallCut> climb = Optional.empty();
    private Optional<WallCut> conventional = Optional.empty();
    private int climbs;
    private int conventionals;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (context.setup().features().isEmpty()) {
      context.notChecked("job.features is not on the sheet");
      return;
    }
    Map<String, Seen> features = new LinkedHashMap<>();
    on.event(
        WallCut.class,
        wall ->
            note(context, features.computeIfAbsent(wall.feature().name(), n -> new Seen()), wall));
    on.event(Ended.class, end -> features.forEach((name, seen) -> judge(context, name, seen)));
  }

  private static void note(RuleContext context, Seen seen, WallCut wall) {
    Modal<Modes.Spindle> spindle = wall.move().modes().spindle();
    if (wall.climb().isPresent() && wall.climb().get()) {
      seen.climb = seen.climb.or(() -> Optional.of(wall));
      seen.climbs++;
    } else if (wall.climb().isPresent()) {
      seen.conventional = seen.conventional.or(() -> Optional.of(wall));
      seen.conventionals++;
    } else if (spindle.isUnknown()) {
      context.notChecked(
          "which way the spindle turns is unknown since " + context.line(spindle, wall.at()),
          wall.at());
    }
  }

  private static void judge(RuleContext context, String name, Seen seen) {
    if (seen.climb.isEmpty() || seen.conventional.isEmpty()) {
      return;
    }
    WallCut climb = seen.climb.get();
    WallCut conventional = seen.conventional.get();
    // Points at the direction that fewer moves have, else at the one that comes later.
    boolean climbIsOdd =
        seen.climbs == seen.conventionals
            ? climb.at().line() > conventional.at().line()
            : seen.climbs < seen.conventionals;
    WallCut odd = climbIsOdd ? climb : conventional;
    context.report(
        context
            .occurrence(
                odd.at(),
                "walls of "
                    + name
                    + " are cut climb, first at "
                    + context.line(climb.at(), odd.at())
                    + ", and conventional, first at "
                    + context.line(conventional.at(), odd.at()))
            .fact(
                "moves along walls that are left standing: "
                    + seen.climbs
                    + " climb, "
                    + seen.conventionals
                    + " conventional")
            .cure("all walls of " + name + " in one direction")
            .figure("climb", seen.climbs, "")
            .figure("conventional", seen.conventionals, "")
            .operation(odd.move().modes().operation())
            .cause(name));
  }
}
