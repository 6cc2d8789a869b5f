package hairline.checks.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;

/** All rules there are. A rule joins by its {@code AutoService} annotation alone. */
public final class Rules {
  private static final List<Rule> ALL =
      ServiceLoader.load(Rule.class, Rules.class.getClassLoader()).stream()
          .map(ServiceLoader.Provider::get)
          .sorted(
              Comparator.comparing((Rule rule) -> rule.info().group())
                  .thenComparing(rule -> rule.info().name()))
          .toList();

  private Rules() {}

  /** All rules, by group, then by name. */
  public static List<Rule> all() {
    return ALL;
  }

  /** The rule of this name. */
  public static Optional<Rule> named(String name) {
    return ALL.stream().filter(rule -> rule.info().name().equals(name)).findFirst();
  }
}
