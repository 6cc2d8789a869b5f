package hairline.checks.setup;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** The name of a rule. */
final class RuleNameType extends ScalarType<String> {
  private static final String PATTERN = "[a-z]+(-[a-z]+)*";
  private static final Pattern NAME = Pattern.compile(PATTERN);

  @Override
  String parse(String text) throws Misread {
    if (text.length() > 60 || !NAME.matcher(text).matches()) {
      throw new Misread("this is no name of a rule", "the key takes " + takes());
    }
    return text;
  }

  @Override
  String takes() {
    return "names of rules such as chip-below-minimum";
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
