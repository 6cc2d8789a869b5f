package hairline.checks.rules;

import hairline.checks.finding.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What is known of a rule without running it.
 *
 * @param name lower case with hyphens; never changes once released
 * @param level the level at which it speaks when sure
 * @param group which of the questions it belongs to
 * @param summary one line: what it finds
 * @param needs what the stages before it must deliver
 * @param hides which rules its findings explain away
 * @param withoutLimit why it holds no figure against an allowed one; empty where it does, and then
 *     each finding states both, with their unit
 */
public record RuleInfo(
    String name,
    Level level,
    Group group,
    String summary,
    Set<Need> needs,
    List<Hides> hides,
    Optional<String> withoutLimit) {

  public RuleInfo {
    needs = Set.copyOf(needs);
    hides = List.copyOf(hides);
  }

  /** A rule that explains nothing away. */
  public static RuleInfo of(String name, Level level, Group group, String summary, Need... needs) {
    return new RuleInfo(name, level, group, summary, Set.of(needs), List.of(), Optional.empty());
  }

  /** The same rule, explaining others away. */
  public RuleInfo hiding(Scope scope, String... rules) {
    List<Hides> more = new ArrayList<>(hides);
    for (String rule : rules) {
      more.add(new Hides(rule, scope, Optional.empty()));
    }
    return with(more);
  }

  /** The same rule, explaining away the findings of another in the program for one cause. */
  public RuleInfo hidingCause(String rule, String cause) {
    List<Hides> more = new ArrayList<>(hides);
    more.add(new Hides(rule, Scope.PROGRAM, Optional.of(cause)));
    return with(more);
  }

  private RuleInfo with(List<Hides> more) {
    return new RuleInfo(name, level, group, summary, needs, more, withoutLimit);
  }

  /** The same rule, which holds no figure against an allowed one, and why there is none. */
  public RuleInfo withoutLimit(String reason) {
    return new RuleInfo(name, level, group, summary, needs, hides, Optional.of(reason));
  }

  /** Whether it needs to know what touches the part. */
  public boolean needsContact() {
    return needs.contains(Need.OVERLAP) || needs.contains(Need.SURFACE);
  }

  /** The questions, in the order reports list rules. */
  public enum Group {
    NUMBERS,
    STEPS,
    CHIPS,
    WARMTH,
    MOTION,
    STATE,
    BUDGET
  }

  /** What a rule needs. */
  public enum Need {
    /** Words as written and stored. */
    WORDS,
    /** Modal state and its changes. */
    STATE,
    /** Contact and fine cuts. */
    OVERLAP,
    /** Contact, and the surface as well: levels, steps, step-downs, walls. */
    SURFACE,
    /** Times. */
    TIMING
  }

  /** How far a finding explains others away. */
  public enum Scope {
    /** In its own block. */
    BLOCK,
    /** In its operation. */
    OPERATION,
    /** In the whole program. */
    PROGRAM
  }

  /**
   * A rule whose findings are explained away.
   *
   * @param rule its name; "*" for every other rule
   * @param scope how far
   * @param cause the only cause of its findings that is explained away; empty for all
   */
  public record Hides(String rule, Scope scope, Optional<String> cause) {}
}
