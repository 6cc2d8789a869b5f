package hairline.checks.setup;

import hairline.checks.cutting.MaterialGroup;
import java.util.Optional;

/** Which value of a key holds: the given one, else a published one, else the default. */
final class Resolving {
  private Resolving() {}

  static <T> Resolved<T> sheet(Values values, Key<T> key) {
    Optional<T> given = values.given(key);
    if (given.isPresent()) {
      return given(key.path(), given.get(), values.position(key));
    }
    Optional<MaterialGroup> group = values.given(MaterialKeys.GROUP);
    Optional<Published<T>> published = group.flatMap(g -> Published.of(g, key));
    Optional<Key<?>> partner = forcePartner(key);
    if (published.isPresent() && partner.isPresent()) {
      if (values.given(partner.get()).isPresent()) {
        return missing(
            key.path(),
            "kc1.1 and mc come from one fit: "
                + partner.get().path()
                + " is given, so no published value stands in");
      }
    }
    if (published.isPresent()) {
      return published(key.path(), published.get());
    }
    return fallback(key.path(), key);
  }

  /** Of the pair kc1.1 and mc, the other. */
  private static Optional<Key<?>> forcePartner(Key<?> key) {
    if (key.equals(MaterialKeys.SPECIFIC_FORCE_MPA)) {
      return Optional.of(MaterialKeys.FORCE_EXPONENT);
    }
    return key.equals(MaterialKeys.FORCE_EXPONENT)
        ? Optional.of(MaterialKeys.SPECIFIC_FORCE_MPA)
        : Optional.empty();
  }

  static <T> Resolved<T> tool(Tool tool, Values values, Key<T> key) {
    String path = tool.path(key);
    Optional<T> given = values.given(key);
    if (given.isPresent()) {
      return given(path, given.get(), values.position(key));
    }
    Optional<Published<T>> published =
        values.given(ToolKeys.MATERIAL).flatMap(material -> Published.of(material, key));
    if (published.isPresent()) {
      return published(path, published.get());
    }
    if (key.equals(ToolKeys.LENGTH_OFFSET)) {
      return fallback(path, tool.number(), "convention: the tool's own number");
    }
    if (key.equals(ToolKeys.CORNER_RADIUS)) {
      Optional<Length> radius = cornerRadiusOfShape(values);
      if (radius.isPresent()) {
        return fallback(path, radius.get(), "follows from the shape");
      }
    }
    return fallback(path, key);
  }

  /** A flat tool has none, a ball tool half its diameter; a bull tool must say. */
  private static Optional<Length> cornerRadiusOfShape(Values values) {
    Optional<ToolShape> shape = values.given(ToolKeys.SHAPE);
    if (shape.equals(Optional.of(ToolShape.FLAT))) {
      return Optional.of(Length.ZERO);
    }
    return shape.equals(Optional.of(ToolShape.BALL))
        ? values.given(ToolKeys.DIAMETER).map(diameter -> new Length(diameter.pm() / 2))
        : Optional.empty();
  }

  private static <T> Resolved<T> given(String path, T value, Optional<SourcePosition> position) {
    return new Resolved<>(
        path, Optional.of(value), Origin.GIVEN, position.map(SourcePosition::toString).orElse(""));
  }

  private static <T> Resolved<T> published(String path, Published<T> published) {
    return new Resolved<>(
        path, Optional.of(published.value()), Origin.PUBLISHED, published.source());
  }

  private static <T> Resolved<T> fallback(String path, Key<T> key) {
    return key.defaultValue()
        .map(value -> new Resolved<>(path, Optional.of(value), Origin.DEFAULT, key.defaultSource()))
        .orElseGet(() -> missing(path, ""));
  }

  /** The callers pair the key with a value of its type. */
  @SuppressWarnings("unchecked")
  private static <T> Resolved<T> fallback(String path, Object value, String source) {
    return new Resolved<>(path, Optional.of((T) value), Origin.DEFAULT, source);
  }

  private static <T> Resolved<T> missing(String path, String why) {
    return new Resolved<>(path, Optional.empty(), Origin.MISSING, why);
  }
}
