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
 * @param added findings that the program before did not have, had less often or at a lower level
 * @param other findings of one rule in one operation that say something else now
 */
public record FindingsDifference(List<Finding> gone, List<Finding> added, List<Pair> other) {

  /** A finding before and after. */
  public record Pair(Finding before, Finding after) {}

  public FindingsDifference {
    gone = List.copyOf(gone);
    added = List.copyOf(added);
    other = List.copyOf(other);
  }

  /** Whether both programs have the same findings. */
  public boolean none() {
    return gone.isEmpty() && added.isEmpty() && other.isEmpty();
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
    List<Finding> added = new ArrayList<>();
    List<Pair> other = new ArrayList<>();
    Alike inOneOperation =
        (a, b) ->
            a.rule().equals(b.rule())
                && operationsAfter.getOrDefault(a.first().operation(), a.first().operation())
                    == b.first().operation();
    List<Finding> rest =
        without(
            gone,
            after.findings(),
            (a, b) ->
                inOneOperation.are(a, b)
                    && same(a, b)
                    && (a.count() == b.count() || sameMotion.contains(b.first().operation())));
    for (Finding finding :
        pairs(gone, rest, other, (a, b) -> inOneOperation.are(a, b) && sameCause(a, b))) {
      added.add(finding);
    }
    added = new ArrayList<>(pairs(gone, added, other, inOneOperation));
    // What has become worse counts as new as well.
    for (Pair pair : other) {
      if (worse(pair.before(), pair.after())) {
        added.add(pair.after());
      }
      if (worse(pair.after(), pair.before())) {
        gone.add(pair.before());
      }
    }
    other.removeIf(p -> worse(p.before(), p.after()) || worse(p.after(), p.before()));
    return new FindingsDifference(gone, added, other);
  }

  private static boolean worse(Finding before, Finding after) {
    return after.level().compareTo(before.level()) > 0
        || (after.level() == before.level() && after.count() > before.count());
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
