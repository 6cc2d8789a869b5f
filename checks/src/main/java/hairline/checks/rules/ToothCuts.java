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
  /**
   * What is worked out of a cut; cuts that are alike in all of it share it, whatever their places.
   */
  // Null stands for what was not asked for yet.
  @SuppressWarnings("NullableOptional")
  static final class Alike {
    private final Cut cut;
    private final Tool tool;
    private final EndMill mill;
    private final double feedMmPerMin;
    private final double rpm;
    private final double feedPerToothUm;
    private final OptionalDouble depthMm;

    // Worked out when first asked for.
    private @Nullable Optional<Engagement> even;
    private @Nullable Optional<Engagement> longest;
    private @Nullable Optional<Engagement> loaded;
    private ToolLoads.@Nullable Load load;

    Alike(Cut cut, Tool tool, EndMill mill, double feedMmPerMin, double rpm) {
      this.cut = cut;
      this.tool = tool;
      this.mill = mill;
      this.feedMmPerMin = feedMmPerMin;
      this.rpm = rpm;
      this.feedPerToothUm = FeedPerTooth.um(feedMmPerMin, rpm, mill.flutes());
      this.depthMm = depthOf(cut);
    }

    /** Whether another cut is alike in all that is worked out here, and in what it leaves. */
    // A sheet has one object for each of its tools.
    @SuppressWarnings("ReferenceEquality")
    boolean holds(Cut other, Tool itsTool, double itsFeed, double itsRpm) {
      return tool == itsTool
          && feedMmPerMin == itsFeed
          && rpm == itsRpm
          && cut.levelId() == other.levelId()
          && cut.runsAtLevel() == other.runsAtLevel()
          && cut.fine() == other.fine()
          && cut.slot() == other.slot()
          && cut.feature().isPresent() == other.feature().isPresent()
          && same(cut.radialMm(), other.radialMm())
          && same(depthMm, depthOf(other))
          && same(cut.removal().widest(), other.removal().widest());
    }

    private static boolean same(OptionalDouble one, OptionalDouble other) {
      return one.isPresent()
          ? other.isPresent() && one.getAsDouble() == other.getAsDouble()
          : other.isEmpty();
    }

    private static boolean same(Optional<EngagedArc> one, Optional<EngagedArc> other) {
      if (one.isEmpty() || other.isEmpty()) {
        return one.isEmpty() && other.isEmpty();
      }
      EngagedArc arc = one.get();
      EngagedArc like = other.get();
      return arc.rightMm() == like.rightMm()
          && arc.leftMm() == like.leftMm()
          && arc.radiusMm() == like.radiusMm()
          && arc.errorMm() == like.errorMm();
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

    private Optional<Engagement> engagement() {
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

    private Optional<Engagement> loadedEngagement() {
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
          depthMm.isPresent() ? mill.effectiveDiameterMm(depthMm.getAsDouble()) : mill.diameterMm();
      return radialMm >= effectiveMm
          ? Optional.of(Engagement.slot())
          : Optional.of(Engagement.besideWall(radialMm, effectiveMm));
    }

    private ToolLoads.Load load(Supplier<ToolLoads.Load> reckoning) {
      ToolLoads.Load known = load;
      if (known == null) {
        known = reckoning.get();
        load = known;
      }
      return known;
    }
  }

  /** A cut, and what each tooth moves on in it. Rules that look at the same cut share it. */
  static final class ToothCut {
    private final Cut cut;
    private final Alike alike;

    private ToothCut(Cut cut, Alike alike) {
      this.cut = cut;
      this.alike = alike;
    }

    Cut cut() {
      return cut;
    }

    Tool tool() {
      return alike.tool;
    }

    /** The tool's cutting end. */
    EndMill mill() {
      return alike.mill;
    }

    /** Feed along the path. */
    double feedMmPerMin() {
      return alike.feedMmPerMin;
    }

    /** Speed of the spindle, above 0. */
    double rpm() {
      return alike.rpm;
    }

    /** Feed per tooth in µm. */
    double feedPerToothUm() {
      return alike.feedPerToothUm;
    }

    /**
     * The same object for cuts of the same tool, feed and speed that are of the same depth and
     * width, at the same level or at none, all fine or none, in features or not.
     */
    Alike alike() {
      return alike;
    }

    /** Its load, which depends on nothing but the cut and the sheet. */
    ToolLoads.Load load(Supplier<ToolLoads.Load> reckoning) {
      return alike.load(reckoning);
    }

    /**
     * Depth of cut in mm: at a level the exact difference of two heights; else the largest height
     * that the field shows to be taken off a place. Empty where the surface before is not known.
     */
    OptionalDouble depthMm() {
      return alike.depthMm;
    }

    /**
     * The arc on which a tooth cuts, for its chip: from the exact width of the cut where that is
     * even, else the longest that the field allows; empty where it is not known.
     */
    Optional<Engagement> engagement() {
      return alike.engagement();
    }

    /**
     * The arc on which a tooth cuts, for its force: the larger of that of an even width and the
     * shortest that the field allows where the cut is widest, as in a corner.
     */
    Optional<Engagement> loadedEngagement() {
      return alike.loadedEngagement();
    }

    /** "tool 3 at 30000 rpm, 2 flutes, 180 mm/min: feed per tooth 3 µm". */
    String arithmetic() {
      return conditions()
          + ": feed per tooth "
          + Quantities.feed(feedMmPerMin())
          + " / ("
          + Quantities.rpm(rpm())
          + " × "
          + mill().flutes()
          + ") = "
          + Quantities.um(feedPerToothUm());
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
          + tool().number()
          + ", "
          + mill().flutes()
          + (mill().flutes() == 1 ? " flute" : " flutes");
    }

    /** What makes repeated findings one. */
    String cause() {
      return "tool "
          + tool().number()
          + " "
          + Quantities.rpm(rpm())
          + " "
          + Quantities.feed(feedMmPerMin());
    }
  }

  private ToothCuts() {}

  /** Calls the consumer for each of them. */
  static void each(RuleContext context, Subscriptions on, Consumer<ToothCut> consumer) {
    Mills mills = new Mills(context);
    Shared shared = on.shared(Shared.class, Shared::new);
    on.contact(
        cut -> {
          if (shared.concerns(cut)) {
            ToothCut tooth = toothCut(context, cut, mills, shared);
            if (tooth != null) {
              consumer.accept(tooth);
            }
          }
        });
  }

  /**
   * The same for a rule that judges each cut by nothing but what those have in common that are
   * {@linkplain ToothCut#alike alike}: behind one of which it said nothing, it is spared those like
   * it.
   */
  static void judgeEach(RuleContext context, Subscriptions on, Consumer<ToothCut> judge) {
    each(context, on, new Settled(context, judge));
  }

  /** As {@link #judgeEach}, of each that {@link #eachByStretch} tells. */
  static void judgeEachByStretch(RuleContext context, Subscriptions on, Consumer<ToothCut> judge) {
    eachByStretch(context, on, new Settled(context, judge));
  }

  /** Leaves out what a rule has nothing to say of. */
  private static final class Settled implements Consumer<ToothCut> {
    private final RuleContext context;
    private final Consumer<ToothCut> judge;
    private @Nullable Alike silent;

    Settled(RuleContext context, Consumer<ToothCut> judge) {
      this.context = context;
      this.judge = judge;
    }

    // Cuts that are alike share one object.
    @SuppressWarnings("ReferenceEquality")
    @Override
    public void accept(ToothCut tooth) {
      if (tooth.alike == silent) {
        return;
      }
      long said = context.said();
      judge.accept(tooth);
      silent = context.said() == said ? tooth.alike : null;
    }
  }

  /** Calls the consumer for each move straight down into the part, cycles included. */
  static void eachDown(RuleContext context, Subscriptions on, Consumer<ToothCut> consumer) {
    Mills mills = new Mills(context);
    Shared shared = on.shared(Shared.class, Shared::new);
    on.contact(
        cut -> {
          if (goesStraightDown(cut)) {
            ToothCut tooth = toothCut(context, cut, mills, shared);
            if (tooth != null) {
              consumer.accept(tooth);
            }
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
    Mills mills = new Mills(context);
    Shared shared = on.shared(Shared.class, Shared::new);
    Stretch stretch = new Stretch(consumer);
    on.event(
        Cut.class,
        cut -> {
          ToothCut tooth = shared.concerns(cut) ? toothCut(context, cut, mills, shared) : null;
          if (tooth == null) {
            stretch.end();
          } else if (cut.runsAtLevel()) {
            stretch.end();
            consumer.accept(tooth);
          } else {
            stretch.take(tooth);
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
      if (deepest.isPresent()) {
        deepest.ifPresent(consumer);
        deepest = Optional.empty();
      }
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
    private @Nullable Cut asked;
    private boolean concerned;
    private @Nullable ToothCut last;

    /** Whether it is in contact, at feed and sideways. */
    // Each cut is one object, whoever looks at it.
    @SuppressWarnings("ReferenceEquality")
    boolean concerns(Cut cut) {
      if (asked != cut) {
        asked = cut;
        concerned = ToothCuts.concerns(cut);
      }
      return concerned;
    }

    /** What another rule made of the cut; null where none did. */
    @SuppressWarnings("ReferenceEquality")
    @Nullable ToothCut known(Cut cut) {
      ToothCut known = last;
      return known != null && known.cut == cut ? known : null;
    }

    ToothCut of(Cut cut, Tool tool, EndMill mill, double feedMmPerMin, double rpm) {
      ToothCut before = last;
      Alike alike =
          before != null && before.alike.holds(cut, tool, feedMmPerMin, rpm)
              ? before.alike
              : new Alike(cut, tool, mill, feedMmPerMin, rpm);
      ToothCut made = new ToothCut(cut, alike);
      last = made;
      return made;
    }
  }

  /** The tooth cut of a cut that is of the kind asked for; null where what it needs is missing. */
  private static @Nullable ToothCut toothCut(
      RuleContext context, Cut cut, Mills mills, Shared shared) {
    ToothCut known = shared.known(cut);
    if (known != null) {
      // Another rule found feed, speed and tool; this one may have yet to tell what it needs.
      return mills.of(known.tool(), cut) != null ? known : null;
    }
    Move move = cut.move();
    if (move.feedMmPerMin().isEmpty()) {
      context.notChecked("the feed is not known", cut.at());
      return null;
    }
    if (move.feedMmPerMin().getAsDouble() <= 0) {
      return null;
    }
    Optional<Double> rpm = move.modes().turningRpm();
    if (rpm.isEmpty()) {
      context.notChecked("the spindle speed is not known", cut.at());
      return null;
    }
    if (rpm.get() <= 0) {
      return null;
    }
    if (cut.tool().isEmpty()) {
      context.notChecked("the tool in the spindle is not known or not on the sheet", cut.at());
      return null;
    }
    Tool tool = cut.tool().get();
    double feedMmPerMin = move.feedMmPerMin().getAsDouble();
    EndMill mill = mills.of(tool, cut);
    return mill != null ? shared.of(cut, tool, mill, feedMmPerMin, rpm.get()) : null;
  }

  /** The cutting ends of the tools, for one rule, which tells what it misses of each once. */
  private static final class Mills {
    private final RuleContext context;
    private final Map<Integer, Optional<EndMill>> byNumber = new HashMap<>();
    private @Nullable Tool lastTool;
    private @Nullable EndMill last;

    Mills(RuleContext context) {
      this.context = context;
    }

    /** The tool's; null where the sheet does not tell it. */
    // A sheet has one object for each of its tools.
    @SuppressWarnings("ReferenceEquality")
    @Nullable EndMill of(Tool tool, Cut cut) {
      if (tool != lastTool) {
        lastTool = tool;
        last =
            byNumber
                .computeIfAbsent(tool.number(), n -> ToolFacts.endMill(context, tool, cut.at()))
                .orElse(null);
      }
      return last;
    }
  }
}
