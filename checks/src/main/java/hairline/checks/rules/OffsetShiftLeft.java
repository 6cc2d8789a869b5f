package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Event.ShiftSet;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import java.util.LinkedHashMap;
import java.util.Map;

/** A G92, G52 or G10 shift still stands at the end. */
@AutoService(Rule.class)
public final class OffsetShiftLeft implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "offset-shift-left",
              Level.WARNING,
              Group.STATE,
              "a shift of the zero still stands at the end",
              Need.STATE)
          .withoutLimit("no shift is small enough to be left");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Map<String, ShiftSet> standing = new LinkedHashMap<>();
    on.event(
        ShiftSet.class,
        event -> {
          if (event.active()) {
            standing.putIfAbsent(family(event.code()), event);
          } else {
            standing.remove(family(event.code()));
          }
        });
    on.event(Ended.class, end -> standing.values().forEach(shift -> speak(context, shift, end)));
  }

  /** G92.1 takes back what G92 set, and G10 L2 what G10 L20 set. */
  private static String family(String code) {
    if (code.startsWith("G10 ")) {
      return code.substring(code.indexOf('P'));
    }
    int point = code.indexOf('.');
    return point < 0 ? code : code.substring(0, point);
  }

  private static void speak(RuleContext context, ShiftSet shift, Ended end) {
    context.report(
        context
            .occurrence(shift.at(), "the shift of " + shift.code() + " still stands at the end")
            .fact(
                "the program ends at "
                    + context.line(end.at(), shift.at())
                    + " without taking it back")
            .cure(
                shift.code().startsWith("G52")
                    ? "G52 X0. Y0. Z0. before the end"
                    : shift.code().startsWith("G92")
                        ? "G92.1 before the end"
                        : "the old offset data written back before the end")
            .cause(shift.code()));
  }
}
