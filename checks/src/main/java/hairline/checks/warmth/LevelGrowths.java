package hairline.checks.warmth;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.stock.Cut;
import hairline.checks.timing.Answer;
import hairline.checks.timing.ProgramTime;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Keeps the growth at the first and the last contact of each level: the stage of {@link
 * SpindleWarmth} with a look at what comes out of it. As many levels are kept as the stage that
 * finds them counts.
 */
public final class LevelGrowths implements EventSink {
  private final SpindleWarmth warmth;
  private final ProgramTime time;
  private final EventSink next;
  private final Map<Integer, Kept> levels = new HashMap<>();
  private Optional<Kept> latest = Optional.empty();

  /** What is kept of a level while it may be cut on. */
  private static final class Kept {
    private final int levelId;
    private final LevelGrowth.Contact first;
    private LevelGrowth.Contact last;
    private boolean cold;

    Kept(int levelId, LevelGrowth.Contact first) {
      this.levelId = levelId;
      this.first = first;
      this.last = first;
    }

    LevelGrowth growth() {
      return new LevelGrowth(levelId, first, last, cold);
    }
  }

  /**
   * A stage before {@code next}.
   *
   * @param demand what the sheet asks of a warm-up
   * @param time the time that the stage before counts
   * @param growth what the sheet says of growth
   * @param next takes every event
   */
  public LevelGrowths(
      WarmUpDemand demand, ProgramTime time, Optional<GrowthFigures> growth, EventSink next) {
    this.time = time;
    this.next = next;
    this.warmth = new SpindleWarmth(demand, time, growth, this::passOn);
  }

  /** Warm-up, measuring and growth at the event in hand. */
  public SpindleWarmth warmth() {
    return warmth;
  }

  /** Growth while this level was cut; empty where the sheet does not tell of growth. */
  public Optional<LevelGrowth> of(int levelId) {
    return Optional.ofNullable(levels.get(levelId)).map(Kept::growth);
  }

  @Override
  public void accept(Event event) {
    warmth.accept(event);
  }

  private void passOn(Event event) {
    if (event instanceof Cut cut
        && cut.inContact()
        && cut.runsAtLevel()
        && cut.levelId() > Cut.UNCUT) {
      warmth.growth().ifPresent(growth -> note(cut, growth));
    }
    next.accept(event);
  }

  private void note(Cut cut, GrowthPoint growth) {
    double startSeconds = time.secondsNow();
    Kept kept = kept(cut, growth, startSeconds);
    kept.cold |= cut.fine() && warmth.warmUp().valid() == Answer.NO;
    kept.last =
        new LevelGrowth.Contact(
            cut.at(),
            startSeconds + time.ofThisEvent().atLeastSeconds(),
            growth.later(time.ofThisEvent()),
            warmth.measuring());
  }

  private Kept kept(Cut cut, GrowthPoint growth, double startSeconds) {
    if (latest.isPresent() && latest.get().levelId == cut.levelId()) {
      return latest.get();
    }
    Kept kept =
        levels.computeIfAbsent(
            cut.levelId(),
            id ->
                new Kept(
                    id,
                    new LevelGrowth.Contact(cut.at(), startSeconds, growth, warmth.measuring())));
    latest = Optional.of(kept);
    return kept;
  }
}
