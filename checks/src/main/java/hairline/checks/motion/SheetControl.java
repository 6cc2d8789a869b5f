package hairline.checks.motion;

import hairline.checks.motion.ControlProfile.DwellUnit;
import hairline.checks.motion.ControlProfile.PointlessNumber;
import hairline.checks.motion.Event.MachineCode.Meaning;
import hairline.checks.setup.CodeMeaning;
import hairline.checks.setup.CodeWord;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.IncrementalRounding;
import hairline.checks.setup.Key;
import hairline.checks.setup.Length;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Offset;
import hairline.checks.setup.Rounding;
import hairline.checks.setup.Setup;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** The control as a setup sheet describes it. */
public final class SheetControl {
  private SheetControl() {}

  /** What the interpreter must know of the control, from the sheet. */
  public static ControlProfile of(Setup setup) {
    return new ControlProfile(
        pm(setup, MachineKeys.RESOLUTION),
        pm(setup, MachineKeys.INCH_RESOLUTION),
        setup.get(MachineKeys.ROUNDING).equals(Optional.of(Rounding.TRUNCATE)),
        setup
            .get(ControlKeys.DECIMAL_POINT)
            .map(
                point ->
                    switch (point) {
                      case REQUIRED -> PointlessNumber.REQUIRED;
                      case UNITS -> PointlessNumber.UNITS;
                      case INCREMENTS -> PointlessNumber.INCREMENTS;
                    }),
        setup.get(ControlKeys.INCREMENTAL).equals(Optional.of(IncrementalRounding.REMAINDER_KEPT)),
        setup
            .get(ControlKeys.START_UNITS)
            .map(
                units ->
                    switch (units) {
                      case MM -> Modes.Units.MM;
                      case INCH -> Modes.Units.INCH;
                    }),
        setup
            .get(ControlKeys.START_PLANE)
            .map(
                plane ->
                    switch (plane) {
                      case XY -> Modes.Plane.XY;
                      case ZX -> Modes.Plane.ZX;
                      case YZ -> Modes.Plane.YZ;
                    }),
        setup
            .get(ControlKeys.START_DISTANCE)
            .map(
                distance ->
                    switch (distance) {
                      case ABSOLUTE -> Modes.Distance.ABSOLUTE;
                      case INCREMENTAL -> Modes.Distance.INCREMENTAL;
                    }),
        setup
            .get(ControlKeys.START_FEED)
            .map(
                feed ->
                    switch (feed) {
                      case PER_MINUTE -> Modes.FeedMode.PER_MINUTE;
                      case INVERSE_TIME -> Modes.FeedMode.INVERSE_TIME;
                      case PER_REVOLUTION -> Modes.FeedMode.PER_REVOLUTION;
                    }),
        dwellUnit(setup, ControlKeys.DWELL_P),
        dwellUnit(setup, ControlKeys.DWELL_X),
        pm(setup, ControlKeys.ARC_TOLERANCE),
        setup.get(ControlKeys.PECK_GAP).map(Length::pm).orElse(ControlProfile.UNKNOWN.peckGapPm()),
        setup.get(ControlKeys.CALL_DEPTH).orElse(ControlProfile.UNKNOWN.callDepth()),
        setup.get(ControlKeys.STEP_BUDGET_BLOCKS).orElse(ControlProfile.UNKNOWN.stepBudget()),
        offsets(setup),
        codes(setup));
  }

  private static Map<String, Map<Axis, Long>> offsets(Setup setup) {
    Map<String, Map<Axis, Long>> offsets = new HashMap<>();
    for (Offset offset : setup.offsets()) {
      Map<Axis, Long> axes = new EnumMap<>(Axis.class);
      offset.x().ifPresent(x -> axes.put(Axis.X, x.pm()));
      offset.y().ifPresent(y -> axes.put(Axis.Y, y.pm()));
      offset.z().ifPresent(z -> axes.put(Axis.Z, z.pm()));
      offsets.put(offset.name(), axes);
    }
    return offsets;
  }

  private static OptionalLong pm(Setup setup, Key<Length> key) {
    return setup.get(key).map(length -> OptionalLong.of(length.pm())).orElse(OptionalLong.empty());
  }

  private static Optional<DwellUnit> dwellUnit(
      Setup setup, Key<hairline.checks.setup.DwellUnit> key) {
    return setup
        .get(key)
        .map(
            unit ->
                switch (unit) {
                  case S -> DwellUnit.SECONDS;
                  case MS -> DwellUnit.MILLISECONDS;
                });
  }

  private static Map<String, Meaning> codes(Setup setup) {
    Map<String, Meaning> codes = new HashMap<>();
    for (CodeMeaning meaning : CodeMeaning.values()) {
      for (CodeWord word : setup.codes().words(meaning)) {
        codes.put(word.toString(), Meaning.valueOf(meaning.name()));
      }
    }
    return codes;
  }
}
