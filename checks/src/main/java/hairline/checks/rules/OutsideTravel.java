package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Arc;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Event.CoordinateTooLarge;
import hairline.checks.motion.Extent;
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
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

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

  private static final double MM_PER_PM = 1e-9;

  /** More than figures of an arc in double precision differ from the exact ones. */
  private static final double ROUNDING_MM = 1e-3;

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    List<Limited> axes = new ArrayList<>();
    for (MachineAxis place : MACHINE_AXES) {
      context
          .need(place.travel())
          .ifPresent(
              travel -> {
                axes.add(new Limited(new Shifts(context, place), travel));
                on.event(
                    CoordinateTooLarge.class,
                    event -> {
                      if (event.axis() == place.axis()) {
                        speakOfTooLarge(context, event, place, travel);
                      }
                    });
              });
    }
    on.move(
        move -> {
          for (Limited axis : axes) {
            judge(context, move, axis.shifts(), axis.travel());
          }
        });
  }

  /** An axis with its travel. */
  private record Limited(Shifts shifts, LengthRange travel) {}

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

  private static void judge(RuleContext context, Move move, Shifts shifts, LengthRange travel) {
    Axis axis = shifts.place.axis();
    if (move.source() == Move.Source.MACHINE) {
      return;
    }
    if (!move.to().knows(axis)) {
      if (move.from().knows(axis)) {
        shifts.context.notChecked("where " + axis + " goes is not known", move.at());
      }
      return;
    }
    if (ofUnknownArc(move, axis)) {
      shifts.context.notChecked("how far an arc reaches in " + axis + " is not known", move.at());
    }
    if (!moves(move, axis)) {
      return;
    }
    if (!shifts.find(move)) {
      return;
    }
    // A straight move reaches farthest at its ends, and its start was the end of another.
    long lowest = move.to().get(axis);
    long highest = lowest;
    if (move.arc().isPresent() && !isCircleWithin(move, shifts, travel)) {
      Extent extent = Extent.of(move, axis).orElse(new Extent(lowest, highest));
      lowest = extent.lowest();
      highest = extent.highest();
    }
    if (sum(lowest, shifts.pm) < travel.lo().pm()) {
      speak(context, move, shifts, lowest, travel.lo().pm());
    } else if (sum(highest, shifts.pm) > travel.hi().pm()) {
      speak(context, move, shifts, highest, travel.hi().pm());
    }
  }

  /**
   * Whether even the whole circle of an arc lies within the travel: no arc of it leaves it then.
   */
  private static boolean isCircleWithin(Move move, Shifts shifts, LengthRange travel) {
    Arc arc = move.arc().orElseThrow();
    Optional<Modes.Plane> plane = move.modes().plane().value();
    if (plane.isEmpty()) {
      return false;
    }
    boolean first = plane.get().first() == shifts.place.axis();
    double centreMm = first ? arc.centreFirstMm() : arc.centreSecondMm();
    double reachMm = Math.max(arc.startRadiusMm(), arc.endRadiusMm()) + ROUNDING_MM;
    double shiftMm = shifts.pm * MM_PER_PM;
    return turnsThrough(move, shifts.place.axis())
        && centreMm - reachMm + shiftMm > travel.lo().pm() * MM_PER_PM
        && centreMm + reachMm + shiftMm < travel.hi().pm() * MM_PER_PM;
  }

  /** The sum, or where it is beyond a long the last that one holds: outside of any travel too. */
  private static long sum(long coordinatePm, long shiftPm) {
    long sum = coordinatePm + shiftPm;
    boolean beyond = ((coordinatePm ^ sum) & (shiftPm ^ sum)) < 0;
    return !beyond ? sum : coordinatePm < 0 ? Long.MIN_VALUE : Long.MAX_VALUE;
  }

  private static boolean moves(Move move, Axis axis) {
    return turnsThrough(move, axis)
        || !move.from().knows(axis)
        || move.from().get(axis) != move.to().get(axis);
  }

  private static boolean ofUnknownArc(Move move, Axis axis) {
    return move.isFeed()
        && move.kind() != Move.Kind.LINE
        && move.arc().isEmpty()
        && !move.modes().plane().value().map(plane -> plane.normal() == axis).orElse(false);
  }

  private static boolean turnsThrough(Move move, Axis axis) {
    return move.arc().isPresent()
        && !move.modes().plane().value().map(plane -> plane.normal() == axis).orElse(false);
  }

  /** What leads from work to machine coordinates: the offset, and in Z the tool's length. */
  private static final class Shifts {
    private final RuleContext context;
    private final MachineAxis place;
    private final boolean automatic;
    private @Nullable Modes known;
    private long pm;
    private boolean withLength;

    Shifts(RuleContext context, MachineAxis place) {
      this.context = context;
      this.place = place;
      this.automatic =
          context
              .setup()
              .resolve(ControlKeys.LENGTH_OFFSET)
              .value()
              .equals(Optional.of(LengthOffsetUse.AUTOMATIC));
    }

    /** Whether the shift of a move is known; then it stands in {@code pm}. */
    boolean find(Move move) {
      if (move.modes().isSame(known)) {
        return true;
      }
      known = null;
      OptionalLong shift = shiftPm(move);
      if (shift.isEmpty()) {
        return false;
      }
      pm = shift.getAsLong();
      known = move.modes();
      return true;
    }

    private OptionalLong shiftPm(Move move) {
      Modes modes = move.modes();
      Optional<String> name = modes.workOffset().value();
      if (name.isEmpty()) {
        context.notChecked("the work offset is not known", move.at());
        return OptionalLong.empty();
      }
      Optional<Offset> offset = context.setup().offset(name.get());
      Optional<Length> zero = offset.flatMap(place.offset());
      if (zero.isEmpty()) {
        context.notChecked(
            "offsets." + name.get() + "." + place.axis() + " is not on the sheet", move.at());
        return OptionalLong.empty();
      }
      withLength = place.axis() == Axis.Z && isLengthApplied(move);
      if (!withLength) {
        return OptionalLong.of(zero.get().pm());
      }
      Optional<Tool> tool = modes.tool().value().flatMap(context.setup()::tool);
      if (tool.isEmpty()) {
        context.notChecked("the tool in the spindle is not known or not on the sheet", move.at());
        return OptionalLong.empty();
      }
      return context
          .need(tool.get(), ToolKeys.LENGTH, move.at())
          .map(length -> OptionalLong.of(Math.addExact(zero.get().pm(), length.pm())))
          .orElse(OptionalLong.empty());
    }

    private boolean isLengthApplied(Move move) {
      context.need(ControlKeys.LENGTH_OFFSET, move.at());
      return automatic || move.modes().lengthOffset().value().map(n -> n != 0).orElse(false);
    }
  }

  private static void speak(
      RuleContext context, Move move, Shifts shifts, long programPm, long limitPm) {
    MachineAxis place = shifts.place;
    long reachedPm = sum(programPm, shifts.pm);
    context.report(
        context
            .occurrence(
                move.at(),
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
                    + Quantities.mm(shifts.pm)
                    + (shifts.withLength ? " (offset and tool length)" : " (offset)")
                    + "; travel from "
                    + place.travel().path())
            .cure("another place of the part on the machine, or another tool length")
            .figure("reached", reachedPm / 1e9, "mm")
            .figure("limit", limitPm / 1e9, "mm")
            .operation(move.modes().operation())
            .cause(place.axis() + (reachedPm < limitPm ? " low" : " high"))
            .severity(Math.abs((double) reachedPm - limitPm)));
  }
}
