package hairline.checks.compare;

import hairline.checks.compare.Change.Where;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.rules.Stages;
import hairline.checks.rules.StagesWatcher;
import hairline.checks.stock.Cut;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.StepFound;
import hairline.checks.stock.SurfaceLeft;
import hairline.checks.stock.Terrace;
import hairline.parser.Block;
import hairline.parser.Word;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Watches a check for what it tells of levels, steps, the surface left and the time planned. */
public final class LevelWatcher implements StagesWatcher {
  /** So many levels, and as many steps, are kept. */
  static final int MOST = 20_000;

  private static final int MOST_OPERATIONS = 10_000;

  /**
   * A level as it is cut.
   *
   * @param id its number
   * @param operation the operation that cuts it first
   * @param offset the work offset
   * @param zPm its height
   * @param move the move that brought Z there
   * @param at that place, at its word for Z where it has one
   */
  record Level(int id, int operation, String offset, long zPm, Place move, Place at) {
    Height height() {
      return new Height(offset, zPm);
    }
  }

  /** A height under an offset, in picometres. */
  record Height(String offset, long pm) implements Comparable<Height> {
    @Override
    public int compareTo(Height other) {
      int byOffset = offset.compareTo(other.offset);
      return byOffset != 0 ? byOffset : Long.compare(other.pm, pm);
    }

    String text() {
      return Quantities.um(pm) + (offset.equals("G54") || offset.isEmpty() ? "" : " " + offset);
    }
  }

  /**
   * A step of the part.
   *
   * @param operation the operation that cuts the later of its levels last
   * @param later the level cut later
   * @param earlier the level cut earlier, {@link Cut#UNCUT} for the uncut top
   * @param feature the feature in which it lies; empty for none
   * @param heightPm its height
   * @param at the first block of the later level
   */
  record Step(int operation, int later, int earlier, String feature, long heightPm, Place at) {}

  private final Map<Integer, Level> levels = new LinkedHashMap<>();
  private final List<Step> steps = new ArrayList<>();
  private final Map<Integer, Double> seconds = new TreeMap<>();
  private List<SurfaceLeft> surfaces = List.of();
  private boolean full;
  private @Nullable Stages stages;
  private @Nullable Block block;
  private @Nullable Place lastZ;
  private @Nullable Place lastZWord;

  @Override
  public void begin(Stages stagesOfRun) {
    stages = stagesOfRun;
  }

  @Override
  public void accept(Event event) {
    if (event instanceof Event.BlockStarted started) {
      block = started.block();
    } else if (event instanceof Cut cut) {
      move(cut.move());
      if (cut.inContact() && cut.runsAtLevel() && cut.levelId() > Cut.UNCUT) {
        level(cut);
      }
    } else if (event instanceof Move move) {
      move(move);
    } else if (event instanceof StepFound step) {
      step(step);
    } else if (event instanceof PartLeft part) {
      surfaces = part.surfaces();
    }
  }

  private void move(Move move) {
    if (move.from().zPm() != move.to().zPm() || move.from().unknown() != move.to().unknown()) {
      lastZ = move.at();
      lastZWord = null;
    }
    if (lastZ != null && lastZWord == null) {
      lastZWord = word(lastZ);
    }
    int operation = move.modes().operation();
    if (stages != null && (seconds.size() < MOST_OPERATIONS || seconds.containsKey(operation))) {
      seconds.merge(operation, stages.time().ofThisEvent().atLeastSeconds(), Double::sum);
    }
  }

  /** The place of the block's word for Z, where the block in hand is that of the place. */
  private Place word(Place place) {
    if (block != null && block.line() == place.line()) {
      for (Word word : block.words()) {
        if (word.letter() == 'Z') {
          return place.at(word.span());
        }
      }
    }
    return place;
  }

  private void level(Cut cut) {
    if (levels.containsKey(cut.levelId())) {
      return;
    }
    if (levels.size() == MOST) {
      full = true;
      return;
    }
    Move move = cut.move();
    levels.put(
        cut.levelId(),
        new Level(
            cut.levelId(),
            move.modes().operation(),
            move.modes().workOffset().value().orElse(""),
            move.to().zPm(),
            lastZ == null ? move.at() : lastZ,
            lastZWord == null ? move.at() : lastZWord));
  }

  private void step(StepFound step) {
    if (steps.size() == MOST) {
      full = true;
      return;
    }
    Terrace later = step.later();
    steps.add(
        new Step(
            later.lastOperation(),
            later.levelId(),
            step.earlier().levelId(),
            step.feature().map(f -> f.name()).orElse(""),
            step.heightPm(),
            step.at()));
  }

  /** The surfaces left; each keeps its field. */
  List<SurfaceLeft> surfaces() {
    return surfaces;
  }

  boolean full() {
    return full;
  }

  /** The time that the moves of each operation take at least, as planned. */
  Map<Integer, Double> seconds() {
    return seconds;
  }

  /** The places whose answers in the other program tell which levels answer each other. */
  public Set<Place> placesOfLevels() {
    return levels.values().stream().map(Level::move).collect(Collectors.toSet());
  }

  /** What levels and steps of two programs differ. */
  static List<Change> changes(LevelWatcher before, LevelWatcher after, MotionComparison motion) {
    return new Difference(before, after, motion).changes();
  }

  /** The comparison of what two watchers saw. */
  private static final class Difference {
    private record Key(Change.Kind kind, int before, int after, String was, String is) {}

    private static final class Group {
      final Where first;
      long count;

      Group(Where first) {
        this.first = first;
      }
    }

    private final LevelWatcher before;
    private final LevelWatcher after;
    private final Map<Integer, Integer> operationsAfter;
    private final Map<Integer, Integer> operationsBefore = new TreeMap<>();
    private final Map<Integer, Integer> answers = new HashMap<>();
    private final Map<Integer, Integer> answersBack = new HashMap<>();
    private final Map<Key, Group> groups = new LinkedHashMap<>();

    Difference(LevelWatcher before, LevelWatcher after, MotionComparison motion) {
      this.before = before;
      this.after = after;
      this.operationsAfter = motion.operationsAfter();
      operationsAfter.forEach((was, is) -> operationsBefore.putIfAbsent(is, was));
      Map<Place, List<Level>> byMove =
          after.levels.values().stream().collect(Collectors.groupingBy(Level::move));
      Map<Place, Integer> met = new HashMap<>();
      answers.put(Cut.UNCUT, Cut.UNCUT);
      answersBack.put(Cut.UNCUT, Cut.UNCUT);
      for (Level level : before.levels.values()) {
        // The block may be run several times; its levels answer in their order.
        int time = met.merge(level.move(), 1, Integer::sum) - 1;
        List<Place> places = motion.answers().getOrDefault(level.move(), List.of());
        List<Level> candidates =
            places.stream()
                .distinct()
                .flatMap(place -> byMove.getOrDefault(place, List.of()).stream())
                .toList();
        if (time < candidates.size() && !answersBack.containsKey(candidates.get(time).id())) {
          answers.put(level.id(), candidates.get(time).id());
          answersBack.put(candidates.get(time).id(), level.id());
        }
      }
    }

    List<Change> changes() {
      levels();
      steps();
      List<Change> changes = new ArrayList<>();
      groups.forEach(
          (key, group) ->
              changes.add(
                  new Change(
                      key.kind(),
                      key.before(),
                      key.after(),
                      key.was(),
                      key.is(),
                      group.count,
                      group.first,
                      Optional.empty(),
                      Double.NaN,
                      "")));
      return changes;
    }

    private void levels() {
      for (Level level : before.levels.values()) {
        Level answer = after.levels.get(answers.getOrDefault(level.id(), Cut.NO_LEVEL));
        if (answer != null && !answer.height().equals(level.height())) {
          put(
              new Key(
                  Change.Kind.LEVEL,
                  level.operation(),
                  answer.operation(),
                  level.height().text(),
                  answer.height().text()),
              new Where(Optional.of(level.at()), Optional.of(answer.at())));
        }
      }
      // Of the others the heights count, wherever they lie.
      TreeSet<Integer> operations = new TreeSet<>();
      before.levels.values().forEach(level -> operations.add(level.operation()));
      for (int operation : operations) {
        int is = operationsAfter.getOrDefault(operation, 0);
        others(operation, is);
      }
      for (Level level : after.levels.values()) {
        if (!operationsBefore.containsKey(level.operation())
            && !answersBack.containsKey(level.id())) {
          added(level, 0);
        }
      }
    }

    private void others(int operation, int is) {
      Map<Height, Level> all = heights(before, operation);
      Map<Height, Level> allAfter = heights(after, is);
      for (Level level : before.levels.values()) {
        if (level.operation() == operation
            && !answers.containsKey(level.id())
            && !allAfter.containsKey(level.height())) {
          put(
              new Key(Change.Kind.LEVEL, operation, is, level.height().text(), ""),
              new Where(Optional.of(level.at()), Optional.empty()));
        }
      }
      if (operationsBefore.getOrDefault(is, 0) == operation) {
        for (Level level : after.levels.values()) {
          if (level.operation() == is
              && !answersBack.containsKey(level.id())
              && !all.containsKey(level.height())) {
            added(level, operation);
          }
        }
      }
    }

    private void added(Level level, int operationBefore) {
      put(
          new Key(Change.Kind.LEVEL, operationBefore, level.operation(), "", level.height().text()),
          new Where(Optional.empty(), Optional.of(level.at())));
    }

    private static Map<Height, Level> heights(LevelWatcher watcher, int operation) {
      Map<Height, Level> heights = new TreeMap<>();
      watcher.levels.values().stream()
          .filter(level -> level.operation() == operation)
          .forEach(level -> heights.putIfAbsent(level.height(), level));
      return heights;
    }

    /** The two levels of a step in the numbers of the program after, whichever was cut first. */
    private record Border(int one, int other, String feature) {
      static Border of(int a, int b, String feature) {
        return new Border(Math.min(a, b), Math.max(a, b), feature);
      }
    }

    private record Alike(int operationAfter, String feature, long heightPm) {}

    private void steps() {
      Map<Border, Step> borders = new LinkedHashMap<>();
      after.steps.forEach(
          step -> borders.put(Border.of(step.later(), step.earlier(), step.feature()), step));
      List<Step> gone = new ArrayList<>();
      for (Step step : before.steps) {
        Integer later = answers.get(step.later());
        Integer earlier = answers.get(step.earlier());
        Step answer =
            later == null || earlier == null
                ? null
                : borders.remove(Border.of(later, earlier, step.feature()));
        if (answer == null) {
          gone.add(step);
        } else if (answer.heightPm() != step.heightPm()) {
          put(
              new Key(
                  Change.Kind.STEP,
                  step.operation(),
                  answer.operation(),
                  Quantities.um(step.heightPm()),
                  Quantities.um(answer.heightPm())),
              where(step, answer));
        }
      }
      // Steps of one height in one operation are alike wherever they lie: only their number counts.
      Map<Alike, Integer> spare = new HashMap<>();
      borders.values().forEach(step -> spare.merge(alike(step), 1, Integer::sum));
      List<Step> lost = new ArrayList<>();
      for (Step step : gone) {
        Alike alike =
            new Alike(
                operationsAfter.getOrDefault(step.operation(), 0), step.feature(), step.heightPm());
        if (spare.getOrDefault(alike, 0) > 0) {
          spare.merge(alike, -1, Integer::sum);
        } else {
          lost.add(step);
        }
      }
      for (Step step : lost) {
        put(
            new Key(
                Change.Kind.STEP,
                step.operation(),
                operationsAfter.getOrDefault(step.operation(), 0),
                Quantities.um(step.heightPm()),
                ""),
            new Where(Optional.of(changed(before, step, answers, after)), Optional.empty()));
      }
      for (Step step : borders.values()) {
        if (spare.getOrDefault(alike(step), 0) > 0) {
          spare.merge(alike(step), -1, Integer::sum);
          put(
              new Key(
                  Change.Kind.STEP,
                  operationsBefore.getOrDefault(step.operation(), 0),
                  step.operation(),
                  "",
                  Quantities.um(step.heightPm())),
              new Where(Optional.empty(), Optional.of(changed(after, step, answersBack, before))));
        }
      }
    }

    private static Alike alike(Step step) {
      return new Alike(step.operation(), step.feature(), step.heightPm());
    }

    /** Where a step became another one: at the level that lies elsewhere. */
    private Where where(Step step, Step answer) {
      boolean byLater = moved(step.later());
      int was = byLater || !moved(step.earlier()) ? step.later() : step.earlier();
      return new Where(
          Optional.of(at(before, was, step)),
          Optional.of(at(after, answers.getOrDefault(was, Cut.NO_LEVEL), answer)));
    }

    private boolean moved(int id) {
      Level level = before.levels.get(id);
      Level answer = after.levels.get(answers.getOrDefault(id, Cut.NO_LEVEL));
      return level != null && answer != null && !answer.height().equals(level.height());
    }

    /** Where a step is gone or new: at the level that has no answer, or another one. */
    private static Place changed(
        LevelWatcher of, Step step, Map<Integer, Integer> answers, LevelWatcher other) {
      for (int id : new int[] {step.later(), step.earlier()}) {
        Level level = of.levels.get(id);
        Level answer = other.levels.get(answers.getOrDefault(id, Cut.NO_LEVEL));
        if (level != null && (answer == null || !answer.height().equals(level.height()))) {
          return level.at();
        }
      }
      return at(of, step.later(), step);
    }

    private static Place at(LevelWatcher of, int id, Step step) {
      Level level = of.levels.get(id);
      return level == null ? step.at() : level.at();
    }

    private void put(Key key, Where where) {
      groups.computeIfAbsent(key, k -> new Group(where)).count++;
    }
  }
}
