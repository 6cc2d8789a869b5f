package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.BlockQueue;
import hairline.checks.cutting.Starving;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Dwelled;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Event.Stopped;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ControlKeys;
import java.util.Arrays;
import java.util.Optional;

/** Blocks at the programmed feed are used up faster than the control makes them ready. */
@AutoService(Rule.class)
public final class BlocksStarve implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "blocks-starve",
          Level.WARNING,
          Group.MOTION,
          "blocks are used up faster than the control makes them ready",
          Need.TIMING);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** So many blocks without a full queue are kept; of more, each is to hold by itself. */
  private static final int MOST_BLOCKS = 1 << 20;

  /** The feed blocks of one operation. */
  private static final class Tally {
    final int operation;
    final BlockQueue queue;
    long blocks;
    long waitedFor;
    Optional<Place> first = Optional.empty();
    double leastHeldMmPerMin = Double.POSITIVE_INFINITY;
    double feedMmPerMin;
    double shortestMm;
    double waitMs;
    double slowestMmPerMin = Double.POSITIVE_INFINITY;
    double fastestMmPerMin;

    /** The factor of all feeds at which the tool would not wait. */
    double factorHeld = 1;

    /** How long each block lasts since the queue was full. */
    private double[] lastMs = new double[64];

    private int sinceFull;
    private boolean waited;
    private boolean tooMany;
    private double shortestMs = Double.POSITIVE_INFINITY;

    Tally(int operation, BlockQueue queue) {
      this.operation = operation;
      this.queue = queue;
    }

    /** Runs a block; returns how long the tool waits behind it. */
    double run(double blockMs, Reader reader) {
      if (sinceFull == lastMs.length && sinceFull < MOST_BLOCKS) {
        lastMs = Arrays.copyOf(lastMs, 2 * sinceFull);
      }
      if (sinceFull < lastMs.length) {
        lastMs[sinceFull++] = blockMs;
      } else {
        tooMany = true;
      }
      shortestMs = Math.min(shortestMs, blockMs);
      double waitMs = queue.run(blockMs);
      waited |= waitMs > 0;
      if (queue.readyBlocks() >= reader.lookAhead()) {
        full(reader);
      }
      return waitMs;
    }

    /** The control has caught up. */
    void full(Reader reader) {
      if (waited) {
        factorHeld =
            Math.min(
                factorHeld,
                tooMany
                    ? shortestMs / reader.blockTimeMs()
                    : Starving.factorHeld(
                        lastMs, sinceFull, reader.lookAhead(), reader.blockTimeMs()));
      }
      queue.fill();
      sinceFull = 0;
      waited = false;
      tooMany = false;
      shortestMs = Double.POSITIVE_INFINITY;
    }
  }

  /** What the sheet says of the control. */
  private record Reader(double blockTimeMs, int lookAhead) {
    Tally tally(int operation) {
      return new Tally(operation, new BlockQueue(lookAhead, blockTimeMs));
    }
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Optional<Double> blockTimeS = context.need(ControlKeys.BLOCK_TIME_S);
    Optional<Integer> lookAhead = context.need(ControlKeys.LOOK_AHEAD_BLOCKS);
    if (blockTimeS.isEmpty() || lookAhead.isEmpty()) {
      return;
    }
    Reader reader = new Reader(blockTimeS.get() * 1000, lookAhead.get());
    Tally[] tally = {reader.tally(0)};
    on.move(
        move -> {
          int operation = move.modes().operation();
          if (operation != tally[0].operation) {
            speak(context, tally[0], reader);
            tally[0] = reader.tally(operation);
          }
          if (lasts(move)) {
            count(tally[0], move, reader);
          } else {
            // The control is taken to catch up.
            tally[0].full(reader);
            context.notChecked("how long a block lasts is not known", move.at());
          }
        });
    on.event(Dwelled.class, dwell -> tally[0].full(reader));
    on.event(Stopped.class, stop -> tally[0].full(reader));
    on.event(Ended.class, end -> speak(context, tally[0], reader));
  }

  /** Whether it is known how long a feed move takes. */
  private static boolean lasts(Move move) {
    return !move.isFeed()
        || (move.from().knowsXyz() && move.to().knowsXyz() && move.feedMmPerMin().isPresent());
  }

  private static void count(Tally tally, Move move, Reader reader) {
    double feedMmPerMin = move.feedMmPerMin().orElse(0);
    double lengthMm = move.lengthMm();
    if (!move.isFeed() || feedMmPerMin <= 0 || lengthMm <= 0) {
      // A rapid takes longer than its block: the control catches up.
      tally.full(reader);
      return;
    }
    tally.blocks++;
    tally.slowestMmPerMin = Math.min(tally.slowestMmPerMin, feedMmPerMin);
    tally.fastestMmPerMin = Math.max(tally.fastestMmPerMin, feedMmPerMin);
    double waitMs = tally.run(Starving.blockLastsMs(lengthMm, feedMmPerMin), reader);
    if (waitMs <= 0) {
      return;
    }
    tally.waitedFor++;
    tally.waitMs += waitMs;
    if (tally.first.isEmpty()) {
      tally.first = Optional.of(move.at());
    }
    double heldMmPerMin = Starving.feedHeldMmPerMin(lengthMm, reader.blockTimeMs());
    if (heldMmPerMin < tally.leastHeldMmPerMin) {
      tally.leastHeldMmPerMin = heldMmPerMin;
      tally.feedMmPerMin = feedMmPerMin;
      tally.shortestMm = lengthMm;
    }
  }

  private static void speak(RuleContext context, Tally tally, Reader reader) {
    tally.full(reader);
    if (tally.first.isEmpty()) {
      return;
    }
    context.report(
        context
            .occurrence(
                tally.first.get(),
                "the control cannot keep up behind "
                    + tally.waitedFor
                    + " of "
                    + tally.blocks
                    + " feed blocks: it can hold "
                    + Quantities.feed(tally.leastHeldMmPerMin)
                    + " on the shortest of them, programmed "
                    + Quantities.feed(tally.feedMmPerMin))
            .fact(
                "shortest block "
                    + Quantities.um(tally.shortestMm * 1000)
                    + " / "
                    + Quantities.significant(reader.blockTimeMs(), 4)
                    + " ms a block (machine.control.block_time)")
            .fact(
                "the look-ahead of "
                    + reader.lookAhead()
                    + (reader.lookAhead() == 1 ? " block" : " blocks")
                    + " (machine.control.look_ahead) is used up; in sum the tool waits "
                    + Quantities.significant(tally.waitMs, 4)
                    + " ms for blocks")
            .cure("longer blocks, or " + slower(tally))
            .figure("starved", (double) tally.waitedFor, "")
            .figure("blocks", (double) tally.blocks, "")
            .figure("feedHeld", tally.leastHeldMmPerMin, "mm/min")
            .figure("feed", tally.feedMmPerMin, "mm/min")
            .figure("factorHeld", tally.factorHeld, "")
            .figure("wait", tally.waitMs, "ms")
            .operation(tally.operation)
            .cause("starve")
            .severity(tally.feedMmPerMin / tally.leastHeldMmPerMin));
  }

  /** The feed, or where there are several the part of them, at which the tool would not wait. */
  private static String slower(Tally tally) {
    return tally.slowestMmPerMin == tally.fastestMmPerMin
        ? "a feed of " + Quantities.feed(floor(tally.fastestMmPerMin * tally.factorHeld))
        : "all feeds of the operation times " + Quantities.significant(floor(tally.factorHeld), 6);
  }

  /** To whole units where there are many, else to four digits: never above. */
  private static double floor(double value) {
    double digits =
        value >= 100 ? 1 : StrictMath.pow(10, 3 - StrictMath.floor(StrictMath.log10(value)));
    return StrictMath.floor(value * digits + 1e-9) / digits;
  }
}
