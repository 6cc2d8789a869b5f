package hairline.checks.timing;

import org.jspecify.annotations.Nullable;

/**
 * A move whose plan is final, while it is handed on. Most are asked for their time alone, so the
 * rest is worked out when somebody asks. One object stands for many moves, one after the other.
 */
final class DueMove {
  private static final double PER_MINUTE = 60;

  /** A speed that is to be found along the way. */
  private static final double ON_THE_WAY = -1;

  private SpeedProfile way = new SpeedProfile();
  private double start;
  private double end;
  private double seconds;
  private double exit;
  private @Nullable PlannedMove planned;

  /** A move that begins and ends at places along a way. */
  void take(SpeedProfile of, double startPlace, double endPlace, double itsSeconds) {
    way = of;
    start = startPlace;
    end = endPlace;
    seconds = itsSeconds;
    exit = ON_THE_WAY;
    planned = null;
  }

  /** Its speed at its end, where it is known already. */
  void endsAt(double speed) {
    exit = speed;
  }

  /** How long it takes. */
  double seconds() {
    return seconds;
  }

  /** How the machine goes along it. */
  PlannedMove planned() {
    if (planned == null) {
      double to = exit == ON_THE_WAY ? way.speedAt(end) : exit;
      double from = way.speedAt(start);
      planned =
          start >= way.peakFrom() && end <= way.peakTo() && way.peak() >= Math.max(from, to)
              ? steady(from, to)
              : changing(from, to);
    }
    return planned;
  }

  /** The highest feed all along, but for rounding. */
  private PlannedMove steady(double from, double to) {
    return new PlannedMove(
        seconds,
        from * PER_MINUTE,
        to * PER_MINUTE,
        Math.min(from, to) * PER_MINUTE,
        way.peak() * PER_MINUTE,
        meanMmPerMin(),
        from <= to ? 0 : 1,
        0,
        1);
  }

  private PlannedMove changing(double from, double to) {
    double length = end - start;
    double peakFrom = Math.max(start, way.peakFrom());
    double peakTo = Math.min(end, way.peakTo());
    double peak = way.peak();
    if (way.peakFrom() >= end || way.peakTo() <= start || peak < Math.max(from, to)) {
      // The peak lies in another block, or is lower than what the feed dips from.
      peak = Math.max(from, to);
      peakFrom = from > to ? start : end;
      peakTo = peakFrom;
    }
    double lowest = Math.min(from, to);
    double lowestAt = from <= to ? start : end;
    double dip = way.startDipPlace();
    if (dip > start && dip < end && way.startDip() < lowest) {
      lowest = way.startDip();
      lowestAt = dip;
    }
    dip = way.endDipPlace();
    if (dip > start && dip < end && way.endDip() < lowest) {
      lowest = way.endDip();
      lowestAt = dip;
    }
    return new PlannedMove(
        seconds,
        from * PER_MINUTE,
        to * PER_MINUTE,
        lowest * PER_MINUTE,
        peak * PER_MINUTE,
        meanMmPerMin(),
        (lowestAt - start) / length,
        (peakFrom - start) / length,
        Math.max(peakFrom - start, peakTo - start) / length);
  }

  private double meanMmPerMin() {
    return seconds > 0 ? (end - start) / seconds * PER_MINUTE : 0;
  }
}
