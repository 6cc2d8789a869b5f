package hairline.checks.motion;

import hairline.checks.motion.Event.BecameUnknown.Cause;
import hairline.parser.Span;
import hairline.parser.Word;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * Makes unknown what a block may have changed, and tells it in one event. What was unknown before
 * is not told again.
 */
final class Forgetting {
  private final Control control;
  private final ModalState modal;
  private final TipPosition tip;
  private final Set<String> forgotten = new LinkedHashSet<>();

  Forgetting(Control control) {
    this.control = control;
    this.modal = control.modal;
    this.tip = control.tip;
  }

  /** Tells what a block that was not understood made unknown. */
  void tell(Span span) {
    tell(span, Cause.NOT_UNDERSTOOD);
  }

  /** Tells what has been forgotten since it was last told; returns whether it is anything. */
  boolean tell(Span span, Cause cause) {
    if (forgotten.isEmpty()) {
      return false;
    }
    control.becameUnknown(span, String.join(", ", forgotten), cause);
    forgotten.clear();
    return true;
  }

  /** What has been forgotten is told elsewhere. */
  void discard() {
    forgotten.clear();
  }

  /** What conflicting and unknown codes of a block may have changed. */
  void conflicts(BlockWords words) {
    int groups = words.doubledGroups();
    if (groups != 0) {
      for (CodeGroup group : CodeGroup.values()) {
        if ((groups & group.bit()) != 0) {
          group(group);
        }
      }
      if (words.shiftsInConflict()) {
        zeros();
      }
      tell(control.at().span());
    }
    for (Word word : words.unknownCodes()) {
      unknownCode(word);
    }
  }

  private void unknownCode(Word word) {
    control.emit(new Event.CodeUnknown(control.at(word.span()), BlockWords.text(word)));
    if (word.letter() == 'G') {
      motion();
      axes();
    } else {
      // An auxiliary function may stop the spindle or switch coolant; it moves no axis.
      group(CodeGroup.SPINDLE);
      group(CodeGroup.COOLANT);
    }
    tell(word.span());
  }

  /** The state of this group may have changed. */
  void group(CodeGroup group) {
    int line = control.line();
    switch (group) {
      case MOTION, CYCLE_CANCEL -> motion();
      case PLANE -> {
        note(modal.plane(), group);
        modal.forgetPlane(line);
      }
      case DISTANCE -> {
        note(modal.distance(), group);
        modal.forgetDistance(line);
      }
      case ARC_DISTANCE -> {
        note(modal.arcDistance(), group);
        modal.forgetArcDistance(line);
      }
      case FEED_MODE -> {
        note(modal.feedMode(), group);
        modal.forgetFeedMode(line);
        feed();
      }
      case UNITS -> {
        note(modal.units(), group);
        modal.forgetUnits(line);
      }
      case COMPENSATION -> {
        note(modal.compensation(), group);
        modal.forgetCompensation(line);
      }
      case LENGTH_OFFSET -> lengthOffset();
      case CYCLE_RETURN -> {
        note(modal.cycleReturn(), group);
        modal.forgetCycleReturn(line);
      }
      case WORK_OFFSET -> {
        note(modal.workOffset(), group);
        modal.forgetWorkOffset(line);
        control.shifts.choose(Shifts.UNKNOWN_OFFSET);
        axes();
      }
      case PATH_MODE -> {
        note(modal.pathMode(), group);
        modal.forgetPathMode(line);
      }
      case SPEED_MODE -> speed();
      case TOOL_CHANGE -> {
        note(modal.tool(), group);
        modal.forgetTool(line);
        axis(Axis.Z);
      }
      case SPINDLE -> {
        note(modal.spindle(), group);
        control.spindle.watch();
        modal.forgetSpindle(line);
        control.spindle.tell(control.at().span());
      }
      case COOLANT -> {
        note(modal.coolant(), group);
        modal.forgetCoolant(line);
      }
      case ONE_SHOT -> axes();
      case POLAR, SCALING, MIRROR, ROTATION -> zeros();
      case EXACT_STOP, STOPPING, OVERRIDES, CALL, CLAMP -> {
        // No state stands behind these.
      }
    }
  }

  private void note(Modal<?> item, CodeGroup group) {
    if (!item.isUnknown()) {
      forgotten.add(group.title());
    }
  }

  /** It is not known which motion is in force. */
  void motion() {
    if (!modal.motionUnknown()) {
      modal.forgetMotion();
      forgotten.add(CodeGroup.MOTION.title());
    }
  }

  void feed() {
    if (!modal.feed().isUnknown()) {
      modal.forgetFeed(control.line());
      forgotten.add("feed");
    }
  }

  void speed() {
    if (!modal.speed().isUnknown()) {
      control.spindle.watch();
      modal.forgetSpeed(control.line());
      control.spindle.tell(control.at().span());
      forgotten.add("speed");
    }
  }

  /** Another tool may have been selected. */
  void nextTool() {
    modal.forgetNextTool(control.line());
    forgotten.add("tool selected");
  }

  void lengthOffset() {
    note(modal.lengthOffset(), CodeGroup.LENGTH_OFFSET);
    modal.forgetLengthOffset(control.line());
    axis(Axis.Z);
  }

  void parameters() {
    control.parameters.forgetAll(control.line());
    forgotten.add("parameters");
  }

  /** The zero of every axis may have been shifted. */
  void zeros() {
    control.shifts.forget();
    axes();
    forgotten.add("zero of every axis");
  }

  /** An axis may stand elsewhere. */
  void axis(Axis axis) {
    if (tip.get(axis).known()) {
      forgotten.add(axis.name());
    }
    tip.forget(axis);
  }

  /** Every axis may stand elsewhere. */
  void axes() {
    for (Axis axis : Axis.values()) {
      axis(axis);
    }
  }

  /** The axes that the block names may stand elsewhere. */
  void namedAxes(BlockWords words) {
    for (Axis axis : Axis.values()) {
      if (words.hasAny(axis.name())) {
        axis(axis);
      }
    }
  }

  /** What a subprogram that was not read may have changed. */
  void call() {
    parameters();
    motion();
    axes();
    feed();
    speed();
    group(CodeGroup.SPINDLE);
    group(CodeGroup.COOLANT);
    lengthOffset();
  }
}
