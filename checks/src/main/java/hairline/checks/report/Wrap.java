package hairline.checks.report;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Breaks text into lines at blanks, but not between a number and its unit. */
final class Wrap {
  private static final Pattern NUMBER = Pattern.compile("(^|[ (±\\[])[-+−±]?[0-9.]*[0-9]$");
  private static final Pattern UNIT =
      Pattern.compile(
          "(µm|um|mm|cm|m|nm|in|rpm|s|ms|min|h|deg|K|N|MPa|GPa|%|times|mm/min|m/min|m/s|mm²|µm²)"
              + "[),;:.\\]]*");
  private static final Pattern NAMER = Pattern.compile("(^| )[(]?(line|lines|tool)$");
  private static final Pattern BEGINS_WITH_DIGIT = Pattern.compile("^[0-9]");

  private Wrap() {}

  /** Lines of at most so many terminal columns; a longer word keeps a line of its own. */
  static List<String> at(int width, String text) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    int used = 0;
    for (String word : words(text)) {
      int columns = DisplayWidth.of(word);
      if (used > 0 && used + 1 + columns > width) {
        lines.add(line.toString());
        line.setLength(0);
        used = 0;
      }
      if (used > 0) {
        line.append(' ');
        used++;
      }
      line.append(word);
      used += columns;
    }
    lines.add(line.toString());
    return lines;
  }

  /** The words of the text; what must not part is one. */
  private static List<String> words(String text) {
    List<String> words = new ArrayList<>();
    for (String word : text.split(" ", -1)) {
      int last = words.size() - 1;
      if (last >= 0 && belong(words.get(last), word)) {
        words.set(last, words.get(last) + " " + word);
      } else {
        words.add(word);
      }
    }
    return words;
  }

  private static boolean belong(String before, String word) {
    return (NUMBER.matcher(before).find() && UNIT.matcher(word).matches())
        || (NAMER.matcher(before).find() && BEGINS_WITH_DIGIT.matcher(word).find());
  }
}
