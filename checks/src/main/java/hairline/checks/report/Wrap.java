package hairline.checks.report;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines at blanks. */
final class Wrap {
  private Wrap() {}

  /** Lines of at most so many terminal columns; a longer word keeps a line of its own. */
  static List<String> at(int width, String text) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    int used = 0;
    for (String word : text.split(" ", -1)) {
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
}
