package hairline.viewer.model;

import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.io.IOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * The moves of a program in their order, with what `checks` told of each; grows while the program
 * is read.
 *
 * <p>Memory: 80 bytes a move, beyond the first quarter of a million in a temporary file; beside
 * that some 5 bytes a move on the heap for the pyramids. More than {@link #MOST} moves are not
 * kept.
 */
public final class Moves implements AutoCloseable {
  /** Most moves kept. */
  public static final long MOST = 50_000_000;

  /** A coordinate or figure that is not known. */
  public static final long UNKNOWN = Pyramid.ABSENT;

  private static final int UNKNOWN_INT = Integer.MIN_VALUE;

  // Where each field stands in a record.
  private static final int X = 0;
  private static final int Y = 8;
  private static final int Z = 16;
  private static final int PATH = 24;
  private static final int SECONDS = 32;
  private static final int DEPTH = 40;
  private static final int LINE = 48;
  private static final int FILE_AND_KIND = 52;
  private static final int CHIP = 56;
  private static final int MINIMUM = 60;
  private static final int FEED = 64;
  private static final int GROWTH = 68;
  private static final int OPERATION = 72;
  private static final int DURATION = 76;
  private static final int LENGTH = 80;

  /** How a move goes. */
  public enum Kind {
    /** At rapid. */
    RAPID(0),
    /** At feed, straight. */
    LINE(1),
    /** At feed on an arc. */
    ARC(2);

    private final int code;

    Kind(int code) {
      this.code = code;
    }

    private static Kind of(int code) {
      return code == RAPID.code ? RAPID : code == LINE.code ? LINE : ARC;
    }
  }

  /**
   * A move as it is told.
   *
   * @param at the block
   * @param kind how it goes
   * @param xPm where it ends, {@link #UNKNOWN} where not known
   * @param yPm where it ends
   * @param zPm where it ends
   * @param pathMm length of the path from the start of the program to its end
   * @param seconds time from the start of the program to its end, as planned
   * @param durationSeconds how long the move itself takes
   * @param depthPm the largest depth it takes off a place
   * @param chipPm its largest chip, -1 where not known
   * @param minimumPm the smallest chip that forms, -1 where not known
   * @param feedUmPerMin planned feed, -1 where not known
   * @param growthPm growth of the spindle
   * @param operation the operation
   */
  public record Told(
      Place at,
      Kind kind,
      long xPm,
      long yPm,
      long zPm,
      double pathMm,
      double seconds,
      double durationSeconds,
      long depthPm,
      long chipPm,
      long minimumPm,
      long feedUmPerMin,
      long growthPm,
      int operation) {}

  private final Records records = new Records(LENGTH);
  private final Records arcs = new Records(ARC_LENGTH);
  private final Pyramid feedZ = new Pyramid(this::feedZOf);
  private final Pyramid rapidZ = new Pyramid(this::rapidZOf);
  private final Pyramid places = new Pyramid(this::placeOf);
  private final Map<Trace, Pyramid> traces = new EnumMap<>(Trace.class);
  private final Pyramid minima = new Pyramid(i -> wide(records.getInt(i, MINIMUM)));
  private volatile long count;
  private volatile long arcCount;

  // Where each field of an arc stands.
  private static final int ARC_MOVE = 0;
  private static final int ARC_X = 8;
  private static final int ARC_Y = 16;
  private static final int ARC_SWEEP = 24;
  private static final int ARC_LENGTH = 32;

  /** An empty table. */
  public Moves() {
    for (Trace trace : Trace.values()) {
      if (trace != Trace.NONE) {
        traces.put(trace, new Pyramid(i -> value(trace, i)));
      }
    }
  }

  /** How many moves there are by now; all of them can be read. */
  public long count() {
    return count;
  }

  /**
   * Takes the next move.
   *
   * @throws IOException if the temporary file cannot be written
   */
  void append(Told told) throws IOException {
    long i = count;
    records.reserve(i);
    records.putLong(i, X, told.xPm());
    records.putLong(i, Y, told.yPm());
    records.putLong(i, Z, told.zPm());
    records.putDouble(i, PATH, told.pathMm());
    records.putDouble(i, SECONDS, told.seconds());
    records.putLong(i, DEPTH, told.depthPm());
    records.putInt(i, LINE, told.at().line());
    records.putInt(i, FILE_AND_KIND, told.at().file() << 2 | told.kind().code);
    records.putInt(i, DURATION, Float.floatToIntBits((float) told.durationSeconds()));
    records.putInt(i, CHIP, narrow(told.chipPm()));
    records.putInt(i, MINIMUM, narrow(told.minimumPm()));
    records.putInt(i, FEED, narrow(told.feedUmPerMin()));
    records.putInt(i, GROWTH, narrow(told.growthPm()));
    records.putInt(i, OPERATION, told.operation());
    feedZ.append(feedZOf(i));
    rapidZ.append(rapidZOf(i));
    places.append(placeOf(i));
    traces.forEach((trace, pyramid) -> pyramid.append(value(trace, i)));
    minima.append(wide(records.getInt(i, MINIMUM)));
    count = i + 1;
  }

  /**
   * Adds the circle, in the XY plane, of the move that is appended next.
   *
   * @param xMm centre
   * @param yMm centre
   * @param sweepRad how far it turns, counter-clockwise positive
   */
  void circleOfNext(double xMm, double yMm, double sweepRad) throws IOException {
    long a = arcCount;
    arcs.reserve(a);
    arcs.putLong(a, ARC_MOVE, count);
    arcs.putDouble(a, ARC_X, xMm);
    arcs.putDouble(a, ARC_Y, yMm);
    arcs.putDouble(a, ARC_SWEEP, sweepRad);
    arcCount = a + 1;
  }

  /**
   * The circle of a move in the XY plane.
   *
   * @param xMm centre
   * @param yMm centre
   * @param sweepRad how far it turns, counter-clockwise positive
   */
  public record Circle(double xMm, double yMm, double sweepRad) {}

  /** The circle of a move; empty where it is none in the XY plane. */
  public Optional<Circle> circle(long move) {
    if (kind(move) != Kind.ARC) {
      return Optional.empty();
    }
    long low = 0;
    long high = arcCount - 1;
    while (low <= high) {
      long middle = (low + high) >>> 1;
      long at = arcs.getLong(middle, ARC_MOVE);
      if (at == move) {
        return Optional.of(
            new Circle(
                arcs.getDouble(middle, ARC_X),
                arcs.getDouble(middle, ARC_Y),
                arcs.getDouble(middle, ARC_SWEEP)));
      }
      if (at < move) {
        low = middle + 1;
      } else {
        high = middle - 1;
      }
    }
    return Optional.empty();
  }

  private static int narrow(long value) {
    return value == UNKNOWN
        ? UNKNOWN_INT
        : (int) Math.max(-Integer.MAX_VALUE, Math.min(Integer.MAX_VALUE, value));
  }

  private static long wide(int value) {
    return value == UNKNOWN_INT ? UNKNOWN : value;
  }

  private long feedZOf(long i) {
    return kind(i) == Kind.RAPID ? UNKNOWN : z(i);
  }

  private long rapidZOf(long i) {
    return kind(i) == Kind.RAPID ? z(i) : UNKNOWN;
  }

  private long placeOf(long i) {
    return place(file(i), line(i));
  }

  private static long place(int file, int line) {
    return ((long) file << 32) | line;
  }

  /** Where a move ends, {@link #UNKNOWN} where not known. */
  public long x(long move) {
    return records.getLong(move, X);
  }

  /** Where a move ends. */
  public long y(long move) {
    return records.getLong(move, Y);
  }

  /** Where a move ends. */
  public long z(long move) {
    return records.getLong(move, Z);
  }

  /** Path length in mm from the start of the program to the end of a move; of -1 it is 0. */
  public double pathMm(long move) {
    return move < 0 ? 0 : records.getDouble(move, PATH);
  }

  /** Planned time from the start of the program to the end of a move; of -1 it is 0. */
  public double seconds(long move) {
    return move < 0 ? 0 : records.getDouble(move, SECONDS);
  }

  /** Planned time from the start of the program to the start of a move. */
  public double startSeconds(long move) {
    double end = seconds(move);
    return Math.max(seconds(move - 1), end - Float.intBitsToFloat(records.getInt(move, DURATION)));
  }

  /** The line of its block. */
  public int line(long move) {
    return records.getInt(move, LINE);
  }

  /** The file of its block: 0 is the program itself. */
  public int file(long move) {
    return records.getInt(move, FILE_AND_KIND) >> 2;
  }

  /** Its block, without columns. */
  public Place at(long move) {
    return new Place(file(move), line(move), new Span(1, 1));
  }

  /** How it goes. */
  public Kind kind(long move) {
    return Kind.of(records.getInt(move, FILE_AND_KIND) & 3);
  }

  /** Its operation. */
  public int operation(long move) {
    return records.getInt(move, OPERATION);
  }

  /** The smallest chip that forms in it, in picometres. */
  public long minimumChip(long move) {
    return wide(records.getInt(move, MINIMUM));
  }

  /** The value of a trace for a move, {@link #UNKNOWN} where there is none. */
  public long value(Trace trace, long move) {
    return switch (trace) {
      case NONE -> UNKNOWN;
      case DEPTH -> records.getLong(move, DEPTH);
      case CHIP -> wide(records.getInt(move, CHIP));
      case FEED -> wide(records.getInt(move, FEED));
      case GROWTH -> wide(records.getInt(move, GROWTH));
    };
  }

  /** Range of Z at the ends of the feed moves of a stretch. */
  public Range feedZ(long from, long to) {
    return feedZ.range(from, to);
  }

  /** Range of Z at the ends of the rapid moves of a stretch. */
  public Range rapidZ(long from, long to) {
    return rapidZ.range(from, to);
  }

  /** Range of a trace over a stretch. */
  public Range trace(Trace trace, long from, long to) {
    Pyramid pyramid = traces.get(trace);
    return pyramid == null ? Range.NONE : pyramid.range(from, to);
  }

  /** Range of the smallest chips over a stretch. */
  public Range minimumChips(long from, long to) {
    return minima.range(from, to);
  }

  /**
   * The first move of a line; where it makes none, the first move of a later line of the file; -1
   * where there is none either.
   */
  public long firstOf(int file, int line) {
    long n = count;
    long exact = places.first(0, n, place(file, line), place(file, line));
    return exact >= 0
        ? exact
        : places.first(0, n, place(file, line), place(file, Integer.MAX_VALUE));
  }

  /** The first move of a line among those of a stretch; where it makes none there, of them all. */
  public long firstOf(int file, int line, Range among) {
    long key = place(file, line);
    long found = places.first(among.low(), Math.min(count, among.high()), key, key);
    return found >= 0 ? found : firstOf(file, line);
  }

  /** Lets the temporary files go. */
  @Override
  public void close() throws IOException {
    records.close();
    arcs.close();
  }
}
