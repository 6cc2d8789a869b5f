package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Event.CoordinateTooLarge;
import hairline.checks.motion.Extent;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.Key;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthOffsetUse;
import hairline.checks.setup.LengthRange;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Offset;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;

/** A move leaves the travel of an axis, where offset and tool length are known. */
@AutoService(Rule.class)
public final class OutsideTravel implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "outside-travel",
          Level.ERROR,
          Group.MOTION,
          "a move leaves the travel of an axis",
          Need.STATE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** An axis with the keys that place it on the machine. */
  private record MachineAxis(
      Axis axis, Key<LengthRange> travel, Function<Offset, Optional<Length>> offset) {}

  private static final List<MachineAxis> MACHINE_AXES =
      List.of(
          new MachineAxis(Axis.X, MachineKeys.TRAVEL_X, Offset::x),
          new MachineAxis(Axis.Y, MachineKeys.TRAVEL_Y, Offset::y),
          new MachineAxis(Axis.Z, MachineKeys.TRAVEL_Z, Offset::z));

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    for (MachineAxis place : MACHINE_AXES) {
      context
          .need(place.travel())
          .ifPresent(
              travel -> {
                on.event(Cut.class, cut -> judge(context, cut, place, travel));
                on.event(
                    CoordinateTooLarge.class,
                    event -> {
                      if (event.axis() == place.axis()) {
                        speakOfTooLarge(context, event, place, travel);
                      }
                    });
              });
    }
  }

  /** No offset brings such a coordinate back into any travel. */
  private static void speakOfTooLarge(
      RuleContext context, CoordinateTooLarge event, MachineAxis place, LengthRange travel) {
    boolean low = event.word().contains("-");
    context.report(
        context
            .occurrence(
                event.at(),
                event.word()
                    + " is beyond 9 000 km, the travel of "
                    + place.axis()
                    + " ends at "
                    + Quantities.mm(low ? travel.lo().pm() : travel.hi().pm()))
            .fact("travel from " + place.travel().path())
            .cure("the coordinate that was meant")
            .cause(place.axis() + " too large"));
  }

  private static void judge(RuleContext context, Cut cut, MachineAxis place, LengthRange travel) {
    Move move = cut.move();
    if (move.source() == Move.Source.MACHINE || !moves(move, place.axis())) {
      return;
    }
    // A straight move reaches farthest at its ends, and its start was the end of another.
    Optional<Extent> extent =
        move.arc().isPresent()
            ? Extent.of(move, place.axis())
            : Optional.of(new Extent(move.to().get(place.axis()), move.to().get(place.axis())));
    OptionalLong shiftPm = shiftPm(context, cut, place);
    if (extent.isEmpty() || shiftPm.isEmpty()) {
      return;
    }
    long least = sum(extent.get().lowest(), shiftPm.getAsLong());
    long most = sum(extent.get().highest(), shiftPm.getAsLong());
    if (least < travel.lo().pm()) {
      speak(context, cut, place, extent.get().lowest(), travel.lo().pm(), shiftPm.getAsLong());
    } else if (most > travel.hi().pm()) {
      speak(context, cut, place, extent.get().highest(), travel.hi().pm(), shiftPm.getAsLong());
    }
  }

  /** The sum, or where it is beyond a long the last that one holds: outside of any travel too. */
  private static long sum(long coordinatePm, long shiftPm) {
    long sum = coordinatePm + shiftPm;
    boolean beyond = ((coordinatePm ^ sum) & (shiftPm ^ sum)) < 0;
    return !beyond ? sum : coordinatePm < 0 ? Long.MIN_VALUE : Long.MAX_VALUE;
  }

  private static boolean moves(Move move, Axis axis) {
    return move.to().knows(axis)
        && (turnsThrough(move, axis)
            || !move.from().knows(axis)
            || move.from().get(axis) != move.to().get(axis));
  }

  private static boolean turnsThrough(Move move, Axis axis) {
    return move.arc().isPresent()
        && !move.modes().plane().value().map(plane -> plane.normal() == axis).orElse(false);
  }

  /** What leads from work to machine coordinates: the offset, and in Z the tool's length. */
  private static OptionalLong shiftPm(RuleContext context, Cut cut, MachineAxis place) {
    Modes modes = cut.move().modes();
    Optional<String> name = modes.workOffset().value();
    if (name.isEmpty()) {
      context.notChecked("the work offset is not known", cut.at());
      return OptionalLong.empty();
    }
    Optional<Offset> offset = context.setup().offset(name.get());
    Optional<Length> zero = offset.flatMap(place.offset());
    if (zero.isEmpty()) {
      context.notChecked(
          "offsets." + name.get() + "." + place.axis() + " is not on the sheet", cut.at());
      return OptionalLong.empty();
    }
    if (place.axis() != Axis.Z || !isLengthApplied(context, cut, modes)) {
      return OptionalLong.of(zero.get().pm());
    }
    if (cut.tool().isEmpty()) {
      context.notChecked("the tool in the spindle is not known or not on the sheet", cut.at());
      return OptionalLong.empty();
    }
    return context
        .need(cut.tool().get(), ToolKeys.LENGTH, cut.at())
        .map(length -> OptionalLong.of(Math.addExact(zero.get().pm(), length.pm())))
        .orElse(OptionalLong.empty());
  }

  private static boolean isLengthApplied(RuleContext context, Cut cut, Modes modes) {
    Modal<Integer> number = modes.lengthOffset();
    return context
            .need(ControlKeys.LENGTH_OFFSET, cut.at())
            .equals(Optional.of(LengthOffsetUse.AUTOMATIC))
        || number.value().map(n -> n != 0).orElse(false);
  }

  private static void speak(
      RuleContext context, Cut cut, MachineAxis place, long programPm, long limitPm, long shiftPm) {
    long reachedPm = sum(programPm, shiftPm);
    context.report(
        context
            .occurrence(
                cut.at(),
                place.axis()
                    + " reaches "
                    + Quantities.mm(reachedPm)
                    + " on the machine, its travel ends at "
                    + Quantities.mm(limitPm))
            .fact(
                place.axis()
                    + " "
                    + Quantities.mm(programPm)
                    + " in the program, shifted by "
                    + Quantities.mm(shiftPm)
                    + (place.axis() == Axis.Z ? " (offset and tool length)" : " (offset)")
                    + "; travel from "
                    + place.travel().path())
            .cure("another place of the part on the machine, or another tool length")
            .figure("reached", reachedPm / 1e9, "mm")
            .figure("limit", limitPm / 1e9, "mm")
            .operation(cut.move().modes().operation())
            .cause(place.axis() + (reachedPm < limitPm ? " low" : " high"))
            .severity(Math.abs((double) reachedPm - limitPm)));
  }
}
