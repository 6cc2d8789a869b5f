package hairline.checks.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;

/** All rules there are. A rule joins by its {@code AutoService} annotation alone. */
public final class Rules {
  private static final List<Rule> ALL = found();

  private Rules() {}

  private static List<Rule> found() {
    List<Rule> all = new ArrayList<>();
    ServiceLoader.load(Rule.class, Rules.class.getClassLoader()).forEach(all::add);
    all.sort(Rules::byGroupThenName);
    return List.copyOf(all);
  }

  private static int byGroupThenName(Rule one, Rule other) {
    int groups = one.info().group().compareTo(other.info().group());
    return groups != 0 ? groups : one.info().name().compareTo(other.info().name());
  }

  /** All rules, by group, then by name. */
  public static List<Rule> all() {
    return ALL;
  }

  /** The rule of this name. */
  public static Optional<Rule> named(String name) {
    return ALL.stream().filter(rule -> rule.info().name().equals(name)).findFirst();
  }
}
