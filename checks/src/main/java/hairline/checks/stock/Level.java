package hairline.checks.stock;

import hairline.checks.motion.Place;
import hairline.checks.setup.Tool;
import java.util.Optional;

/** One level as it is cut: what it is, and where it was cut first and last. */
final class Level {
  /** Written values this near are one value: a nanometre. */
  private static final long SAME_WRITTEN_PM = 1000;

  final int id;
  final Key key;
  final long writtenZPm;
  final Optional<Tool> tool;
  final ApproachDirection approach;
  final Place first;
  final int firstOperation;
  private Place last;
  private int lastOperation;
  private boolean fine;

  /**
   * What makes moves belong to one level, but for being connected and equal as written.
   *
   * @param tool the tool's number, -1 where not known
   */
  record Key(String offset, long zPm, int tool) {}

  Level(
      int id,
      Key key,
      long writtenZPm,
      Optional<Tool> tool,
      ApproachDirection approach,
      Place first,
      int operation) {
    this.id = id;
    this.key = key;
    this.writtenZPm = writtenZPm;
    this.tool = tool;
    this.approach = approach;
    this.first = first;
    this.firstOperation = operation;
    this.last = first;
    this.lastOperation = operation;
  }

  boolean is(Key other, long otherWrittenZPm) {
    return key.equals(other) && writtenAlike(writtenZPm, otherWrittenZPm);
  }

  /** Whether two written values are one. */
  static boolean writtenAlike(long onePm, long otherPm) {
    return Math.abs(onePm - otherPm) < SAME_WRITTEN_PM;
  }

  void cutAt(Place place, int operation) {
    last = place;
    lastOperation = operation;
  }

  /** Whether its latest cut that took a height was a fine cut. */
  boolean fine() {
    return fine;
  }

  void setFine(boolean isFine) {
    fine = isFine;
  }

  Terrace terrace() {
    return new Terrace(
        id,
        key.zPm(),
        writtenZPm,
        Optional.of(first),
        Optional.of(last),
        tool,
        firstOperation,
        lastOperation,
        approach);
  }
}
