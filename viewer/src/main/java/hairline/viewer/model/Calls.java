package hairline.viewer.model;

import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * From where the moves of a program are called: the calls of subprograms under way at each of them.
 *
 * <p>Memory: 20 bytes for each time that moves begin to be made by another call, beyond the first
 * quarter of a million in a temporary file; at most {@link #MOST_WAYS} different ways of calls.
 */
final class Calls implements AutoCloseable {
  /** Most different ways of calls kept; beyond them the callers are not known. */
  static final int MOST_WAYS = 100_000;

  /** So many changes of call are looked through for where a call begins or ends. */
  private static final int MOST_CHANGES_SEEN = 200_000;

  private static final int MOVE = 0;
  private static final int WAY = 8;
  private static final int SERIAL = 12;
  private static final int DEPTH = 16;
  private static final int LENGTH = 20;
  private static final int TOP = 0;
  private static final int UNKNOWN = -1;

  /** A way of calls: that of the caller, and the place of the call. */
  private record Way(int of, int file, int line) {}

  /** A call under way. */
  private record Running(int way, int serial) {}

  private final Records records = new Records(LENGTH);
  private volatile long count;
  private final List<Way> ways = Collections.synchronizedList(new ArrayList<>());
  private final Map<Way, Integer> numbers = new HashMap<>();
  private final Deque<Running> running = new ArrayDeque<>();
  private int serials;
  private Running told = new Running(TOP, 0);

  /** No call yet. */
  Calls() {
    ways.add(new Way(TOP, 0, 0));
    running.push(told);
  }

  /** A subprogram is called from here. */
  void enter(Place call) {
    Running caller = running.element();
    int way = UNKNOWN;
    if (caller.way() != UNKNOWN) {
      Way wanted = new Way(caller.way(), call.file(), call.line());
      Integer known = numbers.get(wanted);
      if (known != null) {
        way = known;
      } else if (ways.size() < MOST_WAYS) {
        way = ways.size();
        ways.add(wanted);
        numbers.put(wanted, way);
      }
    }
    running.push(new Running(way, ++serials));
  }

  /** The subprogram is left. */
  void leave() {
    if (running.size() > 1) {
      running.pop();
    }
  }

  /**
   * The next move is made.
   *
   * @throws IOException if the temporary file cannot be written
   */
  void move(long move) throws IOException {
    Running now = running.element();
    if (now.equals(told)) {
      return;
    }
    told = now;
    long i = count;
    records.reserve(i);
    records.putLong(i, MOVE, move);
    records.putInt(i, WAY, now.way());
    records.putInt(i, SERIAL, now.serial());
    records.putInt(i, DEPTH, running.size());
    count = i + 1;
  }

  /** The last change at a move or before it; -1 where there is none. */
  private long changeAt(long move) {
    long low = 0;
    long high = count;
    while (low < high) {
      long middle = (low + high) >>> 1;
      if (records.getLong(middle, MOVE) <= move) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low - 1;
  }

  /** The places of the calls under way at a move, from the outermost on. */
  List<Place> at(long move) {
    long change = changeAt(move);
    List<Place> places = new ArrayList<>();
    int way = change < 0 ? TOP : records.getInt(change, WAY);
    while (way > TOP) {
      Way here = ways.get(way);
      places.add(new Place(here.file(), here.line(), new Span(1, 1)));
      way = here.of();
    }
    Collections.reverse(places);
    return places;
  }

  /** The moves of the call under way at a move, with those it calls itself: from, and up to. */
  Range around(long move, long moves) {
    long change = changeAt(move);
    if (change < 0 || records.getInt(change, SERIAL) == 0) {
      return new Range(0, moves);
    }
    // Before it, what it called itself has a later number than it has, and all else an earlier one;
    // behind it, what it calls runs deeper.
    int serial = records.getInt(change, SERIAL);
    int depth = records.getInt(change, DEPTH);
    long first = change;
    while (first > 0
        && change - first < MOST_CHANGES_SEEN
        && records.getInt(first - 1, SERIAL) >= serial) {
      first--;
    }
    long next = change + 1;
    long all = count;
    while (next < all
        && next - change < MOST_CHANGES_SEEN
        && (records.getInt(next, SERIAL) == serial || records.getInt(next, DEPTH) > depth)) {
      next++;
    }
    return new Range(
        records.getLong(first, MOVE), next < all ? records.getLong(next, MOVE) : moves);
  }

  @Override
  public void close() throws IOException {
    records.close();
  }
}
