package hairline.checks.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * How long the moves of an operation take in two programs, as planned.
 *
 * @param operationBefore the operation of the program before; 0 for none
 * @param operationAfter the operation of the program after; 0 for none
 * @param beforeSeconds the known part of it before
 * @param afterSeconds the known part of it after
 */
public record TimeDifference(
    int operationBefore, int operationAfter, double beforeSeconds, double afterSeconds) {

  /** Shorter differences are not told: a millisecond. */
  private static final double LEAST_S = 1e-3;

  /** Compares the times of operations that answer each other, and of those that answer none. */
  static List<TimeDifference> of(
      Map<Integer, Double> before,
      Map<Integer, Double> after,
      Map<Integer, Integer> operationsAfter) {
    List<TimeDifference> all = new ArrayList<>();
    TreeSet<Integer> alone = new TreeSet<>(after.keySet());
    // Where several operations became one, the first of them answers it.
    new TreeMap<>(before)
        .forEach(
            (was, seconds) -> {
              int is = operationsAfter.getOrDefault(was, 0);
              add(all, new TimeDifference(was, alone.remove(is) ? is : 0, seconds, 0), after);
            });
    alone.forEach(is -> add(all, new TimeDifference(0, is, 0, 0), after));
    return all;
  }

  private static void add(
      List<TimeDifference> all, TimeDifference difference, Map<Integer, Double> after) {
    double is = after.getOrDefault(difference.operationAfter(), 0.0);
    if (Math.abs(is - difference.beforeSeconds()) >= LEAST_S) {
      all.add(
          new TimeDifference(
              difference.operationBefore(),
              difference.operationAfter(),
              difference.beforeSeconds(),
              is));
    }
  }
}
