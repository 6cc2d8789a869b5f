package hairline.checks.compare;

import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the check says of one program and not of the other. Where a finding stands does not count:
 * lines move.
 *
 * @param gone findings that the program after has no more
 * @param added findings that the program before did not have
 * @param changed findings of one rule in one operation that both have, and not alike
 */
public record FindingsDifference(List<Finding> gone, List<Finding> added, List<Pair> changed) {

  /** A finding before and after. */
  public record Pair(Finding before, Finding after) {
    /** What has become of it: its level first, then how often it occurs, then what it says. */
    public How how() {
      int level = after.level().compareTo(before.level());
      if (level != 0) {
        return level > 0 ? How.GRAVER : How.MILDER;
      }
      return after.count() == before.count()
          ? How.OTHERWISE
          : after.count() > before.count() ? How.OFTENER : How.RARER;
    }
  }

  /** What can become of a finding that stays. */
  public enum How {
    /** At a higher level than before. */
    GRAVER,
    /** At one level, at more places. */
    OFTENER,
    /** At one level, at as many places; other figures or another cause. */
    OTHERWISE,
    /** At one level, at fewer places. */
    RARER,
    /** At a lower level. */
    MILDER;

    /** Whether the program after is worse for it: that counts as a new finding would. */
    public boolean worse() {
      return this == GRAVER || this == OFTENER;
    }
  }

  public FindingsDifference {
    gone = List.copyOf(gone);
    added = List.copyOf(added);
    changed = List.copyOf(changed);
  }

  /** Whether both programs have the same findings. */
  public boolean none() {
    return gone.isEmpty() && added.isEmpty() && changed.isEmpty();
  }

  /**
   * Whether the program after has a finding that the one before had not, or not so grave or often.
   */
  public boolean worse() {
    return !added.isEmpty() || changed.stream().anyMatch(pair -> pair.how().worse());
  }

  private interface Alike {
    boolean are(Finding before, Finding after);
  }

  /**
   * Compares.
   *
   * @param operationsAfter which operation after an operation before answers
   * @param sameMotion operations after that do the same as before under the same sheet: if the same
   *     is found there oftener, moves were only divided
   */
  public static FindingsDifference of(
      ProgramResult before,
      ProgramResult after,
      Map<Integer, Integer> operationsAfter,
      Set<Integer> sameMotion) {
    List<Finding> gone = new ArrayList<>(before.findings());
    List<Pair> changed = new ArrayList<>();
    Alike inOneOperation =
        (a, b) ->
            a.rule().equals(b.rule())
                && operationsAfter.getOrDefault(a.first().operation(), a.first().operation())
                    == b.first().operation();
    List<Finding> added =
        without(
            gone,
            after.findings(),
            (a, b) ->
                inOneOperation.are(a, b)
                    && same(a, b)
                    && (a.count() == b.count() || sameMotion.contains(b.first().operation())));
    added = pairs(gone, added, changed, (a, b) -> inOneOperation.are(a, b) && sameCause(a, b));
    added = pairs(gone, added, changed, inOneOperation);
    return new FindingsDifference(gone, added, changed);
  }

  /** Takes alike ones out of both lists; returns what is left of the second. */
  private static List<Finding> without(List<Finding> gone, List<Finding> after, Alike alike) {
    return pairs(gone, after, new ArrayList<>(), alike);
  }

  private static List<Finding> pairs(
      List<Finding> gone, List<Finding> after, List<Pair> pairs, Alike alike) {
    List<Finding> rest = new ArrayList<>();
    for (Finding finding : after) {
      Optional<Finding> twin = gone.stream().filter(g -> alike.are(g, finding)).findFirst();
      if (twin.isPresent()) {
        gone.remove(twin.get());
        pairs.add(new Pair(twin.get(), finding));
      } else {
        rest.add(finding);
      }
    }
    return rest;
  }

  private static boolean same(Finding a, Finding b) {
    return sameCause(a, b)
        && a.level() == b.level()
        && a.blockDelete() == b.blockDelete()
        && placeless(a.first().message()).equals(placeless(b.first().message()))
        && placeless(a.worst().message()).equals(placeless(b.worst().message()));
  }

  private static boolean sameCause(Finding a, Finding b) {
    return placeless(a.first().cause()).equals(placeless(b.first().cause()));
  }

  /** Without the numbers of lines, which shift. */
  private static String placeless(String text) {
    return text.replaceAll("\\blines? [0-9]+( of [^ ,;]+)?", "line");
  }
}
