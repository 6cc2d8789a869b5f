package hairline.checks.compare;

import hairline.checks.motion.Modes;
import hairline.checks.motion.Place;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * What two programs do otherwise, act by act. Each is interpreted twice: once for the numbers by
 * which the two are aligned, once, side by side, to tell what differs.
 *
 * @param changes the differences, in the order of the operations after, then before
 * @param titles what the operations of the program after are called, by number
 * @param titlesBefore the same for the program before
 * @param operationsAfter which operation after an operation before answers
 * @param answers of the places asked about, all moves after that answer one there, in their order
 * @param pointsBeside whether a way in pieces was taken for a whole one although a point between
 *     lies beside it, by no more than rounding
 * @param notCompared what could not be compared
 */
public record MotionComparison(
    List<Change> changes,
    Map<Integer, String> titles,
    Map<Integer, String> titlesBefore,
    Map<Integer, Integer> operationsAfter,
    Map<Place, List<Place>> answers,
    boolean pointsBeside,
    List<String> notCompared) {

  /** So many operations of a program are named. */
  private static final int MOST_OPERATIONS = 10_000;

  /** A program that can be run. */
  public interface Program {
    /**
     * Runs it.
     *
     * @throws IOException if it can't be read
     */
    void run(hairline.checks.motion.EventSink sink) throws IOException;
  }

  public MotionComparison {
    changes = List.copyOf(changes);
    notCompared = List.copyOf(notCompared);
  }

  /** Compares, to the picometre, and asks about no places. */
  static MotionComparison of(Program before, Program after) throws IOException {
    return of(before, after, 0, Set.of());
  }

  /**
   * Compares.
   *
   * @param incrementPm the machine's increment, half of which a point on a straight way may lie
   *     beside it; 0 where not known
   * @param asked the places before whose answers are wanted
   * @throws IOException if a program can't be read
   */
  public static MotionComparison of(
      Program before, Program after, long incrementPm, Set<Place> asked) throws IOException {
    Acts actsBefore = acts(before);
    Acts actsAfter = acts(after);
    int[] pairs = Alignment.of(actsBefore, actsAfter);
    Changes changes = new Changes();
    Map<Place, List<Place>> answers = new HashMap<>();
    Unsettled open = new Unsettled(changes, incrementPm);
    Map<Integer, String> titlesBefore = new TreeMap<>();
    Map<Integer, String> titles = new TreeMap<>();
    Map<Integer, Integer> operations = new TreeMap<>();
    Map<Integer, Integer> operationsBefore = new TreeMap<>();
    try (ActStream left = new ActStream(sink -> before.run(new ActReader(sink)));
        ActStream right = new ActStream(sink -> after.run(new ActReader(sink)))) {
      int next = 0;
      for (int k = 0; k <= actsBefore.count(); k++) {
        boolean end = k == actsBefore.count();
        int pair = end ? actsAfter.count() : pairs[k];
        while (next < pair) {
          Act act = right.next();
          title(titles, act);
          open.added(act);
          next++;
        }
        if (end) {
          break;
        }
        Act act = left.next();
        title(titlesBefore, act);
        if (pair < 0) {
          open.lost(act);
          continue;
        }
        Act answer = right.next();
        title(titles, answer);
        if (operations.size() < MOST_OPERATIONS) {
          operations.putIfAbsent(act.modes().operation(), answer.modes().operation());
          operationsBefore.putIfAbsent(answer.modes().operation(), act.modes().operation());
        }
        if (act.kind() == Act.Kind.MOVE && asked.contains(act.at())) {
          answers.computeIfAbsent(act.at(), p -> new ArrayList<>()).add(answer.at());
        }
        if (actsBefore.wholes()[k] != actsAfter.wholes()[pair]) {
          open.pair(act, answer);
        } else {
          open.settle();
        }
        next++;
      }
    }
    open.settle();
    List<String> notCompared = new ArrayList<>(changes.left());
    if (actsBefore.full() || actsAfter.full()) {
      notCompared.add(
          "what comes behind the first " + Acts.MOST + " moves and other acts of a program");
    }
    return new MotionComparison(
        changes.all(operations, operationsBefore),
        titles,
        titlesBefore,
        operations,
        answers,
        open.pointsBeside(),
        notCompared);
  }

  private static Acts acts(Program program) throws IOException {
    Acts acts = new Acts();
    Consumer<Act> sink = acts::add;
    program.run(new ActReader(sink));
    return acts;
  }

  private static void title(Map<Integer, String> titles, Act act) {
    Modes modes = act.modes();
    if (act.kind() == Act.Kind.MOVE
        && titles.size() < MOST_OPERATIONS
        && !titles.containsKey(modes.operation())) {
      titles.put(
          modes.operation(),
          modes.tool().value().map(tool -> "tool " + tool).orElse("no known tool")
              + (modes.turningRpm().filter(rpm -> rpm > 0).isPresent()
                  ? " at " + State.spindle(modes)
                  : ""));
    }
  }
}
