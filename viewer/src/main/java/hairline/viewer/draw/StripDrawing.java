package hairline.viewer.draw;

import hairline.checks.report.Ticks;
import hairline.viewer.draw.Pen.Anchor;
import hairline.viewer.draw.Pen.Font;
import hairline.viewer.draw.Pen.Stroke;
import hairline.viewer.model.Along;
import hairline.viewer.model.FindingMark;
import hairline.viewer.model.LevelMark;
import hairline.viewer.model.Moves;
import hairline.viewer.model.Program;
import hairline.viewer.model.Range;
import hairline.viewer.model.Trace;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.function.LongToIntFunction;

/**
 * Draws the height strip: heights of the tool tip along the program, its levels with their steps,
 * the findings, and a second trace below. Where more than a few moves fall into one column of
 * pixels, the column shows their smallest and largest values, so that nothing is left out.
 */
public final class StripDrawing {
  /** Left of the plot: the height axis. */
  public static final double LEFT = 64;

  /** Right of the plot: the levels. */
  public static final double RIGHT = 206;

  private static final double TOP = 8;
  private static final double AXIS = 22;
  private static final double FINDINGS = 18;
  private static final double TRACE_SHARE = 0.27;
  private static final double LABEL_ROW = 15;
  private static final double MARK = 10;

  /** Levels nearer to each other have no step written between them: nobody could tell whose. */
  private static final double LEAST_BRACE = 5;

  private static final int DENSE = 3;

  /** So few moves are drawn one by one however narrow the plot is. */
  private static final int FEW = 6000;

  private static final double LEAST_TALL = 1.6;

  /** A second trace that does not vary is drawn in a tenth of its unit. */
  private static final double LEAST_RANGE = 0.1;

  private final Pen pen;
  private final Palette palette;
  private final Program program;
  private final Moves moves;
  private final StripView view;
  private final HeightScale scale;
  private final long count;
  private final double x0;
  private final double x1;
  private final double top;
  private final double bottom;
  private final double traceTop;
  private final double traceBottom;
  private final double findingsY;
  private final double axisY;

  /**
   * A drawing of so much room.
   *
   * @param width of the whole
   * @param height of the whole
   */
  public StripDrawing(
      Pen pen, Palette palette, Program program, StripView view, double width, double height) {
    this.pen = pen;
    this.palette = palette;
    this.program = program;
    this.moves = program.moves();
    this.view = view;
    this.scale = scaleOf(program, view);
    this.count = moves.count();
    this.x0 = LEFT;
    this.x1 = Math.max(LEFT + 10, width - RIGHT);
    this.axisY = height - AXIS;
    this.findingsY = axisY - FINDINGS;
    this.top = TOP;
    double room = findingsY - TOP;
    double trace = view.trace() == Trace.NONE ? 0 : Math.max(40, room * TRACE_SHARE);
    this.traceBottom = findingsY - 2;
    this.traceTop = traceBottom - trace;
    this.bottom = trace == 0 ? findingsY - 2 : traceTop - 8;
  }

  /** The height scale of a view. */
  public static HeightScale scaleOf(Program program, StripView view) {
    return view.byLevels() ? HeightScale.byLevels(program.heights()) : HeightScale.TRUE;
  }

  /** The view that shows all moves at feed. */
  public static StripView fitted(Program program, StripView view) {
    Moves moves = program.moves();
    long count = moves.count();
    double to = count == 0 ? 1 : Math.max(1e-6, view.along().at(moves, count - 1));
    Range z = moves.feedZ(0, count);
    if (z.isEmpty()) {
      z = moves.rapidZ(0, count);
    }
    HeightScale scale = scaleOf(program, view);
    double low = z.isEmpty() ? -1 : scale.place((double) z.low());
    double high = z.isEmpty() ? 1 : scale.place((double) z.high());
    if (!scale.isTrue()) {
      // The way down to the first level needs no more room than a step.
      high = Math.min(high, scale.knots().length - 0.6);
      low = Math.max(low, -0.8);
    }
    double margin = Math.max((high - low) * 0.06, scale.isTrue() ? 0.5 : 0.12);
    return view.between(0, to).heights(low - margin, high + margin);
  }

  // Places on the screen.

  /** Where a place along the program is drawn. */
  public double x(double along) {
    return x0 + (along - view.from()) / (view.to() - view.from()) * (x1 - x0);
  }

  /** The place along the program at an X of the screen. */
  public double along(double x) {
    return view.from() + (x - x0) / (x1 - x0) * (view.to() - view.from());
  }

  /** Where a height is drawn. */
  public double y(double pm) {
    return yOfPlace(scale.place(pm));
  }

  private double yOfPlace(double place) {
    return bottom - (place - view.low()) / (view.high() - view.low()) * (bottom - top);
  }

  /** The place of the height axis at a Y of the screen. */
  public double place(double y) {
    return view.low() + (bottom - y) / (bottom - top) * (view.high() - view.low());
  }

  /** Width of the plot. */
  public double plotWidth() {
    return x1 - x0;
  }

  /** Height of the plot. */
  public double plotHeight() {
    return bottom - top;
  }

  /** Whether a point of the screen lies in the plot of heights. */
  public boolean inPlot(double x, double y) {
    return x >= x0 && x <= x1 && y >= top && y <= bottom;
  }

  /** Draws all but the cursor. */
  public void draw(LongToIntFunction levelColour) {
    grid();
    pen.clip(x0, top, x1 - x0, bottom - top);
    levelLines();
    path();
    pen.unclip();
    if (view.trace() != Trace.NONE) {
      trace();
    }
    levelLabels(levelColour);
    findings();
    frame();
  }

  // Axes.

  private void frame() {
    Stroke line = Stroke.solid(palette.quiet(), 1);
    pen.line(x0 - 0.5, top, x0 - 0.5, bottom, line);
    pen.line(x0 - 0.5, axisY + 0.5, x1, axisY + 0.5, line);
  }

  private void grid() {
    double lowPm = scale.pm(view.low());
    double highPm = scale.pm(view.high());
    if (scale.isTrue() || withinOneStep()) {
      AxisLabels labels = AxisLabels.between(lowPm, highPm, (int) Math.max(2, (bottom - top) / 34));
      boolean first = true;
      for (int k = labels.ticks().size() - 1; k >= 0; k--) {
        AxisLabels.Tick tick = labels.ticks().get(k);
        double at = y(tick.pm());
        if (at < top - 1 || at > bottom + 1) {
          continue;
        }
        pen.line(x0, snap(at), x1, snap(at), Stroke.solid(palette.grid(), 1));
        if (at > top + LABEL_ROW || labels.from().isEmpty()) {
          // The uppermost tells the unit of all.
          pen.text(
              tick.text() + (first ? " " + labels.unit() : ""),
              x0 - 6,
              at + 4,
              Font.LABEL,
              palette.quiet(),
              Anchor.END);
          first = false;
        }
      }
      if (!labels.from().isEmpty()) {
        pen.text(labels.from(), x0 - 6, top + 9, Font.STRONG, palette.ink(), Anchor.END);
      }
    } else {
      double at = top + 10;
      for (String words : new String[] {"steps", "alike,", "not to", "scale"}) {
        pen.text(words, x0 - 6, at, Font.SMALL, palette.quiet(), Anchor.END);
        at += 13;
      }
    }
    Along along = view.along();
    double factor = along == Along.TIME && view.to() - view.from() > 600 ? 60 : 1;
    String unit = along == Along.PATH ? "mm" : factor == 60 ? "min" : "s";
    Ticks ticks = Ticks.of((view.to() - view.from()) / factor, (int) Math.max(2, (x1 - x0) / 90));
    for (long k = ticks.first(view.from() / factor);
        ticks.value(k) * factor <= view.to() * (1 + 1e-12);
        k++) {
      double at = x(ticks.value(k) * factor);
      if (at < x0 - 0.5 || at > x1 + 0.5) {
        continue;
      }
      pen.line(snap(at), top, snap(at), bottom, Stroke.solid(palette.grid(), 1));
      if (view.trace() != Trace.NONE) {
        pen.line(snap(at), traceTop, snap(at), traceBottom, Stroke.solid(palette.grid(), 1));
      }
      pen.line(snap(at), axisY, snap(at), axisY + 4, Stroke.solid(palette.quiet(), 1));
      if (at < x1 - 28) {
        pen.text(ticks.text(k), at, axisY + 16, Font.LABEL, palette.quiet(), Anchor.MIDDLE);
      }
    }
    pen.text(
        along.words() + " " + unit, x1 + 4, axisY + 16, Font.LABEL, palette.quiet(), Anchor.START);
  }

  private static double snap(double at) {
    return Math.floor(at) + 0.5;
  }

  private boolean withinOneStep() {
    return !scale.isTrue()
        && Math.floor(view.low()) == Math.floor(view.high())
        && view.low() >= 0
        && view.high() <= scale.knots().length - 1;
  }

  // Levels.

  /**
   * A level in view.
   *
   * @param move the first move that cut it; -1 for the uncut top
   * @param where the line of that move
   */
  private record Line(double y, long zPm, long move, String where) {}

  /** The levels in view from the top down, one for each height. */
  private List<Line> lines() {
    Map<Long, LevelMark> firsts = new HashMap<>();
    for (LevelMark level : program.levels()) {
      firsts.putIfAbsent(level.zPm(), level);
    }
    List<Line> lines = new ArrayList<>();
    for (long z : program.heights()) {
      double at = y((double) z);
      LevelMark first = firsts.get(z);
      if (at >= top - 0.5 && at <= bottom + 0.5) {
        lines.add(
            first == null
                ? new Line(at, z, -1, "uncut")
                : new Line(at, z, first.move(), "line " + first.at().line()));
      }
    }
    Collections.reverse(lines);
    return lines;
  }

  private void levelLines() {
    double last = -1e9;
    for (Line line : lines()) {
      if (line.y() - last >= 2) {
        pen.line(
            x0,
            snap(line.y()),
            x1,
            snap(line.y()),
            Stroke.solid((palette.quiet() & 0xFFFFFF) | 0x66000000, 1));
        last = line.y();
      }
    }
  }

  private void levelLabels(LongToIntFunction levelColour) {
    List<Line> lines = lines();
    double lastLabel = -1e9;
    double lastStep = -1e9;
    int without = 0;
    for (int k = 0; k < lines.size(); k++) {
      Line line = lines.get(k);
      pen.line(x1, snap(line.y()), x1 + 5, snap(line.y()), Stroke.solid(palette.quiet(), 1));
      boolean last = k == lines.size() - 1 || lines.get(k + 1).y() - line.y() >= 2 * LABEL_ROW;
      if (last && without > 0 && line.y() - lastLabel < LABEL_ROW - 3) {
        pen.text(
            (without + 1) + " more near",
            x1 + 82,
            lastLabel + LABEL_ROW + 2,
            Font.SMALL,
            palette.quiet(),
            Anchor.END);
        without = 0;
      } else if (line.y() - lastLabel < LABEL_ROW - 3) {
        without++;
      } else {
        int colour = levelColour.applyAsInt(line.zPm());
        if (colour != 0) {
          pen.rectangle(x1 + 8, line.y() - 5, 10, 10, palette.quiet());
          pen.rectangle(x1 + 9, line.y() - 4, 8, 8, colour);
        }
        double y = line.y() + 4;
        pen.text(Texts.um(line.zPm()), x1 + 82, y, Font.LABEL, palette.ink(), Anchor.END);
        pen.text(line.where(), x1 + 148, y, Font.SMALL, palette.quiet(), Anchor.START);
        lastLabel = line.y();
      }
      if (k + 1 < lines.size()) {
        double next = lines.get(k + 1).y();
        double middle = (line.y() + lines.get(k + 1).y()) / 2;
        if (middle - lastStep >= LABEL_ROW - 3 && next - line.y() >= LEAST_BRACE) {
          step(line.y(), lines.get(k + 1).y(), Texts.um(line.zPm() - lines.get(k + 1).zPm()));
          lastStep = middle;
        }
      }
    }
  }

  /** The step between two levels: a brace and its height. */
  private void step(double from, double to, String text) {
    double x = snap(x1 + 88);
    Stroke line = Stroke.solid(palette.ink(), 1);
    pen.line(x, from + 2, x, to - 2, line);
    pen.line(x - 3, from + 2, x, from + 2, line);
    pen.line(x - 3, to - 2, x, to - 2, line);
    pen.text(text, x + 5, (from + to) / 2 + 4, Font.STRONG, palette.ink(), Anchor.START);
  }

  // The path.

  private void path() {
    if (count == 0 || !(view.to() > view.from())) {
      return;
    }
    long first = view.along().moveAt(moves, count, view.from());
    long last = Math.min(count, view.along().moveAt(moves, count, view.to()) + 1);
    double columns = (x1 - x0) * pen.scale();
    if (last - first <= Math.max(FEW, DENSE * columns)) {
      moveByMove(first, last);
    } else {
      byColumns((int) columns);
    }
  }

  private double start(long move) {
    return view.along().start(moves, move);
  }

  private double end(long move) {
    return view.along().at(moves, move);
  }

  private void moveByMove(long first, long last) {
    double[] xs = new double[1024];
    double[] ys = new double[1024];
    int points = 0;
    boolean rapid = false;
    for (long i = first; i < last; i++) {
      long from = i == 0 ? Moves.UNKNOWN : moves.z(i - 1);
      long to = moves.z(i);
      boolean isRapid = moves.kind(i) == Moves.Kind.RAPID;
      boolean known = from != Moves.UNKNOWN && to != Moves.UNKNOWN;
      if (points > 0 && (!known || isRapid != rapid || points > xs.length - 4)) {
        run(xs, ys, points, rapid);
        points = 0;
      }
      if (!known) {
        continue;
      }
      rapid = isRapid;
      if (points == 0) {
        points = bent(xs, ys, points, start(i), from, start(i), from);
      } else if (start(i) > end(i - 1)) {
        points = bent(xs, ys, points, end(i - 1), from, start(i), from);
      }
      points = bent(xs, ys, points, start(i), from, end(i), to);
      if (points > xs.length - 300) {
        run(xs, ys, points, rapid);
        xs[0] = xs[points - 1];
        ys[0] = ys[points - 1];
        points = 1;
      }
    }
    if (points > 0) {
      run(xs, ys, points, rapid);
    }
  }

  /**
   * Adds a straight move, which bends at the levels that it passes where these are not to scale.
   */
  private int bent(
      double[] xs, double[] ys, int points, double from, long fromZ, double to, long toZ) {
    int n = points;
    if (!scale.isTrue() && fromZ != toZ) {
      long[] knots = scale.knots();
      boolean up = toZ > fromZ;
      for (int k = 0; k < knots.length && n < points + 280; k++) {
        long knot = up ? knots[k] : knots[knots.length - 1 - k];
        if (knot > Math.min(fromZ, toZ) && knot < Math.max(fromZ, toZ)) {
          double share = (knot - (double) fromZ) / (toZ - (double) fromZ);
          xs[n] = limited(x(from + share * (to - from)));
          ys[n++] = limited(y((double) knot));
        }
      }
    }
    xs[n] = limited(x(to));
    ys[n] = limited(y((double) toZ));
    return n + 1;
  }

  /** Far beyond the edges a line is as good as at them, and quicker drawn. */
  private static double limited(double at) {
    return Math.max(-20_000, Math.min(20_000, at));
  }

  private void run(double[] xs, double[] ys, int points, boolean rapid) {
    pen.polyline(
        xs,
        ys,
        points,
        rapid ? Stroke.dashed(palette.rapid(), 1, 3) : Stroke.solid(palette.feed(), 1.8));
  }

  /**
   * The heights in a stretch of the program: at the ends of its moves, and where the stretch begins
   * and ends.
   *
   * @param feed those at feed
   * @param rapid those at rapid
   */
  record Column(Range feed, Range rapid) {}

  Column column(double from, double to) {
    long first = view.along().moveAt(moves, count, from);
    long last = view.along().moveAt(moves, count, to);
    Range feed = moves.feedZ(first, last);
    Range rapid = moves.rapidZ(first, last);
    for (int side = 0; side < 2; side++) {
      long move = side == 0 ? first : last;
      double at = side == 0 ? from : to;
      if (move >= count || move == 0) {
        continue;
      }
      long before = moves.z(move - 1);
      long after = moves.z(move);
      double length = end(move) - start(move);
      if (before == Moves.UNKNOWN || after == Moves.UNKNOWN || !(length > 0)) {
        continue;
      }
      double share = Math.max(0, Math.min(1, (at - start(move)) / length));
      long between = Math.round(before + share * ((double) after - before));
      if (moves.kind(move) == Moves.Kind.RAPID) {
        rapid = rapid.with(between);
      } else {
        feed = feed.with(between);
      }
    }
    return new Column(feed, rapid);
  }

  private void byColumns(int columns) {
    double wide = (x1 - x0) / columns;
    double[] from = new double[columns];
    double[] to = new double[columns];
    double[][] rapids = new double[4][columns];
    for (int k = 0; k < columns; k++) {
      double at = x0 + k * wide;
      Column column = column(along(at), along(at + wide));
      // Of rapids only the ends, dotted: they may not hide what is cut.
      boolean rapid = !column.rapid().isEmpty() && k / 2 % 2 == 0;
      double high = rapid ? y((double) column.rapid().high()) : Double.NaN;
      double low = rapid ? y((double) column.rapid().low()) : Double.NaN;
      rapids[0][k] = shown(high) - 0.5;
      rapids[1][k] = shown(high) + 0.5;
      rapids[2][k] = shown(low) - 0.5;
      rapids[3][k] = shown(low) + 0.5;
      put(from, to, k, column.feed(), this::y);
    }
    pen.columns(x0, wide, rapids[0], rapids[1], palette.rapid());
    pen.columns(x0, wide, rapids[2], rapids[3], palette.rapid());
    pen.columns(x0, wide, from, to, palette.feed());
  }

  /** A height on the screen, or what tells that it is not to be drawn. */
  private double shown(double at) {
    return at >= top - 1 && at <= bottom + 1 ? at : Double.NaN;
  }

  /** A range as a column, at least thick enough to be seen; nothing where there is no range. */
  private void put(double[] from, double[] to, int k, Range range, DoubleUnaryOperator toScreen) {
    from[k] = Double.NaN;
    if (range.isEmpty()) {
      return;
    }
    double high = toScreen.applyAsDouble((double) range.high());
    double low = toScreen.applyAsDouble((double) range.low());
    if (low < top - 5 || high > axisY + 5) {
      return;
    }
    high = Math.max(top - 5, high);
    low = Math.min(axisY + 5, low);
    double tall = Math.max(LEAST_TALL, low - high);
    from[k] = (high + low - tall) / 2;
    to[k] = from[k] + tall;
  }

  // The second trace.

  private void trace() {
    Trace trace = view.trace();
    long first = Math.min(count, view.along().moveAt(moves, count, view.from()));
    long last = Math.min(count, view.along().moveAt(moves, count, view.to()) + 1);
    Range range = moves.trace(trace, first, last);
    Range minima = trace == Trace.CHIP ? moves.minimumChips(first, last) : Range.NONE;
    Range all = range.with(minima);
    pen.line(x0 - 0.5, traceTop, x0 - 0.5, traceBottom, Stroke.solid(palette.quiet(), 1));
    pen.text(trace.words(), x1 + 8, traceTop + 12, Font.STRONG, palette.trace(), Anchor.START);
    pen.text(trace.unit(), x1 + 8, traceTop + 27, Font.SMALL, palette.quiet(), Anchor.START);
    if (all.isEmpty()) {
      pen.text(
          "not known here: the setup sheet lacks what it follows from",
          x0 + 6,
          (traceTop + traceBottom) / 2 + 4,
          Font.LABEL,
          palette.quiet(),
          Anchor.START);
      return;
    }
    double low = Math.min(0, (double) all.low());
    double high =
        Math.max((double) all.high(), low + LEAST_RANGE * StrictMath.pow(10, trace.scale()));
    double tall = traceBottom - traceTop - 4;
    Ticks ticks =
        Ticks.of((high - low) / StrictMath.pow(10, trace.scale()), (int) Math.max(1, tall / 20));
    for (long k = ticks.first(low / StrictMath.pow(10, trace.scale()));
        ticks.value(k) * StrictMath.pow(10, trace.scale()) <= high * (1 + 1e-12);
        k++) {
      double at =
          traceBottom
              - (ticks.value(k) * StrictMath.pow(10, trace.scale()) - low) / (high - low) * tall;
      pen.line(x0, snap(at), x1, snap(at), Stroke.solid(palette.grid(), 1));
      pen.text(ticks.text(k), x0 - 6, at + 4, Font.SMALL, palette.quiet(), Anchor.END);
    }
    pen.clip(x0, traceTop, x1 - x0, traceBottom - traceTop);
    int columns = (int) ((x1 - x0) * pen.scale());
    double wide = (x1 - x0) / columns;
    double[][] values = new double[2][columns];
    double[][] limits = new double[2][columns];
    double lowest = low;
    double span = high - low;
    DoubleUnaryOperator toScreen = v -> traceBottom - (v - lowest) / span * tall;
    long a = view.along().moveAt(moves, count, along(x0));
    for (int k = 0; k < columns; k++) {
      long next = view.along().moveAt(moves, count, along(x0 + (k + 1) * wide));
      long b = Math.min(count, next + 1);
      put(values[0], values[1], k, moves.trace(trace, a, b), toScreen);
      Range least = trace == Trace.CHIP && k % 6 < 4 ? moves.minimumChips(a, b) : Range.NONE;
      put(limits[0], limits[1], k, least, toScreen);
      a = next;
    }
    pen.columns(x0, wide, values[0], values[1], palette.trace());
    pen.columns(x0, wide, limits[0], limits[1], palette.limit());
    pen.unclip();
    if (trace == Trace.CHIP && !minima.isEmpty()) {
      pen.text(
          "dashes: least that forms",
          x1 + 8,
          traceTop + 42,
          Font.SMALL,
          palette.limit(),
          Anchor.START);
    }
  }

  // Findings.

  /** A finding where it is drawn. */
  public record Placed(FindingMark mark, double x, double y) {}

  /** The findings in view that are drawn: of several at one place the gravest. */
  public List<Placed> placed() {
    List<Placed> placed = new ArrayList<>();
    for (FindingMark mark : program.findings()) {
      if (mark.move() < 0 || mark.move() >= count) {
        continue;
      }
      double at = x((start(mark.move()) + end(mark.move())) / 2);
      if (at < x0 || at > x1) {
        continue;
      }
      Placed here = new Placed(mark, at, findingsY + FINDINGS / 2);
      if (placed.isEmpty() || at - placed.get(placed.size() - 1).x() >= MARK + 1) {
        placed.add(here);
      } else if (rank(mark) > rank(placed.get(placed.size() - 1).mark())) {
        placed.set(
            placed.size() - 1, new Placed(mark, placed.get(placed.size() - 1).x(), here.y()));
      }
    }
    return placed;
  }

  private static int rank(FindingMark mark) {
    if (mark.finding().acceptedBecause().isPresent()) {
      return 0;
    }
    return switch (mark.finding().level()) {
      case NOTE -> 1;
      case WARNING -> 2;
      case ERROR -> 3;
    };
  }

  private void findings() {
    pen.rectangle(x0, findingsY, x1 - x0, FINDINGS, palette.band());
    for (Placed placed : placed()) {
      Marks.draw(
          pen,
          palette,
          placed.mark().finding().level(),
          placed.mark().finding().acceptedBecause().isPresent(),
          placed.x(),
          placed.y(),
          MARK);
    }
    int shown = program.findings().size();
    String number = shown == 0 ? "no findings" : shown == 1 ? "1 finding" : shown + " findings";
    pen.text(
        program.result().isPresent()
            ? number
            : program.finished() ? number + ": not checked to its end" : number + " so far",
        x1 + 8,
        findingsY + 13,
        Font.SMALL,
        palette.quiet(),
        Anchor.START);
  }

  // The cursor.

  /** Draws the cursor at a move. */
  public void cursor(long move) {
    if (move < 0 || move >= count) {
      return;
    }
    double from = x(start(move));
    double to = x(end(move));
    if (to < x0 || from > x1) {
      return;
    }
    double left = Math.max(x0, from);
    double right = Math.min(x1, to);
    if (right - left > 2) {
      pen.rectangle(
          left, top, right - left, axisY - top, (palette.cursor() & 0xFFFFFF) | 0x22000000);
    }
    double at = Math.max(x0, Math.min(x1, to));
    pen.line(at, top, at, axisY, Stroke.solid(palette.cursor(), 1.4));
    pen.polygon(
        new double[] {at - 5, at + 5, at},
        new double[] {top - 7, top - 7, top},
        3,
        palette.cursor());
    long z = moves.z(move);
    if (z != Moves.UNKNOWN) {
      double height = y((double) z);
      if (height >= top && height <= bottom) {
        pen.rectangle(at - 3, height - 3, 6, 6, palette.cursor());
      }
    }
  }

  /** The level whose label or line is near a Y of the screen; -1 for none. */
  public long levelMoveNear(double y) {
    long found = -1;
    double best = 7;
    for (Line line : lines()) {
      if (Math.abs(line.y() - y) < best) {
        best = Math.abs(line.y() - y);
        found = line.move();
      }
    }
    return found;
  }
}
