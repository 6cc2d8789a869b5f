package hairline.checks.warmth;

import hairline.checks.motion.Place;
import hairline.checks.timing.TimeTaken;

/** A measured tool, and how the spindle stood since. */
final class ToolRecord {
  private Measuring measuring;
  private TimeTaken longestStop = TimeTaken.NONE;
  private TimeTaken presentStop = TimeTaken.NONE;

  ToolRecord(Measuring measuring) {
    this.measuring = measuring;
  }

  void stood(TimeTaken time) {
    presentStop = presentStop.plus(time);
    longestStop = longestStop.orLonger(presentStop);
  }

  void turned() {
    presentStop = TimeTaken.NONE;
  }

  /** This M1 stands in one block with the measuring. */
  void hangOn(Place optionalStop) {
    measuring = measuring.hangingOn(optionalStop);
  }

  Measuring measuring() {
    return measuring;
  }

  TimeTaken longestStop() {
    return longestStop;
  }
}
