package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.Length;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import java.util.Optional;

/** A fine tool feeds straight down into stock, outside of a drilling cycle. */
@AutoService(Rule.class)
public final class StraightPlunge implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "straight-plunge",
          Level.WARNING,
          Group.MOTION,
          "a small tool feeds straight down into stock",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.contact(
        cut -> {
          if (plunges(cut.move()) && cut.stepDownPm().isPresent()) {
            cut.tool().ifPresent(tool -> judge(context, cut, tool));
          }
        });
  }

  private static boolean plunges(Move move) {
    return move.kind() == Move.Kind.LINE
        && move.source() == Move.Source.BLOCK
        && move.from().knowsXyz()
        && move.to().knowsXyz()
        && move.from().xPm() == move.to().xPm()
        && move.from().yPm() == move.to().yPm()
        && move.to().zPm() < move.from().zPm();
  }

  private static void judge(RuleContext context, Cut cut, Tool tool) {
    Optional<Length> diameter = context.need(tool, ToolKeys.DIAMETER, cut.at());
    Optional<Length> fineTool = context.need(JobKeys.FINE_TOOL, cut.at());
    long depthPm = cut.stepDownPm().orElse(0);
    if (diameter.isEmpty()
        || fineTool.isEmpty()
        || diameter.get().pm() > fineTool.get().pm()
        || depthPm * 10 <= diameter.get().pm()) {
      return;
    }
    context.report(
        context
            .occurrence(
                cut.at(),
                "a plunge of "
                    + Quantities.um(depthPm)
                    + " into stock, a tenth of the diameter is "
                    + Quantities.um(diameter.get().pm() / 10))
            .fact(
                "tool "
                    + tool.number()
                    + " of "
                    + Quantities.mm(diameter.get().pm())
                    + " is a fine tool (job.fine_tool "
                    + Quantities.mm(fineTool.get().pm())
                    + ")")
            .cure("a ramp or helix, or a drilled hole first")
            .figure("depth", depthPm / 1e6, "µm")
            .figure("allowed", diameter.get().um() / 10, "µm")
            .operation(cut.move().modes().operation())
            .cause("tool " + tool.number())
            .severity((double) depthPm));
  }
}
