package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Starving;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ControlKeys;
import hairline.checks.stock.Cut;
import java.util.Optional;

/** Blocks at the programmed feed last less than the control needs for one. */
@AutoService(Rule.class)
public final class BlocksStarve implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "blocks-starve",
          Level.WARNING,
          Group.MOTION,
          "blocks last less than the control needs for one",
          Need.TIMING);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** Equal times must stay equal however the division rounds. */
  private static final double EQUAL_WITHIN = 1e-9;

  /** The feed blocks of one operation. */
  private static final class Tally {
    int operation;
    long blocks;
    long starved;
    Optional<Place> first = Optional.empty();
    double leastHeldMmPerMin = Double.POSITIVE_INFINITY;
    double feedMmPerMin;
    double shortestMm = Double.POSITIVE_INFINITY;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    context
        .need(ControlKeys.BLOCK_TIME_S)
        .ifPresent(
            blockTimeS -> {
              Tally[] tally = {new Tally()};
              on.event(
                  Cut.class,
                  cut -> {
                    if (cut.move().modes().operation() != tally[0].operation) {
                      speak(context, tally[0], blockTimeS);
                      tally[0] = new Tally();
                      tally[0].operation = cut.move().modes().operation();
                    }
                    count(tally[0], cut, blockTimeS);
                  });
              on.event(Ended.class, end -> speak(context, tally[0], blockTimeS));
            });
  }

  private static void count(Tally tally, Cut cut, double blockTimeS) {
    double feedMmPerMin = cut.move().feedMmPerMin().orElse(0);
    double lengthMm = cut.move().lengthMm();
    if (!cut.move().isFeed() || feedMmPerMin <= 0 || lengthMm <= 0) {
      return;
    }
    tally.blocks++;
    double heldMmPerMin = Starving.feedHeldMmPerMin(lengthMm, blockTimeS * 1000);
    if (heldMmPerMin < feedMmPerMin * (1 - EQUAL_WITHIN)) {
      tally.starved++;
      if (tally.first.isEmpty()) {
        tally.first = Optional.of(cut.at());
      }
      if (heldMmPerMin < tally.leastHeldMmPerMin) {
        tally.leastHeldMmPerMin = heldMmPerMin;
        tally.feedMmPerMin = feedMmPerMin;
        tally.shortestMm = lengthMm;
      }
    }
  }

  private static void speak(RuleContext context, Tally tally, double blockTimeS) {
    if (tally.first.isEmpty()) {
      return;
    }
    context.report(
        context
            .occurrence(
                tally.first.get(),
                tally.starved
                    + " of "
                    + tally.blocks
                    + " feed blocks are too short: the control can hold "
                    + Quantities.feed(tally.leastHeldMmPerMin)
                    + " on the shortest, programmed "
                    + Quantities.feed(tally.feedMmPerMin))
            .fact(
                "shortest block "
                    + Quantities.um(tally.shortestMm * 1000)
                    + " / "
                    + Quantities.significant(blockTimeS * 1000, 4)
                    + " ms a block (machine.control.block_time)")
            .cure("longer blocks, or a feed of " + Quantities.feed(tally.leastHeldMmPerMin))
            .figure("starved", (double) tally.starved, "")
            .figure("blocks", (double) tally.blocks, "")
            .figure("feedHeld", tally.leastHeldMmPerMin, "mm/min")
            .figure("feed", tally.feedMmPerMin, "mm/min")
            .operation(tally.operation)
            .cause("starve")
            .severity(tally.feedMmPerMin / tally.leastHeldMmPerMin));
  }
}
