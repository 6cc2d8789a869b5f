package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.Engagement;
import hairline.checks.cutting.FeedPerTooth;
import hairline.checks.cutting.MinimumChip;
import hairline.checks.cutting.ToothLoad;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Ended;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.ToothCuts.ToothCut;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.MaterialKeys;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import hairline.checks.timing.PlannedMove;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The programmed feed would make a chip, the feed that the machine reaches does not. */
@AutoService(Rule.class)
public final class FeedNotReached implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "feed-not-reached",
          Level.WARNING,
          Group.MOTION,
          "the feed that the machine reaches makes no chip, the programmed one would",
          Need.OVERLAP,
          Need.TIMING);

  /** Part of the contact length that may rub. */
  private static final double MOST_SHARE = 0.1;

  /** Equal figures must stay equal however the arithmetic rounds. */
  private static final double ROUNDING = 1e-9;

  /** Any depth beyond the corner: the chip is then at its thickest. */
  private static final double DEEP_MM = 1;

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** The contact moves of one operation so far, against one limit of the chip. */
  private static final class Tally {
    private final int operation;
    private double contactMm;
    private double rubsMm;
    private double stretchRevolutions;
    private double longestRevolutions;
    private boolean inContact;
    private double lastContact = 1;
    private double slowestMmPerMin = Double.POSITIVE_INFINITY;
    private double neededMmPerMin;
    private Optional<ToothCut> first = Optional.empty();
    private Optional<ToothCut> worst = Optional.empty();

    Tally(int operation) {
      this.operation = operation;
    }

    void take(ToothCut tooth, PlannedMove planned, double neededFeed) {
      double contact = tooth.cut().removal().contactShare();
      double lengthMm = tooth.cut().move().lengthMm() * contact;
      contactMm += lengthMm;
      // A feed that does not make a chip as programmed is told by another rule.
      double below =
          tooth.feedMmPerMin() < neededFeed || reaches(planned, neededFeed)
              ? 0
              : planned.shareBelow(neededFeed);
      // A move that comes out of the air slowly may do so in the air.
      double atStart = inContact ? 1 : contact;
      inContact = true;
      if (below <= 0) {
        stretch(stretchRevolutions);
        stretchRevolutions = 0;
        return;
      }
      rubsMm += below * lengthMm;
      first = first.or(() -> Optional.of(tooth));
      double perSecond = tooth.rpm() / 60;
      stretch(stretchRevolutions + planned.secondsBelowAtStart(neededFeed) * perSecond * atStart);
      if (below < 1) {
        stretchRevolutions = planned.secondsBelowAtEnd(neededFeed) * perSecond;
      }
      lastContact = contact;
      if (planned.lowestMmPerMin() < slowestMmPerMin) {
        slowestMmPerMin = planned.lowestMmPerMin();
        neededMmPerMin = neededFeed;
        worst = Optional.of(tooth);
      }
    }

    private static boolean reaches(PlannedMove planned, double feed) {
      return planned.lowestMmPerMin() >= feed
          && planned.entryMmPerMin() >= feed
          && planned.exitMmPerMin() >= feed
          && planned.peakMmPerMin() >= feed;
    }

    private void stretch(double revolutions) {
      stretchRevolutions = revolutions;
      longestRevolutions = Math.max(longestRevolutions, revolutions);
    }

    /** The operation ends, and the tool stands where it is. */
    void end() {
      stretch(stretchRevolutions);
    }

    /** One that goes out into the air may be slow there, like one that comes out of it. */
    void leaveContact() {
      stretch(stretchRevolutions * lastContact);
      stretchRevolutions = 0;
      lastContact = 1;
      inContact = false;
    }

    boolean speaks() {
      return rubsMm > MOST_SHARE * contactMm * (1 + ROUNDING) || longestRevolutions > 1 + ROUNDING;
    }
  }

  /**
   * The operation now running: against the low end of the minimum, and against its typical value.
   */
  private static final class Current {
    private Tally surely = new Tally(0);
    private Tally likely = new Tally(0);

    // What the cut in hand needs, and those that are alike.
    private ToothCuts.@Nullable Alike reckoned;
    private double surelyNeededMmPerMin;
    private double likelyNeededMmPerMin;

    void begin(int operation) {
      surely = new Tally(operation);
      likely = new Tally(operation);
    }
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (context.need(MachineKeys.ACCELERATION_MM_PER_S2).isEmpty()
        || context.need(ControlKeys.PATH_TOLERANCE).isEmpty()) {
      return;
    }
    // Planned without it all the same: a feed that is not reached then is not reached with it.
    context.need(ControlKeys.BLOCK_TIME_S);
    Current current = new Current();
    ToothCuts.each(context, on, tooth -> take(context, current, tooth));
    on.event(
        Cut.class,
        cut -> {
          if (!cut.inContact()) {
            current.surely.leaveContact();
            current.likely.leaveContact();
          }
        });
    on.event(Ended.class, end -> speak(context, current));
  }

  private static void take(RuleContext context, Current current, ToothCut tooth) {
    int operation = tooth.cut().move().modes().operation();
    if (operation != current.surely.operation) {
      speak(context, current);
      current.begin(operation);
    }
    Optional<PlannedMove> planned = context.stages().feed().ofThisMove();
    if (planned.isEmpty()) {
      return;
    }
    if (!isReckoned(context, current, tooth)) {
      return;
    }
    current.surely.take(tooth, planned.get(), current.surelyNeededMmPerMin);
    current.likely.take(tooth, planned.get(), current.likelyNeededMmPerMin);
  }

  /** Whether the feed that the cut needs can be told; then it is kept. */
  // Cuts that are alike share one object.
  @SuppressWarnings("ReferenceEquality")
  private static boolean isReckoned(RuleContext context, Current current, ToothCut tooth) {
    if (current.reckoned == tooth.alike()) {
      return true;
    }
    Optional<Band> edgeUm =
        context.need(tooth.tool(), ToolKeys.EDGE_RADIUS, tooth.cut().at()).map(e -> e.um());
    Optional<Band> ratio = context.need(MaterialKeys.MINIMUM_CHIP_RATIO, tooth.cut().at());
    if (edgeUm.isEmpty() || ratio.isEmpty()) {
      return false;
    }
    Band minimumUm = MinimumChip.um(ratio.get(), edgeUm.get());
    current.surelyNeededMmPerMin = neededFeed(tooth, minimumUm.low());
    current.likelyNeededMmPerMin = neededFeed(tooth, minimumUm.typical());
    current.reckoned = tooth.alike();
    return true;
  }

  /**
   * The feed from which on the largest chip is as thick as the minimum. Where Z varies, the depth
   * runs out to nothing in places whatever the feed: there the thickest chip that a feed can make
   * counts.
   */
  private static double neededFeed(ToothCut tooth, double minimumUm) {
    boolean level = tooth.cut().runsAtLevel();
    ToothLoad load =
        new ToothLoad(
            tooth.mill(),
            level ? tooth.depthMm().orElse(DEEP_MM) : DEEP_MM,
            tooth.feedPerToothUm(),
            level ? tooth.engagement().orElseGet(Engagement::slot) : Engagement.slot());
    return FeedPerTooth.feedMmPerMin(
        load.feedPerToothForChipUm(minimumUm), tooth.rpm(), tooth.mill().flutes());
  }

  private static void speak(RuleContext context, Current current) {
    current.surely.end();
    current.likely.end();
    if (current.surely.speaks()) {
      report(context, current.surely, true);
    } else if (current.likely.speaks()) {
      report(context, current.likely, false);
    }
  }

  private static void report(RuleContext context, Tally tally, boolean sure) {
    ToothCut at = tally.first.orElseThrow();
    ToothCut worst = tally.worst.orElseThrow();
    double share = tally.rubsMm / tally.contactMm;
    String message =
        "planned feed down to "
            + Quantities.feed(tally.slowestMmPerMin)
            + ", a chip needs "
            + Quantities.feed(tally.neededMmPerMin)
            + ", programmed "
            + Quantities.feed(worst.feedMmPerMin())
            + ": no chip on "
            + Quantities.significant(share * 100, 5)
            + " % of the contact length, allowed 10 %, and for "
            + Quantities.significant(tally.longestRevolutions, 5)
            + " revolutions at a stretch, allowed 1";
    Occurrence.Builder occurrence =
        sure
            ? context.occurrence(at.cut().at(), message)
            : context.lesserOccurrence(at.cut().at(), message);
    context.report(
        occurrence
            .fact(
                "slowest at "
                    + context.line(worst.cut().at(), at.cut().at())
                    + "; "
                    + worst.arithmetic()
                    + "; planned with machine.acceleration, machine.jerk,"
                    + " machine.control.block_time and machine.control.path_tolerance")
            .cure(
                "fewer stops and sharp corners in contact, longer blocks, or a start of the motion"
                    + " outside of the material")
            .figure("plannedFeed", tally.slowestMmPerMin, "mm/min")
            .figure("feedNeeded", tally.neededMmPerMin, "mm/min")
            .figure("share", share, "")
            .figure("revolutions", tally.longestRevolutions, "")
            .operation(tally.operation)
            .cause("planned")
            .severity(share));
  }
}
