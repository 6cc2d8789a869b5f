package hairline.checks.warmth;

import hairline.checks.cutting.Band;
import hairline.checks.motion.Event;
import hairline.checks.motion.Place;
import hairline.checks.setup.Tool;
import hairline.checks.stock.ApproachDirection;
import hairline.checks.stock.Cut;
import hairline.checks.stock.StepFound;
import hairline.checks.stock.Terrace;
import hairline.checks.timing.PlannedFeed;
import hairline.checks.timing.ProgramTime;
import hairline.checks.timing.Programs;
import hairline.checks.timing.Timeline;
import hairline.parser.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A program that cuts levels with a spindle that grows 18 µm at 30000 rpm, in proportion to speed,
 * with a time constant of 720 s. Run-up takes no time, a tool change 4 s and measuring 12 s.
 */
final class LevelShop {
  static final double END_UM = 18;
  static final double TAU_S = 720;
  static final double RPM = 30_000;

  private final List<Event> events = new ArrayList<>();
  private final LevelGrowths levels;
  private final Programs program;

  LevelShop() {
    this(Optional.of(figures(Band.ofExact(END_UM), Band.ofExact(TAU_S))));
  }

  LevelShop(Optional<GrowthFigures> growth) {
    ProgramTime time = new ProgramTime();
    levels = new LevelGrowths(Shop.DEMAND, time, growth, events::add);
    program = new Programs(new Timeline(Shop.TIMES, new PlannedFeed(), time, levels));
    program.g0(0, 0, 0);
  }

  static GrowthFigures figures(Band amountUm, Band tauS) {
    return GrowthFigures.ofTest(RPM, amountUm, tauS, Band.ofExact(1), 0);
  }

  /** What a cold spindle has grown after this time at {@link #RPM}: 18 µm · (1 − e^(−t/720)). */
  static double grownUm(double seconds) {
    return END_UM * (1 - StrictMath.exp(-seconds / TAU_S));
  }

  /** Tool 3 is measured when the spindle has turned for 300 s. */
  LevelShop measuredAt300() {
    program.m6(3).m3(RPM).dwell(288).measure();
    return this;
  }

  /** A cut of 60 s at a level. */
  LevelShop cut(int level) {
    program.cutting(true).level(level).g1(60, 0, 0, 60).level(Cut.NO_LEVEL);
    program.cutting(false).g0(0, 0, 0);
    return this;
  }

  Programs program() {
    return program;
  }

  /** What came out behind. */
  List<Event> events() {
    return events;
  }

  LevelGrowths levels() {
    return levels;
  }

  LevelGrowth level(int id) {
    return levels.of(id).orElseThrow();
  }

  /** Growth of a step between two levels, both cut by tool 3. */
  StepGrowth step(int upper, int lower) {
    return step(terrace(upper, 3), terrace(lower, 3));
  }

  StepGrowth step(Terrace upper, Terrace lower) {
    return StepGrowth.of(
        new StepFound(place(), upper, lower, 10_000_000, 10_000_000, Optional.empty(), "G54", 1),
        levels);
  }

  StepGrowth.Told told(int upper, int lower) {
    return (StepGrowth.Told) step(upper, lower);
  }

  static Terrace terrace(int level, int tool) {
    return terrace(level, Optional.of(Tool.builder(tool).build()));
  }

  static Terrace terrace(int level, Optional<Tool> tool) {
    boolean uncut = level == Cut.UNCUT;
    Optional<Place> at = uncut ? Optional.empty() : Optional.of(place());
    return new Terrace(
        level, 0, 0, at, at, uncut ? Optional.empty() : tool, 0, 0, ApproachDirection.FROM_ABOVE);
  }

  private static Place place() {
    return new Place(0, 1, new Span(1, 2));
  }
}
