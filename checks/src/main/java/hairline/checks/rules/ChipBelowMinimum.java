package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.cutting.Engagement;
import hairline.checks.cutting.FeedPerTooth;
import hairline.checks.cutting.MinimumChip;
import hairline.checks.cutting.Runout;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.ToothCuts.ToothCut;
import hairline.checks.setup.MaterialKeys;
import hairline.checks.setup.ToolKeys;
import java.util.Optional;

/** Even where it is thickest, the chip is too thin to form: the teeth rub. */
@AutoService(Rule.class)
public final class ChipBelowMinimum implements Rule {
  static final RuleInfo INFO =
      RuleInfo.of(
          "chip-below-minimum",
          Level.ERROR,
          Group.CHIPS,
          "the largest chip of the engagement is below the minimum chip thickness: the teeth rub",
          Need.OVERLAP);

  /**
   * The largest chip of a cut.
   *
   * @param chipUm with runout, along the edge
   * @param sinKappa sine of the cutting edge angle at that depth
   * @param engagement where known
   */
  record Chip(Band chipUm, Band sinKappa, Optional<Engagement> engagement, boolean bound) {}

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    ToothCuts.judgeEachByStretch(
        context,
        on,
        tooth -> {
          Optional<Band> edgeUm =
              context.need(tooth.tool(), ToolKeys.EDGE_RADIUS, tooth.cut().at()).map(e -> e.um());
          Optional<Band> ratio = context.need(MaterialKeys.MINIMUM_CHIP_RATIO, tooth.cut().at());
          if (edgeUm.isPresent() && ratio.isPresent()) {
            compare(context, tooth, edgeUm.get(), ratio.get());
          }
        });
  }

  /** Tells the same chips to somebody who watches. */
  static void tell(RuleContext context, Subscriptions on, ChipWatcher watcher) {
    ToothCuts.each(
        context,
        on,
        tooth -> {
          Optional<Band> edgeUm = tooth.tool().get(ToolKeys.EDGE_RADIUS).map(e -> e.um());
          Optional<Band> ratio = context.setup().get(MaterialKeys.MINIMUM_CHIP_RATIO);
          watcher.chip(
              tooth.cut(),
              largestChip(tooth).chipUm(),
              edgeUm.flatMap(edge -> ratio.map(r -> MinimumChip.um(r, edge))));
        });
  }

  private static void compare(RuleContext context, ToothCut tooth, Band edgeUm, Band ratio) {
    Chip chip = largestChip(tooth);
    Band minimumUm = MinimumChip.um(ratio, edgeUm);
    Certainty below = chip.chipUm().below(minimumUm);
    if (below == Certainty.NOT_SHOWN && chip.bound()) {
      context.notChecked(
          "the width or depth of cut is not known, and the chip of a full slot would do",
          tooth.cut().at());
      return;
    }
    context
        .occurrence(
            below,
            tooth.cut().at(),
            () ->
                "largest chip "
                    + Bands.um(chip.chipUm(), minimumUm.typical())
                    + ", minimum "
                    + Bands.um(minimumUm, chip.chipUm().typical())
                    + " ("
                    + Bands.with(ratio, "")
                    + " × edge radius "
                    + Bands.um(edgeUm)
                    + ")")
        .ifPresent(
            occurrence -> {
              double enough = enoughFeed(tooth, chip, minimumUm.typical());
              context.report(
                  occurrence
                      .fact(tooth::arithmetic)
                      .fact(() -> thickness(tooth, chip))
                      .fact(
                          () ->
                              "edge radius from "
                                  + tooth.tool().path(ToolKeys.EDGE_RADIUS)
                                  + ", ratio from "
                                  + MaterialKeys.MINIMUM_CHIP_RATIO.path())
                      .cure(() -> tooth.feedWord(enough) + " or more at this speed makes a chip")
                      .figure("chip", chip.chipUm().typical(), "µm")
                      .figure("minimum", minimumUm.typical(), "µm")
                      .figure("feedPerTooth", tooth.feedPerToothUm(), "µm")
                      .figure("feedThatWouldDo", enough, "mm/min")
                      .operation(tooth.cut().move().modes().operation())
                      .cause(tooth.cause())
                      .severity(-chip.chipUm().typical()));
            });
  }

  static Chip largestChip(ToothCut tooth) {
    Optional<Engagement> engagement = tooth.engagement();
    Band sinKappa =
        tooth.depthMm().isPresent()
            ? tooth.mill().sinKappa(tooth.depthMm().getAsDouble())
            : Band.ofExact(1);
    double radialUm = tooth.feedPerToothUm() * engagement.map(Engagement::maxSine).orElse(1.0);
    Band mostLoadedUm =
        readingUm(tooth).map(r -> Runout.mostLoadedChipUm(radialUm, r, tooth.mill().flutes()));
    return new Chip(
        mostLoadedUm.times(sinKappa),
        sinKappa,
        engagement,
        engagement.isEmpty() || tooth.depthMm().isEmpty());
  }

  private static Band readingUm(ToothCut tooth) {
    return tooth.mill().runoutUm().orElse(Band.ofExact(0));
  }

  private static double enoughFeed(ToothCut tooth, Chip chip, double wantedUm) {
    double radialUm =
        Runout.radialFeedForChipUm(
            wantedUm / chip.sinKappa().typical(),
            readingUm(tooth).typical(),
            tooth.mill().flutes());
    double perToothUm = radialUm / chip.engagement().map(Engagement::maxSine).orElse(1.0);
    return StrictMath.ceil(
        FeedPerTooth.feedMmPerMin(perToothUm, tooth.rpm(), tooth.mill().flutes()) - 1e-9);
  }

  /** The engagement of an uneven width is that of the field, where it is longest. */
  private static String width(ToothCut tooth) {
    return tooth.cut().radialMm().isPresent()
        ? "width of cut " + Quantities.mm(tooth.cut().radialMm().getAsDouble())
        : "uneven width of cut, at its largest";
  }

  private static String thickness(ToothCut tooth, Chip chip) {
    StringBuilder text = new StringBuilder();
    text.append(
        chip.engagement()
            .map(
                e ->
                    e.isSlot()
                        ? "full slot: the chip reaches the feed per tooth"
                        : width(tooth)
                            + ": the chip reaches "
                            + Quantities.significant(e.maxSine(), 4)
                            + " of the feed per tooth")
            .orElse("width of cut not known: a full slot is the upper bound"));
    if (chip.sinKappa().typical() < 1) {
      text.append(", times ")
          .append(Bands.with(chip.sinKappa(), ""))
          .append(" at a corner deeper than the cut");
    }
    if (tooth.mill().runoutUm().isPresent() && tooth.mill().flutes() > 1) {
      text.append(", runout ").append(Bands.um(readingUm(tooth))).append(" counted in");
    }
    return text.toString();
  }
}
