package hairline.viewer.panes;

import java.io.IOException;

/** Lines of a table as RFC 4180 has them. */
final class Csv {
  private Csv() {}

  static void line(Appendable out, Object... cells) throws IOException {
    for (int k = 0; k < cells.length; k++) {
      if (k > 0) {
        out.append(',');
      }
      String cell = String.valueOf(cells[k]);
      boolean quoted = cell.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
      out.append(quoted ? '"' + cell.replace("\"", "\"\"") + '"' : cell);
    }
    out.append("\r\n");
  }
}
