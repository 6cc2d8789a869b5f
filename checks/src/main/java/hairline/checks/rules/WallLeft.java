package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.LevelReached;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.Sliver;
import hairline.checks.stock.SurfaceLeft;
import java.util.HashMap;
import java.util.Map;

/** A sliver stands between two passes. */
@AutoService(Rule.class)
public final class WallLeft implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "wall-left",
          Level.NOTE,
          Group.MOTION,
          "a sliver narrower than a tenth of the tool stands between passes",
          Need.SURFACE);

  /** What part of the tool's diameter a wall that is meant is wide at least. */
  private static final double NARROWEST_SHARE = 0.1;

  /** What is shorter than this part of the diameter stands between round ends of passes. */
  private static final double SHORTEST_SHARE = 0.5;

  /** Fewer cells across than these, and no sliver can be told. */
  private static final int FEWEST_CELLS = 2;

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** A level that was cut. */
  private record Beside(LevelReached level, long diameterPm) {}

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Map<Integer, Beside> levels = new HashMap<>();
    on.event(
        LevelReached.class,
        level ->
            level
                .tool()
                .flatMap(tool -> tool.get(ToolKeys.DIAMETER))
                .ifPresent(
                    diameter ->
                        levels.putIfAbsent(level.levelId(), new Beside(level, diameter.pm()))));
    on.event(
        PartLeft.class,
        part -> part.surfaces().forEach(surface -> judge(context, part, surface, levels)));
  }

  private static void judge(
      RuleContext context, PartLeft part, SurfaceLeft surface, Map<Integer, Beside> levels) {
    double largestPm = levels.values().stream().mapToDouble(Beside::diameterPm).max().orElse(0);
    if (largestPm == 0) {
      return;
    }
    double cellPm = surface.cellPm();
    if (NARROWEST_SHARE * largestPm <= FEWEST_CELLS * cellPm) {
      context.notChecked("a tenth of the tool is no more than two cells of the surface", part.at());
      return;
    }
    boolean all =
        surface.slivers(
            id -> share(levels, id, NARROWEST_SHARE),
            id -> share(levels, id, SHORTEST_SHARE),
            NARROWEST_SHARE * largestPm,
            sliver -> speak(context, surface, sliver, levels));
    if (!all) {
      context.notChecked("the surface has more narrow places than are kept", part.at());
    }
  }

  private static double share(Map<Integer, Beside> levels, int id, double share) {
    Beside beside = levels.get(id);
    return beside == null ? Double.NaN : share * beside.diameterPm();
  }

  private static void speak(
      RuleContext context, SurfaceLeft surface, Sliver sliver, Map<Integer, Beside> levels) {
    Beside one = levels.get(Math.min(sliver.oneLevelId(), sliver.otherLevelId()));
    Beside later = levels.get(Math.max(sliver.oneLevelId(), sliver.otherLevelId()));
    if (one == null || later == null) {
      return;
    }
    double widthUm = sliver.widthPm() / 1e6;
    double wideEnoughUm = NARROWEST_SHARE * Math.min(one.diameterPm(), later.diameterPm()) / 1e6;
    context.report(
        context
            .occurrence(
                later.level().at(),
                "a sliver "
                    + Quantities.um(widthUm)
                    + " wide stands between passes, a tenth of the tool is "
                    + Quantities.um(wideEnoughUm))
            .fact(
                SliverPlace.of(sliver)
                    + ", up to Z"
                    + Quantities.significant(sliver.heightPm() / 1e9, 6)
                    + "; good to a cell of "
                    + Quantities.um(surface.cellPm()))
            .fact(
                "the level on the other side begins at "
                    + context.line(one.level().at(), later.level().at()))
            .cure("passes that overlap, or a wall as wide as it is meant")
            .figure("width", widthUm, "µm")
            .figure("tenthOfTool", wideEnoughUm, "µm")
            .operation(later.level().operation())
            .cause("sliver")
            .severity(-widthUm));
  }
}
