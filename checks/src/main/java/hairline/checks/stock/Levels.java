package hairline.checks.stock;

import hairline.checks.motion.Place;
import hairline.checks.setup.Tool;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The levels of a program, numbered from 1 in the order first cut; bounded. */
final class Levels {
  private final int cap;
  private final List<Level> levels = new ArrayList<>();
  private final Map<Level.Key, Level> latest = new HashMap<>();

  Levels(int cap) {
    this.cap = cap;
  }

  /** The id that the next level made would get. */
  int nextId() {
    return levels.size() < cap ? levels.size() + 1 : Cut.NO_LEVEL;
  }

  Level get(int id) {
    return levels.get(id - 1);
  }

  /** The level of this kind that was made last. */
  Optional<Level> latest(Level.Key key) {
    return Optional.ofNullable(latest.get(key));
  }

  /** Makes a level; empty at the cap. */
  Optional<Level> make(
      Level.Key key,
      long writtenZPm,
      Optional<Tool> tool,
      ApproachDirection approach,
      Place at,
      int operation) {
    if (levels.size() >= cap) {
      return Optional.empty();
    }
    Level level = new Level(levels.size() + 1, key, writtenZPm, tool, approach, at, operation);
    levels.add(level);
    latest.put(key, level);
    return Optional.of(level);
  }
}
