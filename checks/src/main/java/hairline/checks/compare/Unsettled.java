package hairline.checks.compare;

import hairline.checks.motion.Move;
import hairline.checks.motion.Position;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Acts that differ, kept until both programs stand at one place again. A straight move, an arc or a
 * helix in one program and the same way in several moves in the other are one motion; where they
 * differ in feed, state or a stop on the way, that is told.
 *
 * <p>A point between lies on the way where no other point of the machine's increment lies nearer in
 * any axis: half an increment. Where both programs divide a way, the points must lie on it to the
 * picometre, or a point moved by one increment would go unseen.
 */
final class Unsettled {
  /** So many acts of a program are kept; beyond, they are settled as they are. */
  static final int MOST = 100_000;

  /** Ends of pieces closer than this share of their way are one. */
  private static final double SAME_SHARE = 1e-11;

  private final Changes changes;
  private final double halfIncrementPm;
  private final List<Act> before = new ArrayList<>();
  private final List<Act> after = new ArrayList<>();
  private final List<int[]> pairs = new ArrayList<>();
  private boolean pointsBeside;

  /**
   * @param incrementPm the machine's increment; 0 where not known
   */
  Unsettled(Changes changes, long incrementPm) {
    this.changes = changes;
    this.halfIncrementPm = incrementPm / 2.0;
  }

  /** Whether a point between was taken to lie on a way that it lies beside, for rounding. */
  boolean pointsBeside() {
    return pointsBeside;
  }

  void lost(Act act) {
    before.add(act);
    room();
  }

  void added(Act act) {
    after.add(act);
    room();
  }

  /** Two acts that answer each other and are not the same. */
  void pair(Act was, Act is) {
    pairs.add(new int[] {before.size(), after.size()});
    before.add(was);
    after.add(is);
    if (sameEnd(was, is)) {
      settle();
    } else {
      room();
    }
  }

  private static boolean sameEnd(Act was, Act is) {
    return was.move().isPresent()
        && is.move().isPresent()
        && was.move().get().to().equals(is.move().get().to());
  }

  private void room() {
    if (before.size() + after.size() > MOST) {
      settle();
    }
  }

  /** Tells what differs among the acts kept. */
  void settle() {
    boolean[] doneBefore = new boolean[before.size()];
    boolean[] doneAfter = new boolean[after.size()];
    if (before.size() != after.size() || before.size() > 1) {
      ways(doneBefore, doneAfter);
    }
    int nextPair = 0;
    int k = 0;
    int m = 0;
    while (k < before.size() || m < after.size()) {
      int[] pair =
          nextPair < pairs.size() ? pairs.get(nextPair) : new int[] {before.size(), after.size()};
      for (; m < pair[1]; m++) {
        if (!doneAfter[m]) {
          changes.added(after.get(m));
        }
      }
      for (; k < pair[0]; k++) {
        if (!doneBefore[k]) {
          changes.lost(before.get(k));
        }
      }
      if (nextPair < pairs.size()) {
        // Both are done or none: a way is taken only where it holds whole pairs.
        if (!doneBefore[k]) {
          changes.pair(before.get(k), after.get(m));
        }
        k++;
        m++;
        nextPair++;
      }
    }
    before.clear();
    after.clear();
    pairs.clear();
  }

  /** A stretch of each program; the ends are included. */
  private record Ways(int from, int to, int fromAfter, int toAfter) {}

  private void ways(boolean[] doneBefore, boolean[] doneAfter) {
    Map<Position, List<Integer>> starts = new HashMap<>();
    for (int m = 0; m < after.size(); m++) {
      if (divisible(after.get(m))) {
        starts.computeIfAbsent(move(after, m).from(), p -> new ArrayList<>()).add(m);
      }
    }
    int[] partners = new int[before.size()];
    Arrays.fill(partners, -1);
    pairs.forEach(pair -> partners[pair[0]] = pair[1]);
    int nextAfter = 0;
    for (int k = 0; k < before.size(); k++) {
      if (!divisible(before.get(k))) {
        continue;
      }
      for (int m : starts.getOrDefault(move(before, k).from(), List.of())) {
        if (m < nextAfter) {
          continue;
        }
        Ways ways = ways(k, m);
        if (ways != null && wholePairs(ways, partners) && oneWay(ways)) {
          Arrays.fill(doneBefore, ways.from(), ways.to() + 1, true);
          Arrays.fill(doneAfter, ways.fromAfter(), ways.toAfter() + 1, true);
          nextAfter = ways.toAfter() + 1;
          k = ways.to();
          break;
        }
      }
    }
  }

  private static boolean divisible(Act act) {
    return act.move()
        .filter(m -> m.kind() == Move.Kind.LINE || m.kind() == Move.Kind.RAPID || isCircle(m))
        .filter(m -> m.from().unknown() == m.to().unknown() && m.to().knowsXyz())
        .isPresent();
  }

  private static boolean isCircle(Move move) {
    return move.arc().isPresent() && move.modes().plane().value().isPresent();
  }

  /** Whether two moves can be pieces of one motion. */
  private static boolean ofOneSort(Move a, Move b) {
    return a.kind() == b.kind() && (!isCircle(a) || CircleCourse.plane(a) == CircleCourse.plane(b));
  }

  private static Move move(List<Act> acts, int k) {
    return acts.get(k).move().orElseThrow();
  }

  /** From a common start on to the next common end; null where there is none, or no division. */
  private @Nullable Ways ways(int from, int fromAfter) {
    Move first = move(before, from);
    if (!ofOneSort(first, move(after, fromAfter))) {
      return null;
    }
    int to = from;
    int toAfter = fromAfter;
    double far = far(first.from(), first, 0);
    double farAfter = far(first.from(), move(after, toAfter), 0);
    // Where circles meet, as many turns must lie behind both.
    while (!move(before, to).to().equals(move(after, toAfter).to())
        || Math.abs(far - farAfter) > Math.PI) {
      boolean behind = far < farAfter;
      List<Act> acts = behind ? before : after;
      int next = (behind ? to : toAfter) + 1;
      if (next == acts.size()
          || !divisible(acts.get(next))
          || !ofOneSort(first, move(acts, next))
          || !move(acts, next).from().equals(move(acts, next - 1).to())) {
        return null;
      }
      if (behind) {
        to = next;
        far = far(first.from(), move(acts, next), far);
      } else {
        toAfter = next;
        farAfter = far(first.from(), move(acts, next), farAfter);
      }
    }
    boolean divided = to > from || toAfter > fromAfter;
    return divided ? new Ways(from, to, fromAfter, toAfter) : null;
  }

  /** How far a move leads: the square of its distance from the start, or the angle so far. */
  private static double far(Position start, Move move, double before) {
    return move.arc().isPresent()
        ? before + Math.abs(move.arc().get().sweepRad())
        : StraightCourse.far(start, move.to());
  }

  private boolean wholePairs(Ways ways, int[] partners) {
    for (int k = 0; k < partners.length; k++) {
      boolean in = k >= ways.from() && k <= ways.to();
      int partner = partners[k];
      if (partner >= 0 && in != (partner >= ways.fromAfter() && partner <= ways.toAfter())) {
        return false;
      }
    }
    return true;
  }

  /** Whether both go the same way; if so, what differs on it is told. */
  private boolean oneWay(Ways ways) {
    List<Move> left = moves(before, ways.from(), ways.to());
    List<Move> right = moves(after, ways.fromAfter(), ways.toAfter());
    boolean bothDivide = left.size() > 1 && right.size() > 1;
    double room = bothDivide ? 0 : halfIncrementPm;
    Course course = course(left.size() == 1 || bothDivide ? left : right);
    Optional<double[]> shares = course.shares(left, room);
    Optional<double[]> sharesAfter = course.shares(right, room);
    if (shares.isEmpty() || sharesAfter.isEmpty()) {
      return false;
    }
    pointsBeside |= course.shares(left, 0).isEmpty() || course.shares(right, 0).isEmpty();
    tell(ways, shares.get(), sharesAfter.get());
    return true;
  }

  private static List<Move> moves(List<Act> acts, int from, int to) {
    return acts.subList(from, to + 1).stream().map(act -> act.move().orElseThrow()).toList();
  }

  private static Course course(List<Move> moves) {
    Move first = moves.get(0);
    Position end = moves.get(moves.size() - 1).to();
    return first.arc().isPresent()
        ? new CircleCourse(
            first,
            moves.stream().mapToDouble(m -> m.arc().orElseThrow().sweepRad()).sum(),
            first.from(),
            end)
        : new StraightCourse(first.from(), end);
  }

  /** What differs along one way: each piece is held against those that lie beside it. */
  private void tell(Ways ways, double[] shares, double[] sharesAfter) {
    int k = 0;
    int m = 0;
    while (true) {
      Act was = before.get(ways.from() + k);
      Act is = after.get(ways.fromAfter() + m);
      changes.pieces(was, is);
      boolean together = Math.abs(shares[k] - sharesAfter[m]) < SAME_SHARE;
      boolean endsBefore = together || shares[k] < sharesAfter[m];
      boolean endsAfter = together || shares[k] > sharesAfter[m];
      changes.stops(
          was,
          endsBefore && was.move().orElseThrow().exactStop(),
          is,
          endsAfter && is.move().orElseThrow().exactStop());
      if (k == shares.length - 1 && m == sharesAfter.length - 1) {
        return;
      }
      if (endsBefore && k < shares.length - 1) {
        k++;
      }
      if (endsAfter && m < sharesAfter.length - 1) {
        m++;
      }
    }
  }
}
