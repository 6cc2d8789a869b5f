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
  public static String of(String program, ProgramResult result, List<CuttingWindow> windows) {
    SvgText body = new SvgText();
    double y = SurfaceDrawing.MARGIN;
    body.label(
        SurfaceDrawing.MARGIN, y + 12, "name", SurfaceDrawing.shortened(program) + ", windows");
    y += 40;
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
    out.raw("<rect class=\"frame\"")
        .attribute("x", LEFT)
        .attribute("y", top)
        .attribute("width", PLOT)
        .attribute("height", FLAT)
        .raw("/>\n");
    for (double tick : decades(x.low(), x.high())) {
      out.label(x.at(tick), top + FLAT + 16, "quiet mid", Quantities.significant(tick, 3));
    }
    out.label(LEFT + PLOT, top + FLAT + 34, "quiet end", "feed mm/min");
    double labelled = top + 10;
    List<double[]> placed = new ArrayList<>();
    int number = 0;
    for (Limit limit : window.feed().all()) {
      number++;
      double at = x.at(limit.likely());
      out.line(at, top, at, top + FLAT, limit.lower() ? "low" : "high");
      number(out, placed, at + 3, top + 12, limit.lower(), number);
      out.label(
          LABELS,
          labelled,
          limit.lower() ? "lowname" : "cutname",
          number
              + " "
              + limit.rule()
              + ": feed "
              + (limit.lower() ? "above " : "below ")
              + Quantities.significant(limit.likely(), 4)
              + " mm/min");
      labelled += 18;
    }
    out.raw("<circle class=\"point\"")
        .attribute("cx", x.at(window.feedMmPerMin()))
        .attribute("cy", top + FLAT / 2)
        .raw(" r=\"5\"/>\n");
    key(out, window, labelled);
    return Math.max(top + FLAT + 34, labelled + 40);
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
  }

  private static void window(SvgText out, CuttingWindow window, double top) {
    List<Point> depths = window.curves().get(0).points();
    double lowDepth = depths.get(0).depthUm();
    double highDepth = depths.get(depths.size() - 1).depthUm();
    double lowFeed = window.feedMmPerMin();
    double highFeed = lowFeed;
    for (Curve curve : window.curves()) {
      for (Point point : curve.points()) {
        if (point.feedMmPerMin().isPresent()) {
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
    out.raw("<rect class=\"frame\"")
        .attribute("x", LEFT)
        .attribute("y", top)
        .attribute("width", PLOT)
        .attribute("height", TALL)
        .raw("/>\n");
    for (double tick : decades(lowFeed, highFeed)) {
      out.line(x.at(tick), top, x.at(tick), top + TALL, "grid");
      out.label(x.at(tick), top + TALL + 16, "quiet mid", Quantities.significant(tick, 3));
    }
    out.label(LEFT + PLOT, top + TALL + 34, "quiet end", "feed mm/min");
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
      out.label(
          LABELS,
          labelled,
          curve.lower() ? "lowname" : "cutname",
          number + " " + curve.rule() + (curve.lower() ? ": feed above" : ": feed below"));
      labelled += 18;
    }
    if (window.depth().isPresent()) {
      for (Limit limit : window.depth().get().all()) {
        if (window.curves().stream().noneMatch(c -> c.rule().equals(limit.rule()))) {
          number++;
          if (limit.likely() >= lowDepth && limit.likely() <= highDepth) {
            double at = y.at(limit.likely());
            out.line(LEFT, at, LEFT + PLOT, at, limit.lower() ? "low" : "high");
            number(out, placed, LEFT + PLOT - 14, at - 4, limit.lower(), number);
          }
          out.label(
              LABELS,
              labelled,
              limit.lower() ? "lowname" : "cutname",
              number
                  + " "
                  + limit.rule()
                  + ": depth "
                  + (limit.lower() ? "above " : "below ")
                  + Quantities.significant(limit.likely(), 3)
                  + " µm");
          labelled += 18;
        }
      }
    }
    point(out, window, x, y);
    key(out, window, labelled);
  }

  /** Shades where no limit is passed, from depth to depth. */
  private static void open(SvgText out, CuttingWindow window, Scale x, Scale y) {
    double shallowest = window.depth().flatMap(Limits::lower).map(Limit::likely).orElse(y.low());
    double deepest = window.depth().flatMap(Limits::upper).map(Limit::likely).orElse(y.high());
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
        least[end] = edge(window, k, share, true, x.low());
        most[end] = edge(window, k, share, false, x.high());
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
      if (curve.lower() == lower
          && from.feedMmPerMin().isPresent()
          && to.feedMmPerMin().isPresent()) {
        double feed =
            from.feedMmPerMin().getAsDouble()
                * StrictMath.pow(
                    to.feedMmPerMin().getAsDouble() / from.feedMmPerMin().getAsDouble(), share);
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

  private static void curve(
      SvgText out, List<double[]> placed, Curve curve, int number, Scale x, Scale y) {
    SvgText path = new SvgText();
    boolean open = false;
    double lastX = 0;
    double lastY = 0;
    for (Point point : curve.points()) {
      boolean drawn =
          point.feedMmPerMin().isPresent() && x.holds(point.feedMmPerMin().getAsDouble());
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
