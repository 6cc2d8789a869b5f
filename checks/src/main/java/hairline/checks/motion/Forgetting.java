package hairline.checks.motion;

import hairline.parser.Span;
import hairline.parser.Word;

/** Makes unknown what a block may have changed, and says so. */
final class Forgetting {
  private final Control control;

  Forgetting(Control control) {
    this.control = control;
  }

  /** What conflicting and unknown codes of a block may have changed. */
  void conflicts(BlockWords words) {
    Span block = control.at().span();
    int groups = words.doubledGroups();
    if (groups != 0) {
      for (CodeGroup group : CodeGroup.values()) {
        if ((groups & group.bit()) != 0) {
          group(group, block);
        }
      }
    }
    if (words.shiftsInConflict()) {
      control.shifts.forget();
    }
    for (Word word : words.unknownCodes()) {
      unknownCode(word);
    }
  }

  private void unknownCode(Word word) {
    control.emit(new Event.CodeUnknown(control.at(word.span()), BlockWords.text(word)));
    if (word.letter() == 'G') {
      control.modal.forgetMotion();
      control.becameUnknown(word.span(), "motion");
      axes(word.span());
    } else {
      // An auxiliary function may stop the spindle or switch coolant; it moves no axis.
      group(CodeGroup.SPINDLE, word.span());
      group(CodeGroup.COOLANT, word.span());
    }
  }

  /** The state of this group may have changed. */
  void group(CodeGroup group, Span span) {
    ModalState modal = control.modal;
    int line = control.line();
    switch (group) {
      case MOTION, CYCLE_CANCEL -> modal.forgetMotion();
      case PLANE -> modal.forgetPlane(line);
      case DISTANCE -> modal.forgetDistance(line);
      case ARC_DISTANCE -> modal.forgetArcDistance(line);
      case FEED_MODE -> {
        modal.forgetFeedMode(line);
        modal.forgetFeed(line);
      }
      case UNITS -> modal.forgetUnits(line);
      case COMPENSATION -> modal.forgetCompensation(line);
      case LENGTH_OFFSET -> {
        modal.forgetLengthOffset(line);
        control.tip.forget(Axis.Z);
      }
      case CYCLE_RETURN -> modal.forgetCycleReturn(line);
      case WORK_OFFSET -> {
        modal.forgetWorkOffset(line);
        control.shifts.choose("unknown");
        control.tip.forgetAll();
      }
      case PATH_MODE -> modal.forgetPathMode(line);
      case SPEED_MODE -> modal.forgetSpeed(line);
      case TOOL_CHANGE -> tool();
      case SPINDLE -> spindle();
      case COOLANT -> modal.forgetCoolant(line);
      case ONE_SHOT, POLAR, SCALING, MIRROR, ROTATION -> {
        axes(span);
        return;
      }
      case EXACT_STOP, STOPPING, OVERRIDES, CALL, CLAMP -> {
        return;
      }
    }
    control.becameUnknown(span, group.title());
  }

  /** Every axis may stand elsewhere. */
  void axes(Span span) {
    control.tip.forgetAll();
    control.becameUnknown(span, "axes");
  }

  /** The axes that the block names may stand elsewhere. */
  void namedAxes(BlockWords words, Span span) {
    StringBuilder named = new StringBuilder();
    for (Axis axis : Axis.values()) {
      if (words.hasAny(axis.name())) {
        control.tip.forget(axis);
        named.append(named.isEmpty() ? "" : ", ").append(axis.name());
      }
    }
    if (!named.isEmpty()) {
      control.becameUnknown(span, named.toString());
    }
  }

  private void spindle() {
    control.spindle.watch();
    control.modal.forgetSpindle(control.line());
    control.spindle.tell(control.at().span());
  }

  private void tool() {
    control.modal.forgetTool(control.line());
    control.tip.forget(Axis.Z);
  }
}
