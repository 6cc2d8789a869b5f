package hairline.checks.report;

import hairline.checks.finding.Quantities;
import hairline.checks.stock.Section;
import hairline.checks.stock.SectionLine;
import hairline.checks.stock.Stands;
import hairline.checks.stock.SurfacePicture;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.stock.TerraceArea;
import hairline.checks.stock.Terraces;
import java.util.ArrayList;
import java.util.Base64;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Draws one surface: from above with a legend, its sections below. Lengths are pixels, Y down, but
 * where their names say else.
 */
final class SurfaceDrawing {
  static final double MARGIN = 28;

  private static final double LEFT = 76;
  private static final double PM_PER_MM = 1e9;
  private static final int MOST_SECTIONS = 12;
  private static final int MOST_IDS = 6;
  private static final String X_AXIS = "X mm";
  private static final double NEXT_TO_LEGEND = 8;
  private static final int MOST_LETTERS = 80;
  private static final double LETTER = 7.2;

  private final SvgText out = new SvgText();
  private final Canvas canvas;
  private final SurfaceShown surface;
  private final SurfaceShown.Under under;
  private double y;
  private double rowTop;

  // The plan.
  private double planX = LEFT;
  private double planTop;
  private double planWidth;
  private double planHeight;
  private double perMm = 1;
  private double leftMm;
  private double topMm;

  /** Draws from this Y down. */
  SurfaceDrawing(
      Canvas canvas,
      String program,
      SurfaceShown surface,
      SurfaceShown.Under under,
      String sheet,
      double top) {
    this.canvas = canvas;
    this.surface = surface;
    this.under = under;
    this.y = top + canvas.above();
    out.raw("<g>\n<title>").text(program + ", " + under.offset()).raw("</title>\n");
    if (canvas.headed()) {
      head(program, sheet);
    }
    Optional<SurfacePicture> picture = under.picture().filter(p -> p.width() > 0);
    if (!under.known()) {
      out.label(
          MARGIN,
          y + 14,
          "head",
          "the surface is not known: a move of unknown course may have cut");
      y += 24;
    } else if (picture.isPresent()) {
      plan(picture.get(), under.terraces().orElseThrow());
    }
    if (under.known()) {
      sections();
    }
    out.raw("</g>\n");
  }

  String markup() {
    return out.toString();
  }

  /** Where the drawing ends. */
  double bottom() {
    return y;
  }

  private void head(String program, String sheet) {
    out.label(MARGIN, y + 16, "name", shortened(program) + ", " + under.offset());
    out.label(MARGIN, y + 36, "quiet", "stock: " + SurfaceWords.stock(under));
    out.label(MARGIN, y + 52, "quiet", "sheet: " + sheet + "; " + SurfaceWords.cells(surface));
    y += 66;
  }

  /** The end of a name that is too long, which tells more than its beginning. */
  static String shortened(String name) {
    return shortened(name, MOST_LETTERS);
  }

  /** The end of a name of more letters. */
  static String shortened(String name, int most) {
    int[] letters = name.codePoints().toArray();
    return letters.length <= most ? name : "…" + new String(letters, letters.length - most, most);
  }

  // From above.

  private double x(double xPm) {
    return planX + (xPm / PM_PER_MM - leftMm) * perMm;
  }

  private double down(double yPm) {
    return planTop + (topMm - yPm / PM_PER_MM) * perMm;
  }

  private void plan(SurfacePicture picture, Terraces terraces) {
    double widthMm = picture.widthPm() / PM_PER_MM;
    double heightMm = picture.heightPm() / PM_PER_MM;
    perMm = Math.min(canvas.planWidth() / widthMm, canvas.planHeight() / heightMm);
    planTop = y + 16;
    planWidth = widthMm * perMm;
    planHeight = heightMm * perMm;
    leftMm = picture.x0Pm() / PM_PER_MM;
    topMm = picture.y0Pm() / PM_PER_MM + heightMm;
    HeightColours colours = HeightColours.of(picture, terraces);
    byte[] png =
        PngImage.of(picture.width(), picture.height(), colours.pixels(picture), colours.palette());
    out.raw("<image")
        .attribute("x", planX)
        .attribute("y", planTop)
        .attribute("width", planWidth)
        .attribute("height", planHeight)
        .raw(" preserveAspectRatio=\"none\" style=\"image-rendering:pixelated\"")
        .raw(" href=\"data:image/png;base64,")
        .raw(Base64.getEncoder().encodeToString(png))
        .raw("\"/>\n<rect class=\"frame\"")
        .attribute("x", planX)
        .attribute("y", planTop)
        .attribute("width", planWidth)
        .attribute("height", planHeight)
        .raw("/>\n");
    axes(widthMm, heightMm);
    lines();
    Labels.put(
        out,
        picture,
        terraces,
        px -> planX + px * planWidth / picture.width(),
        py -> planTop + planHeight - py * planHeight / picture.height());
    double legendEnd = legend(picture, terraces, colours);
    y = Math.max(planTop + planHeight + 46, legendEnd) + 10;
  }

  private void axes(double widthMm, double heightMm) {
    double bottom = planTop + planHeight;
    Ticks along = Ticks.of(widthMm, (int) Math.max(2, planWidth / 55));
    for (long k = along.first(leftMm); along.value(k) <= leftMm + widthMm + 1e-9; k++) {
      double at = x(along.value(k) * PM_PER_MM);
      out.line(at, bottom, at, bottom + 5, "tick");
      out.label(at, bottom + 17, "quiet mid", along.text(k));
    }
    double beside = planX + planWidth + 18;
    if (beside + width(X_AXIS) < canvas.legend() - NEXT_TO_LEGEND) {
      out.label(beside, bottom + 17, "quiet", X_AXIS);
    } else {
      out.label(planX + planWidth, bottom + 34, "quiet end", X_AXIS);
    }
    double lowMm = topMm - heightMm;
    Ticks up = Ticks.of(heightMm, (int) Math.max(2, planHeight / 40));
    for (long k = up.first(lowMm); up.value(k) <= topMm + 1e-9; k++) {
      double at = down(up.value(k) * PM_PER_MM);
      out.line(planX - 5, at, planX, at, "tick");
      out.label(planX - 8, at + 4, "quiet end", up.text(k));
    }
    out.label(planX - 8, planTop - 12, "quiet end", "Y mm");
    Ticks bar = Ticks.of(widthMm, 7);
    double length = bar.value(1) * perMm;
    out.line(planX, bottom + 32, planX + length, bottom + 32, "bar");
    out.label(planX + length + 8, bottom + 36, "", bar.text(1) + " mm");
  }

  private void lines() {
    int number = 0;
    for (Section section : under.sections()) {
      if (++number > MOST_SECTIONS) {
        return;
      }
      SectionLine line = section.line();
      double[] ends = clipped(line);
      if (ends.length == 0) {
        continue;
      }
      out.line(ends[0], ends[1], ends[2], ends[3], "cuthalo");
      out.line(ends[0], ends[1], ends[2], ends[3], "cut");
      double length = Math.max(1e-9, StrictMath.hypot(ends[2] - ends[0], ends[3] - ends[1]));
      double outX = (ends[2] - ends[0]) / length * 10;
      double outY = (ends[3] - ends[1]) / length * 10;
      boolean left = Math.abs(outX) >= Math.abs(outY);
      double lift = left ? -6 : 4;
      double shift = left ? 0 : 9;
      out.label(ends[0] + outX + shift, ends[1] + outY + lift, "on cutname mid", number + "");
      out.label(ends[2] - outX + shift, ends[3] - outY + lift, "on cutname mid", number + "′");
    }
  }

  /** The part of a line that lies in the plan; empty where none does. */
  private double[] clipped(SectionLine line) {
    double x0 = x((double) line.x0Pm());
    double y0 = down((double) line.y0Pm());
    double dx = x((double) line.x1Pm()) - x0;
    double dy = down((double) line.y1Pm()) - y0;
    double from = 0;
    double to = 1;
    double[][] edges = {
      {-dx, x0 - planX},
      {dx, planX + planWidth - x0},
      {-dy, y0 - planTop},
      {dy, planTop + planHeight - y0}
    };
    for (double[] edge : edges) {
      if (edge[0] == 0) {
        if (edge[1] < 0) {
          return new double[0];
        }
      } else if (edge[0] < 0) {
        from = Math.max(from, edge[1] / edge[0]);
      } else {
        to = Math.min(to, edge[1] / edge[0]);
      }
    }
    return from >= to
        ? new double[0]
        : new double[] {x0 + from * dx, y0 + from * dy, x0 + to * dx, y0 + to * dy};
  }

  private double legend(SurfacePicture picture, Terraces terraces, HeightColours colours) {
    double at = planTop + 12;
    out.label(canvas.legend(), at, "head", "height µm");
    out.label(canvas.legend() + 118, at, "head", "terrace");
    at += 10;
    long[] named = colours.named();
    for (int k = named.length - 1; k >= 0; k--) {
      out.swatch(canvas.legend(), at, 26, canvas.legendRow(), colours.colour(named[k]));
      out.label(canvas.legend() + 104, at + 14, "end", Ticks.minus(SurfaceWords.um(named[k])));
      out.label(canvas.legend() + 118, at + 14, "quiet", ids(terraces, named[k]));
      at += canvas.legendRow();
    }
    at += 8;
    Set<Stands> seen = EnumSet.noneOf(Stands.class);
    for (int j = 0; j < picture.height(); j++) {
      for (int i = 0; i < picture.width(); i++) {
        seen.add(picture.stands(i, j));
      }
    }
    seen.remove(Stands.SURFACE);
    for (Stands stands : seen) {
      out.swatch(canvas.legend(), at, 26, canvas.legendRow() - 4, HeightColours.colour(stands));
      out.label(canvas.legend() + 34, at + 12, "", stands.words());
      at += canvas.legendRow();
    }
    List<String> notes = new ArrayList<>();
    notes.add("colours step evenly from height to height");
    notes.add("named here, not in proportion to height");
    if (terraces.otherAreas() > 0) {
      notes.add("slopes, contours and slivers of together");
      notes.add(Quantities.significant(terraces.otherMm2(), 4) + " mm² are no terraces");
    }
    notes.addAll(terraces.left());
    for (String note : notes) {
      at += 14;
      out.label(canvas.legend(), at, "quiet", note);
    }
    return at + 8;
  }

  private static String ids(Terraces terraces, long height) {
    List<String> ids = new ArrayList<>();
    boolean uncut = false;
    for (TerraceArea area : terraces.areas()) {
      if (area.heightPm() == height) {
        uncut |= area.uncut();
        ids.add(Integer.toString(area.id()));
      }
    }
    if (ids.isEmpty()) {
      return "none: end of the scale";
    }
    String shown = String.join(", ", ids.subList(0, Math.min(MOST_IDS, ids.size())));
    return shown
        + (ids.size() > MOST_IDS ? ", … " + (ids.size() - MOST_IDS) + " more" : "")
        + (uncut ? " (uncut)" : "");
  }

  // Sections.

  private void sections() {
    int number = 0;
    for (Section section : under.sections()) {
      if (++number > MOST_SECTIONS) {
        out.label(
            MARGIN,
            y + 12,
            "quiet",
            Words.count(under.sections().size() - MOST_SECTIONS, "more section") + " not drawn");
        y += 22;
        return;
      }
      boolean first = (number - 1) % canvas.sectionsInRow() == 0;
      rowTop = first ? y : rowTop;
      double column = (canvas.width() - MARGIN) / canvas.sectionsInRow();
      double left = (number - 1) % canvas.sectionsInRow() * column;
      SectionDrawing drawing =
          new SectionDrawing(number, section, canvas, left + LEFT, rowTop, column - LEFT - 40);
      out.raw(drawing.markup());
      y = Math.max(first ? 0 : y, drawing.bottom());
    }
  }

  /** About how wide a bold text of labels is. */
  static double width(String text) {
    return DisplayWidth.of(text) * LETTER;
  }
}
