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
 * @param rules names of the rules that are asked
 */
public record ReportOptions(
    String version,
    Optional<Level> failOn,
    boolean colour,
    boolean quiet,
    boolean verbose,
    List<String> rules) {
  public ReportOptions {
    rules = List.copyOf(rules);
  }

  /** Whether a finding of this level fails a run. */
  public boolean fails(Level level) {
    return failOn.isPresent() && level.compareTo(failOn.get()) >= 0;
  }
}
