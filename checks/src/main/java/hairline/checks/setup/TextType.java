package hairline.checks.setup;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** A name or remark. */
final class TextType extends ScalarType<String> {
  private static final int MOST_CHARACTERS = 200;

  @Override
  String parse(String text) throws Misread {
    int length = text.codePointCount(0, text.length());
    if (length > MOST_CHARACTERS) {
      throw new Misread(
          "a text of " + length + " characters", "at most " + MOST_CHARACTERS + " are read");
    }
    return text;
  }

  @Override
  String takes() {
    return "a text";
  }

  @Override
  String format(String value) {
    StringBuilder quoted = new StringBuilder("\"");
    value
        .codePoints()
        .forEach(
            c -> {
              if (Character.isISOControl(c)) {
                quoted.append(String.format(Locale.ROOT, "\\x%02X", c));
              } else {
                quoted.append(c == '"' || c == '\\' ? "\\" : "").appendCodePoint(c);
              }
            });
    return quoted.append('"').toString();
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "string");
    schema.put("minLength", 1);
    schema.put("maxLength", MOST_CHARACTERS);
    return schema;
  }
}
