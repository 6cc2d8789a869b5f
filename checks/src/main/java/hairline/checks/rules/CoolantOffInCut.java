package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Modes.Coolant;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.stock.Cut;
import java.util.HashMap;
import java.util.Map;

/** A tool that cut with coolant goes on without. */
@AutoService(Rule.class)
public final class CoolantOffInCut implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "coolant-off-in-cut",
              Level.WARNING,
              Group.WARMTH,
              "a tool that cut with coolant goes on without",
              Need.OVERLAP,
              Need.STATE)
          .withoutLimit("coolant is on or off");

  private static final int MOST_TOOLS = 1000;

  /** The last cut of a tool with coolant. */
  private record Cooled(Coolant coolant, Place at) {}

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Map<Integer, Cooled> cooled = new HashMap<>();
    on.contact(
        cut -> {
          if (cut.move().isFeed()) {
            judge(context, cut, cooled);
          }
        });
  }

  private static void judge(RuleContext context, Cut cut, Map<Integer, Cooled> cooled) {
    Modes modes = cut.move().modes();
    Modal<Coolant> coolant = modes.coolant();
    if (modes.tool().value().isEmpty()) {
      return;
    }
    int tool = modes.tool().value().get();
    if (coolant.isUnknown()) {
      if (cooled.containsKey(tool)) {
        context.notChecked("coolant is unknown since " + context.line(coolant, cut.at()), cut.at());
      }
      return;
    }
    Coolant now = coolant.value().orElse(Coolant.OFF);
    if (now.on()) {
      if (cooled.size() < MOST_TOOLS || cooled.containsKey(tool)) {
        cooled.put(tool, new Cooled(now, cut.at()));
      } else {
        context.notChecked("more than " + MOST_TOOLS + " tools", cut.at());
      }
      return;
    }
    Cooled before = cooled.get(tool);
    if (before == null) {
      return;
    }
    context.report(
        context
            .occurrence(
                cut.at(),
                () ->
                    "tool "
                        + tool
                        + " cuts with no coolant, and cut with "
                        + Coolants.name(before.coolant())
                        + " up to "
                        + context.line(before.at(), cut.at()))
            .fact(
                () ->
                    coolant.line() > 0
                        ? "off since " + context.line(coolant, cut.at())
                        : "no coolant code stands before")
            .cure(() -> (before.coolant().flood() ? "M8" : "M7") + " before this line")
            .operation(modes.operation())
            .cause("tool " + tool));
  }
}
