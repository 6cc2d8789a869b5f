package hairline.checks.finding;

import hairline.checks.budget.StepBudget;
import java.util.List;
import java.util.Map;

/**
 * All that a check says of one program.
 *
 * @param program its name as given
 * @param files the files it is made of: the program itself, then subprogram files; {@link
 *     hairline.checks.motion.Place#file()} is an index into it
 * @param findings what stands, in order of place, then rule
 * @param accepted findings that an accept comment answers
 * @param notChecked what could not be decided
 * @param assumptions defaults used
 * @param sheet name of the setup sheet, or a phrase for the embedded one
 * @param embeddedSheet whether the embedded sheet stood in for a missing one
 * @param excerpts source lines that findings point at, by place
 * @param stepBudgetReached whether the step budget ended the interpretation
 * @param macroUnread whether a macro statement was met that is not read
 * @param notUnderstood whether a block, a number or a call was met that could not be followed, so
 *     that axes or modes are unknown behind it
 * @param budgets the error budgets of steps, in the order of their places
 * @param deletable whether one of its files has blocks that the block-delete switch leaves out
 */
public record ProgramResult(
    String program,
    List<String> files,
    List<Finding> findings,
    List<Finding> accepted,
    List<NotChecked> notChecked,
    List<Assumption> assumptions,
    String sheet,
    boolean embeddedSheet,
    Map<SourceLine, String> excerpts,
    boolean stepBudgetReached,
    boolean macroUnread,
    boolean notUnderstood,
    List<Budget> budgets,
    boolean deletable) {

  /**
   * The error budget of a step.
   *
   * @param step the budget
   * @param blockDelete with which setting of the block-delete switch it holds
   */
  public record Budget(StepBudget step, Finding.BlockDelete blockDelete) {}

  /** A line of one of the files. */
  public record SourceLine(int file, int line) {}

  public ProgramResult {
    files = List.copyOf(files);
    findings = List.copyOf(findings);
    accepted = List.copyOf(accepted);
    notChecked = List.copyOf(notChecked);
    assumptions = List.copyOf(assumptions);
    excerpts = Map.copyOf(excerpts);
    budgets = List.copyOf(budgets);
  }

  /** A result without budgets and deletable blocks. */
  public ProgramResult(
      String program,
      List<String> files,
      List<Finding> findings,
      List<Finding> accepted,
      List<NotChecked> notChecked,
      List<Assumption> assumptions,
      String sheet,
      boolean embeddedSheet,
      Map<SourceLine, String> excerpts,
      boolean stepBudgetReached,
      boolean macroUnread,
      boolean notUnderstood) {
    this(
        program,
        files,
        findings,
        accepted,
        notChecked,
        assumptions,
        sheet,
        embeddedSheet,
        excerpts,
        stepBudgetReached,
        macroUnread,
        notUnderstood,
        List.of(),
        false);
  }
}
