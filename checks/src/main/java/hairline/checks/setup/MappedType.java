package hairline.checks.setup;

import java.util.Map;
import java.util.function.Function;

/**
 * One text, kept as another type.
 *
 * @param <S> the type that the text is read as
 * @param <T> the type that it is kept as
 */
final class MappedType<S, T> extends ScalarType<T> {
  private final ScalarType<S> source;
  private final Function<S, T> to;
  private final Function<T, S> from;

  MappedType(ScalarType<S> source, Function<S, T> to, Function<T, S> from) {
    this.source = source;
    this.to = to;
    this.from = from;
  }

  @Override
  T parse(String text) throws Misread {
    return to.apply(source.parse(text));
  }

  @Override
  String takes() {
    return source.takes();
  }

  @Override
  String format(T value) {
    return source.format(from.apply(value));
  }

  @Override
  Map<String, Object> schema() {
    return source.schema();
  }
}
