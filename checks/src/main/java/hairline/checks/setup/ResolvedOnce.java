package hairline.checks.setup;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/** What keys resolve to, worked out once for each: rules ask for the same keys at every cut. */
final class ResolvedOnce {
  private final Map<Key<?>, Resolved<?>> known = new ConcurrentHashMap<>();

  /** What a key resolves to; the same object each time. */
  // What was put in for a key has its type.
  @SuppressWarnings("unchecked")
  <T> Resolved<T> get(Key<T> key, Function<Key<T>, Resolved<T>> resolving) {
    Resolved<?> before = known.get(key);
    if (before == null) {
      before = known.computeIfAbsent(key, k -> resolving.apply(key));
    }
    return (Resolved<T>) before;
  }
}
