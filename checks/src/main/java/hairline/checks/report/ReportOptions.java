package hairline.checks.report;

import hairline.checks.finding.Level;
import java.util.List;
import java.util.Optional;

/**
 * How reports are to look.
 *
 * @param version the version of the program
 * @param failOn the lowest level that fails a run; empty for none
 * @param colour whether the text report may use colour
 * @param quiet whether the text report is one line a finding
 * @param verbose whether lists are shown whole
 * @param width columns of the text report
 * @param rules names of the rules that are asked
 * @param conditions what makes the run less than a whole one
 */
public record ReportOptions(
    String version,
    Optional<Level> failOn,
    boolean colour,
    boolean quiet,
    boolean verbose,
    int width,
    List<String> rules,
    Conditions conditions) {
  /** Columns of a text report that no terminal shows. */
  public static final int USUAL_WIDTH = 100;

  public ReportOptions {
    rules = List.copyOf(rules);
  }

  /** The same for a file: no colour, the usual width. */
  public ReportOptions inFile() {
    return new ReportOptions(
        version, failOn, false, quiet, verbose, USUAL_WIDTH, rules, conditions);
  }

  /** Whether a finding of this level fails a run. */
  public boolean fails(Level level) {
    return failOn.isPresent() && level.compareTo(failOn.get()) >= 0;
  }
}
