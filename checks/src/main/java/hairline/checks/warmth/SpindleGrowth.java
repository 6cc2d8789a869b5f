package hairline.checks.warmth;

import hairline.checks.cutting.Band;
import java.util.ArrayList;
import java.util.List;

/**
 * How far a spindle has grown by its own heat: a first-order lag, δ(t) = δ∞ + (δ₀ − δ∞) e^(−t/τ)
 * with δ∞ = amount · (n/n_at)^exponent, nothing standing. The shift of its bearings with speed is
 * no part of it; {@link GrowthPoint} adds that.
 *
 * <p>Figures that are bands are followed by samples: the typical figures, and every combination of
 * the ends of the amount (growth is proportional to it, so the ends are enough), {@value #TAUS}
 * time constants and {@value #EXPONENTS} exponents spread evenly over their bands (growth between
 * two points of time is largest somewhere within the band of the time constant; so many values come
 * within a hundredth of it, our choice).
 *
 * <p>What is not known, a time or a speed, leaves each sample between a low and a high end.
 * Immutable; touches no clock.
 */
public final class SpindleGrowth {
  /** Values over the band of the time constant. */
  static final int TAUS = 9;

  /** Values over the band of the exponent. */
  static final int EXPONENTS = 5;

  /** Ends nearer than a picometre are one value, in micrometres. */
  private static final double NOTHING_UM = 1e-6;

  /** One choice of figures. */
  private record Sample(double atRpm, double amountUm, double tauS, double exponent) {
    /** Growth in the end. */
    double endUm(double rpm) {
      return rpm > 0 ? amountUm * StrictMath.pow(rpm / atRpm, exponent) : 0;
    }
  }

  private final List<Sample> samples;
  private final double[] lowUm;
  private final double[] highUm;

  /** Whether nothing bounds it any more. */
  private final boolean unbounded;

  private SpindleGrowth(List<Sample> samples, double[] lowUm, double[] highUm, boolean unbounded) {
    this.samples = samples;
    this.lowUm = lowUm;
    this.highUm = highUm;
    this.unbounded = unbounded;
  }

  /** A spindle that has not grown. */
  public static SpindleGrowth cold(GrowthFigures figures) {
    List<Sample> samples = samples(figures);
    return new SpindleGrowth(
        samples, new double[samples.size()], new double[samples.size()], false);
  }

  /** A spindle that has turned at this speed until it grew no more. */
  public static SpindleGrowth warm(GrowthFigures figures, double rpm) {
    return cold(figures).after(rpm, Double.POSITIVE_INFINITY);
  }

  /** At the beginning of a program: cold, or warmed up before. */
  static SpindleGrowth atStart(GrowthFigures figures) {
    if (!figures.before()) {
      return cold(figures);
    }
    if (figures.warmUpRpm().isPresent()) {
      return warm(figures, figures.warmUpRpm().getAsDouble());
    }
    double fastest = figures.fastestRpm().orElse(Double.POSITIVE_INFINITY);
    return cold(figures)
        .after(new Speeds(0, fastest), Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
  }

  private static List<Sample> samples(GrowthFigures figures) {
    List<Sample> samples = new ArrayList<>();
    Band amount = figures.amountUm();
    Band tau = figures.timeConstantS();
    Band exponent = figures.exponent();
    samples.add(new Sample(figures.atRpm(), amount.typical(), tau.typical(), exponent.typical()));
    if (amount.isExact() && tau.isExact() && exponent.isExact()) {
      return List.copyOf(samples);
    }
    double[] amounts =
        amount.isExact()
            ? new double[] {amount.typical()}
            : new double[] {amount.low(), amount.high()};
    for (double amountUm : amounts) {
      for (double tauS : spread(tau, TAUS)) {
        for (double power : spread(exponent, EXPONENTS)) {
          samples.add(new Sample(figures.atRpm(), amountUm, tauS, power));
        }
      }
    }
    return List.copyOf(samples);
  }

  private static double[] spread(Band band, int count) {
    if (band.isExact()) {
      return new double[] {band.typical()};
    }
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      double part = i / (count - 1.0);
      values[i] = band.low() * (1 - part) + band.high() * part;
    }
    return values;
  }

  /** The growth after turning at this speed, 0 standing, for this time, which may be infinite. */
  public SpindleGrowth after(double rpm, double seconds) {
    return after(Speeds.of(rpm), seconds, seconds);
  }

  /** The growth after a time and at a speed that are known within bounds. */
  SpindleGrowth after(Speeds speeds, double atLeastSeconds, double atMostSeconds) {
    if (atMostSeconds == 0) {
      return this;
    }
    int count = samples.size();
    double[] low = new double[count];
    double[] high = new double[count];
    boolean lost = unbounded || Double.isInfinite(speeds.highestRpm());
    double widest = 0;
    for (int i = 0; i < count && !lost; i++) {
      Sample sample = samples.get(i);
      double atLowest = sample.endUm(speeds.lowestRpm());
      double atHighest = speeds.isKnown() ? atLowest : sample.endUm(speeds.highestRpm());
      double lowEnd = Math.min(atLowest, atHighest);
      double highEnd = Math.max(atLowest, atHighest);
      double early = StrictMath.exp(-atLeastSeconds / sample.tauS());
      double late =
          atMostSeconds == atLeastSeconds ? early : StrictMath.exp(-atMostSeconds / sample.tauS());
      low[i] = Math.min(lagged(lowUm[i], lowEnd, early), lagged(lowUm[i], lowEnd, late));
      high[i] = Math.max(lagged(highUm[i], highEnd, early), lagged(highUm[i], highEnd, late));
      widest = Math.max(widest, high[i] - low[i]);
    }
    if (widest > 0 && widest < NOTHING_UM) {
      high = low;
    }
    return new SpindleGrowth(samples, low, high, lost);
  }

  private static double lagged(double fromUm, double endUm, double left) {
    return endUm + (fromUm - endUm) * left;
  }

  /** The growth, where speeds and times are known, in micrometres, without the instant part. */
  public Band um() {
    return band(lowUm);
  }

  /** How far growth in the end at this speed lies above the growth now, in micrometres. */
  public Band toComeUm(double rpm) {
    double[] toCome = new double[samples.size()];
    for (int i = 0; i < toCome.length; i++) {
      toCome[i] = samples.get(i).endUm(rpm) - lowUm[i];
    }
    return band(toCome);
  }

  /** Whether speeds and times behind it are known, or no longer matter. */
  public boolean isKnown() {
    if (unbounded) {
      return false;
    }
    for (int i = 0; i < lowUm.length; i++) {
      if (lowUm[i] != highUm[i]) {
        return false;
      }
    }
    return true;
  }

  /** The band of one value for each sample, of which the first is the typical one. */
  static Band band(double[] ofSamples) {
    double low = ofSamples[0];
    double high = ofSamples[0];
    for (double value : ofSamples) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return new Band(low, ofSamples[0], high);
  }

  boolean unbounded() {
    return unbounded;
  }

  int count() {
    return samples.size();
  }

  double lowUm(int sample) {
    return lowUm[sample];
  }

  double highUm(int sample) {
    return highUm[sample];
  }

  double tauS(int sample) {
    return samples.get(sample).tauS();
  }

  double endUm(int sample, double rpm) {
    return samples.get(sample).endUm(rpm);
  }
}
