package hairline.checks.motion;

import hairline.checks.motion.Modes.Compensation;
import hairline.checks.motion.Modes.Coolant;
import hairline.checks.motion.Modes.CycleReturn;
import hairline.checks.motion.Modes.Distance;
import hairline.checks.motion.Modes.FeedMode;
import hairline.checks.motion.Modes.PathMode;
import hairline.checks.motion.Modes.Plane;
import hairline.checks.motion.Modes.Spindle;
import hairline.checks.motion.Modes.Units;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The modal state while a program runs, and its snapshots: the same {@link Modes} object as long as
 * nothing changes. Stating again what already was stated changes nothing.
 */
final class ModalState {
  private Modal<Units> units;
  private Modal<Plane> plane;
  private Modal<Distance> distance;
  private Modal<Distance> arcDistance = Modal.assumed(Distance.INCREMENTAL);
  private Modal<FeedMode> feedMode;
  private Modal<PathMode> pathMode = Modal.unset();
  private Modal<String> workOffset = Modal.unset();
  private Modal<Compensation> compensation = Modal.assumed(Compensation.OFF);
  private Modal<Integer> compensationNumber = Modal.unset();
  private Modal<Integer> lengthOffset = Modal.unset();
  private Modal<CycleReturn> cycleReturn = Modal.assumed(CycleReturn.INITIAL_LEVEL);
  private Modal<Spindle> spindle = Modal.assumed(Spindle.STOPPED);
  private Modal<Double> speed = Modal.unset();
  private boolean surfaceSpeed;
  private Modal<Double> feed = Modal.unset();
  private Modal<Integer> tool = Modal.unset();
  private Modal<Coolant> coolant = Modal.assumed(Coolant.OFF);
  private int operation = 1;

  /** The file of the block being executed. */
  private int file;

  private boolean moved;
  private Modal<Integer> nextTool = Modal.unset();
  private @Nullable Code motion;
  private boolean motionUnknown;
  private boolean motionCancelled;

  /** The last of G0 to G3 and G38.2; a cycle stands beside it (common practice, no source). */
  private @Nullable Code lastMotion;

  private boolean lastMotionUnknown;
  private boolean toolChangedSinceOffset;

  private @Nullable Modes snapshot;

  ModalState(ControlProfile profile) {
    units = start(profile.units(), Units.MM);
    plane = start(profile.plane(), Plane.XY);
    distance = start(profile.distance(), Distance.ABSOLUTE);
    feedMode = start(profile.feedMode(), FeedMode.PER_MINUTE);
  }

  private static <T> Modal<T> start(Optional<T> sheet, T usual) {
    return sheet.map(Modal::fromSheet).orElseGet(() -> Modal.assumed(usual));
  }

  /** The state as it stands now. */
  Modes snapshot() {
    Modes now = snapshot;
    if (now == null) {
      now =
          new Modes(
              units,
              plane,
              distance,
              arcDistance,
              feedMode,
              pathMode,
              workOffset,
              compensation,
              compensationNumber,
              lengthOffset,
              cycleReturn,
              spindle,
              speed,
              surfaceSpeed,
              feed,
              tool,
              coolant,
              operation);
      snapshot = now;
    }
    return now;
  }

  /** Blocks of this file are executed from now on. */
  void enterFile(int index) {
    file = index;
  }

  /** What an item becomes when a block states it. */
  private <T> Modal<T> stated(Modal<T> old, T value, int line) {
    if (old.isStated() && old.is(value)) {
      return old;
    }
    snapshot = null;
    return Modal.stated(value, file, line);
  }

  /** What an item becomes when a block may have changed it. */
  private <T> Modal<T> forgotten(Modal<T> old, int line) {
    if (old.isUnknown()) {
      return old;
    }
    snapshot = null;
    return Modal.unknown(file, line);
  }

  Modal<Units> units() {
    return units;
  }

  void setUnits(Units value, int line) {
    units = stated(units, value, line);
  }

  void forgetUnits(int line) {
    units = forgotten(units, line);
  }

  Modal<Plane> plane() {
    return plane;
  }

  void setPlane(Plane value, int line) {
    plane = stated(plane, value, line);
  }

  void forgetPlane(int line) {
    plane = forgotten(plane, line);
  }

  Modal<Distance> distance() {
    return distance;
  }

  void setDistance(Distance value, int line) {
    distance = stated(distance, value, line);
  }

  void forgetDistance(int line) {
    distance = forgotten(distance, line);
  }

  Modal<Distance> arcDistance() {
    return arcDistance;
  }

  void setArcDistance(Distance value, int line) {
    arcDistance = stated(arcDistance, value, line);
  }

  void forgetArcDistance(int line) {
    arcDistance = forgotten(arcDistance, line);
  }

  Modal<FeedMode> feedMode() {
    return feedMode;
  }

  /** Sets the feed mode; the feed that stood under another mode means nothing any more. */
  void setFeedMode(FeedMode value, int line) {
    if (!feedMode.is(value)) {
      dropFeed();
    }
    feedMode = stated(feedMode, value, line);
  }

  void forgetFeedMode(int line) {
    feedMode = forgotten(feedMode, line);
  }

  Modal<Double> feed() {
    return feed;
  }

  void setFeed(double value, int line) {
    feed = stated(feed, value, line);
  }

  void forgetFeed(int line) {
    feed = forgotten(feed, line);
  }

  /** No feed is given: under inverse time, each block needs its own. */
  void dropFeed() {
    if (feed.origin() != Modal.Origin.UNSET) {
      snapshot = null;
      feed = Modal.unset();
    }
  }

  void setPathMode(PathMode value, int line) {
    pathMode = stated(pathMode, value, line);
  }

  Modal<PathMode> pathMode() {
    return pathMode;
  }

  void forgetPathMode(int line) {
    pathMode = forgotten(pathMode, line);
  }

  Modal<String> workOffset() {
    return workOffset;
  }

  void setWorkOffset(String value, int line) {
    workOffset = stated(workOffset, value, line);
  }

  void forgetWorkOffset(int line) {
    workOffset = forgotten(workOffset, line);
  }

  Modal<Compensation> compensation() {
    return compensation;
  }

  void setCompensation(Compensation value, int line) {
    compensation = stated(compensation, value, line);
  }

  void forgetCompensation(int line) {
    compensation = forgotten(compensation, line);
  }

  void setCompensationNumber(int value, int line) {
    compensationNumber = stated(compensationNumber, value, line);
  }

  void forgetCompensationNumber(int line) {
    compensationNumber = forgotten(compensationNumber, line);
  }

  Modal<Integer> lengthOffset() {
    return lengthOffset;
  }

  /** Sets the number of the length offset; 0 is none. */
  void setLengthOffset(int value, int line) {
    toolChangedSinceOffset = false;
    lengthOffset = stated(lengthOffset, value, line);
  }

  void forgetLengthOffset(int line) {
    lengthOffset = forgotten(lengthOffset, line);
  }

  /** Whether this length offset is in force for the tool in the spindle. */
  boolean lengthOffsetStands(int value) {
    return lengthOffset.is(value) && !toolChangedSinceOffset;
  }

  Modal<CycleReturn> cycleReturn() {
    return cycleReturn;
  }

  void setCycleReturn(CycleReturn value, int line) {
    cycleReturn = stated(cycleReturn, value, line);
  }

  void forgetCycleReturn(int line) {
    cycleReturn = forgotten(cycleReturn, line);
  }

  Modal<Spindle> spindle() {
    return spindle;
  }

  void setSpindle(Spindle value, int line) {
    spindle = stated(spindle, value, line);
  }

  /** Turns again as it did before. */
  void restoreSpindle(Modal<Spindle> before) {
    if (!spindle.equals(before)) {
      snapshot = null;
      spindle = before;
    }
  }

  void forgetSpindle(int line) {
    spindle = forgotten(spindle, line);
  }

  /** Sets S; another value begins the next operation. */
  void setSpeed(double value, int line) {
    if (!speed.is(value)) {
      beginOperation();
    }
    speed = stated(speed, value, line);
  }

  void forgetSpeed(int line) {
    beginOperation();
    speed = forgotten(speed, line);
  }

  Modal<Double> speed() {
    return speed;
  }

  boolean surfaceSpeed() {
    return surfaceSpeed;
  }

  /** Says whether S is a surface speed from here on; what stood under the other kind is void. */
  void setSurfaceSpeed(boolean value) {
    if (surfaceSpeed != value) {
      snapshot = null;
      surfaceSpeed = value;
      speed = Modal.unset();
      beginOperation();
    }
  }

  Modal<Coolant> coolant() {
    return coolant;
  }

  void setCoolant(Coolant value, int line) {
    coolant = stated(coolant, value, line);
  }

  void forgetCoolant(int line) {
    coolant = forgotten(coolant, line);
  }

  Modal<Integer> tool() {
    return tool;
  }

  /** The tool that the next M6 puts in the spindle. */
  void selectTool(int number, int line) {
    nextTool = Modal.stated(number, file, line);
  }

  void forgetNextTool(int line) {
    nextTool = Modal.unknown(file, line);
  }

  void forgetTool(int line) {
    tool = forgotten(tool, line);
  }

  /** Puts the tool that was last selected in the spindle. */
  void changeTool(int line) {
    beginOperation();
    toolChangedSinceOffset = true;
    Optional<Integer> number = nextTool.value();
    tool = number.isPresent() ? stated(tool, number.get(), line) : forgotten(tool, line);
  }

  /** Notes that a move was made in the present operation. */
  void noteMove() {
    moved = true;
  }

  private void beginOperation() {
    if (moved) {
      moved = false;
      operation++;
      snapshot = null;
    }
  }

  /** The motion code in force; absent where none is: never stated, cancelled, or unknown. */
  @Nullable Code motion() {
    return motion;
  }

  boolean motionUnknown() {
    return motionUnknown;
  }

  /** Whether G80 cancelled the motion that was in force. */
  boolean motionCancelled() {
    return motionCancelled;
  }

  /**
   * What a straight motion would be read as where a block behind G80 states none: the G0 or G1 that
   * stood before, G0 where none did; absent where an arc or a probing move stood, or what stood is
   * not known.
   */
  @Nullable Code straightBeforeCancel() {
    if (lastMotionUnknown) {
      return null;
    }
    if (lastMotion == null) {
      return Code.G0;
    }
    return lastMotion == Code.G0 || lastMotion == Code.G1 ? lastMotion : null;
  }

  /** A motion code is in force. */
  void setMotion(Code code) {
    motion = code;
    if (!code.isCycle()) {
      lastMotion = code;
      lastMotionUnknown = false;
    }
    motionUnknown = false;
    motionCancelled = false;
  }

  /** No motion is in force (G80). */
  void cancelMotion() {
    motion = null;
    motionUnknown = false;
    motionCancelled = true;
  }

  /** A motion may be in force; it is not known which. */
  void forgetMotion() {
    motion = null;
    lastMotionUnknown = true;
    motionUnknown = true;
    motionCancelled = false;
  }
}
