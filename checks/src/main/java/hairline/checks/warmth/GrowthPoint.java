package hairline.checks.warmth;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.timing.Answer;
import hairline.checks.timing.TimeTaken;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * The growth of the spindle at one point of a program, the shift of its bearings included: what a
 * tool tip has moved towards the part since the spindle stood cold. Worked out when asked for.
 * Points of one program can be held against each other, see {@link Drift}.
 */
public final class GrowthPoint {
  private final GrowthFigures figures;

  /** Growth where the spindle last changed, and what it did since. */
  private final SpindleGrowth base;

  private final Speeds since;
  private final TimeTaken taken;

  /** What the spindle does now. */
  private final Speeds now;

  /** Points with the same number share all that is not known of them. */
  private final long unknowns;

  private final List<Doubt> doubts;
  private final LongSupplier nextUnknown;
  private @Nullable SpindleGrowth growth;

  GrowthPoint(
      GrowthFigures figures,
      SpindleGrowth base,
      Speeds since,
      TimeTaken taken,
      Speeds now,
      long unknowns,
      List<Doubt> doubts,
      LongSupplier nextUnknown) {
    this.figures = figures;
    this.base = base;
    this.since = since;
    this.taken = taken;
    this.now = now;
    this.unknowns = unknowns;
    this.doubts = doubts;
    this.nextUnknown = nextUnknown;
  }

  /** The point so much later, the spindle going on as it does. */
  GrowthPoint later(TimeTaken time) {
    if (time.atMostSeconds() == 0) {
      return this;
    }
    long number = time.isKnown() && now.isKnown() ? unknowns : nextUnknown.getAsLong();
    if (since.equals(now)) {
      return new GrowthPoint(
          figures, base, since, taken.plus(time), now, number, doubts, nextUnknown);
    }
    return new GrowthPoint(figures, growth(), now, time, now, number, doubts, nextUnknown);
  }

  SpindleGrowth growth() {
    if (growth == null) {
      growth = base.after(since, taken.atLeastSeconds(), taken.atMostSeconds());
    }
    return growth;
  }

  GrowthFigures figures() {
    return figures;
  }

  /** Whether growth by heat, with typical figures, is this near to its end value at this speed. */
  Answer within(double nearUm, double rpm) {
    if (growth().unbounded()) {
      return Answer.UNKNOWN;
    }
    double endUm = growth().endUm(0, rpm);
    double lowUm = endUm - growth().highUm(0);
    double highUm = endUm - growth().lowUm(0);
    if (isNear(lowUm, nearUm) && isNear(highUm, nearUm)) {
      return Answer.YES;
    }
    return lowUm > nearUm || highUm < -nearUm || lowUm == highUm ? Answer.NO : Answer.UNKNOWN;
  }

  private static boolean isNear(double toComeUm, double nearUm) {
    return Band.ofExact(Math.abs(toComeUm)).above(nearUm) == Certainty.NOT_SHOWN;
  }

  /** Whether the spindle did the same thing from the one point to the other. */
  @SuppressWarnings("ReferenceEquality")
  boolean sameStretch(GrowthPoint other) {
    return base == other.base && since.equals(other.since) && now.equals(other.now);
  }

  /** The known part of the time since the spindle last changed. */
  double stretchSeconds() {
    return taken.atLeastSeconds();
  }

  /** A point of the same spindle, grown so far. */
  GrowthPoint from(SpindleGrowth grown) {
    return new GrowthPoint(figures, grown, now, TimeTaken.NONE, now, unknowns, doubts, nextUnknown);
  }

  long unknowns() {
    return unknowns;
  }

  List<Doubt> doubts() {
    return doubts;
  }

  double instantLowUm() {
    double slow = figures.instantUmAt(now.lowestRpm());
    return now.isKnown() ? slow : Math.min(slow, figures.instantUmAt(now.highestRpm()));
  }

  double instantHighUm() {
    double slow = figures.instantUmAt(now.lowestRpm());
    return now.isKnown() ? slow : Math.max(slow, figures.instantUmAt(now.highestRpm()));
  }

  boolean unbounded() {
    return growth().unbounded() || Double.isInfinite(now.highestRpm());
  }

  /** Speed of the spindle, 0 standing; empty where it is not known. */
  public OptionalDouble rpm() {
    return now.isKnown() ? OptionalDouble.of(now.lowestRpm()) : OptionalDouble.empty();
  }

  /** The growth in micrometres, positive towards the part; empty where it is not known. */
  public Optional<Band> um() {
    return Drift.of(List.of(this), List.of()).um();
  }

  /** The growth as a difference to the cold spindle, with its bounds and doubts. */
  public Drift sinceCold() {
    return Drift.of(List.of(this), List.of());
  }

  /**
   * How far the growth by heat in the end at this speed lies above that of now, in micrometres;
   * empty where it is not known.
   */
  public Optional<Band> toComeUm(double rpm) {
    return growth().isKnown() ? Optional.of(growth().toComeUm(rpm)) : Optional.empty();
  }
}
