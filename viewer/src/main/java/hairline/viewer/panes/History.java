package hairline.viewer.panes;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * Views that were looked at, to go back and forth among; changes that follow each other quickly,
 * like those of a wheel, count as one.
 *
 * @param <V> a view
 */
final class History<V> {
  private static final int MOST = 200;
  private static final long ONE_MS = 700;

  private final Deque<V> back = new ArrayDeque<>();
  private final Deque<V> forward = new ArrayDeque<>();
  private long last = Long.MIN_VALUE;

  /**
   * Takes note that a view is left.
   *
   * @param left the view before the change
   * @param nowMs the time of the change
   */
  void leave(V left, long nowMs) {
    boolean goesOn = last != Long.MIN_VALUE && nowMs - last < ONE_MS;
    last = nowMs;
    forward.clear();
    if (goesOn) {
      return;
    }
    back.push(left);
    if (back.size() > MOST) {
      back.removeLast();
    }
  }

  /** The view before this one. */
  Optional<V> back(V now) {
    last = Long.MIN_VALUE;
    return step(back, forward, now);
  }

  /** The view that was gone back from. */
  Optional<V> forward(V now) {
    last = Long.MIN_VALUE;
    return step(forward, back, now);
  }

  private static <V> Optional<V> step(Deque<V> from, Deque<V> to, V now) {
    if (from.isEmpty()) {
      return Optional.empty();
    }
    to.push(now);
    return Optional.of(from.pop());
  }

  void clear() {
    back.clear();
    forward.clear();
    last = Long.MIN_VALUE;
  }
}
