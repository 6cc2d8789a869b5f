package hairline.checks.setup;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A number with its unit.
 *
 * @param <T> what the exact number is kept as
 */
final class QuantityType<T> extends ScalarType<T> {
  private static final String NUMBER = "[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][+-]?[0-9]{1,2})?";

  private final Dimension dimension;
  private final Bounds bounds;
  private final Keeper<T> keeper;
  private final Function<T, BigDecimal> exact;

  /** How the exact number, in the first unit of the dimension, is kept. */
  interface Keeper<T> {
    T keep(BigDecimal number) throws Misread;
  }

  QuantityType(
      Dimension dimension, Bounds bounds, Keeper<T> keeper, Function<T, BigDecimal> exact) {
    this.dimension = dimension;
    this.bounds = bounds;
    this.keeper = keeper;
    this.exact = exact;
  }

  @Override
  T parse(String text) throws Misread {
    BigDecimal number = dimension.read(text);
    bounds.check(number, dimension);
    return keeper.keep(number);
  }

  BigDecimal exact(T value) {
    return exact.apply(value);
  }

  @Override
  String takes() {
    return dimension.takes();
  }

  @Override
  String format(T value) {
    return dimension.format(exact.apply(value));
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    if (dimension == Dimension.NUMBER) {
      schema.put("type", "number");
      schema.put(bounds.loIncluded() ? "minimum" : "exclusiveMinimum", bounds.lo());
      schema.put("maximum", bounds.hi());
    } else {
      schema.put("type", "string");
      schema.put("pattern", pattern());
      schema.put("$comment", "range: " + bounds.say(dimension));
    }
    return schema;
  }

  /** A pattern that every well-formed quantity of the dimension matches. */
  private String pattern() {
    String names =
        dimension.units().stream()
            .map(unit -> looseName(unit.name()))
            .collect(Collectors.joining("|"));
    return "^\\s*" + NUMBER + "\\s*(" + names + ")\\s*$";
  }

  /** The unit in each of the spellings that are read. */
  private static String looseName(String unit) {
    StringBuilder loose = new StringBuilder();
    int i = 0;
    while (i < unit.length()) {
      if (unit.startsWith("^2", i) || unit.startsWith("^3", i)) {
        loose.append(unit.charAt(i + 1) == '2' ? "(\\^2|²)" : "(\\^3|³)");
        i += 2;
      } else if (unit.startsWith("degC", i)) {
        loose.append("(degC|°C)");
        i += 4;
      } else if (unit.startsWith("deg", i)) {
        loose.append("(deg|°)");
        i += 3;
      } else {
        loose.append(looseCharacter(unit.charAt(i)));
        i++;
      }
    }
    return loose.toString();
  }

  private static String looseCharacter(char c) {
    return switch (c) {
      case 'u' -> "[uµμ]";
      case '/' -> "\\s*/\\s*";
      case ' ' -> "(\\s+|\\s*[·*]\\s*)";
      case '(', ')' -> "\\" + c;
      default -> Pattern.matches("[A-Za-z0-9]", Character.toString(c)) ? "" + c : "\\" + c;
    };
  }
}
