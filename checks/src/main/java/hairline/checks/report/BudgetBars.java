package hairline.checks.report;

import hairline.checks.budget.StepBudget;
import hairline.checks.finding.Quantities;
import java.util.List;

/**
 * Draws error budgets as bars: the parts of each step's error in their order, and the tolerance
 * beside them. Parts are told apart by their names below, not by colour alone.
 */
final class BudgetBars {
  private static final int MOST_BARS = 8;
  private static final double LEFT = 210;
  private static final double ROW = 46;
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
    double perUm = (SurfaceDrawing.WIDTH - LEFT - 130) / most;
    SvgText out = new SvgText();
    double y = 8;
    for (StepBudget budget : shown) {
      bar(out, budget, y, perUm);
      y += ROW;
    }
    return BriefBuilder.svg(out.toString(), SurfaceDrawing.WIDTH, y + 4);
  }

  private static double limit(StepBudget budget) {
    return budget.toleranceUm().orElse(0);
  }

  private static void bar(SvgText out, StepBudget budget, double y, double perUm) {
    String name =
        SurfaceDrawing.shortened(budget.step().feature().orElse("no feature"))
            + ", "
            + SurfaceWords.um(budget.step().nominalPm())
            + " µm";
    out.raw("<g>\n<title>")
        .text(name + ": " + Quantities.um(budget.errorUm().typical()))
        .raw("</title>\n");
    out.label(LEFT - 10, y + BAR - 4, "end", name);
    double x = LEFT;
    int k = 0;
    for (StepBudget.Weighed weighed : budget.weighed()) {
      double width = weighed.shareOfError() * budget.errorUm().typical() * perUm;
      if (width <= 0) {
        continue;
      }
      out.raw("<rect class=\"").raw(STYLES[k % 2]).raw("\"");
      out.attribute("x", x).attribute("y", y).attribute("width", width).attribute("height", BAR);
      out.raw("/>\n");
      String words = weighed.part().source().words();
      if (width > SurfaceDrawing.width(words) * 0.9) {
        out.label(x + width / 2, y + BAR + 13, "quiet mid", words);
      }
      x += width;
      k++;
    }
    out.label(x + 6, y + BAR - 4, "", Quantities.um(budget.errorUm().typical()));
    if (budget.toleranceUm().isPresent()) {
      double at = LEFT + limit(budget) * perUm;
      out.line(at, y - 4, at, y + BAR + 4, "cut");
      out.label(
          at + 4,
          y + BAR + 13,
          "cutname",
          "±" + Quantities.significant(limit(budget), 4) + " µm: " + BriefBuilder.decision(budget));
    }
    out.raw("</g>\n");
  }
}
