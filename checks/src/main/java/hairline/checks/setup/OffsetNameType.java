package hairline.checks.setup;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** The name of a work offset: G54 to G59, G59.1 to G59.3. */
final class OffsetNameType extends ScalarType<String> {
  private static final String PATTERN = "[Gg]5([4-9]|9\\.[123])";
  private static final Pattern NAME = Pattern.compile(PATTERN);

  @Override
  String parse(String text) throws Misread {
    if (!NAME.matcher(text).matches()) {
      throw new Misread("`" + Shown.cut(text) + "` is no work offset", "the key takes " + takes());
    }
    return text.toUpperCase(Locale.ROOT);
  }

  @Override
  String takes() {
    return "G54 to G59 or G59.1 to G59.3";
  }

  @Override
  String format(String value) {
    return value;
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "string");
    schema.put("pattern", "^" + PATTERN + "$");
    return schema;
  }
}
