package hairline.checks.timing;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Modes.Spindle;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.stock.Contact;
import hairline.checks.stock.ContactBasis;
import hairline.checks.stock.Cut;
import hairline.parser.Block;
import hairline.parser.Problem;
import hairline.parser.Span;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A program as events, one block a call, for tests of what counts time; lines count from 1. */
public final class Programs {
  private static final Modes START =
      new Modes(
          Modal.stated(Modes.Units.MM, 1),
          Modal.stated(Modes.Plane.XY, 1),
          Modal.stated(Modes.Distance.ABSOLUTE, 1),
          Modal.unset(),
          Modal.stated(Modes.FeedMode.PER_MINUTE, 1),
          Modal.unset(),
          Modal.stated("G54", 1),
          Modal.unset(),
          Modal.unset(),
          Modal.unset(),
          Modal.unset(),
          Modal.unset(),
          Modal.unset(),
          false,
          Modal.unset(),
          Modal.unset(),
          Modal.unset(),
          1);

  private final EventSink sink;
  private Modes modes = START;
  private Position position = Position.UNKNOWN;
  private int line;
  private int depth;
  private boolean deletable;
  private boolean sameBlock;
  private boolean asCuts;
  private boolean cutting;
  private boolean fine;
  private int level = Cut.NO_LEVEL;

  public Programs(EventSink sink) {
    this.sink = sink;
  }

  /** The line of the block last given. */
  public int line() {
    return line;
  }

  public Modes modes() {
    return modes;
  }

  /** The next block has a block-delete mark. */
  public Programs deletable() {
    deletable = true;
    return this;
  }

  /** What follows stands in the block before. */
  public Programs sameBlock() {
    sameBlock = true;
    return this;
  }

  /** Moves come as cuts from now on, as behind the stage that makes cuts of them. */
  public Programs asCuts() {
    asCuts = true;
    return this;
  }

  /** Feed moves remove material from now on. */
  public Programs cutting(boolean finely) {
    asCuts = true;
    cutting = true;
    fine = finely;
    return this;
  }

  /** Cuts make this level from now on, and run at it where Z stands still. */
  public Programs level(int id) {
    level = id;
    return this;
  }

  /** What follows has these modes, and no event told of it. */
  public Programs taking(Modes now) {
    modes = now;
    return this;
  }

  private Place block() {
    return block(List.of());
  }

  private Place block(List<Problem> problems) {
    if (!sameBlock) {
      line++;
      Block block =
          new Block(
              line,
              0,
              1,
              "",
              Block.Kind.BLOCK,
              deletable,
              List.of(),
              List.of(),
              List.of(),
              problems);
      sink.accept(new Event.BlockStarted(place(), block, modes));
    }
    sameBlock = false;
    deletable = false;
    return place();
  }

  private Place place() {
    return new Place(0, line, new Span(1, 2));
  }

  /** M3 or M4 with S. */
  public Programs spindle(Spindle direction, double rpm) {
    Place at = block();
    return changeSpindle(at, Modal.stated(direction, line), Modal.stated(rpm, line));
  }

  public Programs m3(double rpm) {
    return spindle(Spindle.CLOCKWISE, rpm);
  }

  /** M3 without any S. */
  public Programs m3WithoutSpeed() {
    Place at = block();
    return changeSpindle(at, Modal.stated(Spindle.CLOCKWISE, line), Modal.unset());
  }

  public Programs m5() {
    Place at = block();
    return changeSpindle(at, Modal.stated(Spindle.STOPPED, line), modes.speedRpm());
  }

  /** S alone: it counts once the spindle turns. */
  public Programs s(double rpm) {
    Place at = block();
    return changeSpindle(at, modes.spindle(), Modal.stated(rpm, line));
  }

  private Programs changeSpindle(Place at, Modal<Spindle> spindle, Modal<Double> speed) {
    Modes before = modes;
    modes = with(spindle, speed, modes.tool());
    sink.accept(new Event.ModesChanged(at, before, modes));
    sink.accept(new Event.SpindleChanged(at, before, modes));
    return this;
  }

  /** A block after which nobody knows what the spindle does. */
  public Programs spindleUnknown() {
    Place at = block();
    Modes before = modes;
    modes = with(Modal.unknown(line), modes.speedRpm(), modes.tool());
    sink.accept(new Event.ModesChanged(at, before, modes));
    return this;
  }

  public Programs m6(int tool) {
    return m6(Modal.stated(tool, line + 1));
  }

  public Programs m6(Modal<Integer> tool) {
    Place at = block();
    Modal<Integer> before = modes.tool();
    modes = with(Modal.stated(Spindle.STOPPED, line), modes.speedRpm(), tool);
    sink.accept(new Event.ToolChanged(at, before, modes.tool(), modes));
    return this;
  }

  private Modes with(Modal<Spindle> spindle, Modal<Double> speed, Modal<Integer> tool) {
    return new Modes(
        modes.units(),
        modes.plane(),
        modes.distance(),
        modes.arcDistance(),
        modes.feedMode(),
        modes.pathMode(),
        modes.workOffset(),
        modes.compensation(),
        modes.compensationNumber(),
        modes.lengthOffset(),
        modes.cycleReturn(),
        spindle,
        speed,
        modes.surfaceSpeed(),
        modes.feed(),
        tool,
        modes.coolant(),
        modes.operation());
  }

  public Programs dwell(double seconds) {
    sink.accept(new Event.Dwelled(block(), OptionalDouble.of(seconds), modes));
    return this;
  }

  public Programs dwellWithoutUnit() {
    sink.accept(new Event.Dwelled(block(), OptionalDouble.empty(), modes));
    return this;
  }

  public Programs stop(String code) {
    sink.accept(new Event.Stopped(block(), code, modes));
    return this;
  }

  public Programs code(Event.MachineCode.Meaning meaning) {
    sink.accept(new Event.MachineCode(block(), "M71", meaning, modes));
    return this;
  }

  public Programs measure() {
    return code(Event.MachineCode.Meaning.MEASURE_TOOL);
  }

  public Programs warmUp() {
    return code(Event.MachineCode.Meaning.WARM_UP);
  }

  public Programs unknownCode() {
    sink.accept(new Event.CodeUnknown(block(), "M171"));
    return this;
  }

  public Programs missingCall() {
    sink.accept(new Event.SubprogramMissing(block(), "O171", List.of()));
    return this;
  }

  /** A block that is not read. */
  public Programs problem(Problem.Kind kind) {
    block(List.of(new Problem(kind, new Span(1, 2), "x", "y")));
    return this;
  }

  public Programs call() {
    depth++;
    sink.accept(new Event.SubprogramEntered(block(), "O1", depth));
    return this;
  }

  public Programs back() {
    sink.accept(new Event.SubprogramLeft(block(), "O1", depth));
    depth--;
    return this;
  }

  /** G0 to a point in millimetres. */
  public Programs g0(double x, double y, double z) {
    return move(Move.Kind.RAPID, at(x, y, z), OptionalDouble.empty());
  }

  /** G1 to a point in millimetres. */
  public Programs g1(double x, double y, double z, double feedMmPerMin) {
    return move(Move.Kind.LINE, at(x, y, z), OptionalDouble.of(feedMmPerMin));
  }

  /** G1 with no feed given. */
  public Programs g1WithoutFeed(double x, double y, double z) {
    return move(Move.Kind.LINE, at(x, y, z), OptionalDouble.empty());
  }

  /** G28: where it ends is not known. */
  public Programs g28() {
    return move(Move.Kind.RAPID, Position.UNKNOWN, OptionalDouble.empty());
  }

  private static Position at(double x, double y, double z) {
    return new Position(
        Math.round(x * 1e9), Math.round(y * 1e9), Math.round(z * 1e9), 0, 0, 0, 0b111000);
  }

  private Programs move(Move.Kind kind, Position to, OptionalDouble feed) {
    Place at = block();
    double lengthMm = 0;
    if (position.knowsXyz() && to.knowsXyz()) {
      double dx = (to.xPm() - position.xPm()) * 1e-9;
      double dy = (to.yPm() - position.yPm()) * 1e-9;
      double dz = (to.zPm() - position.zPm()) * 1e-9;
      lengthMm = Math.sqrt(dx * dx + dy * dy + dz * dz);
    }
    Move move =
        new Move(
            at,
            kind,
            Move.Source.BLOCK,
            modes,
            position,
            to,
            position,
            to,
            Optional.empty(),
            lengthMm,
            feed,
            false);
    sink.accept(asCuts ? cut(move) : move);
    position = to;
    return this;
  }

  private Cut cut(Move move) {
    return new Cut(
        move,
        cutting && move.isFeed() ? Contact.YES : Contact.NO,
        ContactBasis.RAPID,
        Optional.empty(),
        List.of(),
        false,
        OptionalDouble.empty(),
        false,
        Optional.empty(),
        fine,
        false,
        false,
        level,
        level != Cut.NO_LEVEL && move.from().zPm() == move.to().zPm(),
        0,
        Optional.empty(),
        hairline.checks.stock.Removal.NONE);
  }

  /** The program ends, so that the time of its last block is counted. */
  public Programs end() {
    sink.accept(new Event.Ended(block(), Optional.of("M30"), modes));
    return this;
  }
}
