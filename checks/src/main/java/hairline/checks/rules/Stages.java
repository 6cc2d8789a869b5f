package hairline.checks.rules;

import hairline.checks.motion.EventSink;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Setup;
import hairline.checks.stock.StockModel;
import hairline.checks.stock.StockStage;
import hairline.checks.timing.FeedPlanner;
import hairline.checks.timing.MotionLimits;
import hairline.checks.timing.PlannedFeed;
import hairline.checks.timing.ProgramTime;
import hairline.checks.timing.TimeTable;
import hairline.checks.timing.Timeline;
import hairline.checks.warmth.GrowthFigures;
import hairline.checks.warmth.LevelGrowths;
import hairline.checks.warmth.SpindleWarmth;
import hairline.checks.warmth.WarmUpDemand;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * The stages between the interpreter and the rules, in their order. What they tell holds at the
 * start of the event that a rule has in hand.
 *
 * @param first takes the interpreter's events
 * @param time the time, as planned
 * @param feed the planned feed of the move in hand
 * @param warmth warm-up and measuring
 * @param growth growth of the spindle at each level
 */
public record Stages(
    EventSink first,
    ProgramTime time,
    PlannedFeed feed,
    SpindleWarmth warmth,
    LevelGrowths growth) {
  /** Under these names the timings have the handing over between threads. */
  static final String TO_STOCK = "handing over to the stock, or waiting to";

  static final String TO_JUDGE = "handing over to who judges, or waiting to";

  /**
   * Builds the chain before the rules, as far as they need it: stages that nobody needs are left
   * out, and then tell nothing.
   *
   * @param needs what the rules ask for
   * @param cellPm edge of a cell of the surface, where it is not to be the usual one
   * @param toStock stands between the interpreter and the stock
   * @param toJudge stands between what makes the events (motion, stock) and what judges them
   * @param depths whether the depths along each move are told
   * @param timings takes how long each stage takes
   */
  static Stages before(
      Setup setup,
      Set<Need> needs,
      OptionalLong cellPm,
      boolean depths,
      UnaryOperator<EventSink> toStock,
      UnaryOperator<EventSink> toJudge,
      Timings timings,
      EventSink rules) {
    ProgramTime time = new ProgramTime();
    LevelGrowths growth =
        new LevelGrowths(WarmUpDemand.of(setup), time, GrowthFigures.of(setup), rules);
    EventSink warm = timings.stage("warmth", growth);
    PlannedFeed feed = new PlannedFeed();
    TimeTable table = TimeTable.of(setup);
    Timeline timeline = new Timeline(table, feed, time, warm);
    FeedPlanner planner =
        new FeedPlanner(
            MotionLimits.of(setup), table.waitsForSpindle(), feed, timings.stage("time", timeline));
    EventSink timed =
        timings.stage(
            TO_JUDGE,
            toJudge.apply(
                needs.contains(Need.TIMING) ? timings.stage("planned feed", planner) : rules));
    if (!needs.contains(Need.OVERLAP) && !needs.contains(Need.SURFACE)) {
      return new Stages(timed, time, feed, growth.warmth(), growth);
    }
    // Time comes behind the stock: that one holds events back, and rules want the time of theirs.
    StockStage stock = new StockStage(StockModel.of(setup, cellPm), timed);
    if (depths) {
      stock.tellDepths();
    }
    EventSink first = timings.stage(TO_STOCK, toStock.apply(timings.stage("stock", stock)));
    return new Stages(first, time, feed, growth.warmth(), growth);
  }
}
