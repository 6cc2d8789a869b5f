package hairline.checks.compare;

import hairline.checks.finding.ProgramResult;
import hairline.checks.stock.SurfaceDifference;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * All that two programs do otherwise.
 *
 * @param before what the check says of the one
 * @param after what it says of the other
 * @param sheets the values that the two sheets have otherwise
 * @param times operations whose moves take longer or shorter, as planned
 * @param changes the differences of motion and state, by operation
 * @param titles what the operations of the program after are called
 * @param titlesBefore the same of the program before
 * @param surfaces the differences of the surfaces left, by work offset; none where there are none
 * @param findings the differences of what the check finds
 * @param notCompared what could not be compared, and why
 */
public record Comparison(
    ProgramResult before,
    ProgramResult after,
    List<SheetDifference> sheets,
    List<TimeDifference> times,
    List<Change> changes,
    Map<Integer, String> titles,
    Map<Integer, String> titlesBefore,
    List<SurfaceDifference> surfaces,
    FindingsDifference findings,
    List<String> notCompared) {

  public Comparison {
    sheets = List.copyOf(sheets);
    times = List.copyOf(times);
    changes = List.copyOf(changes);
    surfaces = List.copyOf(surfaces);
    notCompared = List.copyOf(notCompared);
  }

  /**
   * Puts together what was compared.
   *
   * @param sheets the values that the two sheets have otherwise
   * @param off motion and state with the block delete switch off
   * @param on the same with the switch on; empty where no block can be deleted
   */
  public static Comparison of(
      ProgramResult before,
      ProgramResult after,
      List<SheetDifference> sheets,
      MotionComparison off,
      Optional<MotionComparison> on,
      LevelWatcher levelsBefore,
      LevelWatcher levelsAfter) {
    List<Change> changes = new ArrayList<>();
    if (on.isEmpty()) {
      changes.addAll(off.changes());
    } else {
      List<Change> withOn = new ArrayList<>(on.get().changes());
      for (Change change : off.changes()) {
        changes.add(withOn.remove(change) ? change : change.onlyWith("off"));
      }
      withOn.forEach(change -> changes.add(change.onlyWith("on")));
    }
    changes.addAll(LevelWatcher.changes(levelsBefore, levelsAfter, off));
    List<String> notCompared = new ArrayList<>(off.notCompared());
    on.ifPresent(
        o -> {
          o.notCompared().stream().filter(n -> !notCompared.contains(n)).forEach(notCompared::add);
          notCompared.add("levels, steps and the surface left with the block delete switch on");
        });
    if (levelsBefore.full() || levelsAfter.full()) {
      notCompared.add("levels and steps behind the first " + LevelWatcher.MOST + " of each");
    }
    // Points between that rounding puts beside a way move borders by less than it, so that a cell
    // there may fall to the other side.
    boolean rounded =
        changes.stream().noneMatch(change -> change.kind().movesSurface())
            && sheets.isEmpty()
            && (off.pointsBeside() || on.map(MotionComparison::pointsBeside).orElse(false));
    List<SurfaceDifference> surfaces =
        SurfaceDifference.of(levelsBefore.surfaces(), levelsAfter.surfaces()).stream()
            .filter(surface -> !(rounded && surface.bordersOnly()))
            .toList();
    return new Comparison(
        before,
        after,
        sheets,
        TimeDifference.of(levelsBefore.seconds(), levelsAfter.seconds(), off.operationsAfter()),
        changes,
        off.titles(),
        off.titlesBefore(),
        surfaces,
        FindingsDifference.of(
            before,
            after,
            off.operationsAfter(),
            sheets.isEmpty() ? sameMotion(changes, off.operationsAfter()) : Set.of()),
        notCompared);
  }

  private static Set<Integer> sameMotion(
      List<Change> changes, Map<Integer, Integer> operationsAfter) {
    Set<Integer> same = new TreeSet<>(operationsAfter.values());
    changes.forEach(change -> same.remove(change.operationAfter()));
    if (changes.isEmpty()) {
      // What is found of the program as a whole.
      same.add(0);
    }
    return same;
  }

  /** Whether motion, state or surface differ. */
  public boolean differ() {
    return !changes.isEmpty() || surfaces.stream().anyMatch(SurfaceDifference::differs);
  }

  /**
   * Whether the program after has findings that the one before had not, or not so grave or often.
   */
  public boolean newFindings() {
    return findings.worse();
  }
}
