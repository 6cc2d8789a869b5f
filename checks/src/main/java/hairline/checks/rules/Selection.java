package hairline.checks.rules;

import java.util.List;
import java.util.Set;

/**
 * Which rules a run asks.
 *
 * @param only names of the rules to run; empty for all
 * @param skip names of rules that are not run
 */
public record Selection(Set<String> only, Set<String> skip) {
  /** All rules. */
  public static final Selection ALL = new Selection(Set.of(), Set.of());

  public Selection {
    only = Set.copyOf(only);
    skip = Set.copyOf(skip);
  }

  /** The rules that are run, given what the sheet skips. */
  public List<Rule> rules(List<String> skippedBySheet) {
    return Rules.all().stream()
        .filter(
            rule -> {
              String name = rule.info().name();
              return (only.isEmpty() || only.contains(name))
                  && !skip.contains(name)
                  && !skippedBySheet.contains(name);
            })
        .toList();
  }
}
