package hairline.checks.warmth;

import hairline.checks.motion.Event;
import hairline.checks.setup.AxisValues;
import hairline.checks.timing.PlannedFeed;
import hairline.checks.timing.ProgramTime;
import hairline.checks.timing.Programs;
import hairline.checks.timing.TimeTable;
import hairline.checks.timing.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A machine with a sheet, and a program that runs on it. */
final class Shop {
  static final WarmUpDemand DEMAND =
      new WarmUpDemand(
          OptionalDouble.of(720),
          OptionalDouble.of(20000),
          OptionalDouble.empty(),
          OptionalDouble.of(1200),
          60,
          false,
          true);

  /** Run-up takes no time here, so that sums can be done in the head. */
  static final TimeTable TIMES =
      new TimeTable(
          Optional.of(AxisValues.alongPath(15000)),
          OptionalDouble.of(4),
          OptionalDouble.of(12),
          OptionalDouble.of(720),
          OptionalDouble.of(0),
          true);

  /** A sheet that gives no times. */
  static final TimeTable NO_TIMES =
      new TimeTable(
          Optional.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          true);

  private final ProgramTime time = new ProgramTime();
  private final List<Event> events = new ArrayList<>();
  private final SpindleWarmth warmth;
  private Optional<TimelineGatherer> gatherer = Optional.empty();
  private final Programs program;

  Shop() {
    this(DEMAND, TIMES);
  }

  Shop(WarmUpDemand demand, TimeTable times) {
    this(demand, times, Optional.empty());
  }

  Shop(WarmUpDemand demand, TimeTable times, Optional<GrowthFigures> growth) {
    warmth = new SpindleWarmth(demand, time, growth, this::take);
    program = new Programs(new Timeline(times, new PlannedFeed(), time, warmth));
  }

  private void take(Event event) {
    events.add(event);
    gatherer.ifPresent(timeline -> timeline.accept(event));
  }

  /** The same with a timeline; before the program begins. */
  Shop withTimeline() {
    gatherer = Optional.of(new TimelineGatherer(warmth, time));
    return this;
  }

  ProgramTimeline timeline() {
    return gatherer.orElseThrow().timeline();
  }

  Programs program() {
    return program;
  }

  SpindleWarmth warmth() {
    return warmth;
  }

  ProgramTime time() {
    return time;
  }

  /** What came out behind. */
  List<Event> events() {
    return events;
  }
}
