package hairline.checks.motion;

import hairline.checks.motion.ControlProfile.DwellUnit;
import hairline.checks.motion.ControlProfile.PointlessNumber;
import hairline.checks.motion.Event.MachineCode.Meaning;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;

/** Control profiles of tests, changed in single items. */
final class Profiles {
  OptionalLong resolutionPm;
  OptionalLong inchResolutionPm;
  boolean truncates;
  Optional<PointlessNumber> decimalPoint;
  boolean remainderKept;
  Optional<Modes.Units> units;
  Optional<Modes.Plane> plane;
  Optional<Modes.Distance> distance;
  Optional<Modes.FeedMode> feedMode;
  Optional<DwellUnit> dwellP;
  Optional<DwellUnit> dwellX;
  OptionalLong arcTolerancePm;
  long peckGapPm;
  int callDepth;
  long stepBudget;
  Map<String, Map<Axis, Long>> offsets;
  Map<String, Meaning> codes;

  private Profiles(ControlProfile profile) {
    resolutionPm = profile.resolutionPm();
    inchResolutionPm = profile.inchResolutionPm();
    truncates = profile.truncates();
    decimalPoint = profile.decimalPoint();
    remainderKept = profile.remainderKept();
    units = profile.units();
    plane = profile.plane();
    distance = profile.distance();
    feedMode = profile.feedMode();
    dwellP = profile.dwellP();
    dwellX = profile.dwellX();
    arcTolerancePm = profile.arcTolerancePm();
    peckGapPm = profile.peckGapPm();
    callDepth = profile.callDepth();
    stepBudget = profile.stepBudget();
    offsets = profile.offsets();
    codes = profile.codes();
  }

  /** A profile with some items changed. */
  static ControlProfile with(ControlProfile profile, Consumer<Profiles> change) {
    Profiles items = new Profiles(profile);
    change.accept(items);
    return new ControlProfile(
        items.resolutionPm,
        items.inchResolutionPm,
        items.truncates,
        items.decimalPoint,
        items.remainderKept,
        items.units,
        items.plane,
        items.distance,
        items.feedMode,
        items.dwellP,
        items.dwellX,
        items.arcTolerancePm,
        items.peckGapPm,
        items.callDepth,
        items.stepBudget,
        items.offsets,
        items.codes);
  }
}
