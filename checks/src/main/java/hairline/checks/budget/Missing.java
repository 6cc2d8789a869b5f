package hairline.checks.budget;

/**
 * A part of a budget that is not known.
 *
 * @param source which part
 * @param reason the key of the sheet that would give it, or what is not known, as a clause
 * @param isKey whether the reason is a key
 */
public record Missing(Source source, String reason, boolean isKey) {
  /** A part for which the sheet has no figure. */
  public static Missing key(Source source, String key) {
    return new Missing(source, key, true);
  }

  /** A part that something else keeps unknown. */
  public static Missing unknown(Source source, String reason) {
    return new Missing(source, reason, false);
  }
}
