package hairline.checks.motion;

import hairline.checks.motion.Event.BecameUnknown.Cause;
import hairline.checks.motion.Modes.Distance;
import hairline.parser.Span;
import hairline.parser.Word;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** The codes that shift zero: the family of G92, G52, and G10. */
final class ShiftCodes {
  private static final Axis[] AXES = Axis.values();

  private final Control control;
  private final Forgetting forgetting;
  private final Shifts shifts;
  private final TipPosition tip;
  private final ReadLength length = new ReadLength();

  ShiftCodes(Control control, Forgetting forgetting) {
    this.control = control;
    this.forgetting = forgetting;
    this.shifts = control.shifts;
    this.tip = control.tip;
  }

  /** Whether this code shifts zero. */
  static boolean shifts(Code code) {
    return switch (code) {
      case G10, G52, G92, G92_1, G92_2, G92_3 -> true;
      default -> false;
    };
  }

  /** Executes such a code. */
  void execute(BlockWords words, Code code) {
    switch (code) {
      case G92 -> setGeneral(words);
      case G92_1 -> clearGeneral(words, code);
      case G92_2 -> clearGeneral(words, code);
      case G92_3 -> {
        shifts.restoreGeneral();
        tell(words, code.text(), shifts.generalStands());
      }
      case G52 -> setLocal(words);
      case G10 -> setData(words);
      default -> throw new IllegalArgumentException(code.text());
    }
  }

  private void tell(BlockWords words, String code, boolean active) {
    Span span = words.span(CodeGroup.ONE_SHOT.bit(), "LPRXYZABC");
    control.emit(new Event.ShiftSet(control.at(span), code, active, control.modal.snapshot()));
  }

  private void setGeneral(BlockWords words) {
    if (!words.hasAny(AxisWords.LETTERS)) {
      if (!words.hasAny("S")) {
        control.refuse(words.span(CodeGroup.ONE_SHOT), "G92", "an axis word is due beside it");
      }
      return;
    }
    for (Axis axis : AXES) {
      if (words.hasAny(axis.name())) {
        read(words, axis);
        if (!shifts.setGeneral(tip.change(axis), length)) {
          lose(words, axis, true, "zero set where its place was not known", Cause.NOT_UNDERSTOOD);
        }
      }
    }
    tell(words, "G92", shifts.generalStands());
  }

  private void clearGeneral(BlockWords words, Code code) {
    shifts.clearGeneral(code == Code.G92_1);
    tell(words, code.text(), shifts.generalStands());
  }

  private void setLocal(BlockWords words) {
    if (!words.hasAny(AxisWords.LETTERS)) {
      control.refuse(words.span(CodeGroup.ONE_SHOT), "G52", "an axis word is due beside it");
      return;
    }
    for (Axis axis : AXES) {
      if (words.hasAny(axis.name())) {
        read(words, axis);
        shifts.setLocal(axis, length);
      }
    }
    tell(words, "G52", shifts.localStands());
  }

  /** G10: L2 and L20 set work offsets, L1, L10 and L11 lengths of tools, L12 and L13 radii. */
  private void setData(BlockWords words) {
    Word key = words.word('L');
    OptionalInt number = key == null ? OptionalInt.empty() : control.numbers.count(key);
    if (key == null) {
      control.refuse(words.span(CodeGroup.ONE_SHOT), "G10", "an L word is due beside it");
    }
    switch (number.orElse(-1)) {
      case 2 -> setOrigins(words, false);
      case 20 -> setOrigins(words, true);
      case 1, 10, 11 -> tip.forget(Axis.Z);
      case 12, 13 -> {
        // The radius of a tool; paths are not shifted here.
      }
      default -> {
        forgetting.zeros();
        forgetting.tell(control.at().span());
      }
    }
  }

  private void setOrigins(BlockWords words, boolean here) {
    Word which = words.word('P');
    OptionalInt number = which == null ? OptionalInt.of(0) : control.numbers.count(which);
    if (number.isEmpty() || number.getAsInt() > 9) {
      if (which != null && number.isPresent()) {
        control.refuse(which.span(), BlockWords.text(which), "work offsets are 1 to 9");
      }
      forgetting.zeros();
      forgetting.tell(control.at().span());
      return;
    }
    String offset = name(number.getAsInt());
    Modal<String> inForce = control.modal.workOffset();
    boolean present = offset.isEmpty() || inForce.is(offset);
    for (Axis axis : AXES) {
      if (words.hasAny(axis.name())) {
        read(words, axis);
        boolean known = present ? setPresent(axis, here) : setOther(offset, axis, here);
        boolean lost = !present && inForce.value().isEmpty() && shifts.loseOrigin(axis);
        if (!known || lost) {
          Cause cause =
              length.known && control.modal.distance().is(Distance.ABSOLUTE)
                  ? Cause.NOT_SAID
                  : Cause.NOT_UNDERSTOOD;
          lose(
              words,
              axis,
              present || lost,
              "its work offset was moved by an unknown distance",
              cause);
        }
      }
    }
    tell(
        words,
        "G10 L" + (here ? 20 : 2) + " P" + number.getAsInt(),
        shifts.originLeft(present ? "" : offset));
  }

  private boolean setPresent(Axis axis, boolean here) {
    return here
        ? shifts.setOriginHere(tip.change(axis), length)
        : shifts.setOrigin("", axis, origin());
  }

  private boolean setOther(String offset, Axis axis, boolean here) {
    return shifts.setOrigin(offset, axis, here ? null : origin());
  }

  /** The origin that is written; controls differ in whether G91 makes it an increment. */
  private @Nullable Shift origin() {
    boolean absolute = control.modal.distance().is(Distance.ABSOLUTE);
    return length.known && absolute ? Shift.of(length) : null;
  }

  private static String name(int number) {
    if (number == 0) {
      return "";
    }
    return number <= 6 ? "G5" + (3 + number) : "G59." + (number - 6);
  }

  private void read(BlockWords words, Axis axis) {
    Word word = words.word(axis);
    if (word == null) {
      length.setUnknown();
    } else {
      control.lengths.read(word, axis, length);
    }
  }

  private void lose(BlockWords words, Axis axis, boolean present, String why, Cause cause) {
    if (present) {
      tip.forget(axis);
    }
    Word word = words.word(axis);
    control.wordUnknown(word == null ? control.at().span() : word.span(), axis + ": " + why, cause);
  }
}
