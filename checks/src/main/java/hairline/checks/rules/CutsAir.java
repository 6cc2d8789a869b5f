package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Ended;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.LimitKeys;
import hairline.checks.stock.Contact;
import hairline.checks.stock.ContactBasis;
import hairline.checks.stock.Cut;
import java.util.Optional;

/** Much of what an operation runs at feed removes nothing. */
@AutoService(Rule.class)
public final class CutsAir implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "cuts-air",
          Level.NOTE,
          Group.MOTION,
          "much of what an operation runs at feed removes nothing",
          Need.SURFACE);

  /** Sums of lengths are good to a picometre. */
  private static final double ROUNDING_MM = 1e-9;

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** One operation so far; lengths in mm. */
  private static final class Operation {
    private final int number;
    private double airMm;
    private double cutMm;
    private double unknownMm;
    private Optional<Cut> firstInAir = Optional.empty();
    private Optional<Cut> firstUnknown = Optional.empty();
    private Optional<Cut> ofUnknownLength = Optional.empty();
    private Optional<Cut> longest = Optional.empty();

    Operation(int number) {
      this.number = number;
    }

    void take(Cut cut) {
      double lengthMm = cut.move().lengthMm();
      if (!cut.move().from().knowsXyz() || !cut.move().to().knowsXyz()) {
        ofUnknownLength = ofUnknownLength.or(() -> Optional.of(cut));
        return;
      }
      if (cut.contact() == Contact.UNKNOWN || cut.contactBy() != ContactBasis.STOCK_BOX) {
        unknownMm += lengthMm;
        firstUnknown = firstUnknown.or(() -> Optional.of(cut));
        return;
      }
      double share = cut.inContact() ? cut.removal().contactShare() : 0;
      cutMm += lengthMm * share;
      airMm += lengthMm * (1 - share);
      if (!cut.inContact()) {
        firstInAir = firstInAir.or(() -> Optional.of(cut));
        if (longest.isEmpty() || lengthMm > longest.get().move().lengthMm()) {
          longest = Optional.of(cut);
        }
      } else if (share < 1) {
        firstInAir = firstInAir.or(() -> Optional.of(cut));
      }
    }

    double totalMm() {
      return airMm + cutMm + unknownMm;
    }
  }

  private static final class Current {
    private Operation operation = new Operation(0);
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (!StockGiven.need(context)) {
      return;
    }
    Current current = new Current();
    on.event(
        Cut.class,
        cut -> {
          int number = cut.move().modes().operation();
          if (number != current.operation.number) {
            judge(context, current.operation);
            current.operation = new Operation(number);
          }
          if (cut.move().isFeed()) {
            current.operation.take(cut);
          }
        });
    on.event(Ended.class, end -> judge(context, current.operation));
  }

  private static void judge(RuleContext context, Operation operation) {
    if (operation.ofUnknownLength.isPresent()) {
      context.notChecked("the length of a move is not known", operation.ofUnknownLength.get().at());
      return;
    }
    operation
        .firstInAir
        .or(() -> operation.firstUnknown)
        .ifPresent(
            at ->
                context
                    .need(LimitKeys.AIR_SHARE, at.at())
                    .ifPresent(share -> compare(context, operation, at, share)));
  }

  private static void compare(RuleContext context, Operation operation, Cut at, double share) {
    double allowedMm = share * operation.totalMm() + ROUNDING_MM;
    if (operation.airMm > allowedMm) {
      speak(context, operation, at, share);
    } else if (operation.airMm + operation.unknownMm > allowedMm) {
      context.notChecked("of a part of the moves it is not known whether they cut", at.at());
    }
  }

  private static void speak(RuleContext context, Operation operation, Cut at, double share) {
    double totalMm = operation.totalMm();
    String longest =
        operation
            .longest
            .map(
                cut ->
                    "; the longest move in air is "
                        + context.line(cut.at(), at.at())
                        + " with "
                        + Quantities.mm(cut.move().lengthMm()))
            .orElse("");
    context.report(
        context
            .occurrence(
                at.at(),
                Quantities.significant(100 * operation.airMm / totalMm, 4)
                    + " % of the path at feed removes nothing, allowed "
                    + Quantities.significant(100 * share, 4)
                    + " %")
            .fact(
                Quantities.mm(operation.airMm)
                    + " of "
                    + Quantities.mm(totalMm)
                    + " of the operation; "
                    + LimitKeys.AIR_SHARE.path()
                    + longest)
            .cure("rapids where nothing is cut, or another stock on the sheet")
            .figure("air", operation.airMm, "mm")
            .figure("total", totalMm, "mm")
            .figure("share", operation.airMm / totalMm, "")
            .operation(operation.number)
            .cause("air")
            .severity(operation.airMm / totalMm));
  }
}
