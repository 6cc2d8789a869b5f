package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import java.util.List;
import java.util.Set;

/** A call that comes back to itself, or nests deeper than the control follows. */
@AutoService(Rule.class)
public final class SubprogramEndless implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "subprogram-endless",
              Level.ERROR,
              Group.STATE,
              "a call comes back to itself or nests too deep",
              Need.STATE)
          .withoutLimit("a call that comes back to itself has no depth");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        Event.SubprogramEndless.class,
        call ->
            context.report(
                context
                    .occurrence(
                        call.at(),
                        (comesBack(call.chain())
                                ? "calls nest without end: "
                                : "calls nest too deep: ")
                            + String.join(" calls ", call.chain())
                            + "; allowed depth "
                            + call.depthLimit())
                    .fact("allowed is machine.control.call_depth; this call is left out")
                    .cure(
                        comesBack(call.chain())
                            ? "a chain of calls that ends"
                            : "fewer calls inside each other")
                    .figure("allowed", call.depthLimit(), "")
                    .cause(String.join(" ", call.chain()))));
  }

  private static boolean comesBack(List<String> chain) {
    return Set.copyOf(chain).size() < chain.size();
  }
}
