package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Cusp;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.Length;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.setup.ToolShape;
import hairline.checks.stock.CuspLeft;
import hairline.checks.stock.Cusps;
import hairline.checks.stock.Cut;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.SurfaceLeft;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Passes of a ball or a corner radius lie so far apart that the cusps between them are too high.
 */
@AutoService(Rule.class)
public final class CuspAboveLimit implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "cusp-above-limit",
          Level.WARNING,
          Group.MOTION,
          "passes of a rounded tool leave cusps higher than allowed",
          Need.SURFACE);

  /** A stepover that would do is stated to a tenth of a micrometre, rounded down. */
  private static final double TENTHS_OF_UM_PER_MM = 1e4;

  @Override
  public RuleInfo info() {
    return INFO;
  }

  private static final class Seen {
    private Optional<Place> first = Optional.empty();
    private Optional<Length> limit = Optional.empty();
    private final Map<String, Cusps> byOffset = new HashMap<>();

    /** The tool of the last cut, and whether its end is round. */
    private @Nullable Tool last;

    private boolean round;

    // A sheet has one object for each of its tools.
    @SuppressWarnings("ReferenceEquality")
    private boolean counts(Cut cut) {
      if (!cut.fine() || cut.tool().isEmpty()) {
        return false;
      }
      Tool tool = cut.tool().get();
      if (tool != last) {
        round = Cusps.counts(cut);
        last = tool;
      }
      return round;
    }

    /** The tool whose corner is on the sheet, as the last cut has shown. */
    private @Nullable Tool cornered;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Seen seen = new Seen();
    on.contact(
        cut -> {
          needCorner(context, seen, cut);
          if (seen.first.isEmpty() && seen.counts(cut)) {
            seen.first = Optional.of(cut.at());
            seen.limit = context.need(JobKeys.CUSP, cut.at());
          }
          if (seen.limit.isPresent()) {
            cut.move()
                .modes()
                .workOffset()
                .value()
                .ifPresent(
                    offset -> seen.byOffset.computeIfAbsent(offset, o -> new Cusps()).add(cut));
          }
        });
    on.event(
        PartLeft.class,
        part -> seen.limit.ifPresent(limit -> judge(context, part, seen, limit.um())));
  }

  /** What a bull-nosed tool leaves depends on its corner. */
  // A sheet has one object for each of its tools.
  @SuppressWarnings("ReferenceEquality")
  private static void needCorner(RuleContext context, Seen seen, Cut cut) {
    if (cut.tool().isEmpty() || cut.tool().get() == seen.cornered) {
      return;
    }
    long said = context.said();
    cut.tool()
        .filter(tool -> tool.get(ToolKeys.SHAPE).filter(s -> s == ToolShape.BULL).isPresent())
        .filter(tool -> tool.get(ToolKeys.CORNER_RADIUS).isEmpty())
        .ifPresent(tool -> context.need(tool, ToolKeys.CORNER_RADIUS, cut.at()));
    seen.cornered = context.said() == said ? cut.tool().get() : null;
  }

  private static void judge(RuleContext context, PartLeft part, Seen seen, double limitUm) {
    for (SurfaceLeft surface : part.surfaces()) {
      Cusps cusps = seen.byOffset.get(surface.offset());
      if (cusps == null) {
        continue;
      }
      Place first = seen.first.orElse(part.at());
      if (!surface.known()) {
        context.notChecked("the surface left is not known", first);
      } else if (!cusps.find(surface, limitUm, cusp -> speak(context, cusp, limitUm))) {
        context.notChecked("there are more passes than are kept", first);
      }
    }
  }

  private static void speak(RuleContext context, CuspLeft cusp, double limitUm) {
    double enoughMm =
        StrictMath.floor(
                (Cusp.stepoverMm(cusp.radiusMm(), limitUm) + cusp.flatMm()) * TENTHS_OF_UM_PER_MM)
            / TENTHS_OF_UM_PER_MM;
    double apartMm = cusp.apartMm() + cusp.flatMm();
    boolean slope = cusp.apartMm() > cusp.apartAboveMm() * (1 + 1e-9);
    context.report(
        context
            .occurrence(
                cusp.at(),
                "passes "
                    + Quantities.mm(apartMm)
                    + " apart leave cusps of "
                    + Quantities.apart(cusp.heightUm(), limitUm)
                    + " µm, allowed "
                    + Quantities.um(limitUm, cusp.heightUm()))
            .fact(
                "radius "
                    + Quantities.mm(cusp.radiusMm())
                    + (cusp.flatMm() > 0 ? ", flat of " + Quantities.mm(cusp.flatMm()) : "")
                    + (slope
                        ? ", on a slope; seen from above "
                            + Quantities.mm(cusp.apartAboveMm() + cusp.flatMm())
                        : "")
                    + "; job.cusp")
            .cure("passes " + Quantities.mm(enoughMm) + " apart along the surface, or less")
            .figure("cusp", cusp.heightUm(), "µm")
            .figure("allowed", limitUm, "µm")
            .figure("stepover", apartMm, "mm")
            .figure("stepoverThatWouldDo", enoughMm, "mm")
            .operation(cusp.operation())
            .cause("tool " + cusp.tool().number())
            .severity(cusp.heightUm()));
  }
}
