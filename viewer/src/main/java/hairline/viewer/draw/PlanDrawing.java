package hairline.viewer.draw;

import hairline.checks.report.HeightColours;
import hairline.checks.report.Ticks;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.SectionLine;
import hairline.checks.stock.Stands;
import hairline.checks.stock.TerraceArea;
import hairline.viewer.draw.Pen.Anchor;
import hairline.viewer.draw.Pen.Font;
import hairline.viewer.draw.Pen.Stroke;
import hairline.viewer.model.Moves;
import hairline.viewer.model.Operation;
import hairline.viewer.model.PartPicture;
import hairline.viewer.model.Program;
import hairline.viewer.model.Range;
import java.util.Optional;

/**
 * Draws the part from above: heights, terraces, the path of an operation, the line of a section.
 */
public final class PlanDrawing {
  /** Right of the plan: the legend. */
  public static final double LEGEND = 104;

  private static final double LEFT = 46;
  private static final double TOP = 8;
  private static final double BOTTOM = 42;
  private static final int MOST_MOVES = 20_000;
  private static final double FEWEST_MM = 1e-3;

  /** A path that lies free is drawn so strongly that at this many pixels apart it covers all. */
  private static final double FREE_SHARE = 5;

  private static final double FAINTEST = 0.12;

  private final Pen pen;
  private final Palette palette;
  private final Optional<PartPicture> part;
  private final PlanView view;
  private final double x0;
  private final double y0;
  private final double width;
  private final double height;

  /**
   * A drawing of so much room.
   *
   * @param width of the whole
   * @param height of the whole
   */
  public PlanDrawing(
      Pen pen,
      Palette palette,
      Optional<PartPicture> part,
      double[] boundsMm,
      PlanView view,
      double width,
      double height) {
    this.pen = pen;
    this.palette = palette;
    this.part = part;
    this.x0 = LEFT;
    this.y0 = TOP;
    this.width = Math.max(20, width - LEFT - LEGEND);
    this.height = Math.max(20, height - TOP - BOTTOM);
    this.view = view.perMm() > 0 ? view : fitted(boundsMm, this.width, this.height);
  }

  private static PlanView fitted(double[] bounds, double width, double height) {
    double wide = Math.max(FEWEST_MM, bounds[2] - bounds[0]);
    double tall = Math.max(FEWEST_MM, bounds[3] - bounds[1]);
    return new PlanView(
        (bounds[0] + bounds[2]) / 2,
        (bounds[1] + bounds[3]) / 2,
        0.96 * Math.min(width / wide, height / tall));
  }

  /** The view with its scale, also where it was to fit. */
  public PlanView view() {
    return view;
  }

  /** Where an X of the part is drawn. */
  public double x(double mm) {
    return x0 + width / 2 + (mm - view.xMm()) * view.perMm();
  }

  /** Where a Y of the part is drawn. */
  public double y(double mm) {
    return y0 + height / 2 - (mm - view.yMm()) * view.perMm();
  }

  /** The X of the part at an X of the screen. */
  public double xMm(double x) {
    return view.xMm() + (x - x0 - width / 2) / view.perMm();
  }

  /** The Y of the part at a Y of the screen. */
  public double yMm(double y) {
    return view.yMm() - (y - y0 - height / 2) / view.perMm();
  }

  /** Whether a point of the screen lies in the plan. */
  public boolean inPlot(double x, double y) {
    return x >= x0 && x <= x0 + width && y >= y0 && y <= y0 + height;
  }

  /** How large a raster of the plan is, at this many device pixels a logical one. */
  public int[] rasterSize(double scale) {
    return new int[] {
      (int) Math.max(1, Math.round(width * scale)), (int) Math.max(1, Math.round(height * scale))
    };
  }

  /** The left edge and upper edge of the plan in mm, and how much a pixel of the raster is. */
  public double[] rasterPlace(double scale) {
    return new double[] {xMm(x0), yMm(y0), 1 / (view.perMm() * scale)};
  }

  /** Draws the raster that was computed for this view. */
  public void raster(int[] pixels, int columns, int rows) {
    pen.image(pixels, columns, rows, x0, y0, width, height);
  }

  /** Draws an older raster where its place is now, until its successor is computed. */
  public void oldRaster(int[] pixels, int columns, int rows, double[] place) {
    pen.clip(x0, y0, width, height);
    pen.image(
        pixels,
        columns,
        rows,
        x(place[0]),
        y(place[1]),
        columns * place[2] * view.perMm(),
        rows * place[2] * view.perMm());
    pen.unclip();
  }

  /** Draws what stands on the raster. */
  public void draw(Program program, long cursor, Optional<SectionLine> line, String remark) {
    pen.clip(x0, y0, width, height);
    path(program, cursor);
    labels();
    line.ifPresent(this::section);
    tool(program, cursor);
    pen.unclip();
    axes();
    bar();
    legend();
    if (!remark.isEmpty()) {
      double wide = Font.SMALL.width(remark) + 12;
      pen.rectangle(x0 + 6, y0 + 6, wide, 18, palette.band());
      pen.text(remark, x0 + 12, y0 + 19, Font.SMALL, palette.ink(), Anchor.START);
    }
  }

  private void axes() {
    double right = x0 + width;
    double bottom = y0 + height;
    Stroke frame = Stroke.solid(palette.quiet(), 1);
    pen.line(x0 - 0.5, y0, x0 - 0.5, bottom, frame);
    pen.line(x0 - 0.5, bottom + 0.5, right, bottom + 0.5, frame);
    Ticks along = Ticks.of(xMm(right) - xMm(x0), (int) Math.max(2, width / 64));
    for (long k = along.first(xMm(x0)); along.value(k) <= xMm(right); k++) {
      double at = x(along.value(k));
      pen.line(at, bottom, at, bottom + 4, frame);
      if (at < right - 12) {
        pen.text(along.text(k), at, bottom + 16, Font.SMALL, palette.quiet(), Anchor.MIDDLE);
      }
    }
    pen.text("X mm", right + 6, bottom + 16, Font.SMALL, palette.quiet(), Anchor.START);
    Ticks up = Ticks.of(yMm(y0) - yMm(bottom), (int) Math.max(2, height / 40));
    for (long k = up.first(yMm(bottom)); up.value(k) <= yMm(y0); k++) {
      double at = y(up.value(k));
      pen.line(x0 - 4, at, x0, at, frame);
      if (at > y0 + 16) {
        pen.text(up.text(k), x0 - 7, at + 4, Font.SMALL, palette.quiet(), Anchor.END);
      }
    }
    pen.text("Y mm", x0 - 7, y0 + 8, Font.SMALL, palette.quiet(), Anchor.END);
  }

  private void bar() {
    double bottom = y0 + height;
    double spanMm = width / view.perMm();
    boolean small = spanMm < 0.5;
    Ticks length = Ticks.of(small ? spanMm * 1000 : spanMm, 5);
    double pixels = length.value(1) * view.perMm() / (small ? 1000 : 1);
    double at = bottom + 30;
    Stroke bar = Stroke.solid(palette.ink(), 2);
    pen.line(x0, at, x0 + pixels, at, bar);
    pen.line(x0, at - 4, x0, at + 4, Stroke.solid(palette.ink(), 1));
    pen.line(x0 + pixels, at - 4, x0 + pixels, at + 4, Stroke.solid(palette.ink(), 1));
    pen.text(
        length.text(1) + (small ? " µm" : " mm"),
        x0 + pixels + 8,
        at + 4,
        Font.LABEL,
        palette.ink(),
        Anchor.START);
  }

  private void legend() {
    double at = y0 + 10;
    double left = x0 + width + 10;
    pen.text("height µm", left, at, Font.STRONG, palette.ink(), Anchor.START);
    at += 8;
    if (part.isEmpty()) {
      return;
    }
    HeightColours colours = part.get().colours();
    long[] named = colours.named();
    double row = Math.max(12, Math.min(18, (height - 60) / Math.max(1, named.length)));
    for (int k = named.length - 1; k >= 0; k--) {
      pen.rectangle(left, at, 20, row, 0xFF000000 | colours.colour(named[k]));
      pen.text(
          Texts.stored(named[k], 6),
          left + 27,
          at + row / 2 + 4,
          Font.LABEL,
          palette.ink(),
          Anchor.START);
      at += row;
    }
    pen.line(left - 0.5, y0 + 18, left - 0.5, at, Stroke.solid(palette.quiet(), 1));
    at += 12;
    if (named.length > 2) {
      for (String word : new String[] {"colours step", "evenly from", "height to height"}) {
        pen.text(word, left, at, Font.SMALL, palette.quiet(), Anchor.START);
        at += 13;
      }
    }
    if (part.get().raster().width() > 0 && anyOther()) {
      pen.rectangle(left, at - 4, 12, 10, 0xFF000000 | HeightColours.colour(Stands.TOP_UNKNOWN));
      pen.text("top not known", left + 18, at + 5, Font.SMALL, palette.quiet(), Anchor.START);
    }
  }

  private boolean anyOther() {
    return part.isPresent() && part.get().surface().stock().isEmpty();
  }

  private void labels() {
    if (part.isEmpty()) {
      return;
    }
    for (TerraceArea area : part.get().terraces().areas()) {
      Optional<double[]> spot = part.get().spot(area.id());
      if (spot.isEmpty()) {
        continue;
      }
      String text = Texts.um(area.heightPm());
      double side = spot.get()[2] / 1e9 * view.perMm();
      double half = Font.LABEL.width(text) / 2 + 4;
      if (side >= 16 && x(area.xMaxPm() / 1e9) - x(area.xMinPm() / 1e9) >= 2 * half) {
        double x =
            Math.max(
                x(area.xMinPm() / 1e9) + half,
                Math.min(x(area.xMaxPm() / 1e9) - half, x(spot.get()[0] / 1e9)));
        double y = y(spot.get()[1] / 1e9);
        int ground = part.get().colours().colour(area.heightPm());
        int ink = luminance(ground) > 0.22 ? 0xFF101215 : 0xFFFFFFFF;
        pen.text(text, x, y + 4, Font.LABEL, ink, Anchor.MIDDLE);
      }
    }
  }

  /** Relative luminance as WCAG 2 defines it, 0 to 1. */
  static double luminance(int rgb) {
    double sum = 0;
    double[] weights = {0.2126, 0.7152, 0.0722};
    for (int k = 0; k < 3; k++) {
      double c = ((rgb >> (16 - 8 * k)) & 0xFF) / 255.0;
      sum += weights[k] * (c <= 0.03928 ? c / 12.92 : StrictMath.pow((c + 0.055) / 1.055, 2.4));
    }
    return sum;
  }

  // The path.

  private void path(Program program, long cursor) {
    Moves moves = program.moves();
    Optional<Operation> operation = program.operationOf(cursor);
    if (operation.isEmpty() || cursor < 0) {
      return;
    }
    Range range = program.movesOf(operation.get());
    long from = Math.max(Math.max(1, range.low()), cursor - MOST_MOVES);
    long to = Math.min(range.high(), cursor + MOST_MOVES);
    Run run = new Run(1 / Math.max(1, crowding(moves, from, to)));
    for (long i = from; i < to; i++) {
      long px = moves.x(i - 1);
      long py = moves.y(i - 1);
      long nx = moves.x(i);
      long ny = moves.y(i);
      if (px == Moves.UNKNOWN
          || py == Moves.UNKNOWN
          || nx == Moves.UNKNOWN
          || ny == Moves.UNKNOWN) {
        run.end();
        continue;
      }
      run.style(moves.kind(i) == Moves.Kind.RAPID ? 0 : i <= cursor ? 2 : 1);
      run.begin(px / 1e9, py / 1e9);
      Optional<Moves.Circle> circle = moves.circle(i);
      if (circle.isPresent()) {
        run.arc(px / 1e9, py / 1e9, circle.get(), nx / 1e9, ny / 1e9);
      } else {
        run.to(nx / 1e9, ny / 1e9);
      }
    }
    run.end();
  }

  /**
   * How many times over the path would cover the stretch of the plan that it runs in, as it is
   * drawn where it is free: from 1 on it would hide the heights below.
   */
  private double crowding(Moves moves, long from, long to) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double pixels = 0;
    for (long i = from; i < to; i++) {
      if (moves.kind(i) == Moves.Kind.RAPID
          || moves.x(i) == Moves.UNKNOWN
          || moves.y(i) == Moves.UNKNOWN) {
        continue;
      }
      double x = x(moves.x(i) / 1e9);
      double y = y(moves.y(i) / 1e9);
      left = Math.min(left, x);
      right = Math.max(right, x);
      low = Math.min(low, y);
      high = Math.max(high, y);
      pixels += (moves.pathMm(i) - moves.pathMm(i - 1)) * view.perMm();
    }
    return right > left ? pixels * FREE_SHARE / ((right - left + 8) * (high - low + 8)) : 1;
  }

  /** A run of moves in one style. */
  private final class Run {
    /** How strongly it is drawn, 0 to 1. */
    private final double strength;

    private final double[] xs = new double[4096];
    private final double[] ys = new double[4096];
    private int points;
    private int style = -1;

    Run(double strength) {
      this.strength = Math.max(FAINTEST, strength);
    }

    private int faded(int argb) {
      return (int) Math.round((argb >>> 24) * strength) << 24 | (argb & 0xFFFFFF);
    }

    void style(int next) {
      if (next != style) {
        end();
        style = next;
      }
    }

    void begin(double xMm, double yMm) {
      if (points == 0) {
        to(xMm, yMm);
      }
    }

    void to(double xMm, double yMm) {
      xs[points] = x(xMm);
      ys[points] = y(yMm);
      points++;
      if (points == xs.length) {
        double lastX = xs[points - 1];
        double lastY = ys[points - 1];
        end();
        xs[0] = lastX;
        ys[0] = lastY;
        points = 1;
      }
    }

    void arc(double fromX, double fromY, Moves.Circle circle, double toX, double toY) {
      double start = StrictMath.atan2(fromY - circle.yMm(), fromX - circle.xMm());
      double r0 = StrictMath.hypot(fromX - circle.xMm(), fromY - circle.yMm());
      double r1 = StrictMath.hypot(toX - circle.xMm(), toY - circle.yMm());
      int pieces =
          (int)
              Math.max(
                  2,
                  Math.min(
                      180,
                      Math.abs(circle.sweepRad()) * Math.sqrt(Math.max(r0, r1) * view.perMm())));
      for (int k = 1; k < pieces; k++) {
        double share = k / (double) pieces;
        double angle = start + share * circle.sweepRad();
        double r = r0 + share * (r1 - r0);
        to(circle.xMm() + r * StrictMath.cos(angle), circle.yMm() + r * StrictMath.sin(angle));
      }
      to(toX, toY);
    }

    void end() {
      if (points > 1) {
        // A pale line on a dark one stands out from every colour of heights.
        if (part.isEmpty()) {
          pen.polyline(
              xs,
              ys,
              points,
              style == 0
                  ? Stroke.dashed(palette.rapid(), 1, 3)
                  : Stroke.solid(faded(style == 2 ? palette.feed() : palette.quiet()), 1.2));
        } else if (style == 2) {
          pen.polyline(xs, ys, points, Stroke.solid(faded(0x99FFFFFF), 2.4));
          pen.polyline(xs, ys, points, Stroke.solid(faded(0xE6101215), 1));
        } else if (style == 1) {
          pen.polyline(xs, ys, points, Stroke.solid(faded(0x66101215), 0.8));
        } else {
          pen.polyline(xs, ys, points, Stroke.dashed(0x99FFFFFF, 1, 3));
        }
      }
      points = 0;
    }
  }

  private void tool(Program program, long cursor) {
    Moves moves = program.moves();
    if (cursor < 0
        || cursor >= moves.count()
        || moves.x(cursor) == Moves.UNKNOWN
        || moves.y(cursor) == Moves.UNKNOWN) {
      return;
    }
    double x = x(moves.x(cursor) / 1e9);
    double y = y(moves.y(cursor) / 1e9);
    double radius =
        program
            .operationOf(cursor)
            .flatMap(Operation::tool)
            .flatMap(
                number ->
                    program
                        .setup()
                        .flatMap(
                            setup ->
                                setup.tools().stream()
                                    .filter(tool -> tool.number() == number)
                                    .findFirst()))
            .flatMap(tool -> tool.get(ToolKeys.DIAMETER))
            .map(diameter -> diameter.mm() / 2)
            .orElse(0.0);
    int corners = 48;
    double[] xs = new double[corners + 1];
    double[] ys = new double[corners + 1];
    double r = Math.max(4, radius * view.perMm());
    for (int k = 0; k <= corners; k++) {
      double angle = 2 * StrictMath.PI * k / corners;
      xs[k] = x + r * StrictMath.cos(angle);
      ys[k] = y + r * StrictMath.sin(angle);
    }
    pen.polyline(xs, ys, corners + 1, Stroke.solid(0xB3FFFFFF, 3.4));
    pen.polyline(xs, ys, corners + 1, Stroke.solid(palette.cursor(), 1.8));
    pen.rectangle(x - 2, y - 2, 4, 4, palette.cursor());
  }

  private void section(SectionLine line) {
    double ax = x(line.x0Pm() / 1e9);
    double ay = y(line.y0Pm() / 1e9);
    double bx = x(line.x1Pm() / 1e9);
    double by = y(line.y1Pm() / 1e9);
    pen.line(ax, ay, bx, by, Stroke.solid(0xCCFFFFFF, 4));
    pen.line(ax, ay, bx, by, Stroke.dashed(0xFF101215, 1.6, 6));
    end("A", ax, ay, ax - bx, ay - by);
    end("B", bx, by, bx - ax, by - ay);
  }

  private void end(String name, double x, double y, double outX, double outY) {
    double length = Math.max(1e-9, StrictMath.hypot(outX, outY));
    double cx = Math.max(x0 + 8, Math.min(x0 + width - 8, x + outX / length * 10));
    double cy = Math.max(y0 + 8, Math.min(y0 + height - 8, y + outY / length * 10));
    pen.rectangle(cx - 8, cy - 8, 16, 16, 0xFF101215);
    pen.text(name, cx, cy + 4.5, Font.STRONG, 0xFFFFFFFF, Anchor.MIDDLE);
  }
}
