package hairline.checks.motion;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * Where one axis stands, in the frame of {@link Position}: as the control has stored it, and as it
 * would stand with unlimited digits.
 *
 * <p>The figures live on while the axis is unknown, so that increments still add up and their drift
 * can be told; they mean nothing else then.
 */
final class AxisState {
  /** Bit of {@link #take}: the axis moves as written. */
  static final int MOVED_WRITTEN = 1;

  /** Bit of {@link #take}: the axis moves as stored. */
  static final int MOVED_STORED = 2;

  private static final int MOVED = MOVED_WRITTEN | MOVED_STORED;

  private static final long ALL_BITS = -1;

  private final Axis axis;

  /** All bits set where the axis is known, none where it is not: so snapshots need no branch. */
  private long knownMask;

  private long storedPm;
  private long writtenPm;
  private @Nullable BigDecimal rest;

  /** Under a control that keeps remainders: what the last incremental word left over. */
  private BigDecimal kept = BigDecimal.ZERO;

  // Drift of incremental words since the last absolute one.
  private long driftStartPm;
  private int roundedMoves;
  private @Nullable Place roundedSince;

  /** Whether an incremental word has come since the last absolute one. */
  private boolean inStretch;

  /** How far the drift went that was last told; 0 where none was. */
  private long driftToldPm;

  AxisState(Axis axis) {
    this.axis = axis;
  }

  Axis axis() {
    return axis;
  }

  boolean known() {
    return knownMask != 0;
  }

  /** All bits set where the axis is known, else none. */
  long knownMask() {
    return knownMask;
  }

  long storedPm() {
    return storedPm;
  }

  long writtenPm() {
    return writtenPm;
  }

  /** The exact written coordinate beyond {@link #writtenPm()}. */
  @Nullable BigDecimal rest() {
    return rest;
  }

  /** Nothing is known of the axis until its next absolute word. */
  void forget() {
    knownMask = 0;
    endStretch();
  }

  /**
   * Goes to a coordinate.
   *
   * @param shiftStored what a shift of zero adds, as stored
   * @param shiftWritten what it adds as written
   * @return in what way the axis moves; both where its start is unknown
   * @throws ArithmeticException if the coordinate is too large; the axis is unchanged then
   */
  int goTo(ReadLength word, long shiftStored, long shiftWritten, @Nullable BigDecimal shiftRest) {
    long stored = Math.addExact(word.storedPm, shiftStored);
    long written = Math.addExact(word.writtenPm, shiftWritten);
    boolean wasKnown = known();
    int moved = take(stored, written, sum(word.rest, shiftRest));
    knownMask = ALL_BITS;
    endStretch();
    return wasKnown ? moved : MOVED;
  }

  /**
   * Goes to a coordinate of whole picometres.
   *
   * @return in what way the axis moves; both where its start is unknown
   */
  int goTo(long stored, long written) {
    int moved = stored == storedPm ? 0 : MOVED_STORED;
    if (written != writtenPm || rest != null) {
      moved |= MOVED_WRITTEN;
    }
    moved |= (int) ~knownMask & MOVED;
    storedPm = stored;
    writtenPm = written;
    rest = null;
    knownMask = ALL_BITS;
    driftStartPm = stored - written;
    if (inStretch) {
      endStretch();
    }
    return moved;
  }

  /**
   * Goes by an increment; an unknown axis stays unknown.
   *
   * @throws ArithmeticException if the coordinate is too large; the axis is unchanged then
   */
  int goBy(ReadLength word) {
    return goBy(word, word.storedPm);
  }

  /**
   * Goes by an increment of a control that carries what rounding cut off into the next word.
   *
   * @throws ArithmeticException if the coordinate is too large; the axis is unchanged then
   */
  int goByKept(ReadLength word, Rounding rounding, Modes.Units units) {
    BigDecimal wanted = exact(word.writtenPm, word.rest).add(kept);
    long stored = rounding.store(wanted, units);
    int moved = goBy(word, stored);
    kept = wanted.subtract(BigDecimal.valueOf(stored));
    return moved;
  }

  private int goBy(ReadLength word, long increment) {
    inStretch = true;
    long stored = Math.addExact(storedPm, increment);
    long written = Math.addExact(writtenPm, word.writtenPm);
    return take(stored, written, sum(rest, word.rest));
  }

  private int take(long stored, long written, @Nullable BigDecimal remainder) {
    long whole = written;
    BigDecimal left = remainder;
    if (left != null) {
      BigDecimal carry = left.setScale(0, RoundingMode.HALF_EVEN);
      whole = Math.addExact(whole, carry.longValueExact());
      left = left.subtract(carry);
      left = left.signum() == 0 ? null : left;
    }
    int moved = stored == storedPm ? 0 : MOVED_STORED;
    if (whole != writtenPm || !same(left, rest)) {
      moved |= MOVED_WRITTEN;
    }
    storedPm = stored;
    writtenPm = whole;
    rest = left;
    return moved;
  }

  /** Stands at a coordinate from now on, without a move. */
  void place(long stored, long written, @Nullable BigDecimal remainder) {
    take(stored, written, remainder);
    knownMask = ALL_BITS;
    endStretch();
  }

  private void endStretch() {
    inStretch = false;
    kept = BigDecimal.ZERO;
    driftStartPm = storedPm - writtenPm;
    roundedMoves = 0;
    roundedSince = null;
    driftToldPm = 0;
  }

  /** Counts an incremental word that was rounded. */
  void countRounded(Place at) {
    inStretch = true;
    roundedMoves++;
    if (roundedSince == null) {
      roundedSince = at;
    }
  }

  /**
   * The drift of the stretch of incremental words that this block ends, where it is worth telling:
   * after two or more rounded moves, more than one increment, and larger than what was told before.
   */
  Event.@Nullable IncrementalDrift newDrift(Place at, long incrementPm) {
    Place since = roundedSince;
    if (roundedMoves < 2 || since == null) {
      return null;
    }
    long drift = storedPm - writtenPm - driftStartPm;
    if (Math.abs(drift) <= Math.max(incrementPm, driftToldPm)) {
      return null;
    }
    driftToldPm = Math.abs(drift);
    return new Event.IncrementalDrift(at, axis, since, roundedMoves, drift);
  }

  static BigDecimal exact(long pm, @Nullable BigDecimal rest) {
    BigDecimal whole = BigDecimal.valueOf(pm);
    return rest == null ? whole : whole.add(rest);
  }

  private static @Nullable BigDecimal sum(@Nullable BigDecimal a, @Nullable BigDecimal b) {
    if (a == null) {
      return b;
    }
    return b == null ? a : a.add(b);
  }

  private static boolean same(@Nullable BigDecimal a, @Nullable BigDecimal b) {
    return (a == null || b == null) ? a == null && b == null : a.compareTo(b) == 0;
  }
}
