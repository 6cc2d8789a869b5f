package hairline.checks.report;

import hairline.checks.finding.Level;
import hairline.checks.report.BriefPage.Fact;
import hairline.checks.report.BriefPage.Facts;
import hairline.checks.report.BriefPage.Figure;
import hairline.checks.report.BriefPage.Found;
import hairline.checks.report.BriefPage.Items;
import hairline.checks.report.BriefPage.Part;
import hairline.checks.report.BriefPage.Section;
import hairline.checks.report.BriefPage.Table;
import hairline.checks.report.BriefPage.Ticks;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A brief as text; drawings are left out. */
public final class BriefText implements ReportWriter {
  private static final String BETWEEN = "  ";

  private final Writer out;
  private final Gutter gutter;
  private final ReportOptions options;

  /** Writes UTF-8. */
  public BriefText(OutputStream out, ReportOptions options) {
    this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    this.gutter = new Gutter(this.out, options.width(), options.colour());
    this.options = options;
  }

  @Override
  public void begin() {}

  @Override
  public void program(CheckedProgram program) throws IOException {
    if (program.trouble().isPresent()) {
      gutter.labelled("unchecked", Paint.ERROR, program.trouble().get().sentence());
      gutter.labelled("cure", Paint.QUIET, program.trouble().get().cure());
      return;
    }
    BriefPage page = BriefBuilder.of(program, options);
    gutter.labelled("brief", Paint.STRONG, page.title(), true);
    for (Section section : page.sections()) {
      if (section.parts().stream().allMatch(part -> part instanceof Figure)) {
        continue;
      }
      gutter.line("");
      gutter.labelled("", Paint.QUIET, section.heading(), true);
      for (Part part : section.parts()) {
        part(part);
      }
    }
  }

  private void part(Part part) throws IOException {
    if (part instanceof Facts facts) {
      for (Fact fact : facts.facts()) {
        gutter.labelled(fact.label(), Paint.QUIET, fact.text());
      }
    } else if (part instanceof Items items) {
      for (String item : items.items()) {
        gutter.labelled("·", Paint.QUIET, item);
      }
    } else if (part instanceof Ticks ticks) {
      for (String item : ticks.items()) {
        gutter.labelled("[ ]", Paint.STRONG, item);
      }
    } else if (part instanceof Found found) {
      Paint paint = Paint.of(Level.valueOf(found.level().toUpperCase(Locale.ROOT)));
      gutter.labelled(found.level(), paint, found.message(), true);
      for (Fact fact : found.facts()) {
        gutter.labelled("", Paint.QUIET, fact.label() + ": " + fact.text());
      }
    } else if (part instanceof Table table) {
      table(table);
    }
  }

  /** Columns as wide as they need; what has no room at the end goes on below. */
  private void table(Table table) throws IOException {
    gutter.labelled("", Paint.QUIET, table.caption());
    List<List<String>> rows = new ArrayList<>();
    rows.add(table.head());
    rows.addAll(table.rows());
    int columns = table.head().size();
    int[] widths = new int[columns];
    for (List<String> row : rows) {
      for (int k = 0; k < columns; k++) {
        widths[k] = Math.max(widths[k], DisplayWidth.of(Visible.of(row.get(k))));
      }
    }
    int room = gutter.columns();
    // The widest column gives way until all fit.
    while (sum(widths) > room && widest(widths) > 8) {
      int at = 0;
      for (int k = 1; k < columns; k++) {
        if (widths[k] >= widths[at]) {
          at = k;
        }
      }
      widths[at]--;
    }
    boolean head = true;
    for (List<String> row : rows) {
      List<List<String>> cells = new ArrayList<>();
      int lines = 1;
      for (int k = 0; k < columns; k++) {
        List<String> cell = Wrap.at(widths[k], Visible.of(row.get(k)));
        cells.add(cell);
        lines = Math.max(lines, cell.size());
      }
      for (int line = 0; line < lines; line++) {
        StringBuilder text = new StringBuilder();
        for (int k = 0; k < columns; k++) {
          String cell = line < cells.get(k).size() ? cells.get(k).get(line) : "";
          text.append(cell);
          if (k < columns - 1) {
            text.append(" ".repeat(Math.max(0, widths[k] - DisplayWidth.of(cell)))).append(BETWEEN);
          }
        }
        gutter.label("", Paint.QUIET);
        String whole = text.toString().stripTrailing();
        gutter.line(head ? gutter.paint(Paint.QUIET, whole) : whole);
      }
      head = false;
    }
  }

  private static int sum(int[] widths) {
    int sum = BETWEEN.length() * (widths.length - 1);
    for (int width : widths) {
      sum += width;
    }
    return sum;
  }

  private static int widest(int[] widths) {
    int widest = 0;
    for (int width : widths) {
      widest = Math.max(widest, width);
    }
    return widest;
  }

  @Override
  public void end(Verdict verdict) throws IOException {
    gutter.line("");
    gutter.rule();
    gutter.labelled("verdict", Paint.STRONG, Words.found(verdict), true);
    for (String caution : Words.CAUTIONS) {
      gutter.labelled("caution", Paint.QUIET, caution);
    }
    out.flush();
  }
}
