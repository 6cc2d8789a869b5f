package hairline.checks.motion;

import hairline.checks.motion.ControlProfile.PointlessNumber;
import hairline.checks.motion.Modes.Distance;
import hairline.checks.motion.Modes.FeedMode;
import hairline.checks.motion.Modes.Units;
import hairline.parser.Block;
import hairline.parser.Span;
import hairline.parser.Words;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Executes the blocks that long programs are made of: G0 or G1 to a place in X, Y and Z, written in
 * millimetres with no more digits than the control keeps, perhaps with F and N. It does what {@link
 * BlockWords}, {@link ModalCodes} and {@link Motions} together do with such a block, and leaves
 * every other block to them, before anything is changed.
 */
final class PlainBlocks {
  private static final Axis[] AXES = {Axis.X, Axis.Y, Axis.Z};
  private static final int AXIS_LETTERS = BlockWords.set("XYZ");
  private static final int FEED = BlockWords.set("F");
  private static final int CODE = BlockWords.set("G");
  private static final int LETTERS = AXIS_LETTERS | FEED | CODE | BlockWords.set("N");
  private static final int MM_DIGITS = 9;

  /** Times a whole millimetre, such a number is still far from the end of a long. */
  private static final long MOST_DIGITS_AS_NUMBER = 1_000_000_000L;

  private static final long[] POWERS = {
    1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000
  };

  private final Control control;
  private final ModalState modal;
  private final Assumptions assumptions;
  private final Motions motions;
  private final boolean codesAreUsual;
  private final boolean pointless;
  private final boolean pointlessZero;
  private final int digitsKept;

  /** The state last looked at, and whether blocks under it may be plain. */
  private @Nullable Modes modes;

  private boolean isUsual;

  /** Which word has a letter, for the letters that the block has. */
  private final int[] places = new int[26];

  private final long[] storedPm = new long[AXES.length];
  private final long[] writtenPm = new long[AXES.length];

  private long feedDigits = -1;
  private int feedScale;
  private double feed;

  PlainBlocks(Control control, Assumptions assumptions, Motions motions) {
    this.control = control;
    this.modal = control.modal;
    this.assumptions = assumptions;
    this.motions = motions;
    codesAreUsual =
        control.codes.onSheet('G', Code.G0.tenths()).isEmpty()
            && control.codes.onSheet('G', Code.G1.tenths()).isEmpty();
    pointless = control.profile.decimalPoint().filter(p -> p == PointlessNumber.UNITS).isPresent();
    pointlessZero =
        control.profile.decimalPoint().filter(p -> p == PointlessNumber.INCREMENTS).isEmpty();
    digitsKept = Math.min(MM_DIGITS, control.rounding.digitsKept(Units.MM));
  }

  /** Executes a block; false where it is not plain and nothing has been done. */
  boolean execute(Block block) {
    if (!block.problems().isEmpty() || !block.settings().isEmpty()) {
      return false;
    }
    Words words = Words.of(block.words());
    Modes before = modal.snapshot();
    if (!before.isSame(modes)) {
      modes = before;
      isUsual = isUsual(before);
    }
    if (!isUsual) {
      return false;
    }
    int letters = letters(words);
    if (letters < 0) {
      return false;
    }
    Code stated = null;
    if ((letters & CODE) != 0) {
      stated = code(words, places['G' - 'A']);
      if (stated == null) {
        return false;
      }
    }
    Code motion = stated == null ? modal.motion() : stated;
    if (motion != Code.G0 && motion != Code.G1) {
      return false;
    }
    if ((letters & AXIS_LETTERS) != 0 && !isWithinReach(words, letters)) {
      return false;
    }
    if ((letters & FEED) != 0 && !setFeed(words, places['F' - 'A'], before)) {
      return false;
    }
    modal.setMotion(motion);
    motions.endCycle();
    if ((letters & AXIS_LETTERS) != 0) {
      move(words, letters, motion == Code.G0);
    }
    return true;
  }

  /** Whether under this state a coordinate in millimetres is one from a known zero. */
  private boolean isUsual(Modes now) {
    return codesAreUsual
        && now.units().is(Units.MM)
        && now.distance().is(Distance.ABSOLUTE)
        && now.feedMode().value().filter(mode -> mode != FeedMode.INVERSE_TIME).isPresent();
  }

  /** The letters of the words, one of each and all with numbers; or -1. */
  private int letters(Words words) {
    int letters = 0;
    for (int i = 0; i < words.size(); i++) {
      int index = words.letter(i) - 'A';
      int bit = 1 << index;
      if ((LETTERS & bit) == 0 || (letters & bit) != 0 || !words.isPlain(i)) {
        return -1;
      }
      letters |= bit;
      places[index] = i;
    }
    return letters;
  }

  private static @Nullable Code code(Words words, int i) {
    if (words.scale(i) != 0) {
      return null;
    }
    long number = words.unscaled(i);
    return number == 0 ? Code.G0 : number == 1 ? Code.G1 : null;
  }

  /** Works out where the axes that are named go; false where only the long way can tell. */
  private boolean isWithinReach(Words words, int letters) {
    for (int k = 0; k < AXES.length; k++) {
      if ((letters & AXIS_LETTERS & 1 << ('X' - 'A' + k)) == 0) {
        continue;
      }
      int i = places['X' - 'A' + k];
      long digits = words.unscaled(i);
      int scale = words.scale(i);
      Shift shift = control.shifts.get(AXES[k]);
      if (scale > digitsKept
          || Math.abs(digits) > MOST_DIGITS_AS_NUMBER
          || (!words.hasPoint(i) && !(pointless || (digits == 0 && pointlessZero)))
          || shift == null
          || shift.rest() != null) {
        return false;
      }
      long pm = digits * POWERS[MM_DIGITS - scale];
      storedPm[k] = pm + shift.storedPm();
      writtenPm[k] = pm + shift.writtenPm();
      if (((pm ^ storedPm[k]) & (shift.storedPm() ^ storedPm[k])) < 0
          || ((pm ^ writtenPm[k]) & (shift.writtenPm() ^ writtenPm[k])) < 0) {
        return false;
      }
    }
    return true;
  }

  private boolean setFeed(Words words, int i, Modes before) {
    long digits = words.unscaled(i);
    if (digits < 0) {
      return false;
    }
    if (digits != feedDigits || words.scale(i) != feedScale) {
      OptionalDouble number = control.numbers.millimetres(words.get(i), Units.MM);
      if (number.isEmpty()) {
        return false;
      }
      feed = number.getAsDouble();
      feedDigits = digits;
      feedScale = words.scale(i);
    }
    modal.setFeed(feed, control.line());
    Modes now = modal.snapshot();
    if (!now.isSame(before) && !now.equals(before)) {
      control.emit(new Event.ModesChanged(control.at(), before, now));
    }
    return true;
  }

  private void move(Words words, int letters, boolean rapid) {
    Span span = span(words, letters & (AXIS_LETTERS | CODE));
    assumptions.move(span);
    assumptions.workCoordinates(span);
    if (!rapid) {
      assumptions.feedMove(span);
    }
    MoveMaker moves = motions.moves();
    moves.begin();
    int moved = 0;
    for (int k = 0; k < AXES.length; k++) {
      if ((letters & 1 << ('X' - 'A' + k)) != 0) {
        control.shifts.noteKnown(AXES[k]);
        moved |= control.tip.change(AXES[k]).goTo(storedPm[k], writtenPm[k]);
      }
    }
    if ((moved & AxisState.MOVED_STORED) != 0) {
      moves.straight(span, rapid, Move.Source.BLOCK, false);
    } else if (moved != 0) {
      moves.vanished(span);
    }
  }

  /** The columns from the first to the last word of these letters. */
  private Span span(Words words, int letters) {
    int from = Integer.MAX_VALUE;
    int to = 0;
    for (int left = letters; left != 0; left &= left - 1) {
      int i = places[Integer.numberOfTrailingZeros(left)];
      from = Math.min(from, words.column(i));
      to = Math.max(to, words.endColumn(i));
    }
    Span block = control.at().span();
    return from == block.column() && to == block.endColumn() ? block : new Span(from, to);
  }
}
