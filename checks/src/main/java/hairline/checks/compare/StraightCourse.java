package hairline.checks.compare;

import hairline.checks.motion.Axis;
import hairline.checks.motion.Move;
import hairline.checks.motion.Position;
import java.util.List;
import java.util.Optional;

/** The straight way from one point to another. */
final class StraightCourse implements Course {
  private static final Axis[] AXES = Axis.values();

  private final Position start;
  private final Position end;

  StraightCourse(Position start, Position end) {
    this.start = start;
    this.end = end;
  }

  @Override
  public Optional<double[]> shares(List<Move> moves, double roomPm) {
    double[] shares = new double[moves.size()];
    double last = 0;
    for (int k = 0; k < shares.length - 1; k++) {
      Position point = moves.get(k).to();
      shares[k] = share(point);
      if (shares[k] <= last
          || shares[k] >= 1
          || !(onLine(start, point, end) || nearLine(start, point, end, roomPm))) {
        return Optional.empty();
      }
      last = shares[k];
    }
    shares[shares.length - 1] = 1;
    return Optional.of(shares);
  }

  /** How far along the way the foot of a point lies, 0 to 1. */
  private double share(Position point) {
    double along = 0;
    double whole = 0;
    for (Axis axis : AXES) {
      double d = part(axis, start, end);
      along += part(axis, start, point) * d;
      whole += d * d;
    }
    return whole == 0 ? Double.NaN : along / whole;
  }

  /** The square of the distance of two points. */
  static double far(Position a, Position b) {
    double sum = 0;
    for (Axis axis : AXES) {
      double d = part(axis, a, b);
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
      double d = part(axis, start, end);
      double at = part(axis, start, point);
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
}
