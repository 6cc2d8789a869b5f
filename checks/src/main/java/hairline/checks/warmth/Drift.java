package hairline.checks.warmth;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Growth from one point of a program to another, in micrometres, positive towards the part: what it
 * makes of a depth or a step. Each choice of figures is followed on its own, so that what two
 * points have in common drops out, and so does what is not known of both alike.
 */
public final class Drift {
  /** What differs by less than ten picometres is known. */
  private static final double KNOWN_WITHIN_UM = 1e-5;

  private final boolean unbounded;

  /** For each sample the least and the most it can be. */
  private final double[] leastUm;

  private final double[] mostUm;
  private final List<Doubt> doubts;

  private Drift(boolean unbounded, double[] leastUm, double[] mostUm, List<Doubt> doubts) {
    this.unbounded = unbounded;
    this.leastUm = leastUm;
    this.mostUm = mostUm;
    this.doubts = List.copyOf(doubts);
  }

  /** Growth from the first point to the second. */
  public static Drift between(GrowthPoint from, GrowthPoint to) {
    return of(List.of(to), List.of(from));
  }

  /**
   * The sum of growth at some points less that at others, all of one program; points that stand
   * opposite each other share what is not known of them where they can.
   *
   * @param plus at least one point
   * @param minus as many points, or none
   */
  static Drift of(List<GrowthPoint> plus, List<GrowthPoint> minus) {
    List<GrowthPoint> all = new ArrayList<>(plus);
    all.addAll(minus);
    boolean alike = all.stream().mapToLong(GrowthPoint::unknowns).distinct().count() == 1;
    boolean unbounded = all.stream().anyMatch(GrowthPoint::unbounded);
    int count = plus.get(0).growth().count();
    double[] least = new double[count];
    double[] most = new double[count];
    for (int i = 0; i < count && !unbounded; i++) {
      double atLow = 0;
      double atHigh = 0;
      for (int k = 0; k < plus.size(); k++) {
        double plusLow = lowUm(plus.get(k), i);
        double plusHigh = highUm(plus.get(k), i);
        double minusLow = k < minus.size() ? lowUm(minus.get(k), i) : 0;
        double minusHigh = k < minus.size() ? highUm(minus.get(k), i) : 0;
        boolean pairAlike = k < minus.size() && plus.get(k).unknowns() == minus.get(k).unknowns();
        double first = plusLow - (alike || pairAlike ? minusLow : minusHigh);
        double second = plusHigh - (alike || pairAlike ? minusHigh : minusLow);
        // What is not known of two pairs in different ways may add up.
        atLow += alike ? first : Math.min(first, second);
        atHigh += alike ? second : Math.max(first, second);
      }
      least[i] = Math.min(atLow, atHigh);
      most[i] = Math.max(atLow, atHigh);
    }
    List<Doubt> doubts = new ArrayList<>();
    for (GrowthPoint point : all) {
      for (Doubt doubt : point.doubts()) {
        if (doubts.stream().noneMatch(d -> d.reason().equals(doubt.reason()))) {
          doubts.add(doubt);
        }
      }
    }
    return new Drift(unbounded, least, most, doubts);
  }

  private static double lowUm(GrowthPoint point, int sample) {
    return point.growth().lowUm(sample) + point.instantLowUm();
  }

  private static double highUm(GrowthPoint point, int sample) {
    return point.growth().highUm(sample) + point.instantHighUm();
  }

  /** Whether speeds and times that matter are known. */
  public boolean isKnown() {
    if (unbounded) {
      return false;
    }
    for (int i = 0; i < leastUm.length; i++) {
      if (mostUm[i] - leastUm[i] > KNOWN_WITHIN_UM) {
        return false;
      }
    }
    return true;
  }

  /** The drift, where it is known. */
  public Optional<Band> um() {
    return isKnown() ? Optional.of(SpindleGrowth.band(leastUm)) : Optional.empty();
  }

  /**
   * The bounds of the drift for typical figures, where it has any; the typical value stands in
   * their middle.
   */
  public Optional<Band> boundsUm() {
    return unbounded
        ? Optional.empty()
        : Optional.of(new Band(leastUm[0], (leastUm[0] + mostUm[0]) / 2, mostUm[0]));
  }

  /**
   * From the least it can be to the most, for all figures of the sheet and all that is not known;
   * the typical value stands in the middle of its bounds. Empty where it has none.
   */
  public Optional<Band> rangeUm() {
    if (unbounded) {
      return Optional.empty();
    }
    Band least = SpindleGrowth.band(leastUm);
    Band most = SpindleGrowth.band(mostUm);
    return Optional.of(new Band(least.low(), (least.typical() + most.typical()) / 2, most.high()));
  }

  /** The middle of its bounds; empty where it has none. */
  public Optional<Band> middleUm() {
    if (unbounded) {
      return Optional.empty();
    }
    double[] middle = new double[leastUm.length];
    for (int i = 0; i < middle.length; i++) {
      middle[i] = (leastUm[i] + mostUm[i]) / 2;
    }
    return Optional.of(SpindleGrowth.band(middle));
  }

  /** How far it may lie from that middle, either way, for all that is not known; 0 where known. */
  public double slackUm() {
    double slack = 0;
    for (int i = 0; i < leastUm.length && !isKnown(); i++) {
      slack = Math.max(slack, (mostUm[i] - leastUm[i]) / 2);
    }
    return slack;
  }

  /** Whether its size is above the limit, whatever is not known. */
  public Certainty beyond(double limitUm) {
    if (unbounded) {
      return Certainty.NOT_SHOWN;
    }
    Certainty up = SpindleGrowth.band(leastUm).above(limitUm);
    return up == Certainty.NOT_SHOWN ? SpindleGrowth.band(mostUm).scale(-1).above(limitUm) : up;
  }

  /** Whether its size may be above the limit for all that is known, with typical figures. */
  public boolean mayBeBeyond(double limitUm) {
    return unbounded
        || Band.ofExact(mostUm[0]).above(limitUm) != Certainty.NOT_SHOWN
        || Band.ofExact(-leastUm[0]).above(limitUm) != Certainty.NOT_SHOWN;
  }

  /** Why it is not known; empty where it is. */
  public List<Doubt> doubts() {
    return isKnown() ? List.of() : doubts;
  }

  /** Its size with typical figures, the larger of its bounds. */
  double sizeUm() {
    return unbounded
        ? Double.POSITIVE_INFINITY
        : Math.max(Math.abs(leastUm[0]), Math.abs(mostUm[0]));
  }
}
