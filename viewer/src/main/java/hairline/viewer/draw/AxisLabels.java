package hairline.viewer.draw;

import hairline.checks.report.Ticks;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * Round heights along a stretch of an axis, in a unit that keeps them short: mm, µm or nm by the
 * distance from one to the next. Where the numbers would be long all the same, they count from a
 * round height, which is named once.
 *
 * @param unit the unit
 * @param from the height they count from, as text with its unit; empty for zero
 * @param ticks the heights
 */
public record AxisLabels(String unit, String from, List<Tick> ticks) {
  /** A number of more digits before the point than this is long. */
  private static final double LONG = 1_000;

  private static final long PM_PER_NM = 1_000;
  private static final long PM_PER_UM = 1_000_000;
  private static final long PM_PER_MM = 1_000_000_000;

  /**
   * A round height.
   *
   * @param pm the height
   * @param text the number alone
   */
  public record Tick(double pm, String text) {}

  public AxisLabels {
    ticks = List.copyOf(ticks);
  }

  /**
   * The labels between two heights.
   *
   * @param most how many there is room for
   */
  public static AxisLabels between(double lowPm, double highPm, int most) {
    double range = highPm - lowPm;
    if (!(range > 0)) {
      return new AxisLabels("µm", "", List.of());
    }
    double each = range / Math.max(1, most);
    long unit = each > 50_000_000 ? PM_PER_MM : each > 50_000 ? PM_PER_UM : PM_PER_NM;
    String name = unit == PM_PER_MM ? "mm" : unit == PM_PER_UM ? "µm" : "nm";
    double base = 0;
    String from = "";
    if (Math.max(Math.abs(lowPm), Math.abs(highPm)) / unit >= LONG && unit < PM_PER_MM) {
      long coarse = unit * 1000;
      base = Math.rint((lowPm + highPm) / 2 / coarse) * coarse;
      from =
          Ticks.minus(
                  new BigDecimal(base)
                      .divide(BigDecimal.valueOf(coarse), 0, RoundingMode.HALF_EVEN)
                      .toPlainString())
              + (unit == PM_PER_UM ? " mm" : " µm");
    }
    Ticks round = Ticks.of(range / unit, Math.max(1, most));
    List<Tick> ticks = new ArrayList<>();
    double lowest = (lowPm - base) / unit;
    double highest = (highPm - base) / unit;
    for (long k = round.first(lowest); round.value(k) <= highest * (1 + 1e-12) + 1e-12; k++) {
      String text = round.text(k);
      boolean signed = !from.isEmpty() && round.value(k) > 0;
      ticks.add(new Tick(base + round.value(k) * unit, (signed ? "+" : "") + text));
      if (ticks.size() > 2 * most + 2) {
        break;
      }
    }
    return new AxisLabels(name, from, ticks);
  }
}
