package hairline.checks.budget;

import hairline.checks.budget.Uncertainty.Contribution;
import hairline.checks.cutting.Band;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The error budget of one step: what its height may suffer, against what its tolerance allows.
 *
 * <p>The error to be expected is P = |sum of the signed parts| + 2 u, with u the random parts in
 * quadrature. A drift whose sign is not known adds to what is worse. The gauge is the guard band of
 * the decision and no part of P; it would count twice.
 *
 * <p>A missing part is never taken as nothing: what is known may show that the step fails, never
 * that it holds. That a missing drift could by chance undo a known one is no reason to hope.
 *
 * @param step the step
 * @param parts its parts, each source once, in the order of the sources
 * @param missing the parts that are not known, in the order of the sources
 * @param toleranceUm T, half the width of the tolerance, above 0; empty where not known
 * @param guardUm U, the expanded uncertainty of the gauge, 0 or more; empty where not known
 */
public record StepBudget(
    BudgetedStep step,
    List<Part> parts,
    List<Missing> missing,
    OptionalDouble toleranceUm,
    OptionalDouble guardUm) {

  /** P covers about 95 % of what the random parts do. */
  public static final int COVERAGE_FACTOR = 2;

  /**
   * Puts the parts in order.
   *
   * @throws IllegalArgumentException if a source stands twice
   */
  public StepBudget {
    parts = parts.stream().sorted(Comparator.comparing(Part::source)).toList();
    missing = missing.stream().sorted(Comparator.comparing(Missing::source)).toList();
    if (parts.stream().map(Part::source).distinct().count() < parts.size()) {
      throw new IllegalArgumentException("a part stands twice in " + parts);
    }
    toleranceUm.ifPresent(t -> Uncertainty.requireNotNegative("tolerance", t));
    guardUm.ifPresent(u -> Uncertainty.requireNotNegative("guard band", u));
  }

  /**
   * One part as it counts in the error.
   *
   * @param part the part
   * @param um what it brings: a drift with its sign, of a random part 2 c u
   * @param shareOfError its part of P; all shares add up to 1; below 0 for a drift that works
   *     against the others
   * @param halvingGainsUm by how much P shrinks where this part is halved; below 0 where P grows,
   *     because drifts undo each other
   */
  public record Weighed(Part part, double um, double shareOfError, double halvingGainsUm) {}

  /** P in µm, as a band where a part has one. */
  public Band errorUm() {
    return error(Optional.empty());
  }

  /** The sum of the signed parts, typical values, in µm. */
  public double driftUm() {
    return signed(Optional.empty()).typical();
  }

  /** The combined standard uncertainty of the random parts, in µm. */
  public double standardUncertaintyUm() {
    return Uncertainty.combined(contributions(Optional.empty()));
  }

  /** The parts with what they weigh, the largest first; what brings nothing comes last. */
  public List<Weighed> weighed() {
    double errorUm = errorUm().typical();
    double sign = driftUm() < 0 ? -1 : 1;
    double combinedUm = standardUncertaintyUm();
    List<Weighed> all = new ArrayList<>();
    for (Part part : parts) {
      double um = inErrorUm(part);
      double countsUm =
          part instanceof Part.Random random
              ? ofCombined(random.contribution().inResult(), combinedUm)
              : part instanceof Part.DriftEitherWay ? um : sign * um;
      all.add(
          new Weighed(
              part,
              um,
              errorUm > 0 ? countsUm / errorUm : 0,
              errorUm - error(Optional.of(part)).typical()));
    }
    all.sort(
        Comparator.comparingDouble((Weighed w) -> -Math.abs(w.shareOfError()))
            .thenComparing(w -> w.part().source()));
    return List.copyOf(all);
  }

  /** What a random part takes of 2 u_c, so that all of them add up to it. */
  private static double ofCombined(double inResultUm, double combinedUm) {
    return combinedUm > 0 ? COVERAGE_FACTOR * inResultUm * (inResultUm / combinedUm) : 0;
  }

  private static double inErrorUm(Part part) {
    if (part instanceof Part.Random random) {
      return COVERAGE_FACTOR * random.contribution().inResult();
    }
    return part instanceof Part.DriftEitherWay either ? either.um() : band(part).typical();
  }

  /** What can be said: by typical values, see {@link #decisionAtLeast}. */
  public Decision decision() {
    return decide(errorUm().typical());
  }

  /** What can be said where every band is at its mildest. */
  public Decision decisionAtLeast() {
    return decide(errorUm().low());
  }

  private Decision decide(double errorUm) {
    if (toleranceUm.isEmpty() || guardUm.isEmpty()) {
      return Decision.UNDECIDED;
    }
    Decision decision = Decision.ofError(errorUm, toleranceUm.getAsDouble(), guardUm.getAsDouble());
    return missing.isEmpty() ? decision : decision.withPartMissing();
  }

  private Band error(Optional<Part> halved) {
    Band signedUm = signed(halved);
    double eitherWayUm = 0;
    for (Part part : parts) {
      if (part instanceof Part.DriftEitherWay drift) {
        eitherWayUm += factor(part, halved) * drift.um();
      }
    }
    double randomUm = COVERAGE_FACTOR * Uncertainty.combined(contributions(halved));
    return magnitude(signedUm).plus(eitherWayUm).plus(randomUm);
  }

  private static Band magnitude(Band band) {
    double low = Math.abs(band.low());
    double high = Math.abs(band.high());
    boolean acrossZero = band.low() <= 0 && band.high() >= 0;
    return new Band(
        acrossZero ? 0 : Math.min(low, high), Math.abs(band.typical()), Math.max(low, high));
  }

  private Band signed(Optional<Part> halved) {
    Band sum = Band.ofExact(0);
    for (Part part : parts) {
      sum = sum.plus(band(part).scale(factor(part, halved)));
    }
    return sum;
  }

  private static Band band(Part part) {
    if (part instanceof Part.Known known) {
      return Band.ofExact(known.pm() / 1e6);
    }
    return part instanceof Part.Drift drift ? drift.um() : Band.ofExact(0);
  }

  private List<Contribution> contributions(Optional<Part> halved) {
    List<Contribution> all = new ArrayList<>();
    for (Part part : parts) {
      if (part instanceof Part.Random random) {
        Contribution c = random.contribution();
        all.add(
            new Contribution(
                c.standard() * factor(part, halved), c.sensitivity(), c.degreesOfFreedom()));
      }
    }
    return all;
  }

  private static double factor(Part part, Optional<Part> halved) {
    return halved.filter(part::equals).isPresent() ? 0.5 : 1;
  }
}
