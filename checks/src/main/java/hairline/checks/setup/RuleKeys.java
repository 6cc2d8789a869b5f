package hairline.checks.setup;

import java.util.List;
import java.util.Map;

/** Keys of the rules, {@code rules}. */
public final class RuleKeys {
  /** Names of rules that are not run. */
  public static final Key<List<String>> SKIP =
      Key.of(
          "rules.skip",
          Types.list(new RuleNameType(), 0, 1000),
          "[]",
          "names of rules that are not run");

  /** Levels of rules: error | warning | note. */
  public static final Key<Map<String, RuleLevel>> LEVEL =
      Key.of("rules.level", new RuleLevelsType(), "{}", "levels of rules: error | warning | note");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL = List.of(SKIP, LEVEL);

  private RuleKeys() {}
}
