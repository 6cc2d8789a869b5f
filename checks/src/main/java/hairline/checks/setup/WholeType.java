package hairline.checks.setup;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** A whole number. */
final class WholeType extends ScalarType<Long> {
  private static final Pattern DIGITS = Pattern.compile("[+-]?[0-9]{1,18}");

  private final long lo;
  private final long hi;

  WholeType(long lo, long hi) {
    this.lo = lo;
    this.hi = hi;
  }

  @Override
  Long parse(String text) throws Misread {
    if (!DIGITS.matcher(text).matches()) {
      String shown =
          text.length() > 40 ? "a text of " + text.length() + " characters" : "`" + text + "`";
      throw new Misread(shown + " is no whole number", "the key takes " + takes());
    }
    long number = Long.parseLong(text);
    if (number < lo || number > hi) {
      throw new Misread(
          "`" + number + "` is out of range", "the range is from " + lo + " to " + hi);
    }
    return number;
  }

  @Override
  String takes() {
    return "a whole number from " + lo + " to " + hi;
  }

  @Override
  String format(Long value) {
    return value.toString();
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "integer");
    schema.put("minimum", lo);
    schema.put("maximum", hi);
    return schema;
  }
}
