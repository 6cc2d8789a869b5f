package hairline.checks.report;

import hairline.checks.finding.Quantities;
import hairline.checks.stock.SectionLine;
import hairline.checks.stock.StockModel;
import hairline.checks.stock.SurfaceShown;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Phrases and numbers about the part left that several formats share. */
final class SurfaceWords {
  /** Why there is nothing to see. */
  static final String NOTHING = "no cut is known, and the sheet gives no stock: nothing to show";

  private static final int MM_DIGITS = 9;
  private static final int UM_DIGITS = 6;

  private SurfaceWords() {}

  /** Which stock stood there before the first cut. */
  static String stock(SurfaceShown.Under under) {
    if (under.stock().isEmpty()) {
      return under
              .assumedStock()
              .map(
                  box ->
                      "none on the sheet for this offset, assumed a box around all cutting moves, "
                          + upTo(box)
                          + ", the highest floor, or above")
              .orElse("none on the sheet for this offset")
          + "; beside the cuts stands uncut material of which the top is not known";
    }
    StockModel.Box stock = under.stock().get();
    return upTo(stock)
        + ", "
        + (stock.bottomPm().isPresent()
            ? "bottom " + mm(stock.bottomPm().getAsLong()) + " mm"
            : "bottom not known")
        + "; from the sheet";
  }

  private static String upTo(StockModel.Box box) {
    return "X "
        + mm(box.xMinPm())
        + " to "
        + mm(box.xMaxPm())
        + ", Y "
        + mm(box.yMinPm())
        + " to "
        + mm(box.yMaxPm())
        + " mm, top "
        + mm(box.topPm())
        + " mm";
  }

  /** How finely the surface is kept. */
  static String cells(SurfaceShown surface) {
    return "cells of "
        + Quantities.um(surface.cellPm())
        + ", borders true to half of that; heights within "
        + Quantities.um(surface.tolerancePm())
        + " count as one";
  }

  /** What the cells take in memory. */
  static String memory(SurfaceShown.Under under) {
    return mib(under.bytes())
        + " MiB for cells that differ; all offsets together may take "
        + mib(StockModel.Limits.DEFAULT.gridBytes())
        + " MiB";
  }

  /** Mebibytes to a tenth. */
  static String mib(long bytes) {
    return BigDecimal.valueOf(bytes)
        .divide(BigDecimal.valueOf(1 << 20), 1, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  /** "X -2, Y 0 to X 2, Y 0 mm". */
  static String line(SectionLine line) {
    return "X "
        + mm(line.x0Pm())
        + ", Y "
        + mm(line.y0Pm())
        + " to X "
        + mm(line.x1Pm())
        + ", Y "
        + mm(line.y1Pm())
        + " mm";
  }

  /** Exact millimetres without their unit. */
  static String mm(long pm) {
    return plain(BigDecimal.valueOf(pm, MM_DIGITS));
  }

  /** Exact micrometres without their unit. */
  static String um(long pm) {
    return plain(BigDecimal.valueOf(pm, UM_DIGITS));
  }

  /** Millimetres to the picometre. */
  static String mm(double pm) {
    return plain(
        new BigDecimal(pm).setScale(0, RoundingMode.HALF_EVEN).scaleByPowerOfTen(-MM_DIGITS));
  }

  /** A number to twelve significant digits, by its exact value. */
  static String number(double value) {
    return plain(new BigDecimal(value).round(new java.math.MathContext(12)));
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
