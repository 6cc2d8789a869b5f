package hairline.checks.setup;

import java.util.List;
import java.util.stream.Collectors;

/** A setup sheet that can't be used, with all that is wrong with it. */
public final class SheetException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<SheetProblem> problems;

  SheetException(List<SheetProblem> problems) {
    super(problems.stream().map(SheetProblem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  /** All problems found, in the order of the sheet. */
  public List<SheetProblem> problems() {
    return problems;
  }
}
