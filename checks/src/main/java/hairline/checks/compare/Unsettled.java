package hairline.checks.compare;

import hairline.checks.motion.Axis;
import hairline.checks.motion.Move;
import hairline.checks.motion.Position;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Acts that differ, kept until both programs stand at one place again. A straight move in one
 * program and the same straight way in several moves in the other are one motion; where they differ
 * in feed, state or a stop on the way, that is told.
 *
 * <p>A point between lies on the way where no other point of the machine's increment lies nearer in
 * any axis: half an increment. Where both programs divide a way, the points must lie on it to the
 * picometre, or a point moved by one increment would go unseen.
 */
final class Unsettled {
  /** So many acts of a program are kept; beyond, they are settled as they are. */
  static final int MOST = 100_000;

  private static final Axis[] AXES = Axis.values();

  private final Changes changes;
  private final double halfIncrementPm;
  private final List<Act> before = new ArrayList<>();
  private final List<Act> after = new ArrayList<>();
  private final List<int[]> pairs = new ArrayList<>();

  /**
   * @param incrementPm the machine's increment; 0 where not known
   */
  Unsettled(Changes changes, long incrementPm) {
    this.changes = changes;
    this.halfIncrementPm = incrementPm / 2.0;
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
      straightWays(doneBefore, doneAfter);
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

  private void straightWays(boolean[] doneBefore, boolean[] doneAfter) {
    Map<Position, List<Integer>> starts = new HashMap<>();
    for (int m = 0; m < after.size(); m++) {
      if (straight(after.get(m))) {
        starts.computeIfAbsent(move(after, m).from(), p -> new ArrayList<>()).add(m);
      }
    }
    int[] partners = new int[before.size()];
    Arrays.fill(partners, -1);
    pairs.forEach(pair -> partners[pair[0]] = pair[1]);
    int nextAfter = 0;
    for (int k = 0; k < before.size(); k++) {
      if (!straight(before.get(k))) {
        continue;
      }
      for (int m : starts.getOrDefault(move(before, k).from(), List.of())) {
        if (m < nextAfter) {
          continue;
        }
        Ways ways = ways(k, m);
        if (ways != null && wholePairs(ways, partners) && oneWay(ways)) {
          tell(ways);
          Arrays.fill(doneBefore, ways.from(), ways.to() + 1, true);
          Arrays.fill(doneAfter, ways.fromAfter(), ways.toAfter() + 1, true);
          nextAfter = ways.toAfter() + 1;
          k = ways.to();
          break;
        }
      }
    }
  }

  private static boolean straight(Act act) {
    return act.move()
        .filter(m -> m.kind() == Move.Kind.LINE || m.kind() == Move.Kind.RAPID)
        .filter(m -> m.from().unknown() == m.to().unknown() && m.to().knowsXyz())
        .isPresent();
  }

  private static Move move(List<Act> acts, int k) {
    return acts.get(k).move().orElseThrow();
  }

  /** From a common start on to the next common end; null where there is none, or no division. */
  private @Nullable Ways ways(int from, int fromAfter) {
    Position start = move(before, from).from();
    int to = from;
    int toAfter = fromAfter;
    while (!move(before, to).to().equals(move(after, toAfter).to())) {
      boolean behind = far(start, move(before, to).to()) < far(start, move(after, toAfter).to());
      List<Act> acts = behind ? before : after;
      int next = (behind ? to : toAfter) + 1;
      if (next == acts.size()
          || !straight(acts.get(next))
          || move(acts, next).kind() != move(before, from).kind()
          || !move(acts, next).from().equals(move(acts, next - 1).to())) {
        return null;
      }
      if (behind) {
        to = next;
      } else {
        toAfter = next;
      }
    }
    boolean divided = to > from || toAfter > fromAfter;
    return divided && move(before, from).kind() == move(after, fromAfter).kind()
        ? new Ways(from, to, fromAfter, toAfter)
        : null;
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

  /** Whether both go the same straight way, each point of it farther on than the last. */
  private boolean oneWay(Ways ways) {
    Position start = move(before, ways.from()).from();
    Position end = move(before, ways.to()).to();
    boolean bothDivide = ways.to() > ways.from() && ways.toAfter() > ways.fromAfter();
    double room = bothDivide ? 0 : halfIncrementPm;
    return onTheWay(before, ways.from(), ways.to(), start, end, room)
        && onTheWay(after, ways.fromAfter(), ways.toAfter(), start, end, room);
  }

  private static boolean onTheWay(
      List<Act> acts, int from, int to, Position start, Position end, double room) {
    double last = 0;
    for (int k = from; k < to; k++) {
      Position point = move(acts, k).to();
      double far = share(start, point, end);
      if (far <= last || far >= 1) {
        return false;
      }
      last = far;
      if (!(onLine(start, point, end) || nearLine(start, point, end, room))) {
        return false;
      }
    }
    return true;
  }

  /** How far along the way the foot of a point lies, 0 to 1. */
  private static double share(Position start, Position point, Position end) {
    double along = 0;
    double whole = 0;
    for (Axis axis : AXES) {
      double d = along(axis, start, end);
      along += along(axis, start, point) * d;
      whole += d * d;
    }
    return whole == 0 ? Double.NaN : along / whole;
  }

  private static double along(Axis axis, Position from, Position to) {
    return from.knows(axis) && to.knows(axis) ? (double) (to.get(axis) - from.get(axis)) : 0;
  }

  private static double far(Position a, Position b) {
    double sum = 0;
    for (Axis axis : AXES) {
      double d = along(axis, a, b);
      sum += d * d;
    }
    return sum;
  }

  /** Whether three points lie on one line, to the picometre: all products of 128 bits are equal. */
  private static boolean onLine(Position start, Position point, Position end) {
    for (int a = 0; a < AXES.length; a++) {
      for (int b = a + 1; b < AXES.length; b++) {
        long pa = part(AXES[a], start, point);
        long pb = part(AXES[b], start, point);
        long ea = part(AXES[a], start, end);
        long eb = part(AXES[b], start, end);
        if (pa * eb != pb * ea || Math.multiplyHigh(pa, eb) != Math.multiplyHigh(pb, ea)) {
          return false;
        }
      }
    }
    return true;
  }

  private static long part(Axis axis, Position from, Position to) {
    return from.knows(axis) && to.knows(axis) ? to.get(axis) - from.get(axis) : 0;
  }

  /** Whether a place on the way lies within this room of the point in every axis. */
  private static boolean nearLine(Position start, Position point, Position end, double room) {
    double least = 0;
    double most = 1;
    for (Axis axis : AXES) {
      double d = along(axis, start, end);
      double at = along(axis, start, point);
      double mine = axis.linear() ? room : 0;
      if (d == 0) {
        if (at != 0) {
          return false;
        }
      } else {
        double one = (at - mine) / d;
        double other = (at + mine) / d;
        least = Math.max(least, Math.min(one, other));
        most = Math.min(most, Math.max(one, other));
      }
    }
    return least <= most;
  }

  /** What differs along one way: each piece is held against those that lie beside it. */
  private void tell(Ways ways) {
    Position start = move(before, ways.from()).from();
    Position end = move(before, ways.to()).to();
    int k = ways.from();
    int m = ways.fromAfter();
    while (true) {
      Act was = before.get(k);
      Act is = after.get(m);
      changes.pieces(was, is);
      double toBefore = k == ways.to() ? 1 : share(start, move(before, k).to(), end);
      double toAfter = m == ways.toAfter() ? 1 : share(start, move(after, m).to(), end);
      changes.stops(
          was,
          toBefore <= toAfter && move(before, k).exactStop(),
          is,
          toAfter <= toBefore && move(after, m).exactStop());
      if (k == ways.to() && m == ways.toAfter()) {
        return;
      }
      if (toBefore <= toAfter && k < ways.to()) {
        k++;
      }
      if (toAfter <= toBefore && m < ways.toAfter()) {
        m++;
      }
    }
  }
}
