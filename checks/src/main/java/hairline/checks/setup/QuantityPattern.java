package hairline.checks.setup;

import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The pattern, for the JSON Schema, that every well-formed quantity of a dimension matches. */
final class QuantityPattern {
  private static final String NUMBER = "[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][+-]?[0-9]{1,2})?";

  private QuantityPattern() {}

  static String of(Dimension dimension) {
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
