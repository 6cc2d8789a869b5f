package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.rules.OperationBook.Operation;
import java.util.List;
import java.util.OptionalLong;

/** Draws the heights along a program: a panel for each operation that cuts, side by side. */
final class HeightsAlong {
  private static final int MOST_PANELS = 8;
  private static final double TOP = 26;
  private static final double TALL = 56;
  private static final double LEFT = 64;
  private static final double GAP = 30;
  private static final double PM_PER_UM = 1e6;

  private HeightsAlong() {}

  /** The drawing; empty where nothing cuts. */
  static String of(ProgramResult result, List<Operation> operations) {
    List<Operation> cutting =
        operations.stream()
            .filter(op -> op.cuts() && !op.heights().isEmpty())
            .limit(MOST_PANELS)
            .toList();
    if (cutting.isEmpty()) {
      return "";
    }
    double width = (Canvas.BRIEF.width() - SurfaceDrawing.MARGIN) / cutting.size();
    SvgText out = new SvgText();
    for (int k = 0; k < cutting.size(); k++) {
      panel(out, result, cutting.get(k), k * width + LEFT, width - LEFT - GAP);
    }
    return BriefBuilder.svg(out.toString(), Canvas.BRIEF.width(), TOP + TALL + 28);
  }

  private static void panel(
      SvgText out, ProgramResult result, Operation op, double left, double width) {
    long lowest = Long.MAX_VALUE;
    long highest = Long.MIN_VALUE;
    for (OptionalLong height : op.heights()) {
      lowest = Math.min(lowest, height.orElse(lowest));
      highest = Math.max(highest, height.orElse(highest));
    }
    double range = Math.max(PM_PER_UM, (double) highest - lowest);
    out.raw("<g>\n<title>").text("operation " + op.number()).raw("</title>\n");
    out.label(left, TOP - 10, "head", op.number() + op.tool().map(t -> ": T" + t).orElse(""));
    Ticks up = Ticks.of(range / PM_PER_UM, 3);
    for (long k = up.first(lowest / PM_PER_UM); up.value(k) <= highest / PM_PER_UM + 1e-9; k++) {
      double y = y(up.value(k) * PM_PER_UM, highest, range);
      out.line(left, y, left + width, y, "grid");
      out.label(left - 6, y + 4, "quiet end", up.text(k));
    }
    out.label(left - 6, TOP - 10, "quiet end", "Z µm");
    SvgText path = new SvgText();
    int count = op.heights().size();
    for (int k = 0; k < count; k++) {
      double y = y((double) op.heights().get(k).orElse(lowest), highest, range);
      path.raw(k == 0 ? "M" : "L").number(left + width * k / count).raw(" ").number(y);
      path.raw("L").number(left + width * (k + 1) / count).raw(" ").number(y);
    }
    out.raw("<path class=\"skin\" d=\"").raw(path.toString()).raw("\"/>\n");
    double foot = TOP + TALL + 6;
    out.line(left, foot, left + width, foot, "tick");
    out.label(left + width / 2, foot + 16, "quiet mid", Words.lines(result, op.first(), op.last()));
    out.raw("</g>\n");
  }

  private static double y(double height, long highest, double range) {
    return TOP + (highest - height) / range * TALL;
  }
}
