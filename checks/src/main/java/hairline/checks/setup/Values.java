package hairline.checks.setup;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Given values by their keys. */
final class Values {
  static final Values NONE = new Values(Map.of());

  private final Map<Key<?>, Given> given;

  private record Given(Object value, Optional<SourcePosition> position) {}

  private Values(Map<Key<?>, Given> given) {
    this.given = given;
  }

  /** The given value; the cast holds because {@link #with} takes only values of the key's type. */
  @SuppressWarnings("unchecked")
  <T> Optional<T> given(Key<T> key) {
    Given found = given.get(key);
    return found == null ? Optional.empty() : Optional.of((T) found.value());
  }

  Optional<SourcePosition> position(Key<?> key) {
    Given found = given.get(key);
    return found == null ? Optional.empty() : found.position();
  }

  Set<Key<?>> keys() {
    return Collections.unmodifiableSet(given.keySet());
  }

  <T> Values with(Key<T> key, T value, Optional<SourcePosition> position) {
    Map<Key<?>, Given> more = new LinkedHashMap<>(given);
    more.put(key, new Given(value, position));
    return new Values(more);
  }

  /** These values, and the others where both have one. */
  Values with(Values others) {
    Map<Key<?>, Given> more = new LinkedHashMap<>(given);
    more.putAll(others.given);
    return new Values(more);
  }
}
