package hairline.checks.setup;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A code of the machine. */
final class CodeWordType extends ScalarType<CodeWord> {
  private static final String PATTERN = "([MmGgPp])([0-9]{1,8}(?:\\.[0-9]{1,3})?)";
  private static final Pattern CODE = Pattern.compile(PATTERN);

  @Override
  CodeWord parse(String text) throws Misread {
    Matcher matcher = CODE.matcher(text);
    if (!matcher.matches()) {
      throw new Misread("`" + Shown.cut(text) + "` is no code", "the key takes " + takes());
    }
    char letter = matcher.group(1).toUpperCase(Locale.ROOT).charAt(0);
    return new CodeWord(letter, new BigDecimal(matcher.group(2)));
  }

  @Override
  String takes() {
    return "a word such as M71 or a call such as P9001";
  }

  @Override
  String format(CodeWord value) {
    return value.toString();
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "string");
    schema.put("pattern", "^" + PATTERN + "$");
    return schema;
  }
}
