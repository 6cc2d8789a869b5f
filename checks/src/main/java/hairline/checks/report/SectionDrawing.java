package hairline.checks.report;

import hairline.checks.finding.Quantities;
import hairline.checks.stock.Section;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws a section as a profile, with its step heights; how much heights are exaggerated is told.
 */
final class SectionDrawing {
  private static final double LANE = 15;

  /** Room for the scale. */
  private static final double LABELS = 48;

  private static final int LANES = 4;
  private static final double GAP = 6;
  private static final double SAME = 0.2;
  private static final int MOST_STEPS = 200;
  private static final double PM_PER_MM = 1e9;
  private static final double PM_PER_UM = 1e6;

  private final SvgText out = new SvgText();
  private final Section section;
  private final double tall;
  private final double left;
  private final double width;
  private double top;
  private double perPm;
  private double heightPerPm;
  private double highest = Double.NEGATIVE_INFINITY;
  private double lowest = Double.POSITIVE_INFINITY;
  private final double bottom;

  /** A wall: where, from which height to which. */
  private record Step(double x, long from, long to) {}

  SectionDrawing(int number, Section section, Canvas canvas, double left, double y, double width) {
    this.tall = canvas.sectionTall();
    this.section = section;
    this.left = left;
    this.width = width;
    for (Section.Point point : section.points()) {
      if (point.heightPm().isPresent()) {
        highest = Math.max(highest, (double) point.heightPm().getAsLong());
        lowest = Math.min(lowest, (double) point.heightPm().getAsLong());
      }
    }
    boolean any = highest >= lowest;
    perPm = width / section.line().lengthPm();
    // A flat profile is drawn in the middle of a micrometre.
    double range = any ? Math.max(highest - lowest, PM_PER_UM) : PM_PER_UM;
    heightPerPm = tall / range;
    out.raw("<g>\n<title>").text("section " + number).raw("</title>\n");
    out.label(
        left - LABELS,
        y + 14,
        "head",
        "section "
            + number
            + "–"
            + number
            + "′: "
            + Ticks.minus(SurfaceWords.line(section.line())));
    out.label(
        left - LABELS,
        y + 30,
        "quiet",
        any
            ? "heights "
                + Quantities.significant(heightPerPm / perPm, 3)
                + " times exaggerated against distances"
                + (section.complete() ? "" : "; the rest is left out: too many points")
            : "no surface along this line");
    if (!any) {
      bottom = y + 48;
      out.raw("</g>\n");
      return;
    }
    List<Step> steps = steps();
    int lanes = Math.max(1, lanes(steps, y + 44));
    top = y + 48 + lanes * LANE;
    scales();
    profile();
    for (Step step : steps) {
      double from = y((double) Math.max(step.from(), step.to()));
      out.line(step.x(), top - 4, step.x(), from, "step");
    }
    gaps();
    bottom = top + tall + canvas.sectionGap();
    out.raw("</g>\n");
  }

  String markup() {
    return out.toString();
  }

  double bottom() {
    return bottom;
  }

  private double x(double distancePm) {
    return left + distancePm * perPm;
  }

  private double y(double heightPm) {
    return top + (highest - heightPm) * heightPerPm;
  }

  private List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    for (int k = 1; k < section.points().size() && steps.size() < MOST_STEPS; k++) {
      Section.Point from = section.points().get(k - 1);
      Section.Point to = section.points().get(k);
      if (from.distancePm() == to.distancePm()
          && from.heightPm().isPresent()
          && to.heightPm().isPresent()) {
        steps.add(
            new Step(x(to.distancePm()), from.heightPm().getAsLong(), to.heightPm().getAsLong()));
      }
    }
    return steps;
  }

  /** Writes the step heights, each in the first lane where it has room; gives the lanes used. */
  private int lanes(List<Step> steps, double y) {
    double[] taken = new double[LANES];
    int used = 0;
    for (Step step : steps) {
      long height = step.to() - step.from();
      String text = (height > 0 ? "+" : "") + Ticks.minus(SurfaceWords.um(height)) + " µm";
      double half = SurfaceDrawing.width(text) / 2;
      for (int lane = 0; lane < LANES; lane++) {
        if (step.x() - half >= taken[lane]) {
          out.label(step.x(), y + (lane + 0.7) * LANE, "stepname", text);
          taken[lane] = step.x() + half + GAP;
          used = Math.max(used, lane + 1);
          break;
        }
      }
    }
    return used;
  }

  private void scales() {
    Ticks up = Ticks.of((highest - lowest) / PM_PER_UM, (int) Math.max(2, tall / 25));
    for (long k = up.first(lowest / PM_PER_UM);
        highest > lowest && up.value(k) <= highest / PM_PER_UM + 1e-9;
        k++) {
      double at = y(up.value(k) * PM_PER_UM);
      out.line(left, at, left + width, at, "grid");
      out.label(left - 8, at + 4, "quiet end", up.text(k));
    }
    if (highest == lowest) {
      out.label(
          left - 8, y(highest) + 4, "quiet end", Ticks.minus(SurfaceWords.um((long) highest)));
    }
    // Left of the name of a step at the very edge.
    out.label(left - 30, top - 8, "quiet end", "µm");
    double foot = top + tall + 12;
    double lengthMm = section.line().lengthPm() / PM_PER_MM;
    Ticks along = Ticks.of(lengthMm, (int) Math.max(2, width / 55));
    out.line(left, foot, left + width, foot, "tick");
    for (long k = 0; along.value(k) <= lengthMm + 1e-9; k++) {
      double at = x(along.value(k) * PM_PER_MM);
      out.line(at, foot, at, foot + 5, "tick");
      out.label(at, foot + 17, "quiet mid", along.text(k));
    }
    out.label(left + width + 18, foot + 17, "quiet", "mm");
  }

  /** Why there is no surface, where there is room to say it. */
  private void gaps() {
    for (Section.Gap gap : section.gaps()) {
      String why = gap.why().words();
      if ((gap.toPm() - gap.fromPm()) * perPm > SurfaceDrawing.width(why)) {
        out.label(x((gap.fromPm() + gap.toPm()) / 2), top + tall + 4, "quiet mid", why);
      }
    }
  }

  private void profile() {
    SvgText skin = new SvgText();
    SvgText body = new SvgText();
    double foot = top + tall + 12;
    boolean open = false;
    double lastX = 0;
    double lastY = 0;
    int points = section.points().size();
    for (int k = 0; k < points; k++) {
      Section.Point point = section.points().get(k);
      if (point.heightPm().isEmpty()) {
        if (open) {
          body.raw("L").number(lastX).raw(" ").number(foot).raw("Z");
        }
        open = false;
        continue;
      }
      double px = x(point.distancePm());
      double py = y((double) point.heightPm().getAsLong());
      boolean last = k + 1 == points || section.points().get(k + 1).heightPm().isEmpty();
      if (open && !last && Math.abs(px - lastX) < SAME && Math.abs(py - lastY) < SAME) {
        continue;
      }
      if (!open) {
        body.raw("M").number(px).raw(" ").number(foot).raw("L").number(px).raw(" ").number(py);
        skin.raw("M");
      } else {
        body.raw("L").number(px).raw(" ").number(py);
        skin.raw("L");
      }
      skin.number(px).raw(" ").number(py);
      open = true;
      lastX = px;
      lastY = py;
    }
    if (open) {
      body.raw("L").number(lastX).raw(" ").number(foot).raw("Z");
    }
    out.raw("<path class=\"body\" d=\"").raw(body.toString()).raw("\"/>\n");
    out.raw("<path class=\"skin\" d=\"").raw(skin.toString()).raw("\"/>\n");
  }
}
