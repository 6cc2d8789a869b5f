package hairline.checks.report;

import hairline.checks.cutting.Band;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.warmth.ProgramTimeline;
import hairline.checks.warmth.ProgramTimeline.Cutting;
import hairline.checks.warmth.ProgramTimeline.Kind;
import hairline.checks.warmth.ProgramTimeline.Mark;
import hairline.checks.warmth.ProgramTimeline.Point;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Draws a part of a timeline in lanes, one above the other: speed and growth of the spindle, what
 * happens at the tool, which tool, and when it cuts.
 */
final class TimelinePanel {
  static final double LEFT = 76;

  private static final double LANE_HEIGHT = 16;
  private static final double GAP = 12;
  private static final double NARROWEST = 2;
  private static final double SAME = 0.2;
  private static final double SECONDS_PER_MINUTE = 60;

  /** From here on time is counted in minutes. */
  private static final double LONG_SECONDS = 180;

  private static final int DRIFT_DIGITS = 2;

  /** Room for the names of the scales on the right. */
  private static final double RIGHT = 94;

  private final SvgText out = new SvgText();
  private final double width;
  private final double speedTall;
  private final double growthTall;
  private final ProgramTimeline timeline;
  private final ProgramResult result;
  private final double from;
  private final double to;
  private final List<Point> points;
  private double y;

  // The growth lane.
  private double growthTop;
  private double lowUm;
  private double highUm;

  /**
   * Draws from this Y down.
   *
   * @param result knows the files that lines stand in
   * @param from first second
   * @param to last second
   */
  TimelinePanel(
      Canvas canvas,
      ProgramTimeline timeline,
      ProgramResult result,
      double from,
      double to,
      double top) {
    this.width = canvas.width() - LEFT - RIGHT;
    this.speedTall = canvas.speedTall();
    this.growthTall = canvas.growthTall();
    this.timeline = timeline;
    this.result = result;
    this.from = from;
    this.to = to;
    this.points = cut(timeline, from, to);
    this.y = top + 4;
    speed();
    if (points.stream().anyMatch(point -> point.growthUm().isPresent())) {
      growth();
    }
    marks();
    tools();
    cuts();
    axis();
  }

  String markup() {
    return out.toString();
  }

  double bottom() {
    return y;
  }

  /** The class of a mark's colour. */
  static String style(Kind kind) {
    return switch (kind) {
      case WARM_UP -> "warm";
      case MEASURING -> "measure";
      case TOOL_CHANGE -> "change";
      case OPERATOR -> "operator";
    };
  }

  /** The points within the part, and one at either end. */
  private static List<Point> cut(ProgramTimeline timeline, double from, double to) {
    List<Point> points = new ArrayList<>();
    if (from > 0) {
      timeline
          .at(from)
          .ifPresent(
              at -> points.add(new Point(from, at.rpm(), timeline.growthAt(from), at.known())));
    }
    timeline.points().stream()
        .filter(point -> point.seconds() >= from && point.seconds() <= to)
        .forEach(points::add);
    timeline
        .at(to)
        .ifPresent(at -> points.add(new Point(to, at.rpm(), timeline.growthAt(to), at.known())));
    return points;
  }

  private double x(double seconds) {
    double within = Math.min(to, Math.max(from, seconds));
    return LEFT + (within - from) / (to - from) * width;
  }

  private void name(String name, double at) {
    out.label(LEFT - 8, at, "quiet end", name);
  }

  // Speed.

  private void speed() {
    double fastest = points.stream().mapToDouble(p -> p.rpm().orElse(0)).max().orElse(0);
    double foot = y + speedTall;
    name("rpm", y + 10);
    out.line(LEFT, foot, LEFT + width, foot, "tick");
    if (fastest > 0) {
      out.line(LEFT, y, LEFT + width, y, "grid");
      out.label(LEFT + width + 6, y + 4, "quiet", Quantities.significant(fastest, 6));
      for (int p = 0; p + 1 < points.size(); p++) {
        Point point = points.get(p);
        int last = p;
        while (last + 2 < points.size() && points.get(last + 1).rpm().equals(point.rpm())) {
          last++;
        }
        double begin = x(point.seconds());
        double end = x(points.get(last + 1).seconds());
        if (point.rpm().isEmpty()) {
          out.label((begin + end) / 2, foot - 4, "quiet mid", "?");
        } else if (point.rpm().getAsDouble() > 0 && end > begin) {
          double tall = point.rpm().getAsDouble() / fastest * speedTall;
          String speed = Quantities.rpm(point.rpm().getAsDouble());
          box("turns", begin, foot - tall, end - begin, tall, speed);
          if (end - begin > SurfaceDrawing.width(speed)) {
            out.label((begin + end) / 2, foot - 4, "mid", speed);
          }
        }
        p = last;
      }
    }
    y = foot + GAP;
  }

  // Growth.

  private void growth() {
    lowUm = Double.POSITIVE_INFINITY;
    highUm = Double.NEGATIVE_INFINITY;
    for (Point point : points) {
      point.growthUm().ifPresent(this::widen);
    }
    if (from == 0) {
      widen(Band.ofExact(0));
    }
    if (!(highUm > lowUm)) {
      highUm = lowUm + 1;
    }
    growthTop = y + 4;
    name("growth", growthTop + 8);
    name("µm", growthTop + 22);
    Ticks up = Ticks.of(highUm - lowUm, (int) Math.max(2, growthTall / 25));
    for (long k = up.first(lowUm); up.value(k) <= highUm + 1e-9; k++) {
      double at = down(up.value(k));
      out.line(LEFT, at, LEFT + width, at, "grid");
      out.label(LEFT + width + 6, at + 4, "quiet", up.text(k));
    }
    band();
    line(true);
    line(false);
    timeline.marks().stream().filter(m -> m.kind() == Kind.MEASURING).forEach(this::frozen);
    y = growthTop + growthTall + GAP;
  }

  private void widen(Band um) {
    lowUm = Math.min(lowUm, um.low());
    highUm = Math.max(highUm, um.high());
  }

  private double down(double um) {
    return growthTop + (highUm - um) / (highUm - lowUm) * growthTall;
  }

  private void band() {
    int begin = 0;
    for (int p = 0; p <= points.size(); p++) {
      if (p == points.size() || points.get(p).growthUm().isEmpty()) {
        band(begin, p);
        begin = p + 1;
      }
    }
  }

  private void band(int begin, int end) {
    if (end - begin < 2) {
      return;
    }
    SvgText path = new SvgText();
    Pen pen = new Pen(path);
    for (int p = begin; p < end; p++) {
      pen.to(x(points.get(p).seconds()), down(points.get(p).growthUm().orElseThrow().high()));
    }
    for (int p = end - 1; p >= begin; p--) {
      pen.to(x(points.get(p).seconds()), down(points.get(p).growthUm().orElseThrow().low()));
    }
    pen.lift();
    out.raw("<path class=\"band\" d=\"").raw(path.toString()).raw("Z\"/>\n");
  }

  /** The typical growth where it is known, or where it is not. */
  private void line(boolean known) {
    SvgText path = new SvgText();
    Pen pen = new Pen(path);
    for (int p = 0; p + 1 < points.size(); p++) {
      Optional<Band> here = points.get(p).growthUm();
      Optional<Band> next = points.get(p + 1).growthUm();
      boolean certain = points.get(p).known() && points.get(p + 1).known();
      if (here.isEmpty() || next.isEmpty() || certain != known) {
        pen.lift();
        continue;
      }
      pen.to(x(points.get(p).seconds()), down(here.get().typical()));
      pen.to(x(points.get(p + 1).seconds()), down(next.get().typical()));
    }
    pen.lift();
    if (!path.toString().isEmpty()) {
      out.raw("<path class=\"")
          .raw(known ? "grown" : "grown guess")
          .raw("\" d=\"")
          .raw(path.toString())
          .raw("\"/>\n");
    }
  }

  /** The growth that a measuring took into the offset, on to the last cut that it stands for. */
  private void frozen(Mark measuring) {
    double end = measuring.toSeconds();
    double next =
        timeline.marks().stream()
            .filter(m -> m.kind() == Kind.MEASURING && m.tool().equals(measuring.tool()))
            .mapToDouble(Mark::fromSeconds)
            .filter(seconds -> seconds >= end)
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    Optional<Cutting> last = Optional.empty();
    for (List<Cutting> cuts : List.of(timeline.fineCuts(), timeline.otherCuts())) {
      for (Cutting cut : cuts) {
        boolean later = last.isEmpty() || cut.toSeconds() > last.get().toSeconds();
        if (later
            && cut.tool().equals(measuring.tool())
            && cut.fromSeconds() >= end
            && cut.toSeconds() <= next) {
          last = Optional.of(cut);
        }
      }
    }
    if (measuring.growthUm().isEmpty() || end < from || end > to) {
      return;
    }
    double at = down(measuring.growthUm().get().typical());
    if (last.isPresent()) {
      out.line(x(end), at, x(last.get().toSeconds()), at, "froze");
      drifted(last.get(), x(end), at);
    }
    out.raw("<circle class=\"measure\"")
        .attribute("cx", x(end))
        .attribute("cy", at)
        .attribute("r", 3.5)
        .raw("><title>")
        .text(
            TimelineWords.mark(result, measuring)
                + ": "
                + TimelineWords.um(measuring.growthUm())
                + " µm")
        .raw("</title></circle>\n");
  }

  /** The growth since a measuring, at the end of the line that stands for it, if there is room. */
  private void drifted(Cutting last, double begin, double at) {
    double end = x(last.toSeconds());
    if (last.driftAtEndUm().isPresent()) {
      double um = last.driftAtEndUm().get().typical();
      String words = signed(um) + " µm";
      if (end - begin > SurfaceDrawing.width(words)) {
        String more = words + " since measured";
        boolean room = end - begin > SurfaceDrawing.width(more);
        out.label(end - 4, at + (um < 0 ? -5 : 13), "on end", room ? more : words);
      }
    }
  }

  private static String signed(double um) {
    String text = SurfaceText.fixed(um, DRIFT_DIGITS);
    return (um > 0 ? "+" : "") + Ticks.minus(text);
  }

  // Lanes.

  private void marks() {
    name("events", y + 12);
    out.line(LEFT, y + LANE_HEIGHT, LEFT + width, y + LANE_HEIGHT, "grid");
    // A stop takes no time: it stands above what happens beside it.
    List<Mark> marks = new ArrayList<>(timeline.marks());
    marks.sort(Comparator.comparing(mark -> mark.kind() == Kind.OPERATOR));
    for (Mark mark : marks) {
      if (mark.toSeconds() >= from && mark.fromSeconds() <= to) {
        double begin = x(mark.fromSeconds());
        double width = Math.max(NARROWEST, x(mark.toSeconds()) - begin);
        box(
            style(mark.kind()),
            begin,
            y,
            width,
            LANE_HEIGHT,
            TimelineWords.mark(result, mark)
                + ", "
                + TimelineWords.clock(mark.fromSeconds())
                + " to "
                + TimelineWords.clock(mark.toSeconds()));
      }
    }
    y += LANE_HEIGHT + GAP / 2;
  }

  private void tools() {
    List<Mark> changes =
        timeline.marks().stream().filter(m -> m.kind() == Kind.TOOL_CHANGE).toList();
    name("tool", y + 12);
    for (int k = 0; k < changes.size(); k++) {
      double begin = changes.get(k).toSeconds();
      double end = k + 1 < changes.size() ? changes.get(k + 1).fromSeconds() : to;
      OptionalInt tool = changes.get(k).tool();
      if (tool.isEmpty() || end <= from || begin >= to) {
        continue;
      }
      String words = "T" + tool.getAsInt();
      double width = x(end) - x(begin);
      box("turns", x(begin), y, width, LANE_HEIGHT, words);
      if (width > SurfaceDrawing.width(words)) {
        out.label((x(begin) + x(end)) / 2, y + 12, "mid", words);
      }
    }
    y += LANE_HEIGHT + GAP / 2;
  }

  private void cuts() {
    name("cuts", y + 12);
    out.line(LEFT, y + LANE_HEIGHT, LEFT + width, y + LANE_HEIGHT, "grid");
    cuts(timeline.otherCuts(), "other", "other cuts", LANE_HEIGHT);
    cuts(timeline.fineCuts(), "fine", "fine cuts", LANE_HEIGHT);
    y += LANE_HEIGHT;
  }

  private void cuts(List<Cutting> cuts, String style, String what, double height) {
    int begin = 0;
    for (int c = 1; c <= cuts.size(); c++) {
      boolean joins =
          c < cuts.size()
              && cuts.get(c).tool().equals(cuts.get(begin).tool())
              && x(cuts.get(c).fromSeconds()) - x(cuts.get(c - 1).toSeconds()) < 1;
      if (joins) {
        continue;
      }
      Cutting first = cuts.get(begin);
      Cutting last = cuts.get(c - 1);
      if (last.toSeconds() >= from && first.fromSeconds() <= to) {
        double left = x(first.fromSeconds());
        String drift = TimelineWords.drift(first.driftAtStartUm(), last.driftAtEndUm());
        box(
            style,
            left,
            y + LANE_HEIGHT - height,
            Math.max(NARROWEST / 2, x(last.toSeconds()) - left),
            height,
            TimelineWords.cuts(result, what, first, last) + (drift.isEmpty() ? "" : "; " + drift));
      }
      begin = c;
    }
  }

  private void box(
      String style, double left, double top, double width, double height, String title) {
    out.raw("<rect class=\"")
        .raw(style)
        .raw("\"")
        .attribute("x", left)
        .attribute("y", top)
        .attribute("width", width)
        .attribute("height", height)
        .raw("><title>")
        .text(title)
        .raw("</title></rect>\n");
  }

  private void axis() {
    boolean minutes = timeline.time().atLeastSeconds() >= LONG_SECONDS;
    double unit = minutes ? SECONDS_PER_MINUTE : 1;
    double foot = y + 6;
    out.line(LEFT, foot, LEFT + width, foot, "tick");
    Ticks along = Ticks.of((to - from) / unit, (int) (width / 55));
    for (long k = along.first(from / unit); along.value(k) * unit <= to + 1e-9; k++) {
      double at = x(along.value(k) * unit);
      out.line(at, foot, at, foot + 5, "tick");
      out.label(at, foot + 17, "quiet mid", along.text(k));
    }
    out.label(LEFT + width + 18, foot + 17, "quiet", minutes ? "min" : "s");
    y = foot + 22;
  }

  /** Writes a path, and leaves out points that lie where the one before does. */
  private static final class Pen {
    private final SvgText path;
    private boolean open;
    private boolean pending;
    private double x;
    private double y;
    private double nextX;
    private double nextY;

    Pen(SvgText path) {
      this.path = path;
    }

    void to(double toX, double toY) {
      if (open && Math.abs(toX - x) < SAME && Math.abs(toY - y) < SAME) {
        pending = true;
        nextX = toX;
        nextY = toY;
      } else {
        write(open ? "L" : "M", toX, toY);
      }
    }

    private void write(String letter, double toX, double toY) {
      path.raw(letter).number(toX).raw(" ").number(toY);
      x = toX;
      y = toY;
      open = true;
      pending = false;
    }

    /** Ends where the last point lies; what follows begins anew. */
    void lift() {
      if (pending) {
        write("L", nextX, nextY);
      }
      open = false;
    }
  }
}
