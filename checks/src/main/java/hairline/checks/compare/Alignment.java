package hairline.checks.compare;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which acts of one program answer which of another. Pairs keep the order of both.
 *
 * <p>First what ends in the same place is paired, then, in the gaps, what goes the same way, then
 * what is of one sort. In each round the common beginning and end are set aside, acts that occur
 * once in both divide the rest (the longest rising sequence of them), and what lies between is
 * aligned by the shortest edit script (Myers 1986), as long as that needs at most {@value
 * #MOST_EDITS} edits. Beyond that bound acts of one sort are paired as they come.
 */
final class Alignment {
  /** Most edits of a shortest edit script. */
  static final int MOST_EDITS = 1_000;

  private static final int NONE = -1;

  private final Acts before;
  private final Acts after;
  private final int[] pairs;

  private Alignment(Acts before, Acts after) {
    this.before = before;
    this.after = after;
    this.pairs = new int[before.count()];
    Arrays.fill(pairs, NONE);
  }

  /** For each act before the one after that answers it; -1 for none. */
  static int[] of(Acts before, Acts after) {
    // One order for both directions, so that the comparison is symmetric.
    if (before.sum() > after.sum()) {
      int[] back = new Alignment(after, before).align();
      int[] pairs = new int[before.count()];
      Arrays.fill(pairs, NONE);
      for (int k = 0; k < back.length; k++) {
        if (back[k] != NONE) {
          pairs[back[k]] = k;
        }
      }
      return pairs;
    }
    return new Alignment(before, after).align();
  }

  /** A stretch of both programs; the ends are one past the last. */
  private record Gap(int from, int to, int fromAfter, int toAfter) {
    boolean empty() {
      return from == to || fromAfter == toAfter;
    }
  }

  private int[] align() {
    List<Gap> gaps = List.of(new Gap(0, before.count(), 0, after.count()));
    align(gaps, before.ends(), after.ends());
    align(gaps(), before.ways(), after.ways());
    long[] kinds = widened(before.kinds());
    long[] kindsAfter = widened(after.kinds());
    align(gaps(), kinds, kindsAfter);
    for (Gap gap : gaps()) {
      int next = gap.fromAfter();
      for (int k = gap.from(); k < gap.to(); k++) {
        int at = next;
        while (at < gap.toAfter() && kindsAfter[at] != kinds[k]) {
          at++;
        }
        if (at < gap.toAfter()) {
          pairs[k] = at;
          next = at + 1;
        }
      }
    }
    return pairs;
  }

  private static long[] widened(byte[] kinds) {
    long[] wide = new long[kinds.length];
    for (int k = 0; k < kinds.length; k++) {
      wide[k] = kinds[k];
    }
    return wide;
  }

  /** What is not paired yet on both sides. */
  private List<Gap> gaps() {
    List<Gap> gaps = new ArrayList<>();
    int from = 0;
    int fromAfter = 0;
    for (int k = 0; k <= pairs.length; k++) {
      if (k == pairs.length || pairs[k] != NONE) {
        int after = k == pairs.length ? this.after.count() : pairs[k];
        Gap gap = new Gap(from, k, fromAfter, after);
        if (!gap.empty()) {
          gaps.add(gap);
        }
        from = k + 1;
        fromAfter = after + 1;
      }
    }
    return gaps;
  }

  private void align(List<Gap> gaps, long[] a, long[] b) {
    ArrayDeque<Gap> open = new ArrayDeque<>(gaps);
    while (!open.isEmpty()) {
      Gap gap = trimmed(open.pop(), a, b);
      if (gap.empty()) {
        continue;
      }
      int[][] anchors = anchors(gap, a, b);
      if (anchors[0].length == 0) {
        shortest(gap, a, b);
        continue;
      }
      int from = gap.from();
      int fromAfter = gap.fromAfter();
      for (int k = 0; k < anchors[0].length; k++) {
        pairs[anchors[0][k]] = anchors[1][k];
        push(open, new Gap(from, anchors[0][k], fromAfter, anchors[1][k]));
        from = anchors[0][k] + 1;
        fromAfter = anchors[1][k] + 1;
      }
      push(open, new Gap(from, gap.to(), fromAfter, gap.toAfter()));
    }
  }

  private static void push(ArrayDeque<Gap> open, Gap gap) {
    if (!gap.empty()) {
      open.push(gap);
    }
  }

  /** Pairs the common beginning and end, and returns what is between. */
  private Gap trimmed(Gap gap, long[] a, long[] b) {
    int from = gap.from();
    int fromAfter = gap.fromAfter();
    while (from < gap.to() && fromAfter < gap.toAfter() && a[from] == b[fromAfter]) {
      pairs[from++] = fromAfter++;
    }
    int to = gap.to();
    int toAfter = gap.toAfter();
    while (to > from && toAfter > fromAfter && a[to - 1] == b[toAfter - 1]) {
      pairs[--to] = --toAfter;
    }
    return new Gap(from, to, fromAfter, toAfter);
  }

  /** What occurs once in both and keeps its order: the longest such sequence. */
  private static int[][] anchors(Gap gap, long[] a, long[] b) {
    long[] once = once(a, gap.from(), gap.to());
    long[] onceAfter = once(b, gap.fromAfter(), gap.toAfter());
    int[] place = new int[onceAfter.length];
    Arrays.fill(place, NONE);
    for (int k = gap.fromAfter(); k < gap.toAfter(); k++) {
      int at = Arrays.binarySearch(onceAfter, b[k]);
      if (at >= 0) {
        place[at] = k;
      }
    }
    int[] left = new int[once.length];
    int[] right = new int[once.length];
    int count = 0;
    for (int k = gap.from(); k < gap.to(); k++) {
      if (Arrays.binarySearch(once, a[k]) >= 0) {
        int at = Arrays.binarySearch(onceAfter, a[k]);
        if (at >= 0) {
          left[count] = k;
          right[count++] = place[at];
        }
      }
    }
    return rising(left, right, count);
  }

  /** The values that occur once in a stretch, in rising order. */
  private static long[] once(long[] values, int from, int to) {
    long[] sorted = Arrays.copyOfRange(values, from, to);
    Arrays.sort(sorted);
    int count = 0;
    for (int k = 0; k < sorted.length; k++) {
      boolean alone =
          (k == 0 || sorted[k - 1] != sorted[k])
              && (k == sorted.length - 1 || sorted[k + 1] != sorted[k]);
      if (alone) {
        sorted[count++] = sorted[k];
      }
    }
    return Arrays.copyOf(sorted, count);
  }

  /** The longest sequence that rises on the right too, by patience sorting. */
  private static int[][] rising(int[] left, int[] right, int count) {
    int[] tails = new int[count];
    int[] previous = new int[count];
    int length = 0;
    for (int k = 0; k < count; k++) {
      int low = 0;
      int high = length;
      while (low < high) {
        int middle = (low + high) >>> 1;
        if (right[tails[middle]] < right[k]) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      previous[k] = low == 0 ? NONE : tails[low - 1];
      tails[low] = k;
      length = Math.max(length, low + 1);
    }
    int[][] kept = new int[2][length];
    int at = length == 0 ? NONE : tails[length - 1];
    for (int k = length - 1; k >= 0; k--) {
      kept[0][k] = left[at];
      kept[1][k] = right[at];
      at = previous[at];
    }
    return kept;
  }

  /** Pairs by the shortest edit script, if it is short enough; else nothing. */
  private void shortest(Gap gap, long[] a, long[] b) {
    int n = gap.to() - gap.from();
    int m = gap.toAfter() - gap.fromAfter();
    int most = (int) Math.min(MOST_EDITS, (long) n + m);
    if (Math.abs((long) n - m) > most) {
      return;
    }
    int[] reach = new int[2 * most + 3];
    List<int[]> history = new ArrayList<>();
    for (int d = 0; d <= most; d++) {
      history.add(Arrays.copyOfRange(reach, most + 1 - d, most + 2 + d));
      for (int k = -d; k <= d; k += 2) {
        boolean down = k == -d || (k != d && reach[most + 1 + k - 1] < reach[most + 1 + k + 1]);
        int x = down ? reach[most + 1 + k + 1] : reach[most + 1 + k - 1] + 1;
        int y = x - k;
        while (x < n && y < m && a[gap.from() + x] == b[gap.fromAfter() + y]) {
          x++;
          y++;
        }
        reach[most + 1 + k] = x;
        if (x >= n && y >= m) {
          back(gap, history, d, n, m);
          return;
        }
      }
    }
  }

  /** Walks an edit script back and pairs what it keeps. */
  private void back(Gap gap, List<int[]> history, int edits, int n, int m) {
    int x = n;
    int y = m;
    for (int d = edits; d > 0; d--) {
      // reach after d - 1 edits, of the diagonals -d .. d
      int[] reach = history.get(d);
      int k = x - y;
      boolean down = k == -d || (k != d && reach[k - 1 + d] < reach[k + 1 + d]);
      int fromK = down ? k + 1 : k - 1;
      int fromX = reach[fromK + d];
      int fromY = fromX - fromK;
      while (x > (down ? fromX : fromX + 1) && y > (down ? fromY + 1 : fromY)) {
        x--;
        y--;
        pairs[gap.from() + x] = gap.fromAfter() + y;
      }
      x = fromX;
      y = fromY;
    }
    while (x > 0 && y > 0) {
      x--;
      y--;
      pairs[gap.from() + x] = gap.fromAfter() + y;
    }
  }
}
