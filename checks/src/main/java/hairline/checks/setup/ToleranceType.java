package hairline.checks.setup;

import java.util.LinkedHashMap;
import java.util.Map;

/** {@code ±1 um}, also typed {@code +-1 um} or {@code +/-1 um}. */
final class ToleranceType extends ScalarType<Tolerance> {
  private final ScalarType<Length> halfWidth;

  ToleranceType(ScalarType<Length> halfWidth) {
    this.halfWidth = halfWidth;
  }

  @Override
  Tolerance parse(String text) throws Misread {
    for (String sign : new String[] {"±", "+-", "+/-"}) {
      if (text.startsWith(sign)) {
        return Tolerance.plusMinus(halfWidth.parse(text.substring(sign.length()).strip()));
      }
    }
    Length bare = halfWidth.parse(text);
    throw new Misread(
        "`" + text + "` does not say to which side", "the key takes `±" + bare + "` or [from, to]");
  }

  @Override
  String takes() {
    return "a tolerance (`±1 um`, `+-1 um`)";
  }

  @Override
  String format(Tolerance value) {
    return "±" + value.hi();
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "string");
    schema.put("pattern", "^\\s*(±|\\+-|\\+/-)\\s*[0-9.].*$");
    return schema;
  }
}
