package hairline.checks.motion;

import hairline.checks.motion.Event.BecameUnknown.Cause;
import hairline.parser.Span;
import hairline.parser.Word;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The motion of a block: G0 to G3 and what modifies them.
 *
 * <p>Positions are those that the program states. Radius compensation (G41, G42) shifts no path
 * here: it is state and events only, and a move is the programmed contour.
 */
final class Motions {
  private static final int MOTION_GROUPS =
      CodeGroup.MOTION.bit()
          | CodeGroup.CYCLE_CANCEL.bit()
          | CodeGroup.EXACT_STOP.bit()
          | CodeGroup.ONE_SHOT.bit();
  private static final List<Axis> FIRST_AXES = List.of(Axis.X, Axis.Y, Axis.Z);
  private static final String SECOND_AXES = "UVW";
  private static final int SECOND_AXES_SET = BlockWords.set(SECOND_AXES);
  private static final int CYCLE_LETTERS = BlockWords.set(AxisWords.LETTERS + CycleMotions.LETTERS);
  private static final int ARC_LETTERS = BlockWords.set(AxisWords.LETTERS + Arcs.LETTERS);

  private final Control control;
  private final ModalState modal;
  private final Assumptions assumptions;
  private final Forgetting forgetting;
  private final AxisWords axisWords;
  private final MoveMaker moves;
  private final Arcs arcs;
  private final MachineMoves machineMoves;
  private final ShiftCodes shiftCodes;
  private final CycleMotions cycles;

  /** The last G80 that ended a motion. */
  private Place cancelledAt;

  Motions(Control control, Assumptions assumptions, Forgetting forgetting) {
    this.control = control;
    this.modal = control.modal;
    cancelledAt = control.at();
    this.assumptions = assumptions;
    this.forgetting = forgetting;
    axisWords = new AxisWords(control);
    moves = new MoveMaker(control);
    arcs = new Arcs(control, axisWords, moves, assumptions);
    machineMoves = new MachineMoves(control, axisWords, moves, assumptions);
    shiftCodes = new ShiftCodes(control, forgetting);
    cycles = new CycleMotions(control, moves, assumptions, forgetting);
  }

  /** What makes moves. */
  MoveMaker moves() {
    return moves;
  }

  /** No cycle is in force. */
  void endCycle() {
    cycles.end();
  }

  /** Makes the motion of a block, if it has one. */
  void execute(BlockWords words) throws IOException {
    move(words);
    if (words.hasAny(SECOND_AXES_SET) && !words.has(Code.G4)) {
      loseParallelAxes(words);
    }
  }

  /** U, V and W move along X, Y and Z (ISO 841, from memory); they are not followed. */
  private void loseParallelAxes(BlockWords words) {
    for (int i = 0; i < SECOND_AXES.length(); i++) {
      char second = SECOND_AXES.charAt(i);
      Axis axis = FIRST_AXES.get(i);
      if (words.hasAny(String.valueOf(second))) {
        control.tip.forget(axis);
        Word word = words.word(second);
        control.wordUnknown(
            word == null ? control.at().span() : word.span(),
            axis + ": " + second + " moves along it and is not followed");
      }
    }
  }

  private void move(BlockWords words) throws IOException {
    Code stated = words.code(CodeGroup.MOTION);
    if (stated != null) {
      modal.setMotion(stated);
    } else if (words.has(Code.G80)) {
      modal.cancelMotion();
      cancelledAt = control.at(words.span(CodeGroup.CYCLE_CANCEL));
    }
    Code motion = modal.motion();
    if (motion == null || !motion.isCycle()) {
      cycles.end();
    }
    Code oneShot = words.code(CodeGroup.ONE_SHOT);
    if (oneShot != null && oneShot != Code.G53) {
      if (claimsAxes(oneShot, words)) {
        if (!conflict(words, oneShot, stated)) {
          executeOneShot(words, oneShot);
        }
        return;
      }
      executeOneShot(words, oneShot);
    }
    boolean axes = words.hasAny(AxisWords.SET);
    if (axes && words.doubledGroups() != 0 && isAmbiguous(words.doubledGroups())) {
      forgetting.namedAxes(words);
      forgetting.tell(control.at().span());
    } else if (axes || (stated != null && isArc(stated) && words.hasAny("IJKR"))) {
      moveInMode(words);
    }
  }

  private static boolean isAmbiguous(int doubledGroups) {
    return (doubledGroups & (CodeGroup.MOTION.bit() | CodeGroup.ONE_SHOT.bit())) != 0;
  }

  private static boolean isArc(@Nullable Code code) {
    return code == Code.G2 || code == Code.G3;
  }

  private static int letters(@Nullable Code code) {
    if (isArc(code)) {
      return ARC_LETTERS;
    }
    return code != null && code.isCycle() ? CYCLE_LETTERS : AxisWords.SET;
  }

  /** Whether the axis words of a block belong to this code, not to a motion (NISTIR 6556 §3.4). */
  private static boolean claimsAxes(Code oneShot, BlockWords words) {
    return switch (oneShot) {
      case G10, G28, G30, G52, G65, G92 -> words.hasAny(AxisWords.SET);
      case G4 -> words.hasAny("X") && words.word('P') == null;
      default -> false;
    };
  }

  /**
   * Whether both a motion and a one-shot code of the block claim its axis words. G0 beside G28 and
   * G30 is none: both are rapids, and programs write it (common practice, no source).
   */
  private boolean conflict(BlockWords words, Code oneShot, @Nullable Code stated) {
    boolean bothRapid = stated == Code.G0 && (oneShot == Code.G28 || oneShot == Code.G30);
    if (stated == null || bothRapid) {
      return false;
    }
    Span span = words.span(MOTION_GROUPS, AxisWords.LETTERS);
    control.emit(
        new Event.CodesConflict(
            control.at(span), stated.text(), oneShot.text(), "both take the axis words"));
    if (ShiftCodes.shifts(oneShot)) {
      forgetting.zeros();
    }
    forgetting.namedAxes(words);
    forgetting.tell(span);
    return true;
  }

  private void executeOneShot(BlockWords words, Code oneShot) {
    switch (oneShot) {
      case G28, G30 -> machineMoves.home(words);
      case G10, G52, G92, G92_1, G92_2, G92_3 -> shiftCodes.execute(words, oneShot);
      default -> {
        // G4 and calls have their own place in the order of execution.
      }
    }
  }

  private void moveInMode(BlockWords words) throws IOException {
    Code code = modal.motion();
    Span span = words.span(MOTION_GROUPS, letters(code));
    if (code == null) {
      if (modal.motionUnknown() || words.has(Code.G80)) {
        withoutMotion(words, span);
        return;
      }
      if (modal.motionCancelled()) {
        code = afterCancel(words, span);
        if (code == null) {
          return;
        }
      } else {
        assumptions.motion(span);
        code = Code.G1;
      }
      modal.setMotion(code);
    }
    boolean straight = code == Code.G0 || code == Code.G1;
    if (words.has(Code.G53)) {
      if (straight) {
        machineMoves.toMachineCoordinates(words, span, code == Code.G0);
      } else {
        control.emit(
            new Event.CodesConflict(
                control.at(span), code.text(), "G53", "G53 goes with G0 and G1 only"));
        forgetting.namedAxes(words);
        forgetting.tell(span);
      }
      return;
    }
    assumptions.move(span);
    assumptions.workCoordinates(span);
    if (straight) {
      straight(words, span, code == Code.G0);
    } else if (isArc(code)) {
      arcs.execute(words, span, code == Code.G2);
    } else if (code == Code.G38_2) {
      probe(words, span);
    } else {
      cycles.execute(words, span, code);
    }
  }

  /** Axis words beside G80, or while it is not known which motion is in force. */
  private void withoutMotion(BlockWords words, Span span) {
    if (words.has(Code.G80)) {
      control.emit(
          new Event.CodesConflict(
              control.at(span),
              "G80",
              "axis words",
              "controls differ in what axis words do while no motion is in force"));
    }
    forgetting.namedAxes(words);
    forgetting.tell(span);
  }

  /**
   * Axis words in a later block than G80, and no motion code since. Many controls go on with the
   * motion from before the cycle (common practice, no source); that is followed, and told.
   */
  private @Nullable Code afterCancel(BlockWords words, Span span) {
    Code taken = modal.straightBeforeCancel();
    control.emit(
        new Event.MotionNotStated(
            control.at(span), cancelledAt, Optional.ofNullable(taken).map(Code::text)));
    if (taken == null) {
      forgetting.motion();
      forgetting.namedAxes(words);
      forgetting.tell(span);
    }
    return taken;
  }

  private void straight(BlockWords words, Span span, boolean rapid) {
    if (!rapid) {
      assumptions.feedMove(span);
    }
    moves.begin();
    int moved = axisWords.go(words);
    if ((moved & AxisState.MOVED_STORED) != 0) {
      moves.straight(span, rapid, Move.Source.BLOCK, words.has(Code.G9));
    } else if (moved != 0) {
      moves.vanished(span);
    }
    Word corner = words.word('R');
    if (corner != null) {
      // Some controls round the corner with it, so that the block ends before its point.
      forgetting.namedAxes(words);
      forgetting.discard();
      control.wordUnknown(corner.span(), "axes: R beside a straight move may round its corner");
    }
  }

  /**
   * G38.2: at feed towards a point, until the probe touches; where that is, only the machine knows.
   */
  private void probe(BlockWords words, Span span) {
    assumptions.feedMove(span);
    moves.begin();
    axisWords.go(words);
    for (Axis axis : Axis.values()) {
      if (words.hasAny(axis.name())) {
        control.tip.forget(axis);
      }
    }
    moves.straight(span, false, Move.Source.BLOCK, true);
    forgetting.parameters();
    forgetting.tell(span, Cause.NOT_SAID);
  }
}
