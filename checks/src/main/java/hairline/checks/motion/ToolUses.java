package hairline.checks.motion;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Collects what a program does with its tools. Follows {@value #TOOLS_CAP} tools and {@value
 * #SPEEDS_CAP} speeds of each.
 */
public final class ToolUses implements EventSink {
  /** How many tools are followed. */
  static final int TOOLS_CAP = 1_000;

  /** How many speeds of a tool are kept. */
  static final int SPEEDS_CAP = 100;

  private static final class Use {
    final Place first;
    final Set<Double> speedsRpm = new LinkedHashSet<>();
    Optional<ToolUse.Feeds> feeds = Optional.empty();
    double feedMm;

    Use(Place first) {
      this.first = first;
    }
  }

  private final Map<Optional<Integer>, Use> uses = new LinkedHashMap<>();
  private @Nullable Modes modes;
  private @Nullable Use current;
  private boolean capReached;

  @Override
  public void accept(Event event) {
    if (event instanceof Move move) {
      if (move.isFeed()) {
        feed(move);
      }
    } else if (event instanceof Event.ToolChanged change) {
      use(change.after().value(), change.at());
    } else if (event instanceof Event.SpindleChanged change) {
      turn(change.after(), change.at());
    }
  }

  private void feed(Move move) {
    // Mostly the same object, until a block changes something.
    if (!move.modes().equals(modes)) {
      turn(move.modes(), move.at());
    }
    if (current != null) {
      Use use = current;
      use.feedMm += move.lengthMm();
      move.feedMmPerMin()
          .ifPresent(
              feed ->
                  use.feeds =
                      Optional.of(
                          use.feeds.map(f -> f.and(feed)).orElse(new ToolUse.Feeds(feed, feed))));
    }
  }

  private void turn(Modes now, Place at) {
    modes = now;
    Optional<Double> rpm = now.turningRpm();
    boolean turns = rpm.isPresent() && rpm.get() > 0;
    Use use = use(now.tool().value(), at);
    current = use;
    if (use != null && turns && !use.speedsRpm.contains(rpm.get())) {
      if (use.speedsRpm.size() < SPEEDS_CAP) {
        use.speedsRpm.add(rpm.get());
      } else {
        capReached = true;
      }
    }
  }

  private @Nullable Use use(Optional<Integer> tool, Place at) {
    Use use = uses.get(tool);
    if (use == null) {
      if (uses.size() >= TOOLS_CAP) {
        capReached = true;
        return null;
      }
      use = new Use(at);
      uses.put(tool, use);
    }
    return use;
  }

  /** The tools in the order of their first use. */
  public List<ToolUse> list() {
    List<ToolUse> list = new ArrayList<>();
    uses.forEach(
        (tool, use) ->
            list.add(
                new ToolUse(
                    tool.map(OptionalInt::of).orElse(OptionalInt.empty()),
                    use.first,
                    List.copyOf(use.speedsRpm),
                    use.feeds,
                    use.feedMm)));
    return List.copyOf(list);
  }

  /** Whether a tool or a speed was left out because a cap was reached. */
  public boolean isCapReached() {
    return capReached;
  }
}
