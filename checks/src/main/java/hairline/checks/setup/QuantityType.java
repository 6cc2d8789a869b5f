package hairline.checks.setup;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * A number with its unit.
 *
 * @param <T> what the exact number is kept as
 */
final class QuantityType<T> extends ScalarType<T> {
  private final Dimension dimension;
  private final Bounds bounds;
  private final Keeper<T> keeper;
  private final Function<T, String> written;

  /** How the exact number, in the first unit of the dimension, is kept. */
  interface Keeper<T> {
    T keep(BigDecimal number) throws Misread;
  }

  QuantityType(Dimension dimension, Bounds bounds, Keeper<T> keeper, Function<T, String> written) {
    this.dimension = dimension;
    this.bounds = bounds;
    this.keeper = keeper;
    this.written = written;
  }

  @Override
  T parse(String text) throws Misread {
    BigDecimal number = dimension.read(text);
    if (!bounds.contain(number)) {
      throw new Misread("`" + text + "` is out of range", "the range is " + bounds.say(dimension));
    }
    return keeper.keep(number);
  }

  @Override
  String takes() {
    return dimension.takes();
  }

  @Override
  String format(T value) {
    return written.apply(value);
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    if (dimension == Dimension.NUMBER) {
      schema.put("type", "number");
      schema.put(bounds.loIncluded() ? "minimum" : "exclusiveMinimum", bounds.lo());
      schema.put("maximum", bounds.hi());
    } else {
      schema.put("$ref", "#/$defs/" + dimension.schemaName());
      schema.put("$comment", "range: " + bounds.say(dimension));
    }
    return schema;
  }
}
