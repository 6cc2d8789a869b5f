package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.warmth.ProgramTimeline;
import hairline.checks.warmth.ProgramTimeline.Kind;
import hairline.checks.warmth.ProgramTimeline.Mark;
import java.util.Optional;

/**
 * Draws the timeline of a program: the whole, and once more from the first measuring on where that
 * is but a small part of it, as after a long warm-up.
 */
final class TimelineDrawing {
  /** What is less than this part of the whole is drawn once more, larger. */
  private static final double SMALL_PART = 0.4;

  private static final double LINE = 16;

  /** A text that is not bold is so much narrower. */
  private static final double PLAIN = 0.86;

  private final SvgText out = new SvgText();
  private final Canvas canvas;
  private final ProgramTimeline timeline;
  private final ProgramResult result;
  private double y;

  /** Draws from this Y down. */
  TimelineDrawing(
      Canvas canvas, String program, ProgramTimeline timeline, ProgramResult result, double top) {
    this.canvas = canvas;
    this.timeline = timeline;
    this.result = result;
    this.y = top + canvas.above();
    out.raw("<g>\n<title>").text(program + ", along its time").raw("</title>\n");
    if (canvas.headed()) {
      out.label(
          SurfaceDrawing.MARGIN,
          y + 16,
          "name",
          SurfaceDrawing.shortened(program) + ", along its time");
      y += 36;
      quiet(TimelineWords.whole(timeline));
      quiet("sheet: " + result.sheet());
      timeline.notes().forEach(this::quiet);
      y += 6;
    }
    double seconds = timeline.time().atLeastSeconds();
    if (seconds > 0) {
      panel(0, seconds, "");
      Optional<Mark> measuring =
          timeline.marks().stream().filter(mark -> mark.kind() == Kind.MEASURING).findFirst();
      if (measuring.isPresent()) {
        double from = measuring.get().fromSeconds();
        if (from > 0 && seconds - from > 0 && seconds - from < SMALL_PART * seconds) {
          panel(from, seconds, "from the first measuring on");
        }
      }
      legend();
    } else {
      quiet("nothing in it takes a time that is known");
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

  private void quiet(String text) {
    out.label(SurfaceDrawing.MARGIN, y, "quiet", text);
    y += LINE;
  }

  private void panel(double from, double to, String heading) {
    if (!heading.isEmpty()) {
      out.label(SurfaceDrawing.MARGIN, y + 14, "head", heading);
      y += 20;
    }
    TimelinePanel panel = new TimelinePanel(canvas, timeline, result, from, to, y);
    out.raw(panel.markup());
    y = panel.bottom() + 14;
  }

  private void legend() {
    double x = TimelinePanel.LEFT;
    for (Kind kind : Kind.values()) {
      if (!canvas.headed() && timeline.marks().stream().noneMatch(m -> m.kind() == kind)) {
        continue;
      }
      x = entry(x, TimelinePanel.style(kind), kind.words());
    }
    x = entry(x, "fine", "fine cuts");
    x = entry(x, "other", "other cuts");
    if (timeline.growthTold()) {
      out.line(x, y + 5, x + 22, y + 5, "grown");
      out.label(x + 28, y + 9, "quiet", "growth, typical");
      x += 48 + PLAIN * SurfaceDrawing.width("growth, typical");
      out.line(x, y + 5, x + 22, y + 5, "froze");
      out.label(x + 28, y + 9, "quiet", "as measured");
      if (timeline.points().stream().anyMatch(point -> !point.known())) {
        y += LINE + 4;
        out.line(TimelinePanel.LEFT, y + 5, TimelinePanel.LEFT + 22, y + 5, "grown guess");
        out.label(
            TimelinePanel.LEFT + 28,
            y + 9,
            "quiet",
            "middle of the bounds, where times or speeds before are not known");
      }
    }
    y += LINE + 10;
  }

  private double entry(double x, String style, String words) {
    out.raw("<rect class=\"")
        .raw(style)
        .raw("\"")
        .attribute("x", x)
        .attribute("y", y)
        .attribute("width", 14)
        .attribute("height", 10)
        .raw("/>\n");
    out.label(x + 20, y + 9, "quiet", words);
    return x + 40 + PLAIN * SurfaceDrawing.width(words);
  }
}
