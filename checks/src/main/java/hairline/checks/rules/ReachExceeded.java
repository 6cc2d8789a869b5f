package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Key;
import hairline.checks.setup.Length;
import hairline.checks.setup.StockKeys;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.BodyMeetsStock;
import hairline.checks.stock.Cut;

/** The cone or shank of a tool comes below stock that stands beside it. */
@AutoService(Rule.class)
public final class ReachExceeded implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "reach-exceeded",
          Level.ERROR,
          Group.STEPS,
          "the neck or shank of the tool comes below stock beside it",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (StockGiven.need(context)) {
      Length top = context.setup().get(StockKeys.TOP).orElseThrow();
      on.event(BodyMeetsStock.class, body -> speak(context, body));
      on.contact(cut -> cut.tool().ifPresent(tool -> askFor(context, cut, tool, top)));
    }
  }

  /** Where a tool has a neck, that is what reaches, else its cutting length. */
  private static Key<Length> reach(Tool tool) {
    return tool.get(ToolKeys.NECK_DIAMETER).isPresent()
        ? ToolKeys.NECK_LENGTH
        : ToolKeys.CUTTING_LENGTH;
  }

  /** Asks for what the sheet must tell of a tool once its tip is low enough to matter. */
  private static void askFor(RuleContext context, Cut cut, Tool tool, Length top) {
    Move move = cut.move();
    if (move.to().knows(Axis.Z) && move.to().zPm() < top.pm()) {
      context
          .need(tool, reach(tool), cut.at())
          .filter(reach -> move.to().zPm() + reach.pm() < top.pm())
          .ifPresent(reach -> context.need(tool, ToolKeys.SHANK_DIAMETER, cut.at()));
    }
  }

  private static void speak(RuleContext context, BodyMeetsStock body) {
    context.report(
        context
            .occurrence(
                body.at(),
                "stock beside tool "
                    + body.tool().number()
                    + " stands "
                    + Quantities.mm(body.depthPm())
                    + " above its tip, its reach is "
                    + Quantities.mm(body.reachPm()))
            .fact(
                "at X "
                    + Quantities.mm(body.xPm() / 1e9)
                    + ", Y "
                    + Quantities.mm(body.yPm() / 1e9)
                    + " the body of the tool is as wide as that; reach from "
                    + body.tool().path(reach(body.tool())))
            .cure("a tool with a longer neck, or a wider way down for this one")
            .figure("depth", body.depthPm() / 1e9, "mm")
            .figure("reach", body.reachPm() / 1e9, "mm")
            .operation(body.move().modes().operation())
            .cause("tool " + body.tool().number())
            .severity((double) body.depthPm()));
  }
}
