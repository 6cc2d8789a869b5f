package hairline.checks.cli;

import hairline.checks.rules.Rules;
import hairline.checks.setup.Nearest;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Names of rules as users type them. */
final class RuleNames {
  private RuleNames() {}

  /**
   * The names, each of a rule that there is.
   *
   * @throws Failed if one is not; the message names the nearest
   */
  static Set<String> known(List<String> names) throws Failed {
    Set<String> all = new LinkedHashSet<>();
    for (String name : names) {
      if (Rules.named(name).isEmpty()) {
        List<String> rules = Rules.all().stream().map(rule -> rule.info().name()).toList();
        String nearest =
            Nearest.of(name, rules).map(near -> "nearest is `" + near + "`; ").orElse("");
        throw Failed.of(Failure.RULE_UNKNOWN, name, nearest);
      }
      all.add(name);
    }
    return all;
  }
}
