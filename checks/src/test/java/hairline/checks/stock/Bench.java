package hairline.checks.stock;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Event;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.setup.CompensationShift;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthBand;
import hairline.checks.setup.LengthRange;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.setup.ToolShape;
import hairline.parser.Span;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * A bench to run moves on, in micrometres: each call is one block on the next line. Stored values
 * are those given; written ones are the same unless {@link #written} says otherwise.
 */
final class Bench {
  static final long UM = 1_000_000L;

  private final Map<Integer, Tool> tools = new HashMap<>();
  private final List<Feature> features = new ArrayList<>();
  private Optional<StockModel.Box> box = Optional.empty();
  private Optional<CompensationShift> shift = Optional.empty();
  private StockModel.Limits limits = StockModel.Limits.DEFAULT;
  private long cellPm = 25 * UM;
  private long fineStepPm = 20 * UM;

  final List<Event> events = new ArrayList<>();
  private Optional<StockStage> stage = Optional.empty();
  private Modes modes = start();
  private Position at = Position.UNKNOWN;
  private Position writtenAt = Position.UNKNOWN;
  private double writtenOffZ;
  private int line;
  private double mirror = 1;
  private double shiftX;
  private double shiftY;

  // The set-up.

  /** A bench with tool 1, flat, 400 µm, in the spindle, cells of 25 µm. */
  static Bench flat() {
    return new Bench().tool(1, ToolShape.FLAT, 400, 0, 1.5).change(1);
  }

  Bench tool(int number, ToolShape shape, double diameter, double corner, double edge) {
    tools.put(
        number,
        Tool.builder(number)
            .with(ToolKeys.SHAPE, shape)
            .with(ToolKeys.DIAMETER, new Length(pm(diameter)))
            .with(ToolKeys.CORNER_RADIUS, new Length(pm(corner)))
            .with(ToolKeys.EDGE_RADIUS, LengthBand.of(new Length(pm(edge))))
            .build());
    return this;
  }

  /** Stock of 12 by 8 mm, 3 mm thick, its top at Z0. */
  Bench stock() {
    return stock(-6000, 6000, -4000, 4000, 0, -3000);
  }

  Bench stock(double x0, double x1, double y0, double y1, double top, double bottom) {
    box =
        Optional.of(
            new StockModel.Box(
                pm(x0), pm(x1), pm(y0), pm(y1), pm(top), OptionalLong.of(pm(bottom)), "G54"));
    return this;
  }

  Bench feature(String name, double x0, double x1, double y0, double y1, double step) {
    features.add(
        new Feature(
            name,
            Optional.of(new LengthRange(new Length(pm(x0)), new Length(pm(x1)))),
            Optional.of(new LengthRange(new Length(pm(y0)), new Length(pm(y1)))),
            step == 0 ? Optional.empty() : Optional.of(new Length(pm(step))),
            List.of(),
            Optional.empty()));
    return this;
  }

  /** The depths along each move are told from here on. */
  Bench depths() {
    stage().tellDepths();
    return this;
  }

  Bench limits(StockModel.Limits others) {
    limits = others;
    return this;
  }

  Bench cell(double um) {
    cellPm = pm(um);
    return this;
  }

  Bench fineStep(double um) {
    fineStepPm = pm(um);
    return this;
  }

  Bench compensation(CompensationShift what) {
    shift = Optional.of(what);
    return this;
  }

  /** Mirrors X of all that follows. */
  Bench mirrored() {
    mirror = -1;
    return this;
  }

  /** Shifts all that follows. */
  Bench shifted(double x, double y) {
    shiftX = x;
    shiftY = y;
    return this;
  }

  StockModel model() {
    return new StockModel(
        box,
        tools,
        features,
        fineStepPm,
        1000 * UM,
        shift,
        cellPm,
        StockModel.chordError(cellPm),
        limits);
  }

  static long pm(double um) {
    return Math.round(um * UM);
  }

  // The program.

  private StockStage stage() {
    if (stage.isEmpty()) {
      stage = Optional.of(new StockStage(model(), events::add));
    }
    return stage.get();
  }

  Bench send(Event event) {
    stage().accept(event);
    return this;
  }

  Place place() {
    return new Place(0, line, new Span(1, 2));
  }

  /** Calls a tool: a new operation, with every axis unknown. */
  Bench change(int number) {
    line++;
    Modal<Integer> before = modes.tool();
    modes = with(modes, Modal.stated(number, line), modes.operation() + 1);
    if (stage.isPresent()) {
      send(new Event.ToolChanged(place(), before, modes.tool(), modes));
    }
    at = Position.UNKNOWN;
    writtenAt = Position.UNKNOWN;
    return this;
  }

  /** Another speed: a new operation. */
  Bench speed() {
    line++;
    modes = with(modes, modes.tool(), modes.operation() + 1);
    return this;
  }

  Bench offset(String name) {
    line++;
    modes = with(modes, Modal.stated(name, line));
    return this;
  }

  Bench modes(Modes others) {
    modes = others;
    return this;
  }

  Modes modes() {
    return modes;
  }

  /** The Z of what follows is written this much higher than it is stored. */
  Bench written(double um) {
    writtenOffZ = um;
    return this;
  }

  Bench g0(double x, double y, double z) {
    return move(Move.Kind.RAPID, x, y, z, Optional.empty());
  }

  Bench g1(double x, double y, double z) {
    return move(Move.Kind.LINE, x, y, z, Optional.empty());
  }

  /** An arc in the XY plane about a centre; counter-clockwise with a positive sweep in degrees. */
  Bench arc(double centreX, double centreY, double sweepDeg, double z) {
    double cx = mirror * centreX + shiftX;
    double cy = centreY + shiftY;
    double sx = at.xPm() / 1e6 - cx;
    double sy = at.yPm() / 1e6 - cy;
    double r = Math.sqrt(sx * sx + sy * sy);
    double sweep = mirror * StrictMath.toRadians(sweepDeg);
    double end = StrictMath.atan2(sy, sx) + sweep;
    Arc arc = new Arc(cx / 1e3, cy / 1e3, r / 1e3, r / 1e3, sweep, false);
    double x = mirror * (cx + r * StrictMath.cos(end) - shiftX);
    double y = cy + r * StrictMath.sin(end) - shiftY;
    return move(sweep > 0 ? Move.Kind.ARC_CCW : Move.Kind.ARC_CW, x, y, z, Optional.of(arc));
  }

  /** Any move; a coordinate that is NaN becomes unknown. */
  Bench move(Move.Kind kind, double x, double y, double z, Optional<Arc> arc) {
    return move(kind, Move.Source.BLOCK, x, y, z, arc);
  }

  Bench move(Move.Kind kind, Move.Source source, double x, double y, double z, Optional<Arc> arc) {
    line++;
    Position to = axis(axis(axis(at, Axis.X, mirror * x + shiftX), Axis.Y, y + shiftY), Axis.Z, z);
    Position writtenTo = axis(to, Axis.Z, z + writtenOffZ);
    double dx = (to.xPm() - at.xPm()) / 1e9;
    double dy = (to.yPm() - at.yPm()) / 1e9;
    double dz = (to.zPm() - at.zPm()) / 1e9;
    double chord = Math.sqrt(dx * dx + dy * dy + dz * dz);
    double length =
        at.knowsXyz() && to.knowsXyz()
            ? arc.map(a -> Math.abs(a.sweepRad()) * a.startRadiusMm()).orElse(chord)
            : 0;
    Move move =
        new Move(
            place(),
            kind,
            source,
            modes,
            at,
            to,
            writtenAt,
            writtenTo,
            arc,
            length,
            kind == Move.Kind.RAPID ? OptionalDouble.empty() : OptionalDouble.of(300),
            false);
    at = to;
    writtenAt = writtenTo;
    return send(move);
  }

  private static Position axis(Position position, Axis axis, double um) {
    return Double.isNaN(um) ? position.without(axis) : position.with(axis, pm(um));
  }

  Bench end() {
    line++;
    return send(new Event.Ended(place(), Optional.of("M30"), modes));
  }

  /** The line of the latest block. */
  int line() {
    return line;
  }

  /** The line of a block before the latest one. */
  int line(int back) {
    return line + back;
  }

  // What came out.

  <T> List<T> all(Class<T> type) {
    return events.stream().filter(type::isInstance).map(type::cast).toList();
  }

  List<Cut> cuts() {
    return all(Cut.class);
  }

  Cut cut(int atLine) {
    return cuts().stream().filter(c -> c.at().line() == atLine).findFirst().orElseThrow();
  }

  Cut last() {
    List<Cut> cuts = cuts();
    return cuts.get(cuts.size() - 1);
  }

  Surface surface(String offset) {
    return stage().surface(offset);
  }

  List<StepFound> steps() {
    return all(StepFound.class);
  }

  List<LevelReached> levels() {
    return all(LevelReached.class);
  }

  /** The steps as "height at line". */
  List<String> stepWords() {
    return steps().stream().map(s -> s.heightPm() / 1e6 + " at " + s.at().line()).toList();
  }

  /** The step-downs of a cut in micrometres. */
  static List<Double> um(Cut cut) {
    return cut.stepDowns().stream().map(s -> s.storedPm() / 1e6).toList();
  }

  // Modes.

  static Modes start() {
    return new Modes(
        Modal.stated(Modes.Units.MM, 1),
        Modal.stated(Modes.Plane.XY, 1),
        Modal.stated(Modes.Distance.ABSOLUTE, 1),
        Modal.assumed(Modes.Distance.INCREMENTAL),
        Modal.stated(Modes.FeedMode.PER_MINUTE, 1),
        Modal.assumed(Modes.PathMode.EXACT_PATH),
        Modal.stated("G54", 1),
        Modal.stated(Modes.Compensation.OFF, 1),
        Modal.unset(),
        Modal.stated(1, 1),
        Modal.stated(Modes.CycleReturn.INITIAL_LEVEL, 1),
        Modal.stated(Modes.Spindle.CLOCKWISE, 1),
        Modal.stated(30000.0, 1),
        false,
        Modal.stated(300.0, 1),
        Modal.unset(),
        Modal.stated(Modes.Coolant.OFF, 1),
        1);
  }

  static Modes with(Modes m, Modal<Integer> tool, int operation) {
    return new Modes(
        m.units(),
        m.plane(),
        m.distance(),
        m.arcDistance(),
        m.feedMode(),
        m.pathMode(),
        m.workOffset(),
        m.compensation(),
        m.compensationNumber(),
        m.lengthOffset(),
        m.cycleReturn(),
        m.spindle(),
        m.speedRpm(),
        m.surfaceSpeed(),
        m.feed(),
        tool,
        m.coolant(),
        operation);
  }

  static Modes with(Modes m, Modal<String> offset) {
    return build(m, m.plane(), offset, m.compensation(), m.spindle());
  }

  static Modes plane(Modes m, Modes.Plane plane) {
    return build(m, Modal.stated(plane, 1), m.workOffset(), m.compensation(), m.spindle());
  }

  static Modes compensation(Modes m, Modal<Modes.Compensation> compensation) {
    return build(m, m.plane(), m.workOffset(), compensation, m.spindle());
  }

  static Modes spindle(Modes m, Modal<Modes.Spindle> spindle) {
    return build(m, m.plane(), m.workOffset(), m.compensation(), spindle);
  }

  private static Modes build(
      Modes m,
      Modal<Modes.Plane> plane,
      Modal<String> offset,
      Modal<Modes.Compensation> compensation,
      Modal<Modes.Spindle> spindle) {
    return new Modes(
        m.units(),
        plane,
        m.distance(),
        m.arcDistance(),
        m.feedMode(),
        m.pathMode(),
        offset,
        compensation,
        m.compensationNumber(),
        m.lengthOffset(),
        m.cycleReturn(),
        spindle,
        m.speedRpm(),
        m.surfaceSpeed(),
        m.feed(),
        m.tool(),
        m.coolant(),
        m.operation());
  }
}
