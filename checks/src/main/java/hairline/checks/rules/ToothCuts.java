package hairline.checks.rules;

import hairline.checks.cutting.EndMill;
import hairline.checks.cutting.Engagement;
import hairline.checks.cutting.FeedPerTooth;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Position;
import hairline.checks.setup.Tool;
import hairline.checks.stock.Contact;
import hairline.checks.stock.Cut;
import hairline.checks.stock.EngagedArc;
import hairline.checks.stock.Removal;
import hairline.checks.stock.StepDown;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** The cuts whose teeth the chip rules look at: in contact, at feed, sideways, spindle turning. */
final class ToothCuts {
  /** A cut, and what each tooth moves on in it. Rules that look at the same cut share it. */
  // Null stands for what was not asked for yet.
  @SuppressWarnings("NullableOptional")
  static final class ToothCut {
    private final Cut cut;
    private final Tool tool;
    private final EndMill mill;
    private final double feedMmPerMin;
    private final double rpm;
    private final double feedPerToothUm;

    // Worked out when first asked for.
    private @Nullable OptionalDouble depthMm;
    private @Nullable Optional<Engagement> even;
    private @Nullable Optional<Engagement> longest;
    private @Nullable Optional<Engagement> loaded;
    private ToolLoads.@Nullable Load load;

    /**
     * A cut.
     *
     * @param mill the tool's cutting end
     * @param feedMmPerMin feed along the path
     * @param rpm speed of the spindle, above 0
     */
    ToothCut(Cut cut, Tool tool, EndMill mill, double feedMmPerMin, double rpm) {
      this.cut = cut;
      this.tool = tool;
      this.mill = mill;
      this.feedMmPerMin = feedMmPerMin;
      this.rpm = rpm;
      this.feedPerToothUm = FeedPerTooth.um(feedMmPerMin, rpm, mill.flutes());
    }

    Cut cut() {
      return cut;
    }

    Tool tool() {
      return tool;
    }

    /** The tool's cutting end. */
    EndMill mill() {
      return mill;
    }

    /** Feed along the path. */
    double feedMmPerMin() {
      return feedMmPerMin;
    }

    /** Speed of the spindle, above 0. */
    double rpm() {
      return rpm;
    }

    /** Feed per tooth in µm. */
    double feedPerToothUm() {
      return feedPerToothUm;
    }

    /** Its load, which depends on nothing but the cut and the sheet. */
    ToolLoads.Load load(Supplier<ToolLoads.Load> reckoning) {
      ToolLoads.Load known = load;
      if (known == null) {
        known = reckoning.get();
        load = known;
      }
      return known;
    }

    /**
     * Depth of cut in mm: at a level the exact difference of two heights; else the largest height
     * that the field shows to be taken off a place. Empty where the surface before is not known.
     */
    OptionalDouble depthMm() {
      OptionalDouble known = depthMm;
      if (known == null) {
        known = depthOf(cut);
        depthMm = known;
      }
      return known;
    }

    private static OptionalDouble depthOf(Cut cut) {
      if (cut.surfacePartlyUnknown()) {
        return OptionalDouble.empty();
      }
      List<StepDown> heights = cut.stepDowns();
      if (cut.runsAtLevel()
          && !heights.isEmpty()
          && heights.get(0).exact()
          && heights.get(0).storedPm() > 0) {
        return OptionalDouble.of(heights.get(0).storedPm() / 1e9);
      }
      Removal removal = cut.removal();
      return removal.widest().isPresent() && removal.deepestPm() > 0
          ? OptionalDouble.of(removal.deepestPm() / 1e9)
          : OptionalDouble.empty();
    }

    /**
     * The arc on which a tooth cuts, for its chip: from the exact width of the cut where that is
     * even, else the longest that the field allows; empty where it is not known.
     */
    Optional<Engagement> engagement() {
      Optional<Engagement> known = longest;
      if (known == null) {
        known = evenEngagement();
        if (known.isEmpty()) {
          known = arc(cut.removal().widest().map(EngagedArc::longest));
        }
        longest = known;
      }
      return known;
    }

    /**
     * The arc on which a tooth cuts, for its force: the larger of that of an even width and the
     * shortest that the field allows where the cut is widest, as in a corner.
     */
    Optional<Engagement> loadedEngagement() {
      Optional<Engagement> known = loaded;
      if (known == null) {
        known = largerArc();
        loaded = known;
      }
      return known;
    }

    private Optional<Engagement> largerArc() {
      Optional<Engagement> byWidth = evenEngagement();
      Optional<Engagement> widest = arc(cut.removal().widest().map(EngagedArc::shortest));
      return byWidth.isPresent()
              && widest.map(arc -> arc.maxSine() <= byWidth.get().maxSine()).orElse(true)
          ? byWidth
          : widest;
    }

    private static Optional<Engagement> arc(Optional<EngagedArc> engaged) {
      return engaged
          .filter(arc -> arc.fromRad() < arc.toRad())
          .map(arc -> new Engagement(arc.fromRad(), arc.toRad()));
    }

    private Optional<Engagement> evenEngagement() {
      Optional<Engagement> known = even;
      if (known == null) {
        known = ofEvenWidth();
        even = known;
      }
      return known;
    }

    private Optional<Engagement> ofEvenWidth() {
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

    /**
     * A feed as a cure names it: "F265", or in its unit where F counts something else than mm/min.
     */
    String feedWord(double mmPerMin) {
      Modes modes = cut.move().modes();
      boolean plain =
          modes.feedMode().is(Modes.FeedMode.PER_MINUTE) && modes.units().is(Modes.Units.MM);
      return plain
          ? "F" + Quantities.significant(mmPerMin, 9)
          : "a feed of " + Quantities.significant(mmPerMin, 9) + " mm/min";
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
    Shared shared = on.shared(Shared.class, Shared::new);
    on.event(
        Cut.class,
        cut -> {
          if (concerns(cut)) {
            toothCut(context, cut, mills, shared).ifPresent(consumer);
          }
        });
  }

  /** Calls the consumer for each move straight down into the part, cycles included. */
  static void eachDown(RuleContext context, Subscriptions on, Consumer<ToothCut> consumer) {
    Map<Integer, Optional<EndMill>> mills = new HashMap<>();
    Shared shared = on.shared(Shared.class, Shared::new);
    on.event(
        Cut.class,
        cut -> {
          if (goesStraightDown(cut)) {
            toothCut(context, cut, mills, shared).ifPresent(consumer);
          }
        });
  }

  private static boolean goesStraightDown(Cut cut) {
    Move move = cut.move();
    return cut.contact() == Contact.YES
        && move.kind() == Move.Kind.LINE
        && move.from().knowsXyz()
        && move.to().knowsXyz()
        && !movesSideways(move.from(), move.to(), false)
        && move.to().zPm() < move.from().zPm();
  }

  /**
   * Calls the consumer for each at a level and, of each stretch of moves that vary Z in contact,
   * for the deepest: where such a stretch runs into the material and out of it, the depth is
   * nothing, and that is no fault.
   */
  static void eachByStretch(RuleContext context, Subscriptions on, Consumer<ToothCut> consumer) {
    Map<Integer, Optional<EndMill>> mills = new HashMap<>();
    Shared shared = on.shared(Shared.class, Shared::new);
    Stretch stretch = new Stretch(consumer);
    on.event(
        Cut.class,
        cut -> {
          Optional<ToothCut> tooth =
              concerns(cut) ? toothCut(context, cut, mills, shared) : Optional.empty();
          if (tooth.isEmpty() || cut.runsAtLevel()) {
            stretch.end();
            tooth.ifPresent(consumer);
          } else {
            stretch.take(tooth.get());
          }
        });
    on.event(Event.Ended.class, ended -> stretch.end());
  }

  /** Moves that vary Z in contact, one after the other, at one feed and speed. */
  private static final class Stretch {
    private final Consumer<ToothCut> consumer;
    private Optional<ToothCut> deepest = Optional.empty();

    Stretch(Consumer<ToothCut> consumer) {
      this.consumer = consumer;
    }

    void take(ToothCut tooth) {
      if (deepest.isEmpty()) {
        deepest = Optional.of(tooth);
        return;
      }
      ToothCut before = deepest.get();
      boolean same =
          before.tool().number() == tooth.tool().number()
              && before.feedPerToothUm() == tooth.feedPerToothUm()
              && before.rpm() == tooth.rpm();
      if (!same) {
        end();
        deepest = Optional.of(tooth);
      } else if (tooth.depthMm().orElse(0) > before.depthMm().orElse(0)) {
        deepest = Optional.of(tooth);
      }
    }

    void end() {
      deepest.ifPresent(consumer);
      deepest = Optional.empty();
    }
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

  /** What one rule has made of the cut in hand serves the others too. */
  static final class Shared {
    private Optional<ToothCut> last = Optional.empty();

    // Each cut is one object, whoever looks at it.
    @SuppressWarnings("ReferenceEquality")
    boolean knows(Cut cut) {
      return last.isPresent() && last.get().cut == cut;
    }

    Optional<ToothCut> of(Cut cut, Tool tool, EndMill mill, double feedMmPerMin, double rpm) {
      if (!knows(cut)) {
        last = Optional.of(new ToothCut(cut, tool, mill, feedMmPerMin, rpm));
      }
      return last;
    }
  }

  private static Optional<ToothCut> toothCut(
      RuleContext context, Cut cut, Map<Integer, Optional<EndMill>> mills, Shared shared) {
    if (shared.knows(cut)) {
      // Another rule found feed, speed and tool; this one may have yet to tell what it needs.
      ToothCut known = shared.last.orElseThrow();
      Optional<EndMill> mill = mill(context, known.tool(), cut, mills);
      return mill.isPresent() ? shared.last : Optional.empty();
    }
    Move move = cut.move();
    if (move.feedMmPerMin().isEmpty()) {
      context.notChecked("the feed is not known", cut.at());
      return Optional.empty();
    }
    if (move.feedMmPerMin().getAsDouble() <= 0) {
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
    Optional<EndMill> mill = mill(context, tool, cut, mills);
    return mill.isPresent()
        ? shared.of(cut, tool, mill.get(), feedMmPerMin, rpm.get())
        : Optional.empty();
  }

  private static Optional<EndMill> mill(
      RuleContext context, Tool tool, Cut cut, Map<Integer, Optional<EndMill>> mills) {
    Optional<EndMill> known = mills.get(tool.number());
    if (known == null) {
      known = ToolFacts.endMill(context, tool, cut.at());
      mills.put(tool.number(), known);
    }
    return known;
  }
}
