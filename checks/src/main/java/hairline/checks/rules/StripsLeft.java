package hairline.checks.rules;

import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.setup.Feature;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.LevelReached;
import hairline.checks.stock.Sliver;
import hairline.checks.stock.SurfaceLeft;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongPredicate;

/**
 * Strips that stand between two passes in a declared feature, at a height that it does not declare:
 * what surrounds a feature may stand there, but is wider or has no floor on one side.
 */
final class StripsLeft {
  /**
   * What is as wide as this part of the diameter may be meant, as the rib between two channels. A
   * pass left out leaves less wherever passes lie no more than three quarters of the tool apart.
   * Our choice, no source.
   */
  private static final double WIDEST_SHARE = 0.5;

  /** What is shorter than this part of the diameter stands between round ends of passes. */
  private static final double SHORTEST_SHARE = 0.5;

  private final RuleContext context;
  private final SurfaceLeft surface;
  private final Map<Integer, LevelReached> levels;
  private final List<Sliver> strips = new ArrayList<>();
  private boolean looked;
  private boolean all;

  /**
   * The strips of one surface.
   *
   * @param levels what was cut, by its id
   */
  StripsLeft(RuleContext context, SurfaceLeft surface, Map<Integer, LevelReached> levels) {
    this.context = context;
    this.surface = surface;
    this.levels = levels;
  }

  /**
   * Tells those of a feature.
   *
   * @param undeclared whether a height, in picometres, is none that the feature asks for
   */
  void tell(Feature feature, LongPredicate undeclared, Place end) {
    look();
    if (!all) {
      context.notChecked("the surface has more narrow places than are kept", end);
    }
    for (Sliver strip : strips) {
      if (undeclared.test(strip.heightPm())
          && SurfaceLeft.featureOf(strip, context.setup().features())
              .equals(Optional.of(feature))) {
        speak(feature, strip);
      }
    }
  }

  private void look() {
    if (looked) {
      return;
    }
    looked = true;
    double largestPm =
        levels.keySet().stream().mapToDouble(this::diameterPm).filter(d -> d > 0).max().orElse(0);
    all =
        largestPm == 0
            || surface.slivers(
                id -> WIDEST_SHARE * diameterPm(id),
                id -> SHORTEST_SHARE * diameterPm(id),
                WIDEST_SHARE * largestPm,
                strips::add);
  }

  /** The diameter of the tool that cut a level; NaN where it is not known. */
  private double diameterPm(int levelId) {
    LevelReached level = levels.get(levelId);
    return level == null
        ? Double.NaN
        : level
            .tool()
            .flatMap(tool -> tool.get(ToolKeys.DIAMETER))
            .map(diameter -> (double) diameter.pm())
            .orElse(Double.NaN);
  }

  private void speak(Feature feature, Sliver strip) {
    LevelReached one = levels.get(Math.min(strip.oneLevelId(), strip.otherLevelId()));
    LevelReached later = levels.get(Math.max(strip.oneLevelId(), strip.otherLevelId()));
    if (one == null || later == null) {
      return;
    }
    double widthUm = strip.widthPm() / 1e6;
    double halfToolUm =
        WIDEST_SHARE * Math.min(diameterPm(one.levelId()), diameterPm(later.levelId())) / 1e6;
    String height = Quantities.um(strip.heightPm());
    context.report(
        context
            .lesserOccurrence(
                later.at(),
                "a strip of "
                    + feature.name()
                    + " "
                    + Quantities.um(widthUm)
                    + " wide, half of the tool is "
                    + Quantities.um(halfToolUm)
                    + ", is left at "
                    + height
                    + " between floors at "
                    + Quantities.um(one.storedZPm())
                    + " and "
                    + Quantities.um(later.storedZPm()))
            .fact(SliverPlace.of(strip) + "; good to a cell of " + Quantities.um(surface.cellPm()))
            .fact(
                height
                    + " is none of the heights that job.features "
                    + feature.name()
                    + " declares"
                    + (feature.levels().isEmpty() ? " by its step" : ""))
            .fact("the floor on the other side is begun at " + context.line(one.at(), later.at()))
            .cure(
                "passes that overlap; where a rib is meant, "
                    + (feature.levels().isEmpty()
                        ? "a feature of its own for it"
                        : "its height among the declared levels"))
            .figure("width", widthUm, "µm")
            .figure("halfTool", halfToolUm, "µm")
            .operation(later.operation())
            .cause(feature.name() + " strip")
            .severity(widthUm));
  }
}
