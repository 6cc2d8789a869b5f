package hairline.checks.rules;

import hairline.checks.cutting.Band;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.setup.Feature;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.LimitKeys;
import hairline.checks.setup.Resolved;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.setup.Tolerance;
import hairline.checks.warmth.Drift;
import hairline.checks.warmth.GrowthFigures;
import hairline.checks.warmth.GrowthPoint;
import hairline.checks.warmth.LevelGrowth.Contact;
import hairline.checks.warmth.Measuring;
import java.util.Optional;

/** What rules about spindle growth have in common. */
final class Growths {
  private Growths() {}

  /**
   * What growth may take of a tolerance.
   *
   * @param um the part allowed, in micrometres
   * @param share the share of the tolerance
   * @param toleranceUm T of ±T
   * @param key where the tolerance comes from
   */
  record Allowed(double um, double share, double toleranceUm, String key) {
    /** Where it comes from. */
    String fact() {
      return "allowed is "
          + LimitKeys.GROWTH_SHARE.path()
          + " "
          + Quantities.significant(share, 4)
          + " of ±"
          + Quantities.um(toleranceUm)
          + " ("
          + key
          + ")";
    }
  }

  /** What is allowed at a step or cut of this feature, where the sheet tells. */
  static Optional<Allowed> allowed(RuleContext context, Optional<Feature> feature, Place at) {
    Resolved<Tolerance> tolerance =
        feature
            .map(context.setup()::toleranceOf)
            .orElseGet(() -> context.setup().resolve(JobKeys.TOLERANCE));
    Optional<Tolerance> given = context.need(tolerance, at);
    return given.map(
        t -> {
          double share = context.need(LimitKeys.GROWTH_SHARE, at).orElseThrow();
          return new Allowed(share * t.halfWidthUm(), share, t.halfWidthUm(), tolerance.path());
        });
  }

  /** Whether the sheet tells of growth; names what is missing. */
  static boolean told(RuleContext context, Place at) {
    boolean told = true;
    for (var key : GrowthFigures.NEEDED) {
      told &= context.need(key, at).isPresent();
    }
    if (told) {
      context.need(SpindleKeys.GROWTH_EXPONENT, at);
    }
    return told;
  }

  /** "3.512 µm" with its band, or between which it lies. */
  static String um(GrowthPoint point) {
    Drift drift = point.sinceCold();
    return drift
        .um()
        .map(Bands::um)
        .or(
            () ->
                drift
                    .boundsUm()
                    .map(b -> Quantities.um(b.low()) + " to " + Quantities.um(b.high())))
        .orElse("unknown");
  }

  /** "growth 3.5 µm at line 12 (733.5 s)". */
  static String at(RuleContext context, Contact contact, Place finding) {
    return at(contact.growth(), context.line(contact.at(), finding), contact.seconds());
  }

  static String at(RuleContext context, Measuring measuring, Place finding) {
    return at(
        measuring.growth().orElseThrow(),
        context.line(measuring.at(), finding),
        measuring.secondsAtEnd());
  }

  private static String at(GrowthPoint point, String line, double seconds) {
    return "growth " + um(point) + " at " + line + " (" + Seconds.of(seconds) + ")";
  }

  /** The size of a drift that is beyond its limit; the least where it is not known. */
  static Band sizeUm(Drift drift) {
    return drift
        .um()
        .map(band -> band.typical() < 0 ? band.scale(-1) : band)
        .orElseGet(
            () -> {
              Band bounds = drift.boundsUm().orElseThrow();
              return Band.ofExact(Math.min(Math.abs(bounds.low()), Math.abs(bounds.high())));
            });
  }

  /** "0.42 µm", or "at least" so much, told from the limit. */
  static String size(Drift drift, Allowed allowed) {
    return (drift.isKnown() ? "" : "at least ") + Bands.um(sizeUm(drift), allowed.um());
  }

  /** Whether the drift goes deeper. */
  static boolean deeper(Drift drift) {
    return drift.um().or(drift::boundsUm).orElseThrow().typical() >= 0;
  }

  /** "at 50000 rpm", "standing". */
  static String speed(double rpm) {
    return rpm == 0 ? "standing" : "at " + Quantities.rpm(rpm);
  }
}
