package hairline.checks.compare;

import hairline.checks.compare.Change.Where;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Place;
import hairline.checks.stock.Cut;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.StepFound;
import hairline.checks.stock.SurfaceLeft;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiFunction;

/** Watches a check for what it tells of levels, steps and the surface left. */
public final class LevelWatcher implements EventSink {
  /** So many levels, and as many steps, are kept for each operation. */
  static final int MOST = 2_000;

  private static final int MOST_OPERATIONS = 10_000;

  /** A height under an offset, in picometres, and where it was first met. */
  private record Height(String offset, long pm) implements Comparable<Height> {
    @Override
    public int compareTo(Height other) {
      int byOffset = offset.compareTo(other.offset);
      return byOffset != 0 ? byOffset : Long.compare(other.pm, pm);
    }

    String text() {
      return Quantities.um(pm) + (offset.equals("G54") || offset.isEmpty() ? "" : " " + offset);
    }
  }

  private record Seen(Place first, long count) {}

  private final Map<Integer, Map<Height, Seen>> levels = new TreeMap<>();
  private final Map<Integer, Map<Height, Seen>> steps = new TreeMap<>();
  private List<SurfaceLeft> surfaces = List.of();
  private boolean full;

  @Override
  public void accept(Event event) {
    if (event instanceof Cut cut) {
      if (cut.inContact() && cut.runsAtLevel() && cut.levelId() > Cut.UNCUT) {
        put(
            levels,
            cut.move().modes().operation(),
            new Height(cut.move().modes().workOffset().value().orElse(""), cut.move().to().zPm()),
            cut.at());
      }
    } else if (event instanceof StepFound step) {
      put(steps, step.later().lastOperation(), new Height("", step.heightPm()), step.at());
    } else if (event instanceof PartLeft part) {
      surfaces = part.surfaces();
    }
  }

  private void put(Map<Integer, Map<Height, Seen>> all, int operation, Height height, Place at) {
    if (!all.containsKey(operation) && all.size() == MOST_OPERATIONS) {
      full = true;
      return;
    }
    Map<Height, Seen> heights = all.computeIfAbsent(operation, o -> new TreeMap<>());
    Seen seen = heights.get(height);
    if (seen == null && heights.size() == MOST) {
      full = true;
      return;
    }
    heights.put(
        height, new Seen(seen == null ? at : seen.first(), seen == null ? 1 : seen.count() + 1));
  }

  /** The surfaces left; each keeps its field. */
  List<SurfaceLeft> surfaces() {
    return surfaces;
  }

  boolean full() {
    return full;
  }

  /** What levels and steps of two programs differ. */
  static List<Change> changes(
      LevelWatcher before, LevelWatcher after, Map<Integer, Integer> operationsAfter) {
    List<Change> changes = new ArrayList<>();
    Map<Integer, Integer> back = new TreeMap<>();
    operationsAfter.forEach((was, is) -> back.putIfAbsent(is, was));
    TreeSet<Integer> operations = new TreeSet<>(operationsAfter.keySet());
    operations.addAll(before.levels.keySet());
    operations.addAll(before.steps.keySet());
    BiFunction<Map<Integer, Map<Height, Seen>>, Integer, Map<Height, Seen>> of =
        (all, operation) -> all.getOrDefault(operation, new TreeMap<>());
    for (int operation : operations) {
      int is = operationsAfter.getOrDefault(operation, 0);
      // Where several operations before became one, each level is held against that one.
      levels(
          changes, operation, is, of.apply(before.levels, operation), of.apply(after.levels, is));
      steps(changes, operation, is, of.apply(before.steps, operation), of.apply(after.steps, is));
    }
    for (int operation : after.levels.keySet()) {
      if (!back.containsKey(operation)) {
        levels(changes, 0, operation, new TreeMap<>(), of.apply(after.levels, operation));
      }
    }
    for (int operation : after.steps.keySet()) {
      if (!back.containsKey(operation)) {
        steps(changes, 0, operation, new TreeMap<>(), of.apply(after.steps, operation));
      }
    }
    return changes;
  }

  private static void levels(
      List<Change> changes, int before, int after, Map<Height, Seen> was, Map<Height, Seen> is) {
    List<Height> gone = was.keySet().stream().filter(h -> !is.containsKey(h)).toList();
    List<Height> added = is.keySet().stream().filter(h -> !was.containsKey(h)).toList();
    boolean answer = gone.size() == added.size();
    for (int k = 0; k < gone.size(); k++) {
      Optional<Height> partner = answer ? Optional.of(added.get(k)) : Optional.empty();
      changes.add(
          change(Change.Kind.LEVEL, before, after, Optional.of(gone.get(k)), partner, was, is, 1));
    }
    for (int k = answer ? added.size() : 0; k < added.size(); k++) {
      changes.add(
          change(
              Change.Kind.LEVEL,
              before,
              after,
              Optional.empty(),
              Optional.of(added.get(k)),
              was,
              is,
              1));
    }
  }

  private static void steps(
      List<Change> changes, int before, int after, Map<Height, Seen> was, Map<Height, Seen> is) {
    TreeSet<Height> all = new TreeSet<>(was.keySet());
    all.addAll(is.keySet());
    for (Height height : all) {
      long a = was.containsKey(height) ? was.get(height).count() : 0;
      long b = is.containsKey(height) ? is.get(height).count() : 0;
      if (a > b) {
        changes.add(
            change(
                Change.Kind.STEP,
                before,
                after,
                Optional.of(height),
                Optional.empty(),
                was,
                is,
                a - b));
      } else if (b > a) {
        changes.add(
            change(
                Change.Kind.STEP,
                before,
                after,
                Optional.empty(),
                Optional.of(height),
                was,
                is,
                b - a));
      }
    }
  }

  private static Change change(
      Change.Kind kind,
      int before,
      int after,
      Optional<Height> gone,
      Optional<Height> added,
      Map<Height, Seen> was,
      Map<Height, Seen> is,
      long count) {
    return new Change(
        kind,
        before,
        after,
        gone.map(Height::text).orElse(""),
        added.map(Height::text).orElse(""),
        count,
        new Where(gone.flatMap(h -> first(was, h)), added.flatMap(h -> first(is, h))),
        Optional.empty(),
        Double.NaN,
        "");
  }

  private static Optional<Place> first(Map<Height, Seen> heights, Height height) {
    return Optional.ofNullable(heights.get(height)).map(Seen::first);
  }
}
