package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.CodeKeys;
import hairline.checks.setup.CodeWord;
import hairline.checks.stock.Cut;
import java.util.List;
import java.util.Optional;

/** A tool makes a fine cut and was not measured since it was put in the spindle. */
@AutoService(Rule.class)
public final class ToolNotMeasured implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "tool-not-measured",
              Level.WARNING,
              Group.WARMTH,
              "a tool makes a fine cut and was not measured since it was put in the spindle",
              Need.OVERLAP,
              Need.STATE,
              Need.TIMING)
          .withoutLimit("a tool was measured or it was not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Named named = new Named();
    FineCuts.each(
        on,
        cut -> {
          if (!context.stages().warmth().measuredSinceChange()) {
            context
                .need(CodeKeys.MEASURE_TOOL, cut.at())
                .ifPresent(codes -> judge(context, cut, codes, named));
          }
        });
  }

  /** The tool of the last such cut in words. */
  private static final class Named {
    private Optional<Integer> number = Optional.empty();
    private String words = "";

    String of(Cut cut) {
      Optional<Integer> its = cut.move().modes().tool().value();
      if (words.isEmpty() || !its.equals(number)) {
        number = its;
        words = FineCuts.tool(cut);
      }
      return words;
    }
  }

  private static void judge(RuleContext context, Cut cut, List<CodeWord> codes, Named named) {
    Modal<Integer> tool = cut.move().modes().tool();
    Optional<Place> changed = context.stages().warmth().toolChangedAt();
    if (tool.isUnknown()) {
      context.notChecked(
          "the tool in the spindle is unknown since " + context.line(tool, cut.at()), cut.at());
    } else if (changed.isEmpty()) {
      context.notChecked("the tool is in the spindle from before the program", cut.at());
    } else {
      FineCuts.report(
          context,
          cut,
          cut.move().modes().operation(),
          named.of(cut),
          () ->
              context
                  .occurrence(
                      cut.at(),
                      () ->
                          FineCuts.tool(cut)
                              + " makes a fine cut and was not measured since "
                              + context.line(changed.get(), cut.at())
                              + " put it in the spindle")
                  .fact(
                      () ->
                          "codes that measure: "
                              + String.join(", ", codes.stream().map(CodeWord::toString).toList())
                              + " ("
                              + CodeKeys.MEASURE_TOOL.path()
                              + ")")
                  .cure(() -> codes.get(0) + " between these lines, with the spindle warm"));
    }
  }
}
