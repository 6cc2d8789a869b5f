package hairline.checks.compare;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Move;
import hairline.checks.motion.Position;
import java.util.Arrays;
import java.util.Map;

/**
 * All acts of a program as numbers, some 25 bytes each: what they are aligned by, and whether they
 * are alike.
 *
 * <p>Two acts are held to be one where their numbers of 64 bits are equal; that two different ones
 * have one number happens once in 10^19.
 */
final class Acts {
  /** So many acts are compared; those of longer programs are not. */
  static final int MOST = 8_000_000;

  private static final int FIRST_ROOM = 1 << 12;
  private static final long ODD = 0x9E3779B97F4A7C15L;

  private long[] ends = new long[FIRST_ROOM];
  private long[] ways = new long[FIRST_ROOM];
  private long[] wholes = new long[FIRST_ROOM];
  private byte[] kinds = new byte[FIRST_ROOM];
  private int count;
  private boolean full;
  private final State state = new State();

  /** Adds an act. */
  void add(Act act) {
    if (count == MOST) {
      full = true;
      return;
    }
    if (count == ends.length) {
      int room = Math.min(MOST, 2 * count);
      ends = Arrays.copyOf(ends, room);
      ways = Arrays.copyOf(ways, room);
      wholes = Arrays.copyOf(wholes, room);
      kinds = Arrays.copyOf(kinds, room);
    }
    kinds[count] = (byte) act.kind().letter();
    if (act.move().isPresent()) {
      Move move = act.move().get();
      ends[count] = end(move);
      ways[count] = way(move);
    } else {
      ends[count] = text(act.kind().letter() + 1000, act.what());
      ways[count] = mix(ODD, act.kind().letter());
    }
    wholes[count] = whole(act);
    count++;
  }

  int count() {
    return count;
  }

  /** Whether there are more than are compared. */
  boolean full() {
    return full;
  }

  /** Where moves end, and what other acts do. */
  long[] ends() {
    return ends;
  }

  /** How far and in which direction moves go; the sort of other acts. */
  long[] ways() {
    return ways;
  }

  /** All of an act that can differ. */
  long[] wholes() {
    return wholes;
  }

  /** The sort of an act. */
  byte[] kinds() {
    return kinds;
  }

  /** A number for the whole program. */
  long sum() {
    long sum = count;
    for (int k = 0; k < count; k++) {
      sum = mix(sum, wholes[k]);
    }
    return sum;
  }

  private static long end(Move move) {
    return position(mix(ODD, 1), move.to());
  }

  private static long way(Move move) {
    Position from = move.from();
    Position to = move.to();
    long sum = mix(ODD, 2);
    sum = mix(sum, to.xPm() - from.xPm());
    sum = mix(sum, to.yPm() - from.yPm());
    sum = mix(sum, to.zPm() - from.zPm());
    return mix(sum, from.unknown() | to.unknown());
  }

  private long whole(Act act) {
    long sum = text(act.kind().letter(), act.what());
    sum = mix(sum, stateOf(act));
    if (act.move().isPresent()) {
      Move move = act.move().get();
      sum = text(sum, move.kind().name());
      sum = position(sum, move.from());
      sum = position(sum, move.to());
      sum = mix(sum, move.exactStop() ? 1 : 0);
      if (move.isFeed()) {
        sum =
            mix(sum, Double.doubleToLongBits(move.feedMmPerMin().orElse(Double.NEGATIVE_INFINITY)));
      }
      if (move.arc().isPresent()) {
        Arc arc = move.arc().get();
        sum = text(sum, move.modes().plane().value().map(Enum::name).orElse(""));
        sum = mix(sum, Double.doubleToLongBits(arc.centreFirstMm()));
        sum = mix(sum, Double.doubleToLongBits(arc.centreSecondMm()));
        sum = mix(sum, Double.doubleToLongBits(arc.sweepRad()));
      }
    }
    return act.kind() == Act.Kind.END ? text(sum, State.left(act.modes())) : sum;
  }

  private Map<Change.Kind, String> lastItems = Map.of();
  private long lastState;

  @SuppressWarnings("ReferenceEquality") // Of the same state the same map comes.
  private long stateOf(Act act) {
    Map<Change.Kind, String> items = state.items(act.modes());
    if (items != lastItems) {
      lastItems = items;
      lastState = ODD;
      for (String item : items.values()) {
        lastState = text(lastState, item);
      }
    }
    return lastState;
  }

  private static long position(long sum, Position at) {
    long all = mix(sum, at.unknown());
    all = mix(all, (at.unknown() & 1) == 0 ? at.xPm() : 0);
    all = mix(all, (at.unknown() & 2) == 0 ? at.yPm() : 0);
    all = mix(all, (at.unknown() & 4) == 0 ? at.zPm() : 0);
    all = mix(all, (at.unknown() & 8) == 0 ? at.aMicrodeg() : 0);
    all = mix(all, (at.unknown() & 16) == 0 ? at.bMicrodeg() : 0);
    return mix(all, (at.unknown() & 32) == 0 ? at.cMicrodeg() : 0);
  }

  private static long text(long sum, String text) {
    long all = mix(sum, text.length());
    for (int i = 0; i < text.length(); i++) {
      all = mix(all, text.charAt(i));
    }
    return all;
  }

  /** One number of two; the finalizer of a known good hash (MurmurHash3, public domain). */
  private static long mix(long a, long b) {
    long x = a * 31 + b * ODD + 0x632BE59BD9B4E019L;
    x ^= x >>> 33;
    x *= 0xFF51AFD7ED558CCDL;
    x ^= x >>> 33;
    x *= 0xC4CEB9FE1A85EC53L;
    return x ^ (x >>> 33);
  }
}
