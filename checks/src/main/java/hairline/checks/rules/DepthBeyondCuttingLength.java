package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Length;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import java.util.Optional;

/** A pass is deeper than the cutting edges are long. */
@AutoService(Rule.class)
public final class DepthBeyondCuttingLength implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "depth-beyond-cutting-length",
          Level.ERROR,
          Group.STEPS,
          "a pass is deeper than the cutting edges are long",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.contact(
        cut -> {
          if (cut.stepDownPm().isPresent() && cut.tool().isPresent()) {
            Tool tool = cut.tool().get();
            Optional<Length> length = context.need(tool, ToolKeys.CUTTING_LENGTH, cut.at());
            if (length.isPresent() && cut.stepDownPm().getAsLong() > length.get().pm()) {
              speak(context, cut, tool, length.get());
            }
          }
        });
  }

  private static void speak(RuleContext context, Cut cut, Tool tool, Length length) {
    long depthPm = cut.stepDownPm().getAsLong();
    context.report(
        context
            .occurrence(
                cut.at(),
                "depth "
                    + Quantities.mm(depthPm)
                    + ", cutting length "
                    + Quantities.mm(length.pm()))
            .fact("cutting length from " + tool.path(ToolKeys.CUTTING_LENGTH))
            .cure("passes of " + Quantities.mm(length.pm()) + " or less, or a longer tool")
            .figure("depth", depthPm / 1e9, "mm")
            .figure("cuttingLength", length.mm(), "mm")
            .operation(cut.move().modes().operation())
            .cause("tool " + tool.number())
            .severity((double) depthPm));
  }
}
