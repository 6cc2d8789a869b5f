package hairline.checks.report;

import hairline.checks.stock.Section;
import hairline.checks.stock.Stands;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.stock.TerraceArea;
import hairline.checks.stock.Terraces;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/** The part left in the text report: sentences for the gutter, and tables in aligned columns. */
final class SurfaceText {
  private static final int MOST_ROWS = 60;

  /** Room for two blanks and "… 12 more". */
  private static final int MORE_WIDTH = 11;

  private static final int UM_DIGITS = 6;
  private static final int FEWEST_DIGITS = 2;
  private static final int SHORTEST_LEVEL_CELLS = 8;

  /**
   * One part: a surface with its terraces, or a section.
   *
   * @param head sentences
   * @param table rows of a table, the heading first; empty where there is none
   * @param left how many rows were left out
   */
  record Part(List<SummaryText.Line> head, List<String> table, int left) {}

  private SurfaceText() {}

  /**
   * The parts.
   *
   * @param whole whether long tables and rows are shown whole
   * @param columns how wide they may be otherwise
   */
  static List<Part> of(SurfaceShown surface, boolean whole, int columns) {
    List<Part> parts = new ArrayList<>();
    if (!surface.wanted().terraces() && surface.wanted().sections().isEmpty()) {
      return parts;
    }
    if (surface.offsets().isEmpty()) {
      parts.add(
          new Part(List.of(new SummaryText.Line("surface", SurfaceWords.NOTHING)), List.of(), 0));
    }
    for (SurfaceShown.Under under : surface.offsets()) {
      parts.add(surface(surface, under, whole ? Integer.MAX_VALUE : columns));
      int number = 0;
      for (Section section : under.sections()) {
        parts.add(section(under, ++number, section, surface.cellPm(), whole));
      }
    }
    return parts;
  }

  private static Part surface(SurfaceShown surface, SurfaceShown.Under under, int columns) {
    List<SummaryText.Line> head = new ArrayList<>();
    head.add(new SummaryText.Line("surface", under.offset() + ", " + SurfaceWords.cells(surface)));
    head.add(new SummaryText.Line("memory", SurfaceWords.memory(under)));
    head.add(new SummaryText.Line("stock", SurfaceWords.stock(under)));
    if (!under.known()) {
      head.add(
          new SummaryText.Line(
              "unknown", "a move of unknown course may have cut anywhere; see not checked"));
      return new Part(head, List.of(), 0);
    }
    if (!surface.wanted().terraces()) {
      return new Part(head, List.of(), 0);
    }
    Terraces terraces = under.terraces().orElseThrow();
    for (String left : terraces.left()) {
      head.add(new SummaryText.Line("left out", left));
    }
    int cut = (int) terraces.areas().stream().filter(area -> !area.uncut()).count();
    head.add(
        new SummaryText.Line(
            "terraces",
            terraces.areas().size()
                + ", "
                + cut
                + " of them cut"
                + (terraces.otherAreas() == 0
                    ? ""
                    : "; slopes, contours and slivers of together "
                        + fixed(terraces.otherMm2(), 4)
                        + " mm² are none")));
    boolean whole = columns == Integer.MAX_VALUE;
    int shown = whole ? terraces.areas().size() : Math.min(MOST_ROWS, terraces.areas().size());
    return new Part(
        head, table(terraces.areas().subList(0, shown), columns), terraces.areas().size() - shown);
  }

  private static List<String> table(List<TerraceArea> areas, int columns) {
    if (areas.isEmpty()) {
      return List.of();
    }
    int digits = 0;
    for (TerraceArea area : areas) {
      digits = Math.max(digits, digits(area.heightPm()));
    }
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("id", "height µm", "area mm²", "X mm", "to", "Y mm", "to", ""));
    for (TerraceArea area : areas) {
      rows.add(
          List.of(
              Integer.toString(area.id()),
              fixed(area.heightPm(), digits),
              fixed(area.areaMm2(), 4),
              fixed(area.xMinPm() / 1e9, 3),
              fixed(area.xMaxPm() / 1e9, 3),
              fixed(area.yMinPm() / 1e9, 3),
              fixed(area.yMaxPm() / 1e9, 3),
              ""));
    }
    List<String> lines = aligned(rows);
    int width = DisplayWidth.of(lines.get(0));
    List<String> table = new ArrayList<>();
    table.add(lines.get(0) + "  neighbours by step µm");
    for (int k = 0; k < areas.size(); k++) {
      String beside = beside(areas.get(k), columns - width - 2);
      table.add((lines.get(k + 1) + "  " + beside).stripTrailing());
    }
    return table;
  }

  /** What a terrace adjoins, as far as there is room; the rest of the neighbours is counted. */
  private static String beside(TerraceArea area, int room) {
    StringBuilder text = new StringBuilder(area.uncut() ? "(uncut)  " : "");
    for (Stands stands : Stands.values()) {
      if (area.beside().contains(stands) && stands != Stands.OUTSIDE) {
        text.append(stands.words()).append("  ");
      }
    }
    int left = area.neighbours().size();
    for (TerraceArea.Neighbour neighbour : area.neighbours()) {
      String next = neighbour.id() + ": " + signed(neighbour.stepPm());
      if (text.length() + next.length() + (left == 1 ? 0 : MORE_WIDTH) > room) {
        return text.append("… ").append(left).append(" more").toString();
      }
      text.append(next).append("  ");
      left--;
    }
    return text.toString();
  }

  private static Part section(
      SurfaceShown.Under under, int number, Section section, long cellPm, boolean whole) {
    List<SummaryText.Line> head = new ArrayList<>();
    head.add(
        new SummaryText.Line(
            "section",
            number
                + ", "
                + under.offset()
                + ", "
                + SurfaceWords.line(section.line())
                + ": "
                + fixed(section.line().lengthPm() / 1e9, 4)
                + " mm long"));
    if (!section.complete()) {
      head.add(new SummaryText.Line("left out", "the rest of the section: too many points"));
    }
    List<Stretch> stretches = stretches(section, SHORTEST_LEVEL_CELLS * cellPm);
    int digits = FEWEST_DIGITS;
    for (Stretch stretch : stretches) {
      if (stretch.parts == 1 && stretch.from.heightPm().isPresent()) {
        digits = Math.max(digits, digits(stretch.from.heightPm().getAsLong()));
      }
    }
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("from mm", "to mm", "height µm", "to µm", "step µm", ""));
    int shown = whole ? stretches.size() : Math.min(MOST_ROWS, stretches.size());
    for (Stretch stretch : stretches.subList(0, shown)) {
      rows.add(stretch.row(digits));
    }
    return new Part(head, aligned(rows), stretches.size() - shown);
  }

  /** A row of a section: a level, a gap, or all of a contour from one wall or level to the next. */
  private static final class Stretch {
    private final Section.Point from;
    private final String step;
    private final String why;
    private Section.Point to;
    private int parts = 1;
    private long lowest = Long.MAX_VALUE;

    Stretch(Section.Point from, Section.Point to, String step, String why) {
      this.from = from;
      this.step = step;
      this.why = why;
      this.to = to;
      lower(from);
      lower(to);
    }

    private void lower(Section.Point point) {
      lowest = Math.min(lowest, point.heightPm().orElse(Long.MAX_VALUE));
    }

    void goOn(Section.Point next) {
      parts++;
      to = next;
      lower(next);
    }

    List<String> row(int digits) {
      boolean slopes = parts > 1 || !from.heightPm().equals(to.heightPm());
      return List.of(
          fixed(from.distancePm() / 1e9, 4),
          fixed(to.distancePm() / 1e9, 4),
          from.heightPm().isPresent() ? fixed(from.heightPm().getAsLong(), digits) : "-",
          slopes && to.heightPm().isPresent() ? fixed(to.heightPm().getAsLong(), digits) : "",
          step,
          parts > 1 ? "contour, down to " + fixed(lowest, digits) : why);
    }
  }

  /**
   * The rows of a section.
   *
   * @param shortest levels shorter than this between slopes are part of a contour
   */
  private static List<Stretch> stretches(Section section, long shortest) {
    List<Stretch> all = new ArrayList<>();
    boolean contour = false;
    int gap = 0;
    for (int k = 1; k < section.points().size(); k++) {
      Section.Point from = section.points().get(k - 1);
      Section.Point to = section.points().get(k);
      double run = to.distancePm() - from.distancePm();
      if (run <= 0) {
        contour = false;
        continue;
      }
      boolean slopes = !from.heightPm().equals(to.heightPm()) || run < shortest;
      if (contour && slopes) {
        all.get(all.size() - 1).goOn(to);
        continue;
      }
      Section.Point before = section.points().get(Math.max(0, k - 2));
      boolean wall =
          k >= 2
              && before.distancePm() == from.distancePm()
              && before.heightPm().isPresent()
              && from.heightPm().isPresent();
      all.add(
          new Stretch(
              from,
              to,
              wall ? signed(from.heightPm().getAsLong() - before.heightPm().getAsLong()) : "",
              from.heightPm().isEmpty() ? section.gaps().get(gap++).why().words() : ""));
      contour = slopes && from.heightPm().isPresent();
    }
    return all;
  }

  /** Columns to the right, the last one to the left; harmless, names of files among them. */
  static List<String> aligned(List<List<String>> cells) {
    List<List<String>> rows =
        cells.stream().map(row -> row.stream().map(Visible::of).toList()).toList();
    int columns = rows.get(0).size();
    int[] widths = new int[columns];
    for (List<String> row : rows) {
      for (int c = 0; c < columns; c++) {
        widths[c] = Math.max(widths[c], DisplayWidth.of(row.get(c)));
      }
    }
    List<String> lines = new ArrayList<>();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int c = 0; c < columns - 1; c++) {
        line.append(" ".repeat(widths[c] - DisplayWidth.of(row.get(c)))).append(row.get(c));
        line.append("  ");
      }
      lines.add(line.append(row.get(columns - 1)).toString().stripTrailing());
    }
    return lines;
  }

  /** How many decimals a height has in micrometres. */
  private static int digits(long pm) {
    BigDecimal um = BigDecimal.valueOf(pm, UM_DIGITS);
    return pm == 0 ? 0 : Math.max(0, um.stripTrailingZeros().scale());
  }

  private static String fixed(long pm, int digits) {
    return BigDecimal.valueOf(pm, UM_DIGITS)
        .setScale(digits, RoundingMode.HALF_EVEN)
        .toPlainString();
  }

  static String fixed(double value, int digits) {
    return new BigDecimal(value).setScale(digits, RoundingMode.HALF_EVEN).toPlainString();
  }

  private static String signed(long pm) {
    return (pm > 0 ? "+" : "") + SurfaceWords.um(pm);
  }
}
