package hairline.checks.setup;

import java.util.Optional;

/** A tool of the sheet's list. */
public final class Tool {
  private final ResolvedOnce resolved = new ResolvedOnce();
  private final Values values;
  private final int number;

  Tool(Values values) {
    this.values = values;
    this.number = values.given(ToolKeys.NUMBER).orElseThrow();
  }

  /** A tool of this number, for tests and tools that make sheets. */
  public static Builder builder(int number) {
    return new Builder(number);
  }

  /** The T number. */
  public int number() {
    return number;
  }

  /** The value that holds: given, default or published. */
  public <T> Optional<T> get(Key<T> key) {
    return resolve(key).value();
  }

  /** The value that holds, where it comes from, and the name of its key. */
  public <T> Resolved<T> resolve(Key<T> key) {
    return resolved.get(key, k -> Resolving.tool(this, values, k));
  }

  /** What the user would type to name this value, such as {@code tools.3.edge_radius}. */
  public String path(Key<?> key) {
    return "tools." + number + "." + key.path();
  }

  /** Where the sheet gives the value. */
  public Optional<SourcePosition> positionOf(Key<?> key) {
    return values.position(key);
  }

  Values values() {
    return values;
  }

  /** Makes a tool. */
  public static final class Builder {
    private Values values;

    private Builder(int number) {
      values = Values.NONE.with(ToolKeys.NUMBER, number, Optional.empty());
    }

    /** Gives a value. */
    public <T> Builder with(Key<T> key, T value) {
      values = values.with(key, value, Optional.empty());
      return this;
    }

    /** The tool. */
    public Tool build() {
      return new Tool(values);
    }
  }
}
