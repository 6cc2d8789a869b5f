package hairline.checks.motion;

import hairline.checks.motion.ControlProfile.DwellUnit;
import hairline.checks.motion.Event.BecameUnknown.Cause;
import hairline.checks.motion.Event.MachineCode.Meaning;
import hairline.checks.motion.Modes.Compensation;
import hairline.checks.motion.Modes.Coolant;
import hairline.checks.motion.Modes.CycleReturn;
import hairline.checks.motion.Modes.Distance;
import hairline.checks.motion.Modes.FeedMode;
import hairline.checks.motion.Modes.PathMode;
import hairline.checks.motion.Modes.Plane;
import hairline.checks.motion.Modes.Spindle;
import hairline.checks.motion.Modes.Units;
import hairline.parser.Span;
import hairline.parser.Word;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Everything of a block that happens before its motion, in the order of NISTIR 6556 table 8, and
 * what the trade moves behind it: M5 and M9.
 */
final class ModalCodes {
  private static final int STATE_LETTERS = BlockWords.set("DFHST");
  private static final int MOTION_ONLY = CodeGroup.MOTION.bit();

  private static final List<CodeGroup> TRANSFORMS =
      List.of(CodeGroup.POLAR, CodeGroup.SCALING, CodeGroup.MIRROR, CodeGroup.ROTATION);

  private final Control control;
  private final ModalState modal;
  private final Assumptions assumptions;
  private final Forgetting forgetting;

  /** The groups whose codes change what coordinates mean, as the sum of their bits. */
  private int transforms;

  ModalCodes(Control control, Assumptions assumptions, Forgetting forgetting) {
    this.control = control;
    this.forgetting = forgetting;
    this.modal = control.modal;
    this.assumptions = assumptions;
  }

  /** Executes what comes before the motion of a block. */
  void beforeMotion(BlockWords words) {
    if ((words.groups() & ~MOTION_ONLY) == 0
        && !words.hasAny(STATE_LETTERS)
        && words.sheetCodes().isEmpty()) {
      dropFeedOfOneBlock();
      return;
    }
    control.spindle.watch();
    units(words);
    feedMode(words);
    feed(words);
    speed(words);
    selectTool(words);
    if (words.has(Code.M6)) {
      changeTool(words);
    }
    startSpindle(words);
    startCoolant(words);
    sheetCodes(words);
    if (words.has(Code.G4)) {
      dwell(words);
    }
    plane(words);
    compensation(words);
    lengthOffset(words);
    workOffset(words);
    pathMode(words);
    transforms(words);
    distance(words);
    cycleReturn(words);
  }

  /** Executes M5 and M9, after the motion of their block. */
  void afterMotion(BlockWords words) {
    Code spindle = words.code(CodeGroup.SPINDLE);
    if (spindle == Code.M5 || spindle == Code.M19) {
      modal.setSpindle(Spindle.STOPPED, control.line());
      control.spindle.tell(words.span(CodeGroup.SPINDLE));
    }
    if (words.has(Code.M9)) {
      modal.setCoolant(Coolant.OFF, control.line());
    }
  }

  private void units(BlockWords words) {
    Code code = words.code(CodeGroup.UNITS);
    if (code != null) {
      boolean inch = code == Code.G20 || code == Code.G70;
      modal.setUnits(inch ? Units.INCH : Units.MM, control.line());
    }
  }

  private void feedMode(BlockWords words) {
    Code code = words.code(CodeGroup.FEED_MODE);
    if (code != null) {
      modal.setFeedMode(
          switch (code) {
            case G93 -> FeedMode.INVERSE_TIME;
            case G95 -> FeedMode.PER_REVOLUTION;
            default -> FeedMode.PER_MINUTE;
          },
          control.line());
    }
  }

  /** Under inverse time a feed holds for its own block only (NISTIR 6556 §3.5.19). */
  private void dropFeedOfOneBlock() {
    if (modal.feedMode().is(FeedMode.INVERSE_TIME)) {
      modal.dropFeed();
    }
  }

  private void feed(BlockWords words) {
    Word word = words.word('F');
    if (word == null) {
      if (words.isDoubled('F')) {
        forgetting.feed();
        forgetting.tell(control.at().span());
      } else {
        dropFeedOfOneBlock();
      }
      return;
    }
    Optional<FeedMode> mode = modal.feedMode().value();
    Optional<Units> units = modal.units().value();
    if (mode.isEmpty() || units.isEmpty()) {
      forgetting.feed();
      forgetting.tell(word.span());
      return;
    }
    OptionalDouble feed =
        mode.get() == FeedMode.INVERSE_TIME
            ? control.numbers.number(word)
            : control.numbers.millimetres(word, units.get());
    if (feed.isPresent() && feed.getAsDouble() >= 0) {
      modal.setFeed(feed.getAsDouble(), control.line());
      return;
    }
    if (feed.isPresent()) {
      control.refuse(word.span(), BlockWords.text(word), "a feed is not negative");
    }
    modal.forgetFeed(control.line());
  }

  private void speed(BlockWords words) {
    Code mode = words.code(CodeGroup.SPEED_MODE);
    if (mode != null) {
      modal.setSurfaceSpeed(mode == Code.G96);
    }
    Word word = words.word('S');
    if (word != null && isSpeedLimit(words)) {
      return;
    }
    if (word != null) {
      OptionalDouble speed = control.numbers.number(word);
      if (speed.isPresent() && speed.getAsDouble() >= 0) {
        modal.setSpeed(speed.getAsDouble(), control.line());
      } else {
        if (speed.isPresent()) {
          control.refuse(word.span(), BlockWords.text(word), "a speed is not negative");
        }
        modal.forgetSpeed(control.line());
      }
    } else if (words.isDoubled('S')) {
      forgetting.speed();
      forgetting.tell(control.at().span());
    }
  }

  /** G92 with S and no axis limits the speed (common practice, no source). */
  private static boolean isSpeedLimit(BlockWords words) {
    return words.has(Code.G92) && !words.hasAny(AxisWords.SET);
  }

  private void selectTool(BlockWords words) {
    Word word = words.word('T');
    if (word != null) {
      OptionalInt number = control.numbers.count(word);
      if (number.isPresent()) {
        modal.selectTool(number.getAsInt(), control.line());
        return;
      }
    }
    if (word != null || words.isDoubled('T')) {
      modal.forgetNextTool(control.line());
    }
  }

  private void changeTool(BlockWords words) {
    Span span = words.span(CodeGroup.TOOL_CHANGE, 'T');
    modal.setSpindle(Spindle.STOPPED, control.line());
    control.spindle.tell(span);
    Modal<Integer> before = modal.tool();
    modal.changeTool(control.line());
    // Another tool has another length, and the change itself moves the spindle.
    control.tip.forget(Axis.Z);
    control.emit(new Event.ToolChanged(control.at(span), before, modal.tool(), modal.snapshot()));
  }

  private void startSpindle(BlockWords words) {
    Code code = words.code(CodeGroup.SPINDLE);
    if (code == Code.M3 || code == Code.M13) {
      modal.setSpindle(Spindle.CLOCKWISE, control.line());
    } else if (code == Code.M4 || code == Code.M14) {
      modal.setSpindle(Spindle.COUNTER_CLOCKWISE, control.line());
    }
    control.spindle.tell(words.span(CodeGroup.SPINDLE, 'S'));
    if (code == Code.M13 || code == Code.M14) {
      coolantOn(false, true);
    }
  }

  private void startCoolant(BlockWords words) {
    Code code = words.code(CodeGroup.COOLANT);
    if (code == Code.M7 || code == Code.M8) {
      coolantOn(code == Code.M7 || words.mistAndFlood(), code == Code.M8 || words.mistAndFlood());
    }
  }

  private void coolantOn(boolean mist, boolean flood) {
    Coolant now = modal.coolant().value().orElse(Coolant.OFF);
    modal.setCoolant(new Coolant(now.mist() || mist, now.flood() || flood), control.line());
  }

  private void sheetCodes(BlockWords words) {
    for (BlockWords.SheetCode code : words.sheetCodes()) {
      machineCode(code.text(), code.meaning(), code.word().span());
    }
  }

  /** A code or call that the sheet gives a meaning. */
  void machineCode(String text, Meaning meaning, Span span) {
    switch (meaning) {
      case COOLANT_ON -> coolantOn(text.equals("M7"), !text.equals("M7"));
      case COOLANT_OFF -> modal.setCoolant(Coolant.OFF, control.line());
      case MEASURE_TOOL -> control.tip.forgetAll();
      case WARM_UP, IGNORE -> {
        // Nothing that the state holds.
      }
    }
    control.emit(new Event.MachineCode(control.at(span), text, meaning, modal.snapshot()));
  }

  private void dwell(BlockWords words) {
    Span span = words.span(CodeGroup.ONE_SHOT, words.word('P') != null ? 'P' : 'X');
    Word word = words.word('P');
    OptionalDouble seconds = OptionalDouble.empty();
    if (word != null) {
      seconds = seconds(word, control.profile.dwellP());
    } else {
      word = words.word('X');
      if (word != null) {
        seconds = seconds(word, control.profile.dwellX());
      }
    }
    control.emit(new Event.Dwelled(control.at(span), seconds, modal.snapshot()));
  }

  /** The time of a dwell word; empty where its unit is not known. */
  OptionalDouble seconds(Word word, Optional<DwellUnit> unit) {
    OptionalDouble number = control.numbers.number(word);
    if (number.isPresent() && number.getAsDouble() < 0) {
      control.refuse(word.span(), BlockWords.text(word), "a dwell is not negative");
      return OptionalDouble.empty();
    }
    if (number.isEmpty() || unit.isEmpty()) {
      return OptionalDouble.empty();
    }
    return unit.get() == DwellUnit.SECONDS
        ? number
        : OptionalDouble.of(number.getAsDouble() / 1000);
  }

  private void plane(BlockWords words) {
    Code code = words.code(CodeGroup.PLANE);
    if (code != null) {
      modal.setPlane(
          switch (code) {
            case G18 -> Plane.ZX;
            case G19 -> Plane.YZ;
            default -> Plane.XY;
          },
          control.line());
    }
  }

  private void compensation(BlockWords words) {
    Word number = words.word('D');
    if (number != null) {
      OptionalInt count = control.numbers.count(number);
      if (count.isPresent()) {
        modal.setCompensationNumber(count.getAsInt(), control.line());
      } else {
        modal.forgetCompensationNumber(control.line());
      }
    } else if (words.isDoubled('D')) {
      modal.forgetCompensationNumber(control.line());
    }
    Code code = words.code(CodeGroup.COMPENSATION);
    if (code == null) {
      return;
    }
    Compensation before = modal.compensation().value().orElse(Compensation.OFF);
    Compensation after =
        switch (code) {
          case G41 -> Compensation.LEFT;
          case G42 -> Compensation.RIGHT;
          default -> Compensation.OFF;
        };
    Span span = words.span(CodeGroup.COMPENSATION, 'D');
    if (after != Compensation.OFF) {
      assumptions.plane(span);
    }
    modal.setCompensation(after, control.line());
    if (before != after) {
      control.emit(new Event.CompensationSet(control.at(span), before, after, modal.snapshot()));
    }
  }

  private void lengthOffset(BlockWords words) {
    Code code = words.code(CodeGroup.LENGTH_OFFSET);
    Word word = words.word('H');
    if (code == null && (word == null || modal.lengthOffset().value().orElse(0) == 0)) {
      // An H alone changes the offset where one is in force (common practice, no source).
      return;
    }
    Span span = words.span(CodeGroup.LENGTH_OFFSET, 'H');
    OptionalInt number = OptionalInt.empty();
    if (code == Code.G49) {
      number = OptionalInt.of(0);
    } else if (word != null) {
      number = control.numbers.count(word);
    } else if (!words.isDoubled('H')) {
      control.refuse(span, code == null ? "H" : code.text(), "an H word is due beside it");
    }
    if (number.isEmpty()) {
      forgetting.lengthOffset();
      forgetting.tell(span);
      return;
    }
    if (!modal.lengthOffsetStands(number.getAsInt())) {
      control.tip.forget(Axis.Z);
    }
    modal.setLengthOffset(number.getAsInt(), control.line());
    control.emit(new Event.LengthOffsetSet(control.at(span), number.getAsInt(), modal.snapshot()));
  }

  private void workOffset(BlockWords words) {
    Code code = words.code(CodeGroup.WORK_OFFSET);
    if (code == null) {
      return;
    }
    if (!modal.workOffset().is(code.text())) {
      control.tip.forgetAll();
      control.shifts.choose(code.text());
    }
    modal.setWorkOffset(code.text(), control.line());
  }

  private void pathMode(BlockWords words) {
    Code code = words.code(CodeGroup.PATH_MODE);
    if (code != null) {
      modal.setPathMode(
          switch (code) {
            case G61 -> PathMode.EXACT_PATH;
            case G61_1 -> PathMode.EXACT_STOP;
            default -> PathMode.CONTINUOUS;
          },
          control.line());
    }
  }

  /** Codes that change what coordinates mean; until they are cancelled, no place is known. */
  private void transforms(BlockWords words) {
    for (CodeGroup group : TRANSFORMS) {
      Code code = words.code(group);
      if (code == null) {
        continue;
      }
      boolean cancels =
          switch (code) {
            case G15, G50, G50_1, G69 -> true;
            default -> false;
          };
      boolean before = transforms != 0;
      transforms = cancels ? transforms & ~group.bit() : transforms | group.bit();
      if (before != (transforms != 0)) {
        control.shifts.setTransformed(!before);
      }
      if (!cancels) {
        control.emit(new Event.CodeUnknown(control.at(words.span(group)), code.text()));
        control.tip.forgetAll();
        control.becameUnknown(
            words.span(group),
            "every axis, until the end of " + group.title(),
            Cause.NOT_UNDERSTOOD);
      }
    }
  }

  private void distance(BlockWords words) {
    Code code = words.code(CodeGroup.DISTANCE);
    if (code != null) {
      modal.setDistance(
          code == Code.G91 ? Distance.INCREMENTAL : Distance.ABSOLUTE, control.line());
    }
    Code arcs = words.code(CodeGroup.ARC_DISTANCE);
    if (arcs != null) {
      modal.setArcDistance(
          arcs == Code.G91_1 ? Distance.INCREMENTAL : Distance.ABSOLUTE, control.line());
    }
  }

  private void cycleReturn(BlockWords words) {
    Code code = words.code(CodeGroup.CYCLE_RETURN);
    if (code != null) {
      modal.setCycleReturn(
          code == Code.G99 ? CycleReturn.R_LEVEL : CycleReturn.INITIAL_LEVEL, control.line());
    }
  }
}
