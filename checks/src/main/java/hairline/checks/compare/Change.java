package hairline.checks.compare;

import hairline.checks.motion.Place;
import java.util.Locale;
import java.util.Optional;

/**
 * One difference between two programs; alike ones of one pair of operations are one change.
 *
 * @param kind what differs
 * @param operationBefore the operation concerned in the program before; 0 for none
 * @param operationAfter the operation concerned in the program after; 0 for none
 * @param before how it was; empty for nothing
 * @param after how it is; empty for nothing
 * @param count how many moves or other acts differ so
 * @param first where it differs first
 * @param largest where it differs most, where that can be told
 * @param farMm how far apart the paths are at most, or the length of what is gone or new; NaN where
 *     it is no matter of path or not known
 * @param blockDelete with which setting of the block-delete switch: "", "on" or "off"
 */
public record Change(
    Kind kind,
    int operationBefore,
    int operationAfter,
    String before,
    String after,
    long count,
    Where first,
    Optional<Where> largest,
    double farMm,
    String blockDelete) {

  /**
   * Where, in both programs.
   *
   * @param before empty where there is nothing like it before
   * @param after empty where there is nothing like it after
   */
  public record Where(Optional<Place> before, Optional<Place> after) {}

  /** What can differ. */
  public enum Kind {
    /** The tool goes elsewhere. */
    PATH,
    /** Moves that are gone or new. */
    MOVES,
    /** A rapid became a feed move, a line an arc. */
    MOTION,
    LEVEL,
    STEP,
    FEED,
    SPEED,
    TOOL,
    OFFSET,
    LENGTH_OFFSET,
    COMPENSATION,
    PATH_MODE,
    COOLANT,
    STOP,
    DWELL,
    WARM_UP,
    MEASURING,
    CODE,
    SHIFT,
    NOT_UNDERSTOOD,
    STATE_AT_END;

    /** Whether the surface left can differ for it. */
    boolean movesSurface() {
      return switch (this) {
        case FEED, SPEED, COOLANT, PATH_MODE, STOP, DWELL, WARM_UP, MEASURING, STATE_AT_END ->
            false;
        default -> true;
      };
    }

    /** Its name for people. */
    public String words() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /** The same with the block-delete setting for which it holds. */
  Change onlyWith(String setting) {
    return new Change(
        kind,
        operationBefore,
        operationAfter,
        before,
        after,
        count,
        first,
        largest,
        farMm,
        setting);
  }
}
