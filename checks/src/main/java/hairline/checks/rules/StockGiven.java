package hairline.checks.rules;

import hairline.checks.setup.StockKeys;
import java.util.Optional;
import java.util.stream.Stream;

/** Whether the sheet gives the uncut part, for rules that cannot do without it. */
final class StockGiven {
  private StockGiven() {}

  /** Lists the rule as not checked for each key that lacks. */
  static boolean need(RuleContext context) {
    long given =
        Stream.of(context.need(StockKeys.X), context.need(StockKeys.Y), context.need(StockKeys.TOP))
            .filter(Optional::isPresent)
            .count();
    return given == 3;
  }
}
