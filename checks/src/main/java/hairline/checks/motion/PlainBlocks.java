package hairline.checks.motion;

import hairline.checks.motion.ControlProfile.PointlessNumber;
import hairline.checks.motion.Modes.Distance;
import hairline.checks.motion.Modes.FeedMode;
import hairline.checks.motion.Modes.Plane;
import hairline.checks.motion.Modes.Units;
import hairline.parser.Block;
import hairline.parser.Span;
import hairline.parser.Words;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Executes the blocks that long programs are made of: G1 to a place in X, Y and Z, or G2 and G3 in
 * XY around a centre, written in millimetres with no more digits than the control keeps, perhaps
 * with F and N. It does what {@link BlockWords}, {@link ModalCodes} and {@link Motions} together do
 * with such a block, and leaves every other block to them, before anything is changed.
 *
 * <p>The cases that a long program has once in a while (rapids, axes not known yet) are left to
 * them too, so that nothing here comes as a surprise to code that was compiled for what went
 * before.
 */
final class PlainBlocks {
  private static final Axis[] AXES = {Axis.X, Axis.Y, Axis.Z};
  private static final @Nullable Code[] CODES = {null, Code.G1, Code.G2, Code.G3};
  private static final int AXIS_LETTERS = BlockWords.set("XYZ");
  private static final int CENTRE = BlockWords.set("IJ");
  private static final int FEED = BlockWords.set("F");
  private static final int CODE = BlockWords.set("G");
  private static final int LETTERS = AXIS_LETTERS | CENTRE | FEED | CODE | BlockWords.set("N");
  private static final int MM_DIGITS = 9;

  /** A million millimetres, so that sums of a few are still far from the end of a long. */
  private static final long FARTHEST_PM = 1_000_000_000_000_000L;

  /** Times a whole millimetre, such a number is still a long. */
  private static final long MOST_DIGITS_AS_NUMBER = 1_000_000_000L;

  private static final long[] POWERS = {
    1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000
  };

  private final Control control;
  private final ModalState modal;
  private final TipPosition tip;
  private final Assumptions assumptions;
  private final Motions motions;
  private final MoveMaker moves;
  private final boolean codesAreUsual;
  private final boolean pointless;
  private final boolean pointlessZero;
  private final int digitsKept;

  /** The state last looked at, and whether blocks and arcs under it may be plain. */
  private @Nullable Modes modes;

  private boolean isUsual;
  private boolean areArcsUsual;

  /** Which word has a letter, for the letters that the block has. */
  private final int[] places = new int[26];

  /** For the axes that the block names, where they go. */
  private final long[] storedPm = new long[AXES.length];

  private final long[] writtenPm = new long[AXES.length];

  private long feedDigits = -1;
  private int feedScale;
  private double feed;

  PlainBlocks(Control control, Assumptions assumptions, Motions motions) {
    this.control = control;
    this.modal = control.modal;
    this.tip = control.tip;
    this.assumptions = assumptions;
    this.motions = motions;
    this.moves = motions.moves();
    codesAreUsual =
        control.codes.onSheet('G', Code.G1.tenths()).isEmpty()
            && control.codes.onSheet('G', Code.G2.tenths()).isEmpty()
            && control.codes.onSheet('G', Code.G3.tenths()).isEmpty();
    pointless = control.profile.decimalPoint().filter(p -> p == PointlessNumber.UNITS).isPresent();
    pointlessZero =
        control.profile.decimalPoint().filter(p -> p == PointlessNumber.INCREMENTS).isEmpty();
    digitsKept = Math.min(MM_DIGITS, control.rounding.digitsKept(Units.MM));
  }

  /** Executes a block; false where it is not plain and nothing has been done. */
  boolean execute(Block block) {
    Modes before = modal.snapshot();
    if (!before.isSame(modes)) {
      look(before);
    }
    if (!isUsual || !block.problems().isEmpty() || !block.settings().isEmpty()) {
      return false;
    }
    Words words = Words.of(block.words());
    int letters = 0;
    Code stated = null;
    for (int i = 0; i < words.size(); i++) {
      int index = words.letter(i) - 'A';
      int bit = 1 << index;
      if ((LETTERS & ~letters & bit) == 0 || !words.isPlain(i)) {
        return false;
      }
      letters |= bit;
      places[index] = i;
      long digits = words.unscaled(i);
      int scale = words.scale(i);
      if ((AXIS_LETTERS & bit) != 0) {
        int axis = index - ('X' - 'A');
        Shift shift = control.shifts.get(AXES[axis]);
        if (!isSimple(words, i) || shift == null || shift.rest() != null) {
          return false;
        }
        long pm = digits * POWERS[MM_DIGITS - scale];
        storedPm[axis] = pm + shift.storedPm();
        writtenPm[axis] = pm + shift.writtenPm();
        if (Math.abs(pm) > FARTHEST_PM
            || Math.abs(storedPm[axis]) > FARTHEST_PM
            || Math.abs(writtenPm[axis]) > FARTHEST_PM
            || !tip.get(AXES[axis]).known()) {
          return false;
        }
      } else if (bit == CODE) {
        if (scale != 0 || digits <= 0 || digits >= CODES.length) {
          return false;
        }
        stated = CODES[(int) digits];
      } else if (bit == FEED && digits < 0) {
        return false;
      }
    }
    Code motion = stated == null ? modal.motion() : stated;
    boolean axes = (letters & AXIS_LETTERS) != 0;
    if (motion == Code.G1) {
      if ((letters & CENTRE) != 0) {
        return false;
      }
    } else if ((motion != Code.G2 && motion != Code.G3) || !axes || !isPlainArc(words, letters)) {
      return false;
    }
    if ((letters & FEED) != 0) {
      setFeed(words, places['F' - 'A'], before);
    }
    modal.setMotion(motion);
    motions.endCycle();
    if (axes) {
      move(span(words, letters & (AXIS_LETTERS | CENTRE | CODE)), letters, words, motion);
    }
    return true;
  }

  /** Notes whether under this state a coordinate in millimetres is one from a known zero. */
  private void look(Modes now) {
    modes = now;
    isUsual =
        codesAreUsual
            && now.units().is(Units.MM)
            && now.distance().is(Distance.ABSOLUTE)
            && now.feedMode().value().filter(mode -> mode != FeedMode.INVERSE_TIME).isPresent();
    areArcsUsual = now.plane().is(Plane.XY) && now.arcDistance().is(Distance.INCREMENTAL);
  }

  /** Whether a length is one in millimetres that the control keeps as written. */
  private boolean isSimple(Words words, int i) {
    return words.scale(i) <= digitsKept
        && Math.abs(words.unscaled(i)) <= MOST_DIGITS_AS_NUMBER
        && (words.hasPoint(i) || pointless || (words.unscaled(i) == 0 && pointlessZero));
  }

  /** Whether the centre is known, and neither too far away nor where the arc starts. */
  private boolean isPlainArc(Words words, int letters) {
    if (!areArcsUsual || (letters & CENTRE) == 0) {
      return false;
    }
    AxisState x = tip.get(Axis.X);
    AxisState y = tip.get(Axis.Y);
    return x.known()
        && y.known()
        && Math.abs(x.storedPm()) <= FARTHEST_PM
        && Math.abs(y.storedPm()) <= FARTHEST_PM
        && isNear(words, letters, 'I')
        && isNear(words, letters, 'J')
        && (centre(words, letters, 'I') | centre(words, letters, 'J')) != 0;
  }

  private boolean isNear(Words words, int letters, char letter) {
    return (letters & 1 << (letter - 'A')) == 0
        || (isSimple(words, places[letter - 'A'])
            && Math.abs(centre(words, letters, letter)) <= FARTHEST_PM);
  }

  /** How far the centre lies from the start, in picometres; a word that is not written is 0. */
  private long centre(Words words, int letters, char letter) {
    if ((letters & 1 << (letter - 'A')) == 0) {
      return 0;
    }
    int i = places[letter - 'A'];
    return words.unscaled(i) * POWERS[MM_DIGITS - words.scale(i)];
  }

  private void setFeed(Words words, int i, Modes before) {
    long digits = words.unscaled(i);
    if (digits != feedDigits || words.scale(i) != feedScale) {
      feed = control.numbers.millimetres(words.get(i), Units.MM).orElseThrow();
      feedDigits = digits;
      feedScale = words.scale(i);
    }
    modal.setFeed(feed, control.line());
    Modes now = modal.snapshot();
    if (!now.isSame(before) && !now.equals(before)) {
      control.emit(new Event.ModesChanged(control.at(), before, now));
    }
  }

  private void move(Span span, int letters, Words words, Code motion) {
    assumptions.move(span);
    assumptions.workCoordinates(span);
    assumptions.feedMove(span);
    moves.begin();
    int moved = 0;
    for (int k = 0; k < AXES.length; k++) {
      if ((letters & 1 << ('X' - 'A' + k)) != 0) {
        control.shifts.noteKnown(AXES[k]);
        moved |= tip.change(AXES[k]).goTo(storedPm[k], writtenPm[k]);
      }
    }
    if (motion != Code.G1) {
      arc(span, letters, words, motion == Code.G2, moved);
    } else if ((moved & AxisState.MOVED_STORED) != 0) {
      moves.line(span, Move.Source.BLOCK, false);
    } else if (moved != 0) {
      moves.vanished(span);
    }
  }

  private void arc(Span span, int letters, Words words, boolean clockwise, int moved) {
    assumptions.plane(span);
    if (moved == AxisState.MOVED_WRITTEN) {
      moves.vanished(span);
    }
    Position from = moves.from();
    Position to = tip.stored();
    Arc arc =
        ArcGeometry.aroundCentre(
            new ArcGeometry.Ends(from.xPm(), from.yPm(), to.xPm(), to.yPm()),
            from.xPm() + centre(words, letters, 'I'),
            from.yPm() + centre(words, letters, 'J'),
            clockwise,
            1);
    moves.arc(span, clockwise, Optional.of(arc), Axis.Z, false);
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
