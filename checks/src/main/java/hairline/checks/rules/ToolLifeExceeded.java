package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Contact;
import hairline.checks.stock.Cut;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** A tool cuts over a greater length than it lasts. */
@AutoService(Rule.class)
public final class ToolLifeExceeded implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "tool-life-exceeded",
          Level.WARNING,
          Group.CHIPS,
          "a tool cuts over a greater length than it lasts",
          Need.OVERLAP);

  /** Sums of lengths are good to a picometre. */
  private static final double ROUNDING_MM = 1e-9;

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** What one tool has cut so far. */
  private static final class Use {
    private final Tool tool;
    private final double lifeMm;
    private double lengthMm;
    private double lost;
    private double unknownMm;
    private Optional<Cut> over = Optional.empty();

    Use(Tool tool, double lifeMm) {
      this.tool = tool;
      this.lifeMm = lifeMm;
    }

    void take(Cut cut) {
      // Summed with compensation: a program has millions of short moves.
      double part = cut.move().lengthMm() * cut.removal().contactShare() - lost;
      double sum = lengthMm + part;
      lost = sum - lengthMm - part;
      lengthMm = sum;
      if (over.isEmpty() && isOver(lengthMm)) {
        over = Optional.of(cut);
      }
    }

    boolean isOver(double mm) {
      return mm > lifeMm + ROUNDING_MM;
    }
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Map<Integer, Optional<Use>> uses = new LinkedHashMap<>();
    on.event(
        Cut.class,
        cut -> {
          if (!cut.move().isFeed() || cut.contact() == Contact.NO) {
            return;
          }
          if (cut.tool().isPresent()) {
            take(context, cut, uses);
          } else {
            context.notChecked(
                "the tool in the spindle is not known or not on the sheet", cut.at());
          }
        });
    on.event(
        Ended.class,
        end -> uses.values().forEach(use -> use.ifPresent(u -> judge(context, u, end.at()))));
  }

  private static void take(RuleContext context, Cut cut, Map<Integer, Optional<Use>> uses) {
    Tool tool = cut.tool().orElseThrow();
    uses.computeIfAbsent(
            tool.number(),
            n -> context.need(tool, ToolKeys.LIFE, cut.at()).map(life -> new Use(tool, life.mm())))
        .ifPresent(
            use -> {
              if (cut.inContact()) {
                use.take(cut);
              } else {
                use.unknownMm += cut.move().lengthMm();
              }
            });
  }

  private static void judge(RuleContext context, Use use, Place end) {
    if (use.over.isPresent()) {
      speak(context, use, use.over.get());
    } else if (use.isOver(use.lengthMm + use.unknownMm)) {
      context.notChecked(
          "of a part of its moves it is not known whether tool " + use.tool.number() + " cuts",
          end);
    }
  }

  private static void speak(RuleContext context, Use use, Cut over) {
    context.report(
        context
            .occurrence(
                over.at(),
                "tool "
                    + use.tool.number()
                    + " cuts over "
                    + length(use.lengthMm)
                    + ", its life is "
                    + length(use.lifeMm))
            .fact(
                "it runs out at "
                    + context.line(over.at(), over.at())
                    + "; life from "
                    + use.tool.path(ToolKeys.LIFE))
            .cure("a second tool from here on, or fewer passes")
            .figure("length", use.lengthMm, "mm")
            .figure("life", use.lifeMm, "mm")
            .operation(over.move().modes().operation())
            .cause("tool " + use.tool.number())
            .severity(use.lengthMm - use.lifeMm));
  }

  /** To a tenth of a micrometre. */
  private static String length(double mm) {
    return Quantities.mm(Math.round(mm * 1e4) * 100_000L);
  }
}
