package hairline.checks.cutting;

/** The groups of work material of ISO 513. */
public enum MaterialGroup {
  /** Steel. */
  P,
  /** Stainless steel. */
  M,
  /** Cast iron. */
  K,
  /** Non-ferrous metals. */
  N,
  /** Superalloys and titanium. */
  S,
  /** Hardened steel. */
  H
}
