package hairline.checks.setup;

import java.util.Optional;

/**
 * A key of the setup sheet: its name, what it takes, its default and what it means. The keys are
 * the one definition behind reading, units, validation, hints, the JSON Schema and the starter
 * sheet.
 *
 * @param <T> the type of the value; a plain number has its unit in the name of the key's constant
 */
public final class Key<T> {
  private final String path;
  private final ValueType<T> type;
  private final String example;
  private final String doc;
  private final Optional<T> fallback;
  private final String fallbackSource;

  private Key(
      String path,
      ValueType<T> type,
      String example,
      String doc,
      Optional<T> fallback,
      String fallbackSource) {
    this.path = path;
    this.type = type;
    this.example = example;
    this.doc = doc;
    this.fallback = fallback;
    this.fallbackSource = fallbackSource;
  }

  static <T> Key<T> of(String path, ValueType<T> type, String example, String doc) {
    return new Key<>(path, type, example, doc, Optional.empty(), "");
  }

  /** The same key with a default. */
  Key<T> withDefault(T value, String source) {
    return new Key<>(path, type, example, doc, Optional.of(value), source);
  }

  /**
   * The name as the user types it, dotted from the top of the sheet; for a key of a tool or a
   * feature, from there.
   */
  public String path() {
    return path;
  }

  /** What it means, in one line. */
  public String doc() {
    return doc;
  }

  /** A value as a user could type it. */
  public String example() {
    return example;
  }

  /** The default, where there is one. */
  public Optional<T> defaultValue() {
    return fallback;
  }

  /** A phrase that says whose the default is; empty without a default. */
  public String defaultSource() {
    return fallbackSource;
  }

  /** A value of this key as a user could type it. */
  public String format(T value) {
    return type.format(value);
  }

  ValueType<T> type() {
    return type;
  }

  @Override
  public String toString() {
    return path;
  }
}
