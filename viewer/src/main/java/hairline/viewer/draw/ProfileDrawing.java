package hairline.viewer.draw;

import hairline.checks.finding.Quantities;
import hairline.checks.report.Ticks;
import hairline.checks.stock.Section;
import hairline.viewer.draw.Pen.Anchor;
import hairline.viewer.draw.Pen.Font;
import hairline.viewer.draw.Pen.Stroke;
import hairline.viewer.model.MeasuredTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Draws a section as a profile with its step heights, and a measured trace over it. */
public final class ProfileDrawing {
  private static final double LEFT = 66;
  private static final double RIGHT = 14;
  private static final double BOTTOM = 24;
  private static final double HEAD = 36;
  private static final double STEPS = 34;
  private static final double MM = 1e9;
  private static final double UM = 1e6;
  private static final double SAME_UM = 1e-4;

  private final Pen pen;
  private final Palette palette;
  private final Section section;
  private final Optional<MeasuredTrace.Levelled> measured;
  private final ProfileView view;
  private final double x0;
  private final double x1;
  private final double top;
  private final double bottom;

  /**
   * A drawing of so much room.
   *
   * @param width of the whole
   * @param height of the whole
   */
  public ProfileDrawing(
      Pen pen,
      Palette palette,
      Section section,
      Optional<MeasuredTrace.Levelled> measured,
      ProfileView view,
      double width,
      double height) {
    this.pen = pen;
    this.palette = palette;
    this.section = section;
    this.measured = measured;
    this.x0 = LEFT;
    this.x1 = Math.max(LEFT + 20, width - RIGHT);
    this.top = HEAD + STEPS;
    this.bottom = Math.max(top + 20, height - BOTTOM);
    this.view = filled(view);
  }

  private ProfileView filled(ProfileView asked) {
    double from = asked.fromMm();
    double to = asked.toMm();
    if (!(to > from)) {
      from = 0;
      to = section.line().lengthPm() / MM;
    }
    double low = asked.lowUm();
    double high = asked.highUm();
    if (!(high > low)) {
      double[] range = rangeUm(section);
      double margin = Math.max(0.5, (range[1] - range[0]) * 0.12);
      low = range[0] - margin;
      high = range[1] + margin;
    }
    return new ProfileView(from, to, low, high);
  }

  /** Lowest and highest height of a section in µm; 0 and 0 where there is none. */
  public static double[] rangeUm(Section section) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Section.Point point : section.points()) {
      if (point.heightPm().isPresent()) {
        low = Math.min(low, point.heightPm().getAsLong() / UM);
        high = Math.max(high, point.heightPm().getAsLong() / UM);
      }
    }
    return low > high ? new double[] {0, 0} : new double[] {low, high};
  }

  /** The view with its bounds, also where it was to fit. */
  public ProfileView view() {
    return view;
  }

  /** How many times heights are drawn larger than distances. */
  public double exaggeration() {
    double perMm = (x1 - x0) / (view.toMm() - view.fromMm());
    double perMmUp = (bottom - top) / (view.highUm() - view.lowUm()) * 1000;
    return perMmUp / perMm;
  }

  /** The view about the same middle with heights drawn so many times larger than distances. */
  public ProfileView exaggerated(double times) {
    double middle = (view.lowUm() + view.highUm()) / 2;
    double half = (view.highUm() - view.lowUm()) / 2 * exaggeration() / times;
    return new ProfileView(view.fromMm(), view.toMm(), middle - half, middle + half);
  }

  private double x(double mm) {
    return x0 + (mm - view.fromMm()) / (view.toMm() - view.fromMm()) * (x1 - x0);
  }

  private double y(double um) {
    return bottom - (um - view.lowUm()) / (view.highUm() - view.lowUm()) * (bottom - top);
  }

  /** The distance at an X of the screen. */
  public double mm(double x) {
    return view.fromMm() + (x - x0) / (x1 - x0) * (view.toMm() - view.fromMm());
  }

  /** The height at a Y of the screen. */
  public double um(double y) {
    return view.lowUm() + (bottom - y) / (bottom - top) * (view.highUm() - view.lowUm());
  }

  /** Whether a point of the screen lies in the plot. */
  public boolean inPlot(double x, double y) {
    return x >= x0 && x <= x1 && y >= top && y <= bottom;
  }

  /** Draws it. */
  public void draw(String name) {
    head(name);
    axes();
    pen.clip(x0, top, x1 - x0, bottom - top);
    profile();
    measured.ifPresent(this::measured);
    pen.unclip();
    steps();
  }

  private void head(String name) {
    pen.text(
        "A–B  "
            + Ticks.minus(
                "X "
                    + Texts.decimal(section.line().x0Pm() / MM, 3)
                    + " Y "
                    + Texts.decimal(section.line().y0Pm() / MM, 3)
                    + " to X "
                    + Texts.decimal(section.line().x1Pm() / MM, 3)
                    + " Y "
                    + Texts.decimal(section.line().y1Pm() / MM, 3)
                    + " mm"),
        10,
        14,
        Font.STRONG,
        palette.ink(),
        Anchor.START);
    pen.text(
        "heights " + Quantities.significant(exaggeration(), 3) + " × distances",
        x1,
        14,
        Font.STRONG,
        palette.ink(),
        Anchor.END);
    String remark =
        measured
            .map(
                m ->
                    name
                        + ", levelled: tilt "
                        + Ticks.minus(Quantities.significant(m.tiltUmPerMm(), 3))
                        + " µm/mm taken off; remains "
                        + Quantities.significant(m.rmsUm(), 3)
                        + " µm rms")
            .orElse(section.complete() ? "" : "the rest is left out: too many points");
    if (measured.isPresent()) {
      pen.line(10, 26, 30, 26, Stroke.solid(palette.measured(), 1.4));
      pen.text(remark, 36, 30, Font.SMALL, palette.ink(), Anchor.START);
    } else {
      pen.text(remark, 10, 30, Font.SMALL, palette.quiet(), Anchor.START);
    }
  }

  private void axes() {
    Stroke frame = Stroke.solid(palette.quiet(), 1);
    Stroke grid = Stroke.solid(palette.grid(), 1);
    AxisLabels up =
        AxisLabels.between(
            view.lowUm() * UM, view.highUm() * UM, (int) Math.max(2, (bottom - top) / 32));
    boolean first = true;
    for (int k = up.ticks().size() - 1; k >= 0; k--) {
      AxisLabels.Tick tick = up.ticks().get(k);
      double at = Math.floor(y(tick.pm() / UM)) + 0.5;
      pen.line(x0, at, x1, at, grid);
      if (at > top + 12 || up.from().isEmpty()) {
        pen.text(
            tick.text() + (first ? " " + up.unit() : ""),
            x0 - 6,
            at + 4,
            Font.LABEL,
            palette.quiet(),
            Anchor.END);
        first = false;
      }
    }
    if (!up.from().isEmpty()) {
      pen.text(up.from(), x0 - 6, top + 4, Font.STRONG, palette.ink(), Anchor.END);
    }
    double span = view.toMm() - view.fromMm();
    boolean small = span < 0.2;
    double unit = small ? 1000 : 1;
    Ticks along = Ticks.of(span * unit, (int) Math.max(2, (x1 - x0) / 70));
    for (long k = along.first(view.fromMm() * unit); along.value(k) <= view.toMm() * unit; k++) {
      double at = x(along.value(k) / unit);
      pen.line(at, bottom, at, bottom + 4, frame);
      if (at < x1 - 34) {
        pen.text(along.text(k), at, bottom + 17, Font.LABEL, palette.quiet(), Anchor.MIDDLE);
      }
    }
    pen.text(small ? "µm" : "mm", x1, bottom + 17, Font.LABEL, palette.quiet(), Anchor.END);
    pen.line(x0 - 0.5, top, x0 - 0.5, bottom, frame);
    pen.line(x0 - 0.5, bottom + 0.5, x1, bottom + 0.5, frame);
  }

  private void profile() {
    double[] xs = new double[section.points().size() + 2];
    double[] ys = new double[section.points().size() + 2];
    int n = 0;
    for (Section.Point point : section.points()) {
      if (point.heightPm().isEmpty()) {
        filled(xs, ys, n);
        n = 0;
        continue;
      }
      xs[n] = limited(x(point.distancePm() / MM));
      ys[n] = limited(y(point.heightPm().getAsLong() / UM));
      n++;
    }
    filled(xs, ys, n);
    for (Section.Gap gap : section.gaps()) {
      double middle = x((gap.fromPm() + gap.toPm()) / 2 / MM);
      double wide = x(gap.toPm() / MM) - x(gap.fromPm() / MM);
      if (wide > Font.SMALL.width(gap.why().words())) {
        pen.text(gap.why().words(), middle, bottom - 6, Font.SMALL, palette.quiet(), Anchor.MIDDLE);
      }
    }
  }

  private static double limited(double at) {
    return Math.max(-30_000, Math.min(30_000, at));
  }

  private void filled(double[] xs, double[] ys, int n) {
    if (n < 2) {
      return;
    }
    double[] px = java.util.Arrays.copyOf(xs, n + 2);
    double[] py = java.util.Arrays.copyOf(ys, n + 2);
    px[n] = xs[n - 1];
    py[n] = bottom + 5;
    px[n + 1] = xs[0];
    py[n + 1] = bottom + 5;
    pen.polygon(px, py, n + 2, (palette.feed() & 0xFFFFFF) | 0x22000000);
    pen.polyline(xs, ys, n, Stroke.solid(palette.feed(), 1.8));
  }

  private void measured(MeasuredTrace.Levelled trace) {
    double[] xs = new double[trace.points().size()];
    double[] ys = new double[trace.points().size()];
    int n = 0;
    for (MeasuredTrace.Point point : trace.points()) {
      xs[n] = limited(x(point.distanceMm()));
      ys[n] = limited(y(point.heightUm()));
      n++;
    }
    pen.polyline(xs, ys, n, Stroke.solid(palette.measured(), 1.2));
  }

  // Steps.

  /**
   * A wall of a section.
   *
   * @param mm where it stands
   * @param fromUm height before it
   * @param toUm height behind it
   */
  public record Step(double mm, double fromUm, double toUm, long heightPm) {}

  /** The walls of a section in their order. */
  public static List<Step> steps(Section section) {
    List<Step> steps = new ArrayList<>();
    List<Section.Point> points = section.points();
    for (int k = 1; k < points.size(); k++) {
      Section.Point a = points.get(k - 1);
      Section.Point b = points.get(k);
      if (a.heightPm().isPresent()
          && b.heightPm().isPresent()
          && (b.distancePm() - a.distancePm()) < SAME_UM * UM
          && a.heightPm().getAsLong() != b.heightPm().getAsLong()) {
        steps.add(
            new Step(
                a.distancePm() / MM,
                a.heightPm().getAsLong() / UM,
                b.heightPm().getAsLong() / UM,
                Math.abs(b.heightPm().getAsLong() - a.heightPm().getAsLong())));
      }
    }
    return steps;
  }

  /** Step heights stand above their walls, in two rows; those without room are left out. */
  private void steps() {
    double[] free = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    int left = 0;
    for (Step step : steps(section)) {
      double at = x(step.mm());
      if (at < x0 || at > x1) {
        continue;
      }
      String text = Quantities.um(step.heightPm());
      double half = Font.STRONG.width(text) / 2 + 4;
      int row = at - half >= free[0] ? 0 : at - half >= free[1] ? 1 : -1;
      if (row < 0 || at + half > x1 + RIGHT) {
        left++;
        continue;
      }
      double base = HEAD + 12 + row * 15;
      pen.line(at, base + 4, at, top, Stroke.solid(palette.grid(), 1));
      double yHigh = Math.max(top, Math.min(bottom, y(Math.max(step.fromUm(), step.toUm()))));
      double yLow = Math.max(top, Math.min(bottom, y(Math.min(step.fromUm(), step.toUm()))));
      pen.line(at, top, at, yHigh, Stroke.dashed(palette.quiet(), 1, 2));
      pen.line(at, yHigh, at, yLow, Stroke.solid(palette.ink(), 2));
      pen.text(text, at, base, Font.STRONG, palette.ink(), Anchor.MIDDLE);
      free[row] = at + half;
    }
    if (left > 0) {
      pen.text(
          left + " more " + (left == 1 ? "step" : "steps") + ": zoom in",
          x1,
          30,
          Font.SMALL,
          palette.quiet(),
          Anchor.END);
    }
  }
}
