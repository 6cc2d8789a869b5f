package hairline.checks.warmth;

import hairline.checks.motion.Place;
import hairline.checks.timing.TimeTaken;
import java.util.Optional;

/** A measured tool, and how the spindle stood since. */
final class ToolRecord {
  private Measuring measuring;
  private Stop longest;
  private Optional<Stop> present;

  /**
   * A tool just measured.
   *
   * @param standing whether the spindle stood, so that its stop counts from measuring on
   */
  ToolRecord(Measuring measuring, boolean standing) {
    this.measuring = measuring;
    this.longest = new Stop(measuring.at(), TimeTaken.NONE);
    this.present = standing ? Optional.of(longest) : Optional.empty();
  }

  /** The spindle stands for this time and may go on standing; it stopped at this place. */
  void stood(Place from, TimeTaken time) {
    Stop stop =
        new Stop(
            present.map(Stop::from).orElse(from),
            present.map(Stop::time).orElse(TimeTaken.NONE).plus(time));
    present = Optional.of(stop);
    TimeTaken longer = longest.time().orLonger(stop.time());
    if (!longer.equals(longest.time())) {
      longest = new Stop(stop.from(), longer);
    }
  }

  void turned() {
    present = Optional.empty();
  }

  /** This M1 stands in one block with the measuring. */
  void hangOn(Place optionalStop) {
    measuring = measuring.hangingOn(optionalStop);
  }

  Measuring measuring() {
    return measuring;
  }

  Stop longestStop() {
    return longest;
  }
}
