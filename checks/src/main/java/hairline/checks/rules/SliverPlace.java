package hairline.checks.rules;

import hairline.checks.finding.Quantities;
import hairline.checks.stock.Sliver;

/** Where a sliver stands, for the facts of a finding. */
final class SliverPlace {
  private SliverPlace() {}

  /** "at Y-0.13, 2.448 mm long": its middle and its length. */
  static String of(Sliver sliver) {
    return "at X"
        + Quantities.significant(sliver.xPm() / 1e9, 5)
        + " Y"
        + Quantities.significant(sliver.yPm() / 1e9, 5)
        + ", "
        + Quantities.mm(sliver.lengthPm() / 1e9)
        + " long";
  }
}
