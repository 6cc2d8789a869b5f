package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.CuttingWindow;
import hairline.checks.rules.CuttingWindow.Curve;
import hairline.checks.rules.CuttingWindow.Limit;
import hairline.checks.rules.CuttingWindow.Limits;
import hairline.checks.rules.CuttingWindow.Point;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws windows: feed along, depth up, both by ratios; each limit with its name, and the programmed
 * point.
 */
public final class WindowDrawing {
  private static final double LEFT = 90;
  private static final double PLOT = 620;
  private static final double TALL = 380;
  private static final double ROW = 500;
  private static final double LABELS = 740;
  private static final double ROOM = 3;
  private static final double FLAT = 70;
  private static final double NUMBER_WIDE = 16;
  private static final double NUMBER_TALL = 13;

  private WindowDrawing() {}

  /** The drawing of all windows that have a depth, one below the other. */
  public static String of(
      String program, ProgramResult result, List<CuttingWindow> windows, Conditions conditions) {
    SvgText body = new SvgText();
    double y = SurfaceDrawing.MARGIN;
    body.label(
        SurfaceDrawing.MARGIN, y + 12, "name", SurfaceDrawing.shortened(program) + ", windows");
    y += 40;
    for (Conditions.Named condition : conditions.all()) {
      String text = condition.name() + ": " + condition.text();
      body.label(SurfaceDrawing.MARGIN, y, "head", SurfaceDrawing.shortened(text));
      y += 22;
    }
    boolean any = false;
    for (CuttingWindow window : windows) {
      body.label(SurfaceDrawing.MARGIN, y, "head", WindowReport.heading(result, window));
      if (window.curves().isEmpty() || window.depthsUm().isEmpty()) {
        body.label(
            SurfaceDrawing.MARGIN,
            y + 18,
            "quiet",
            "no pass at a level of known depth: limits of the feed at the depths programmed");
        y = feeds(body, window, y + 34) + 40;
        any = true;
      } else {
        window(body, window, y + 20);
        y += ROW;
        any = true;
      }
    }
    if (windows.isEmpty() || !any) {
      body.label(SurfaceDrawing.MARGIN, y, "quiet", "no window to draw");
      y += 30;
    }
    body.label(SurfaceDrawing.MARGIN, y + 10, "quiet", Words.CAUTION);
    SvgText all = new SvgText();
    all.raw("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\"")
        .raw(" aria-labelledby=\"t\"")
        .attribute("width", Canvas.ALONE.width())
        .attribute("height", y + 30)
        .raw(" viewBox=\"0 0 ")
        .number(Canvas.ALONE.width())
        .raw(" ")
        .number(y + 30)
        .raw("\">\n<title id=\"t\">Feed against depth: where no rule speaks</title>\n<style>\n")
        .raw(SvgReport.STYLE)
        .raw(".open{fill:#dfe9d8;stroke:#dfe9d8;stroke-width:.5}")
        .raw(".low{fill:none;stroke:#1f5f8b;stroke-width:1.8}")
        .raw(".high{fill:none;stroke:#b3261e;stroke-width:1.8;stroke-dasharray:7 3}")
        .raw(".lowband{fill:#1f5f8b;fill-opacity:.13}.highband{fill:#b3261e;fill-opacity:.13}")
        .raw(".lowname{fill:#1f5f8b}.point{fill:#1c2430;stroke:#fff;stroke-width:1.5}\n")
        .raw("</style>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n")
        .raw(body.toString())
        .raw("</svg>\n");
    return all.toString();
  }

  /** The limits of the feed alone; returns where the drawing ends. */
  private static double feeds(SvgText out, CuttingWindow window, double top) {
    double lowFeed = window.feedMmPerMin();
    double highFeed = lowFeed;
    for (Limit limit : window.feed().all()) {
      lowFeed = Math.min(lowFeed, limit.likely());
      highFeed = Math.max(highFeed, limit.likely());
    }
    Scale x = new Scale(lowFeed / ROOM, highFeed * ROOM, LEFT, LEFT + PLOT);
    double least = x.at(window.feed().lower().map(Limit::likely).orElse(x.low()));
    double most = x.at(window.feed().upper().map(Limit::likely).orElse(x.high()));
    if (least < most) {
      out.raw("<rect class=\"open\"")
          .attribute("x", least)
          .attribute("y", top)
          .attribute("width", most - least)
          .attribute("height", FLAT)
          .raw("/>\n");
    }
    frame(out, top, FLAT);
    feedAxis(out, x, top + FLAT);
    double labelled = top + 10;
    List<double[]> placed = new ArrayList<>();
    int number = 0;
    for (Limit limit : window.feed().all()) {
      number++;
      feedLimit(out, placed, limit, number, x, new double[] {top, top + FLAT});
      name(out, labelled, limit.lower(), feedName(number, limit));
      labelled += 18;
    }
    out.raw("<circle class=\"point\"")
        .attribute("cx", x.at(window.feedMmPerMin()))
        .attribute("cy", top + FLAT / 2)
        .raw(" r=\"5\"/>\n");
    key(out, window, labelled);
    return Math.max(top + FLAT + 34, labelled + 40);
  }

  private static void frame(SvgText out, double top, double tall) {
    out.raw("<rect class=\"frame\"")
        .attribute("x", LEFT)
        .attribute("y", top)
        .attribute("width", PLOT)
        .attribute("height", tall)
        .raw("/>\n");
  }

  private static void feedAxis(SvgText out, Scale x, double bottom) {
    for (double tick : decades(x.low(), x.high())) {
      out.label(x.at(tick), bottom + 16, "quiet mid", Quantities.significant(tick, 3));
    }
    out.label(LEFT + PLOT, bottom + 34, "quiet end", "feed mm/min");
  }

  /** A limit of the feed at all depths drawn, as a band where it is one. */
  private static void feedLimit(
      SvgText out, List<double[]> placed, Limit limit, int number, Scale x, double[] topBottom) {
    if (!x.holds(limit.likely())) {
      return;
    }
    double at = x.at(limit.likely());
    double certain = x.at(limit.certain());
    if (certain != at) {
      out.raw(limit.lower() ? "<rect class=\"lowband\"" : "<rect class=\"highband\"")
          .attribute("x", Math.min(at, certain))
          .attribute("y", topBottom[0])
          .attribute("width", Math.abs(certain - at))
          .attribute("height", topBottom[1] - topBottom[0])
          .raw("/>\n");
    }
    out.line(at, topBottom[0], at, topBottom[1], limit.lower() ? "low" : "high");
    number(out, placed, at + 3, topBottom[0] + 12, limit.lower(), number);
  }

  private static String feedName(int number, Limit limit) {
    return number
        + " "
        + limit.rule()
        + ": feed "
        + (limit.lower() ? "above " : "below ")
        + Quantities.significant(limit.likely(), 4)
        + " mm/min";
  }

  /** What a number stands for, beside the drawing. */
  private static void name(SvgText out, double y, boolean lower, String text) {
    out.label(LABELS, y, lower ? "lowname" : "cutname", text);
  }

  /** The number of a limit, lower down where another stands already. */
  private static void number(
      SvgText out, List<double[]> placed, double x, double from, boolean lower, int number) {
    double y = from;
    while (true) {
      double at = y;
      if (placed.stream()
          .noneMatch(p -> Math.abs(p[0] - x) < NUMBER_WIDE && Math.abs(p[1] - at) < NUMBER_TALL)) {
        break;
      }
      y += NUMBER_TALL;
    }
    placed.add(new double[] {x, y});
    out.label(x, y, lower ? "on lowname" : "on cutname", number + "");
  }

  private static void key(SvgText out, CuttingWindow window, double labelled) {
    out.swatch(LABELS, labelled + 24, 12, 12, 0xDFE9D8);
    out.label(LABELS + 18, labelled + 34, "", "no rule speaks");
    out.raw("<circle class=\"point\"")
        .attribute("cx", LABELS + 5)
        .attribute("cy", labelled + 6)
        .raw(" r=\"5\"/>\n");
    out.label(
        LABELS + 16, labelled + 10, "", "programmed: " + Quantities.feed(window.feedMmPerMin()));
    if (hasBands(window)) {
      out.raw("<rect class=\"highband\"")
          .attribute("x", LABELS)
          .attribute("y", labelled + 44)
          .raw(" width=\"12\" height=\"12\"/>\n");
      out.label(LABELS + 18, labelled + 54, "", "likely at the line, for certain");
      out.label(LABELS + 18, labelled + 68, "", "at the other edge");
    }
  }

  private static boolean hasBands(CuttingWindow window) {
    return window.feed().all().stream().anyMatch(l -> l.likely() != l.certain())
        || window.curves().stream()
            .flatMap(curve -> curve.points().stream())
            .anyMatch(point -> !point.feedMmPerMin().equals(point.certainMmPerMin()));
  }

  private static void window(SvgText out, CuttingWindow window, double top) {
    List<Point> depths = window.curves().get(0).points();
    double lowDepth = depths.get(0).depthUm();
    double highDepth = depths.get(depths.size() - 1).depthUm();
    double lowFeed = window.feedMmPerMin();
    double highFeed = lowFeed;
    for (Curve curve : window.curves()) {
      for (Point point : curve.points()) {
        if (point.isLimit()) {
          lowFeed = Math.min(lowFeed, point.feedMmPerMin().getAsDouble());
          highFeed = Math.max(highFeed, point.feedMmPerMin().getAsDouble());
        }
      }
    }
    // What lies orders of magnitude away is not drawn.
    lowFeed = Math.max(lowFeed / ROOM, window.feedMmPerMin() / 1000);
    highFeed = Math.min(highFeed * ROOM, window.feedMmPerMin() * 1000);
    Scale x = new Scale(lowFeed, highFeed, LEFT, LEFT + PLOT);
    Scale y = new Scale(lowDepth, highDepth, top + TALL, top);
    frame(out, top, TALL);
    for (double tick : decades(lowFeed, highFeed)) {
      out.line(x.at(tick), top, x.at(tick), top + TALL, "grid");
    }
    feedAxis(out, x, top + TALL);
    for (double tick : decades(lowDepth, highDepth)) {
      out.line(LEFT, y.at(tick), LEFT + PLOT, y.at(tick), "grid");
      out.label(LEFT - 8, y.at(tick) + 4, "quiet end", Quantities.significant(tick, 3));
    }
    out.label(LEFT - 8, top - 6, "quiet end", "depth µm");
    open(out, window, x, y);
    double labelled = top + 10;
    List<double[]> placed = new ArrayList<>();
    int number = 0;
    for (Curve curve : window.curves()) {
      number++;
      curve(out, placed, curve, number, x, y);
      name(
          out,
          labelled,
          curve.lower(),
          number + " " + curve.rule() + (curve.lower() ? ": feed above" : ": feed below"));
      labelled += 18;
    }
    for (Limit limit : withoutCurve(window, window.feed())) {
      number++;
      feedLimit(out, placed, limit, number, x, new double[] {top, top + TALL});
      name(out, labelled, limit.lower(), feedName(number, limit));
      labelled += 18;
    }
    for (Limit limit : window.depth().map(d -> withoutCurve(window, d)).orElse(List.of())) {
      number++;
      if (y.holds(limit.likely())) {
        double at = y.at(limit.likely());
        out.line(LEFT, at, LEFT + PLOT, at, limit.lower() ? "low" : "high");
        number(out, placed, LEFT + PLOT - 18, at - 4, limit.lower(), number);
      }
      name(
          out,
          labelled,
          limit.lower(),
          number
              + " "
              + limit.rule()
              + ": depth "
              + (limit.lower() ? "above " : "below ")
              + Quantities.significant(limit.likely(), 3)
              + " µm");
      labelled += 18;
    }
    point(out, window, x, y);
    key(out, window, labelled);
  }

  /** The limits of rules that are not drawn as curves, which tell more. */
  private static List<Limit> withoutCurve(CuttingWindow window, Limits limits) {
    return limits.all().stream()
        .filter(limit -> window.curves().stream().noneMatch(c -> c.rule().equals(limit.rule())))
        .toList();
  }

  /** Shades where no limit is passed, from depth to depth. */
  private static void open(SvgText out, CuttingWindow window, Scale x, Scale y) {
    Limits depths = new Limits(window.depth().map(d -> withoutCurve(window, d)).orElse(List.of()));
    double shallowest = depths.lower().map(Limit::likely).orElse(y.low());
    double deepest = depths.upper().map(Limit::likely).orElse(y.high());
    Limits feeds = new Limits(withoutCurve(window, window.feed()));
    double slowest = feeds.lower().map(Limit::likely).orElse(x.low());
    double fastest = feeds.upper().map(Limit::likely).orElse(x.high());
    int count = window.curves().get(0).points().size();
    for (int k = 1; k < count; k++) {
      double from = window.curves().get(0).points().get(k - 1).depthUm();
      double to = window.curves().get(0).points().get(k).depthUm();
      double low = Math.max(from, shallowest);
      double high = Math.min(to, deepest);
      if (low >= high) {
        continue;
      }
      double[] least = new double[2];
      double[] most = new double[2];
      for (int end = 0; end < 2; end++) {
        double share = StrictMath.log((end == 0 ? low : high) / from) / StrictMath.log(to / from);
        least[end] = edge(window, k, share, true, slowest);
        most[end] = edge(window, k, share, false, fastest);
      }
      if (least[0] < most[0] && least[1] < most[1]) {
        out.raw("<path class=\"open\" d=\"M")
            .number(x.at(least[0]))
            .raw(" ")
            .number(y.at(low))
            .raw("L")
            .number(x.at(most[0]))
            .raw(" ")
            .number(y.at(low))
            .raw("L")
            .number(x.at(most[1]))
            .raw(" ")
            .number(y.at(high))
            .raw("L")
            .number(x.at(least[1]))
            .raw(" ")
            .number(y.at(high))
            .raw("Z\"/>\n");
      }
    }
  }

  /** The limit of the feed that counts between two depths. */
  private static double edge(
      CuttingWindow window, int k, double share, boolean lower, double none) {
    double edge = none;
    for (Curve curve : window.curves()) {
      Point from = curve.points().get(k - 1);
      Point to = curve.points().get(k);
      if (curve.lower() == lower && (from.isLimit() || to.isLimit())) {
        // Where the rule falls silent, its last limit stands.
        double first = (from.isLimit() ? from : to).feedMmPerMin().getAsDouble();
        double last = (to.isLimit() ? to : from).feedMmPerMin().getAsDouble();
        double feed = first * StrictMath.pow(last / first, share);
        edge = lower ? Math.max(edge, feed) : Math.min(edge, feed);
      }
    }
    return edge;
  }

  private static void point(SvgText out, CuttingWindow window, Scale x, Scale y) {
    double low = window.depthsUm().orElseThrow().lowest();
    double high = window.depthsUm().orElseThrow().highest();
    double at = x.at(window.feedMmPerMin());
    out.line(at, y.at(low), at, y.at(high), "bar");
    for (double depth : new double[] {low, high}) {
      out.raw("<circle class=\"point\"")
          .attribute("cx", at)
          .attribute("cy", y.at(depth))
          .raw(" r=\"5\"/>\n");
    }
  }

  /** Between where a curve's rule is likely to speak and where it does for certain. */
  private static void band(SvgText out, Curve curve, Scale x, Scale y) {
    SvgText likely = new SvgText();
    List<Point> limits = curve.points().stream().filter(Point::isLimit).toList();
    if (limits.stream().allMatch(p -> p.feedMmPerMin().equals(p.certainMmPerMin()))) {
      return;
    }
    for (int k = 0; k < limits.size(); k++) {
      likely
          .raw(k == 0 ? "M" : "L")
          .number(x.at(limits.get(k).feedMmPerMin().getAsDouble()))
          .raw(" ")
          .number(y.at(limits.get(k).depthUm()));
    }
    for (int k = limits.size() - 1; k >= 0; k--) {
      likely
          .raw("L")
          .number(x.at(limits.get(k).certainMmPerMin().getAsDouble()))
          .raw(" ")
          .number(y.at(limits.get(k).depthUm()));
    }
    out.raw(curve.lower() ? "<path class=\"lowband\"" : "<path class=\"highband\"")
        .raw(" d=\"")
        .raw(likely.toString())
        .raw("Z\"/>\n");
  }

  private static void curve(
      SvgText out, List<double[]> placed, Curve curve, int number, Scale x, Scale y) {
    band(out, curve, x, y);
    SvgText path = new SvgText();
    boolean open = false;
    double lastX = 0;
    double lastY = 0;
    for (Point point : curve.points()) {
      boolean drawn = point.isLimit() && x.holds(point.feedMmPerMin().getAsDouble());
      if (drawn) {
        lastX = x.at(point.feedMmPerMin().getAsDouble());
        lastY = y.at(point.depthUm());
        path.raw(open ? "L" : "M").number(lastX).raw(" ").number(lastY);
      }
      open = drawn;
    }
    String markup = path.toString();
    if (!markup.isEmpty()) {
      out.raw("<path class=\"")
          .raw(curve.lower() ? "low" : "high")
          .raw("\" d=\"")
          .raw(markup)
          .raw("\"/>\n");
      number(out, placed, lastX + 3, lastY + 12, curve.lower(), number);
    }
  }

  /** One, two and five of each power of ten in a range. */
  private static List<Double> decades(double low, double high) {
    List<Double> ticks = new ArrayList<>();
    double power = StrictMath.pow(10, StrictMath.floor(StrictMath.log10(low)));
    boolean wide = high / low > 1000;
    for (; power <= high; power *= 10) {
      for (int digit : wide ? new int[] {1} : new int[] {1, 2, 5}) {
        if (power * digit >= low && power * digit <= high) {
          ticks.add(power * digit);
        }
      }
    }
    return ticks;
  }

  /** A scale by ratios. */
  private record Scale(double low, double high, double from, double to) {
    double at(double value) {
      double clipped = Math.min(high, Math.max(low, value));
      return from
          + (to - from)
              * StrictMath.log(clipped / low)
              / StrictMath.log(Math.max(high / low, 1.01));
    }

    boolean holds(double value) {
      return value >= low && value <= high;
    }
  }
}
