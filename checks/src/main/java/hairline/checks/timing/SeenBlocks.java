package hairline.checks.timing;

/**
 * The blocks that a control sees ahead, and the limits at the borders between them. Border 0 is the
 * start of the first block. Speeds in mm/s, lengths in mm.
 */
final class SeenBlocks {
  /** How many there are. */
  int count;

  // By block.
  final double[] lengths;
  final double[] caps;
  final double[] accelerations;
  final double[] jerks;

  // By border.
  final double[] corners;
  final double[] places;
  final double[] limits;

  /** Whether nothing changes there: the way goes straight on at the same speed. */
  final boolean[] plain;

  /**
   * None yet.
   *
   * @param most how many there may be
   */
  SeenBlocks(int most) {
    lengths = new double[most];
    caps = new double[most];
    accelerations = new double[most];
    jerks = new double[most];
    corners = new double[most + 1];
    places = new double[most + 1];
    limits = new double[most + 1];
    plain = new boolean[most + 1];
  }

  void add(double length, double cap, double acceleration, double jerk, double corner) {
    corners[count] = count == 0 ? Double.POSITIVE_INFINITY : corner;
    lengths[count] = length;
    caps[count] = cap;
    accelerations[count] = acceleration;
    jerks[count] = jerk;
    plain[count] = count > 0 && isPlain(count);
    count++;
  }

  /** Forgets the first blocks. */
  void drop(int done) {
    shift(lengths, done);
    shift(caps, done);
    shift(accelerations, done);
    shift(jerks, done);
    shift(corners, done);
    System.arraycopy(plain, done, plain, 0, count - done);
    count -= done;
  }

  private void shift(double[] values, int by) {
    System.arraycopy(values, by, values, 0, count - by);
  }

  /** Places and limits of the borders, from a speed at the first to rest at the last. */
  void measure(double entry) {
    places[0] = 0;
    for (int k = 0; k < count; k++) {
      places[k + 1] = places[k] + lengths[k];
    }
    limits[0] = entry;
    for (int j = 1; j < count; j++) {
      limits[j] = Math.min(corners[j], Math.min(caps[j - 1], caps[j]));
    }
    limits[count] = 0;
    plain[0] = false;
    plain[count] = false;
  }

  /** The same at a border between two blocks. */
  private boolean isPlain(int border) {
    return caps[border - 1] == caps[border] && !changes(border) && corners[border] >= caps[border];
  }

  /** Whether acceleration or jerk are limited otherwise before a border than behind it. */
  boolean changes(int border) {
    return accelerations[border - 1] != accelerations[border] || jerks[border - 1] != jerks[border];
  }

  /** The highest acceleration that is allowed on both sides of a border. */
  double acceleration(int border) {
    return Math.min(accelerations[border - 1], accelerations[border]);
  }

  /** The highest speed from one border at another, acceleration zero at both. */
  double reachable(int from, int to, double speed) {
    return SpeedRamp.reached(
        speed,
        places[to] - places[from],
        weakest(accelerations, from, to),
        weakest(jerks, from, to));
  }

  /**
   * The highest speed to which a border can be reached from a faster one before it, a value at
   * most, acceleration zero at both. Under a jerk limit braking to rest may take less length than
   * braking to some speed above it.
   */
  double braked(int from, int to, double speed, double most) {
    double way = places[to] - places[from];
    double acceleration = weakest(accelerations, from, to);
    double jerk = weakest(jerks, from, to);
    return SpeedRamp.braked(speed, most, way, acceleration, jerk);
  }

  static double weakest(double[] values, int from, int to) {
    double weakest = Double.POSITIVE_INFINITY;
    for (int k = from; k < to; k++) {
      weakest = Math.min(weakest, values[k]);
    }
    return weakest;
  }
}
