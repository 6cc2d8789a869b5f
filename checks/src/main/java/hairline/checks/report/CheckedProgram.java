package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.stock.DepthsShown;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.timing.ProgramSummary;
import hairline.checks.warmth.ProgramTimeline;
import java.util.Optional;

/**
 * One program of a run: what the check says of it, or why there was none.
 *
 * @param name the program as the user named it
 * @param result what the check says; empty where there was none
 * @param summary what the program does as a whole, where that was asked for
 * @param surface what is to be seen of the part it leaves, where that was asked for
 * @param depths the depths along each move, where they were asked for
 * @param timeline the program along its time, where that was asked for
 * @param feeds the feeds that the machine reaches, where they were asked for
 * @param brief what a brief tells beside, where one was asked for
 * @param budgets whether the error budgets of the result are to be shown
 * @param trouble why there was none; empty where there was one
 */
public record CheckedProgram(
    String name,
    Optional<ProgramResult> result,
    Optional<ProgramSummary> summary,
    Optional<SurfaceShown> surface,
    Optional<DepthsShown> depths,
    Optional<ProgramTimeline> timeline,
    Optional<Feeds> feeds,
    Optional<Brief> brief,
    boolean budgets,
    Optional<Trouble> trouble) {

  /** A program that was checked. */
  public static CheckedProgram of(ProgramResult result, Optional<ProgramSummary> summary) {
    return new CheckedProgram(
        result.program(),
        Optional.of(result),
        summary,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        false,
        Optional.empty());
  }

  /** The same with what is to be seen of the part. */
  public CheckedProgram withSurface(Optional<SurfaceShown> shown) {
    return new CheckedProgram(
        name, result, summary, shown, depths, timeline, feeds, brief, budgets, trouble);
  }

  /** The same with the depths along each move. */
  public CheckedProgram withDepths(Optional<DepthsShown> shown) {
    return new CheckedProgram(
        name, result, summary, surface, shown, timeline, feeds, brief, budgets, trouble);
  }

  /** The same with its timeline. */
  public CheckedProgram withTimeline(Optional<ProgramTimeline> shown) {
    return new CheckedProgram(
        name, result, summary, surface, depths, shown, feeds, brief, budgets, trouble);
  }

  /** The same with the feeds that the machine reaches. */
  public CheckedProgram withFeeds(Optional<Feeds> shown) {
    return new CheckedProgram(
        name, result, summary, surface, depths, timeline, shown, brief, budgets, trouble);
  }

  /** The same with what a brief tells beside. */
  public CheckedProgram withBrief(Optional<Brief> told) {
    return new CheckedProgram(
        name, result, summary, surface, depths, timeline, feeds, told, budgets, trouble);
  }

  /** The same, its error budgets shown or not. */
  public CheckedProgram withBudgets(boolean shown) {
    return new CheckedProgram(
        name, result, summary, surface, depths, timeline, feeds, brief, shown, trouble);
  }

  /** A program that could not be checked. */
  public static CheckedProgram failed(String name, Trouble trouble) {
    return new CheckedProgram(
        name,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        false,
        Optional.of(trouble));
  }
}
