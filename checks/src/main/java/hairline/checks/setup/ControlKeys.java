package hairline.checks.setup;

import java.util.List;

/** Keys of the control, {@code machine.control}. */
public final class ControlKeys {
  /** Units at power-on or reset: mm | inch. */
  public static final Key<StartUnits> START_UNITS =
      Key.of(
          "machine.control.start.units",
          Types.choice(StartUnits.class),
          "mm",
          "units at power-on or reset: mm | inch");

  /** Plane at power-on or reset: XY | ZX | YZ. */
  public static final Key<StartPlane> START_PLANE =
      Key.of(
          "machine.control.start.plane",
          Types.capitals(StartPlane.class),
          "XY",
          "plane at power-on or reset: XY | ZX | YZ");

  /** Distance mode at power-on or reset: absolute | incremental. */
  public static final Key<StartDistance> START_DISTANCE =
      Key.of(
          "machine.control.start.distance",
          Types.choice(StartDistance.class),
          "absolute",
          "distance mode at power-on or reset: absolute | incremental");

  /** Feed mode at power-on or reset: per_minute | inverse_time | per_revolution. */
  public static final Key<StartFeed> START_FEED =
      Key.of(
          "machine.control.start.feed",
          Types.choice(StartFeed.class),
          "per_minute",
          "feed mode at power-on or reset: per_minute | inverse_time | per_revolution");

  /** How X10 without a point is read: required | units | increments. */
  public static final Key<DecimalPoint> DECIMAL_POINT =
      Key.of(
          "machine.control.decimal_point",
          Types.choice(DecimalPoint.class),
          "required",
          "how X10 without a point is read: required | units | increments");

  /** Shortest time the control needs for one block. */
  public static final Key<Double> BLOCK_TIME_S =
      Key.of(
          "machine.control.block_time",
          Types.quantity(Dimension.TIME, Bounds.positive("10")),
          "0.4 ms",
          "shortest time the control needs for one block");

  /** Blocks after the present one that the control plans with. */
  public static final Key<Integer> LOOK_AHEAD_BLOCKS =
      Key.of(
          "machine.control.look_ahead",
          Types.integer(0, 1000000),
          "200",
          "blocks after the present one that the control plans with");

  /** Unit of G4 P: s | ms. */
  public static final Key<DwellUnit> DWELL_P =
      Key.of("machine.control.dwell.P", Types.choice(DwellUnit.class), "s", "unit of G4 P: s | ms");

  /** Unit of G4 X: s | ms. */
  public static final Key<DwellUnit> DWELL_X =
      Key.of("machine.control.dwell.X", Types.choice(DwellUnit.class), "s", "unit of G4 X: s | ms");

  /** How rounding of G91 words adds up: each_word | remainder_kept. */
  public static final Key<IncrementalRounding> INCREMENTAL =
      Key.of(
          "machine.control.incremental",
          Types.choice(IncrementalRounding.class),
          "each_word",
          "how rounding of G91 words adds up: each_word | remainder_kept");

  /** What G41 and G42 shift by: radius | wear. */
  public static final Key<CompensationShift> COMPENSATION =
      Key.of(
          "machine.control.compensation",
          Types.choice(CompensationShift.class),
          "radius",
          "what G41 and G42 shift by: radius | wear");

  /** Largest difference of start and end radius that the control accepts. */
  public static final Key<Length> ARC_TOLERANCE =
      Key.of(
          "machine.control.arc_tolerance",
          Types.length(Bounds.positive("1")),
          "2 um",
          "largest difference of start and end radius that the control accepts");

  /** Largest deviation at corners when blending. */
  public static final Key<Length> PATH_TOLERANCE =
      Key.of(
          "machine.control.path_tolerance",
          Types.length(Bounds.fromZero("1")),
          "1 um",
          "largest deviation at corners when blending");

  /** Least feed increment. */
  public static final Key<Double> FEED_RESOLUTION_MM_PER_MIN =
      Key.of(
          "machine.control.feed_resolution",
          Types.quantity(Dimension.FEED, Bounds.positive("1000")),
          "0.1 mm/min",
          "least feed increment");

  /** Clearance of G73 and G83 above the last depth. */
  public static final Key<Length> PECK_GAP =
      Key.of(
              "machine.control.peck_gap",
              Types.length(Bounds.fromZero("10")),
              "0.25 mm",
              "clearance of G73 and G83 above the last depth")
          .withDefault(Length.ofMm("0.25"), "convention of peck cycles, from memory");

  /** How deep subprograms may nest. */
  public static final Key<Integer> CALL_DEPTH =
      Key.of(
              "machine.control.call_depth",
              Types.integer(1, 100),
              "10",
              "how deep subprograms may nest")
          .withDefault(10, "convention: ten levels of subprograms");

  /** Blocks a program may run, subprograms and repeats included. */
  public static final Key<Long> STEP_BUDGET_BLOCKS =
      Key.of(
              "machine.control.step_budget",
              Types.whole(1, 1_000_000_000_000L),
              "50000000",
              "blocks a program may run, subprograms and repeats included")
          .withDefault(50_000_000L, "our choice: fifty million blocks a program");

  /** Program (G43 H) | automatic (applied with the tool). */
  public static final Key<LengthOffsetUse> LENGTH_OFFSET =
      Key.of(
              "machine.control.length_offset",
              Types.choice(LengthOffsetUse.class),
              "program",
              "program (G43 H) | automatic (applied with the tool)")
          .withDefault(LengthOffsetUse.PROGRAM, "default: the program applies it with G43");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL =
      List.of(
          START_UNITS,
          START_PLANE,
          START_DISTANCE,
          START_FEED,
          DECIMAL_POINT,
          BLOCK_TIME_S,
          LOOK_AHEAD_BLOCKS,
          DWELL_P,
          DWELL_X,
          INCREMENTAL,
          COMPENSATION,
          ARC_TOLERANCE,
          PATH_TOLERANCE,
          FEED_RESOLUTION_MM_PER_MIN,
          PECK_GAP,
          CALL_DEPTH,
          STEP_BUDGET_BLOCKS,
          LENGTH_OFFSET);

  private ControlKeys() {}
}
