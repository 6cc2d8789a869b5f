package hairline.checks.cutting;

import java.util.Locale;

/** Domain checks of the formulas in this package. */
final class Require {
  private Require() {}

  /** Returns the value if it is finite and above zero, else throws. */
  static double positive(String name, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(message(name, value, "must be above zero"));
    }
    return value;
  }

  /** Throws unless the value is finite and not below zero. */
  static void notNegative(String name, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(message(name, value, "must not be below zero"));
    }
  }

  /** Throws unless the condition holds. */
  static void that(boolean condition, String name, double value, String demand) {
    if (!condition) {
      throw new IllegalArgumentException(message(name, value, demand));
    }
  }

  /** The same for a demand that names a figure: it is worded only where it is not met. */
  static void that(boolean condition, String name, double value, String demand, double figure) {
    if (!condition) {
      throw new IllegalArgumentException(message(name, value, demand + " " + figure));
    }
  }

  private static String message(String name, double value, String demand) {
    return String.format(Locale.ROOT, "%s is %s, it %s", name, value, demand);
  }
}
