package hairline.checks.cli;

import hairline.checks.rules.Rules;
import hairline.checks.setup.Nearest;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Names of rules as users type them. */
final class RuleNames {
  /** All of them, for completion. */
  static final class All implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Rules.all().stream().map(rule -> rule.info().name()).iterator();
    }
  }

  private static final int MOST_ALIKE = 8;

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
            Nearest.of(name, rules)
                .map(near -> "nearest is `" + near + "`; ")
                .orElseGet(() -> alike(name, rules));
        throw Failed.of(Failure.RULE_UNKNOWN, name, nearest);
      }
      all.add(name);
    }
    return all;
  }

  /** The rules of which the name is a part. */
  private static String alike(String part, List<String> rules) {
    String lower = part.toLowerCase(Locale.ROOT);
    List<String> alike =
        rules.stream().filter(rule -> !lower.isBlank() && rule.contains(lower)).toList();
    return alike.isEmpty() || alike.size() > MOST_ALIKE
        ? ""
        : "there are " + String.join(", ", alike) + "; ";
  }
}
