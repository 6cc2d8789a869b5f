package hairline.checks.rules;

import hairline.checks.cutting.EndMill;
import hairline.checks.cutting.Engagement;
import hairline.checks.cutting.FeedPerTooth;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Move;
import hairline.checks.motion.Position;
import hairline.checks.setup.Tool;
import hairline.checks.stock.Contact;
import hairline.checks.stock.Cut;
import hairline.checks.stock.StepDown;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/** The cuts whose teeth the chip rules look at: in contact, at feed, sideways, spindle turning. */
final class ToothCuts {
  /**
   * A cut, and what each tooth moves on in it.
   *
   * @param mill the tool's cutting end
   * @param feedMmPerMin feed along the path
   * @param rpm speed of the spindle, above 0
   * @param feedPerToothUm feed per tooth in µm
   */
  record ToothCut(
      Cut cut, Tool tool, EndMill mill, double feedMmPerMin, double rpm, double feedPerToothUm) {

    /** Depth of cut in mm: the largest height taken; empty where it is only estimated. */
    OptionalDouble depthMm() {
      List<StepDown> heights = cut.stepDowns();
      return cut.runsAtLevel()
              && !heights.isEmpty()
              && heights.get(0).exact()
              && heights.get(0).storedPm() > 0
              && !cut.surfacePartlyUnknown()
          ? OptionalDouble.of(heights.get(0).storedPm() / 1e9)
          : OptionalDouble.empty();
    }

    /** The arc on which a tooth cuts; empty where it is not known. */
    Optional<Engagement> engagement() {
      if (cut.slot()) {
        return Optional.of(Engagement.slot());
      }
      if (cut.radialMm().isEmpty()) {
        return Optional.empty();
      }
      double radialMm = cut.radialMm().getAsDouble();
      double effectiveMm =
          depthMm().isPresent()
              ? mill.effectiveDiameterMm(depthMm().getAsDouble())
              : mill.diameterMm();
      return radialMm >= effectiveMm
          ? Optional.of(Engagement.slot())
          : Optional.of(Engagement.besideWall(radialMm, effectiveMm));
    }

    /** "tool 3 at 30000 rpm, 2 flutes, 180 mm/min: feed per tooth 3 µm". */
    String arithmetic() {
      return conditions()
          + ": feed per tooth "
          + Quantities.feed(feedMmPerMin)
          + " / ("
          + Quantities.rpm(rpm)
          + " × "
          + mill.flutes()
          + ") = "
          + Quantities.um(feedPerToothUm);
    }

    /** What is the same for cuts that share a fault. */
    String conditions() {
      return "tool "
          + tool.number()
          + ", "
          + mill.flutes()
          + (mill.flutes() == 1 ? " flute" : " flutes");
    }

    /** What makes repeated findings one. */
    String cause() {
      return "tool "
          + tool.number()
          + " "
          + Quantities.rpm(rpm)
          + " "
          + Quantities.feed(feedMmPerMin);
    }
  }

  private ToothCuts() {}

  /** Calls the consumer for each of them. */
  static void each(RuleContext context, Subscriptions on, Consumer<ToothCut> consumer) {
    Map<Integer, Optional<EndMill>> mills = new HashMap<>();
    on.event(
        Cut.class,
        cut -> {
          if (concerns(cut)) {
            toothCut(context, cut, mills).ifPresent(consumer);
          }
        });
  }

  private static boolean concerns(Cut cut) {
    Move move = cut.move();
    return cut.contact() == Contact.YES
        && !cut.spring()
        && move.isFeed()
        && move.source() == Move.Source.BLOCK
        && movesSideways(move.from(), move.to(), move.arc().isPresent());
  }

  private static boolean movesSideways(Position from, Position to, boolean arc) {
    return arc || from.xPm() != to.xPm() || from.yPm() != to.yPm();
  }

  private static Optional<ToothCut> toothCut(
      RuleContext context, Cut cut, Map<Integer, Optional<EndMill>> mills) {
    Move move = cut.move();
    if (move.feedMmPerMin().isEmpty() || move.feedMmPerMin().getAsDouble() <= 0) {
      return Optional.empty();
    }
    Optional<Double> rpm = move.modes().turningRpm();
    if (rpm.isEmpty()) {
      context.notChecked("the spindle speed is not known", cut.at());
      return Optional.empty();
    }
    if (rpm.get() <= 0) {
      return Optional.empty();
    }
    if (cut.tool().isEmpty()) {
      context.notChecked("the tool in the spindle is not known or not on the sheet", cut.at());
      return Optional.empty();
    }
    Tool tool = cut.tool().get();
    double feedMmPerMin = move.feedMmPerMin().getAsDouble();
    return mills
        .computeIfAbsent(tool.number(), n -> ToolFacts.endMill(context, tool, cut.at()))
        .map(
            mill ->
                new ToothCut(
                    cut,
                    tool,
                    mill,
                    feedMmPerMin,
                    rpm.get(),
                    FeedPerTooth.um(feedMmPerMin, rpm.get(), mill.flutes())));
  }
}
