package hairline.checks.report;

import hairline.checks.budget.StepBudget;
import hairline.checks.finding.Quantities;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Draws error budgets as bars: the parts of each step's error in their order, and the tolerance
 * beside them. Parts are told apart by their names below, not by colour alone.
 *
 * <p>A bar ends where the error does. Where drifts work against the others, these are drawn as much
 * shorter as they are undone, and the drifts are named behind the bar where there is room.
 */
final class BudgetBars {
  private static final int MOST_BARS = 8;
  private static final double LEFT = 210;
  private static final double RIGHT = 130;
  private static final double ROW = 36;
  private static final int MOST_LETTERS = 20;

  /** A text that is not bold is so much narrower. */
  private static final double PLAIN = 0.88;

  private static final double BAR = 16;
  private static final String[] STYLES = {"parta", "partb"};

  private BudgetBars() {}

  /** The drawing; empty where there is no budget. */
  static String of(List<StepBudget> budgets) {
    List<StepBudget> shown = budgets.stream().limit(MOST_BARS).toList();
    double most = 0;
    for (StepBudget budget : shown) {
      most = Math.max(most, budget.errorUm().typical());
      most = Math.max(most, limit(budget));
    }
    if (shown.isEmpty() || most <= 0) {
      return "";
    }
    double perUm = (Canvas.BRIEF.width() - LEFT - RIGHT) / most;
    SvgText out = new SvgText();
    double y = 8;
    for (StepBudget budget : shown) {
      bar(out, budget, y, perUm);
      y += ROW;
    }
    return BriefBuilder.svg(out.toString(), Canvas.BRIEF.width(), y + 4);
  }

  private static double limit(StepBudget budget) {
    return budget.toleranceUm().orElse(0);
  }

  private static void bar(SvgText out, StepBudget budget, double y, double perUm) {
    String name =
        SurfaceDrawing.shortened(budget.step().feature().orElse("no feature"), MOST_LETTERS)
            + ", "
            + SurfaceWords.um(budget.step().heightPm())
            + " µm";
    String error = Quantities.um(budget.errorUm().typical());
    String undone =
        budget.weighed().stream()
            .filter(weighed -> weighed.shareOfError() < 0)
            .map(weighed -> weighed.part().source().words())
            .collect(Collectors.joining(" and "));
    String less = undone.isEmpty() ? "" : ", less " + undone;
    double shares = budget.weighed().stream().mapToDouble(w -> Math.max(0, w.shareOfError())).sum();
    out.raw("<g>\n<title>").text(name + ": " + error + less).raw("</title>\n");
    out.label(LEFT - 10, y + BAR - 4, "end", name);
    double limitFrom = Canvas.BRIEF.width();
    double limitTo = 0;
    if (budget.toleranceUm().isPresent()) {
      double at = LEFT + limit(budget) * perUm;
      String words =
          "±" + Quantities.significant(limit(budget), 4) + " µm: " + BriefBuilder.decided(budget);
      boolean room = at + 4 + width(words) <= Canvas.BRIEF.width();
      out.label(room ? at + 4 : at - 4, y + BAR + 13, room ? "cutname" : "cutname end", words);
      limitFrom = room ? at + 4 : at - 4 - width(words);
      limitTo = room ? at + 4 + width(words) : at - 4;
    }
    double x = LEFT;
    int k = 0;
    for (StepBudget.Weighed weighed : budget.weighed()) {
      double width = weighed.shareOfError() / shares * budget.errorUm().typical() * perUm;
      // No number where no part has a share: the whole error is nothing.
      if (!(width > 0)) {
        continue;
      }
      out.raw("<rect class=\"").raw(STYLES[k % 2]).raw("\"");
      out.attribute("x", x).attribute("y", y).attribute("width", width).attribute("height", BAR);
      out.raw("/>\n");
      String words = weighed.part().source().words();
      double half = width(words) / 2;
      boolean free = x + width / 2 + half < limitFrom || x + width / 2 - half > limitTo;
      if (free && width > width(words)) {
        out.label(x + width / 2, y + BAR + 13, "quiet mid", words);
      }
      x += width;
      k++;
    }
    if (budget.toleranceUm().isPresent()) {
      double at = LEFT + limit(budget) * perUm;
      out.line(at, y - 4, at, y + BAR + 4, "cuthalo");
      out.line(at, y - 4, at, y + BAR + 4, "cut");
    }
    double line = LEFT + limit(budget) * perUm;
    double free = line > x + 6 ? line - 4 : Canvas.BRIEF.width();
    boolean room = x + 6 + width(error + less) <= free;
    out.label(x + 6, y + BAR - 4, "", room ? error + less : error);
    out.raw("</g>\n");
  }

  private static double width(String text) {
    return SurfaceDrawing.width(text) * PLAIN;
  }
}
