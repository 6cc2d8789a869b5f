package hairline.checks.rules;

import hairline.checks.cutting.CuttingForce;
import hairline.checks.cutting.FloorError;
import hairline.checks.stock.ApproachDirection;
import hairline.checks.stock.Cut;
import hairline.checks.stock.LevelReached;
import hairline.checks.stock.Terrace;
import hairline.checks.timing.TimePoint;
import hairline.checks.warmth.Measuring;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** How each level was cut, as far as the height of a step depends on it. */
final class LevelHistory {
  /** So many levels are followed; of later ones nothing is known. */
  private static final int MOST_LEVELS = 100_000;

  /** The largest error that cuts left on a floor. */
  record Floor(FloorError error, boolean bound) {
    private Floor orLarger(Floor other) {
      boolean larger = Math.abs(other.error.typicalUm()) > Math.abs(error.typicalUm());
      if (!larger && (bound || !other.bound)) {
        return this;
      }
      return new Floor(larger ? other.error : error, bound || other.bound);
    }
  }

  private static final class Level {
    final Set<ApproachDirection> approaches = EnumSet.noneOf(ApproachDirection.class);
    final Set<TimePoint> measurings = new HashSet<>();
    Optional<Floor> floor = Optional.empty();
  }

  private final Map<Integer, Level> levels = new HashMap<>();

  private LevelHistory() {}

  /** Follows the levels of a run. */
  static LevelHistory follow(RuleContext context, Subscriptions on) {
    LevelHistory history = new LevelHistory();
    // What lacks is told for the steps that a budget is drawn up for, and for no other cut.
    ToolLoads.each(
        context.quiet(),
        on,
        (tooth, load) -> {
          if (tooth.cut().runsAtLevel()
              && tooth.cut().levelId() > Cut.UNCUT
              && load.force() instanceof CuttingForce.Cutting force) {
            history.bent(
                tooth.cut().levelId(),
                new Floor(
                    load.flex().floorError(force, load.mill().floorRadiusMm()), load.bound()));
          }
        });
    on.event(LevelReached.class, history::reached);
    on.contact(
        cut -> {
          if (cut.runsAtLevel() && cut.levelId() > Cut.UNCUT) {
            history.measured(cut.levelId(), context.stages().warmth().measuring());
          }
        });
    return history;
  }

  private Optional<Level> level(int id) {
    Level level = levels.get(id);
    if (level == null && levels.size() < MOST_LEVELS) {
      level = new Level();
      levels.put(id, level);
    }
    return Optional.ofNullable(level);
  }

  private void bent(int id, Floor floor) {
    level(id)
        .ifPresent(
            level ->
                level.floor = level.floor.map(f -> f.orLarger(floor)).or(() -> Optional.of(floor)));
  }

  private void reached(LevelReached reached) {
    level(reached.levelId()).ifPresent(level -> level.approaches.add(reached.approach()));
  }

  private void measured(int id, Optional<Measuring> measuring) {
    if (measuring.isPresent()) {
      level(id).ifPresent(level -> level.measurings.add(measuring.get().end()));
    }
  }

  /** The error of a level's floor; empty where the force on it is not known. */
  Optional<Floor> floor(Terrace terrace) {
    return Optional.ofNullable(levels.get(terrace.levelId())).flatMap(level -> level.floor);
  }

  /** From where a level was approached, all its passes together. */
  Set<ApproachDirection> approaches(Terrace terrace) {
    Level level = levels.get(terrace.levelId());
    return level == null || level.approaches.isEmpty()
        ? EnumSet.of(terrace.approach())
        : EnumSet.copyOf(level.approaches);
  }

  /** Whether the tool that cut both levels was measured again between cuts of them. */
  boolean measuredBetween(Terrace one, Terrace other) {
    Set<TimePoint> all = new HashSet<>();
    for (Terrace terrace : new Terrace[] {one, other}) {
      Level level = levels.get(terrace.levelId());
      if (level != null) {
        all.addAll(level.measurings);
      }
    }
    return all.size() > 1;
  }
}
