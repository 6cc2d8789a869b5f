package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Position;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import hairline.checks.setup.Length;
import hairline.checks.setup.StockKeys;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import hairline.checks.stock.RapidMeetsStock;
import java.util.Optional;

/** A rapid move enters stock. */
@AutoService(Rule.class)
public final class RapidIntoStock implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "rapid-into-stock",
              Level.ERROR,
              Group.MOTION,
              "a rapid move enters stock",
              Need.SURFACE)
          .hiding(
              Scope.BLOCK,
              "chip-below-minimum",
              "chip-above-limit",
              "feed-below-edge-radius",
              "runout-exceeds-feed",
              "surface-speed-off",
              "depth-below-edge-radius",
              "depth-below-minimum",
              "depth-beyond-cutting-length",
              "depth-uneven");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(RapidMeetsStock.class, rapid -> speak(context, rapid));
    if (StockGiven.need(context)) {
      Length top = context.setup().get(StockKeys.TOP).orElseThrow();
      on.event(
          Cut.class,
          cut -> {
            if (cut.move().isFeed()) {
              return;
            }
            if (cut.move().from().knowsXyz() && !cut.move().to().knowsXyz()) {
              context.notChecked("where a rapid goes is not known", cut.at());
            } else if (mayBeBelow(cut.move().to(), top)) {
              sayWhatKeeps(context, cut);
            }
          });
    }
  }

  private static boolean mayBeBelow(Position to, Length top) {
    return to.knows(Axis.Z) && to.zPm() < top.pm();
  }

  /** Of a rapid below the stock's top: what keeps it from being looked at. */
  private static void sayWhatKeeps(RuleContext context, Cut cut) {
    String stockOffset = context.setup().get(StockKeys.OFFSET).orElse("G54");
    Optional<String> offset = cut.move().modes().workOffset().value();
    if (offset.isPresent() && !offset.get().equals(stockOffset)) {
      context.notChecked(
          "the stock is given under " + stockOffset + ", the rapid runs under " + offset.get(),
          cut.at());
    } else if (cut.tool().isEmpty()) {
      context.notChecked("the tool is not known or not on the sheet", cut.at());
    } else {
      context.need(cut.tool().get(), ToolKeys.DIAMETER, cut.at());
      context.need(cut.tool().get(), ToolKeys.SHAPE, cut.at());
    }
  }

  private static void speak(RuleContext context, RapidMeetsStock rapid) {
    String tool = rapid.tool().map(t -> "tool " + t.number()).orElse("the tool");
    context.report(
        context
            .occurrence(
                rapid.at(),
                "a rapid goes "
                    + Quantities.mm(rapid.depthPm() / 1e9)
                    + " into stock, first at X "
                    + Quantities.mm(rapid.xPm())
                    + ", Y "
                    + Quantities.mm(rapid.yPm())
                    + ", Z "
                    + Quantities.mm(rapid.zPm()))
            .fact("the depth is that of the end of " + tool + " below what stands there")
            .cure("a higher Z for the way there, or G1 for the way in")
            .figure("depth", rapid.depthPm() / 1e9, "mm")
            .figure("x", rapid.xPm() / 1e9, "mm")
            .figure("y", rapid.yPm() / 1e9, "mm")
            .figure("z", rapid.zPm() / 1e9, "mm")
            .operation(rapid.move().modes().operation())
            .cause(tool)
            .severity((double) rapid.depthPm()));
  }
}
