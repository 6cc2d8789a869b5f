package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Feature;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.Length;
import hairline.checks.setup.Resolved;
import hairline.checks.setup.ShopKeys;
import hairline.checks.setup.Tolerance;
import hairline.checks.stock.Cut;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The uncertainty of the gauge is more than a quarter of the tolerance. */
@AutoService(Rule.class)
public final class GaugeTooCoarse implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "gauge-too-coarse",
          Level.WARNING,
          Group.BUDGET,
          "the gauge is too coarse for the tolerance",
          Need.OVERLAP);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Places places = new Places();
    on.event(
        Event.BlockStarted.class,
        block -> places.start = places.start.or(() -> Optional.of(block.at())));
    on.event(Cut.class, places::note);
    on.event(
        Ended.class,
        end ->
            context
                .need(ShopKeys.GAUGE_UNCERTAINTY)
                .ifPresent(gauge -> judgeAll(context, gauge, places, end.at())));
  }

  /**
   * Where the rule points: at the first fine cut of what the gauge is to measure; where nothing is
   * cut fine, at the start of the program.
   */
  private static final class Places {
    Optional<Place> start = Optional.empty();
    Optional<Place> fine = Optional.empty();
    final Map<String, Place> inFeature = new HashMap<>();

    void note(Cut cut) {
      if (cut.fine()) {
        fine = fine.or(() -> Optional.of(cut.at()));
        cut.feature().ifPresent(feature -> inFeature.putIfAbsent(feature.name(), cut.at()));
      }
    }
  }

  private static void judgeAll(RuleContext context, Length gauge, Places places, Place end) {
    Place start = places.start.orElse(end);
    if (context.setup().features().isEmpty()) {
      context
          .need(JobKeys.TOLERANCE)
          .ifPresent(
              tolerance ->
                  judge(
                      context,
                      gauge,
                      tolerance,
                      JobKeys.TOLERANCE.path(),
                      places.fine.orElse(start)));
      return;
    }
    for (Feature feature : context.setup().features()) {
      Place at = places.inFeature.getOrDefault(feature.name(), start);
      Resolved<Tolerance> tolerance = context.setup().toleranceOf(feature);
      Optional<Tolerance> given = context.need(tolerance, at);
      given.ifPresent(t -> judge(context, gauge, t, tolerance.path(), at));
    }
  }

  private static void judge(
      RuleContext context, Length gauge, Tolerance tolerance, String key, Place at) {
    long halfWidthPm = (tolerance.hi().pm() - tolerance.lo().pm()) / 2;
    if (gauge.pm() * 4 <= halfWidthPm) {
      return;
    }
    context.report(
        context
            .occurrence(
                at,
                "gauge uncertainty "
                    + Quantities.um(gauge.pm())
                    + ", a quarter of the tolerance is "
                    + Quantities.um(halfWidthPm / 4))
            .fact(
                "tolerance ±"
                    + Quantities.um(halfWidthPm)
                    + " from "
                    + key
                    + ", ratio "
                    + Quantities.significant((double) halfWidthPm / gauge.pm(), 3)
                    + " to 1, at least 4 to 1 wanted")
            .cure("a gauge of " + Quantities.um(halfWidthPm / 4) + " or better")
            .figure("uncertainty", gauge.um(), "µm")
            .figure("tolerance", halfWidthPm / 1e6, "µm")
            .cause(key)
            .severity((double) gauge.pm() / halfWidthPm));
  }
}
