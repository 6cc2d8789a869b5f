package hairline.checks.report;

import hairline.checks.stock.SurfaceShown;
import hairline.checks.warmth.ProgramTimeline;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * The part left as a drawing (SVG 1.1): each surface from above, its sections below; and timelines,
 * where they were asked for. Nothing in it is loaded from elsewhere, and nothing runs. At most
 * {@value #MOST_DRAWN} surfaces and timelines are drawn; the rest is counted.
 */
final class SvgReport implements ReportWriter {
  /** Most surfaces and timelines in one drawing. */
  static final int MOST_DRAWN = 24;

  private static final double FOOT = 34;

  /** As many letters of a condition as a line has room for. */
  private static final int MOST_LETTERS = 110;

  /** The look of all drawings; {@link HtmlReport} puts names for the colours. */
  static final String STYLE =
      """
      text{font-family:"DejaVu Sans",Verdana,sans-serif;font-size:11px;fill:#1c2430}
      .name{font-size:17px;font-weight:bold}
      .head{font-size:13px;font-weight:bold}
      .quiet{fill:#56616f}
      .mid{text-anchor:middle}
      .end{text-anchor:end}
      .on{paint-order:stroke;stroke:#fff;stroke-width:3px;stroke-linejoin:round;font-weight:bold}
      .edge{stroke:#56616f;stroke-width:.6}
      .frame{fill:none;stroke:#56616f;stroke-width:1}
      .tick{stroke:#56616f;stroke-width:.8}
      .grid{stroke:#d9dee4;stroke-width:.7}
      .bar{stroke:#1c2430;stroke-width:3}
      .cuthalo{stroke:#fff;stroke-width:4;stroke-opacity:.8}
      .cut{stroke:#b3261e;stroke-width:1.6;stroke-dasharray:9 3 2 3}
      .cutname{fill:#b3261e}
      .body{fill:#dfe4ea;stroke:none}
      .skin{fill:none;stroke:#1c2430;stroke-width:1.4;stroke-linejoin:miter}
      .step{stroke:#8a94a1;stroke-width:.7;stroke-dasharray:2 2}
      .turns{fill:#dfe4ea}
      .band{fill:#bcd3e8;fill-opacity:.7;stroke:none}
      .grown{fill:none;stroke:#1f5f8b;stroke-width:1.8;stroke-linejoin:round}
      .guess{stroke-dasharray:5 3}
      .froze{stroke:#b3261e;stroke-width:1.2;stroke-dasharray:2 3}
      .warm{fill:#e3a63a}
      .measure{fill:#b3261e}
      .change{fill:#56616f}
      .operator{fill:#6b3fa0}
      .fine{fill:#1c2430}
      .other{fill:#a3adb9}
      .stepname{fill:#8a1c16;font-weight:bold;text-anchor:middle}
      """;

  private final Writer out;
  private final ReportOptions options;
  private final List<String> drawings = new ArrayList<>();
  private final SvgText conditions = new SvgText();
  private double height = SurfaceDrawing.MARGIN;
  private int left;
  private boolean timed;

  SvgReport(OutputStream out, ReportOptions options) {
    this.options = options;
    this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
  }

  @Override
  public void begin() {
    for (Conditions.Named condition : options.conditions().all()) {
      String text = condition.name() + ": " + condition.text();
      for (String line : Wrap.at(MOST_LETTERS, Visible.of(text))) {
        conditions.label(SurfaceDrawing.MARGIN, height + 12, "head", line);
        height += 18;
      }
    }
  }

  @Override
  public void program(CheckedProgram program) {
    if (program.trouble().isPresent()) {
      put(program.name(), program.trouble().get().sentence());
    } else if (program.surface().isEmpty() || program.surface().get().offsets().isEmpty()) {
      put(program.name(), SurfaceWords.NOTHING);
    } else {
      SurfaceShown surface = program.surface().get();
      for (SurfaceShown.Under under : surface.offsets()) {
        if (drawings.size() >= MOST_DRAWN) {
          left++;
        } else {
          SurfaceDrawing drawing =
              new SurfaceDrawing(
                  Canvas.ALONE,
                  program.name(),
                  surface,
                  under,
                  program.result().orElseThrow().sheet(),
                  height);
          drawings.add(drawing.markup());
          height = drawing.bottom() + SurfaceDrawing.MARGIN;
        }
      }
    }
    if (program.timeline().isPresent()) {
      timed = true;
      timeline(program, program.timeline().get());
    }
  }

  private void timeline(CheckedProgram program, ProgramTimeline timeline) {
    if (drawings.size() >= MOST_DRAWN) {
      left++;
      return;
    }
    TimelineDrawing drawing =
        new TimelineDrawing(
            Canvas.ALONE, program.name(), timeline, program.result().orElseThrow(), height);
    drawings.add(drawing.markup());
    height = drawing.bottom() + SurfaceDrawing.MARGIN;
  }

  /** A program of which there is nothing to draw. */
  private void put(String name, String why) {
    if (drawings.size() >= MOST_DRAWN) {
      left++;
      return;
    }
    SvgText text = new SvgText();
    text.label(SurfaceDrawing.MARGIN, height + 16, "name", SurfaceDrawing.shortened(name));
    text.label(SurfaceDrawing.MARGIN, height + 36, "quiet", why);
    drawings.add(text.toString());
    height += 36 + 2 * SurfaceDrawing.MARGIN;
  }

  @Override
  public void end(Verdict verdict) throws IOException {
    SvgText head = new SvgText();
    double all = height + FOOT;
    head.raw("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"")
        .raw(" role=\"img\" aria-labelledby=\"t d\"")
        .attribute("width", Canvas.ALONE.width())
        .attribute("height", all)
        .raw(" viewBox=\"0 0 ")
        .number(Canvas.ALONE.width())
        .raw(" ")
        .number(all)
        .raw("\">\n<title id=\"t\">")
        .text(timed ? "The part left, and the time on the way" : "The part left")
        .raw("</title>\n<desc id=\"d\">")
        .text(
            "What part programs leave of the stock, seen from above and coloured by height, with"
                + " sections"
                + (timed ? "; speed and growth of the spindle, measuring and cuts along time" : "")
                + "; computed by hairline. ")
        .text(Words.CAUTION)
        .raw("</desc>\n<style>\n")
        .raw(STYLE)
        .raw("</style>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
    out.write(head.toString());
    out.write(conditions.toString());
    for (String drawing : drawings) {
      out.write(drawing);
    }
    String rest =
        left == 0
            ? ""
            : Words.count(left, timed ? "more drawing" : "more surface") + " not drawn. ";
    out.write(
        new SvgText()
            .label(SurfaceDrawing.MARGIN, height + 14, "quiet", rest + Words.CAUTION)
            .raw("</svg>\n")
            .toString());
    out.flush();
  }
}
