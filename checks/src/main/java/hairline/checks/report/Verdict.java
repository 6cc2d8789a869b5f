package hairline.checks.report;

/**
 * What a run comes to.
 *
 * @param programs how many programs were checked
 * @param troubled how many could not be
 * @param incomplete how many of those checked were not fully analysed
 * @param errors how many findings of level error, accepted ones left out
 * @param warnings how many of level warning
 * @param notes how many of level note
 * @param accepted how many findings an accept comment answers
 * @param undecided how many rules could not decide everywhere, each counted once
 * @param exitStatus the status the process ends with, as far as the programs decide it
 */
public record Verdict(
    int programs,
    int troubled,
    int incomplete,
    long errors,
    long warnings,
    long notes,
    long accepted,
    long undecided,
    int exitStatus) {

  /** All findings that stand. */
  public long findings() {
    return errors + warnings + notes;
  }
}
