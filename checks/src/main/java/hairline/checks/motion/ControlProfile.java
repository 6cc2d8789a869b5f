package hairline.checks.motion;

import hairline.checks.motion.Event.MachineCode.Meaning;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What the interpreter must know of the control. What is absent is not guessed: without an
 * increment nothing is rounded, without a dwell unit a dwell has no time.
 *
 * @param resolutionPm least input increment under millimetres, in picometres
 * @param inchResolutionPm least input increment under inches, in picometres; where absent, inch
 *     words are rounded to {@code resolutionPm} after conversion
 * @param truncates whether finer digits are cut off; else the nearest increment is taken, ties away
 *     from zero
 * @param decimalPoint how a word without a decimal point is read; empty: not known, taken as units
 * @param remainderKept whether what rounding cut off a G91 word is carried into the next one
 * @param units state at power-on
 * @param plane state at power-on
 * @param distance state at power-on
 * @param feedMode state at power-on
 * @param dwellP unit of P in G4 and cycles
 * @param dwellX unit of X in G4
 * @param arcTolerancePm largest difference of start and end radius that the control accepts
 * @param peckGapPm clearance of G73 and G83 above the last depth
 * @param callDepth how deep subprograms may nest
 * @param stepBudget how many blocks a program may run, subprograms and repeats included
 * @param offsets origins of work offsets in machine coordinates, in picometres and microdegrees, as
 *     far as they are known: "G54" to "G59.3"
 * @param codes what this machine's own codes mean: "M71", "G5.1", or "P9001" for a call
 */
public record ControlProfile(
    OptionalLong resolutionPm,
    OptionalLong inchResolutionPm,
    boolean truncates,
    Optional<PointlessNumber> decimalPoint,
    boolean remainderKept,
    Optional<Modes.Units> units,
    Optional<Modes.Plane> plane,
    Optional<Modes.Distance> distance,
    Optional<Modes.FeedMode> feedMode,
    Optional<DwellUnit> dwellP,
    Optional<DwellUnit> dwellX,
    OptionalLong arcTolerancePm,
    long peckGapPm,
    int callDepth,
    long stepBudget,
    Map<String, Map<Axis, Long>> offsets,
    Map<String, Meaning> codes) {

  /** How a control reads a coordinate without a decimal point. */
  public enum PointlessNumber {
    /** It asks for a point; what it makes of the number is taken as units. */
    REQUIRED,
    /** As millimetres or inches. */
    UNITS,
    /** As a number of least input increments. */
    INCREMENTS
  }

  /** Unit of a dwell word. */
  public enum DwellUnit {
    SECONDS,
    MILLISECONDS
  }

  /** Nothing known but the conventions: 10 levels of calls, fifty million blocks, 0.25 mm gap. */
  public static final ControlProfile UNKNOWN =
      new ControlProfile(
          OptionalLong.empty(),
          OptionalLong.empty(),
          false,
          Optional.empty(),
          false,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalLong.empty(),
          250_000_000L,
          10,
          50_000_000L,
          Map.of(),
          Map.of());

  public ControlProfile {
    offsets = Map.copyOf(offsets);
    codes = Map.copyOf(codes);
  }

  /** This profile with a least input increment under millimetres. */
  public ControlProfile withResolution(long pm) {
    return new ControlProfile(
        OptionalLong.of(pm),
        inchResolutionPm,
        truncates,
        decimalPoint,
        remainderKept,
        units,
        plane,
        distance,
        feedMode,
        dwellP,
        dwellX,
        arcTolerancePm,
        peckGapPm,
        callDepth,
        stepBudget,
        offsets,
        codes);
  }
}
