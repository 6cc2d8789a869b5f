package hairline.checks.rules;

import hairline.checks.motion.Modes.Coolant;

/** Coolant in words. */
final class Coolants {
  private Coolants() {}

  /** "mist coolant", "flood coolant", both, or "no coolant". */
  static String name(Coolant coolant) {
    if (coolant.mist() && coolant.flood()) {
      return "mist and flood coolant";
    }
    if (coolant.on()) {
      return coolant.mist() ? "mist coolant" : "flood coolant";
    }
    return "no coolant";
  }
}
