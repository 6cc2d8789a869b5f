package hairline.checks.warmth;

import hairline.checks.motion.Place;
import hairline.checks.timing.Answer;
import java.util.List;
import java.util.Optional;

/**
 * Whether the spindle is warmed up.
 *
 * @param valid whether there is a valid warm-up; unknown for the reasons in {@code doubts}
 * @param since where it became valid: the code, or the block in which the time was full; empty
 *     where it is not valid, or was done before the program
 * @param expiredAt where the last one expired, or for an unknown answer may have; empty where none
 *     did, or a later one is valid
 * @param doubts why the answer is unknown; empty where it is not
 * @param deletableAt the first block with a block-delete mark that it hangs on; empty where it
 *     stands without such blocks
 * @param optionalStopAt the M1 that stands in one block with the code
 */
public record WarmUp(
    Answer valid,
    Optional<Place> since,
    Optional<Place> expiredAt,
    List<Doubt> doubts,
    Optional<Place> deletableAt,
    Optional<Place> optionalStopAt) {
  public WarmUp {
    doubts = List.copyOf(doubts);
  }
}
