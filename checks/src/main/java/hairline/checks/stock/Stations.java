package hairline.checks.stock;

import java.util.Arrays;
import java.util.Optional;

/**
 * What a move takes from place to place of its way: a cell belongs to the place of the tool's
 * centre at which the rim first reaches it. The way is told in at most {@link #MOST} stations, none
 * shorter than a cell. Reused from move to move; lengths in picometres, across to the left
 * positive.
 */
final class Stations {
  /** Most stations of one move. */
  static final int MOST = 128;

  /** A way shorter than so many cells may miss the cells at an end of the arc. */
  static final int FEWEST_TO_TELL = 2;

  private static final double PM_PER_MM = 1e9;

  private final double cell;
  private final double[] lows = new double[MOST];
  private final double[] highs = new double[MOST];
  private final boolean[] touched = new boolean[MOST];
  private int count;
  private int used;
  private double perPm;
  private double rim;

  Stations(double cellPm) {
    this.cell = cellPm;
    begin(0, 0);
  }

  /**
   * Begins another move.
   *
   * @param lengthPm its length seen from above
   * @param rimPm distance of the rim that first reaches a cell: the radius of a flat tool; 0 for a
   *     ball, which is deepest over a cell when beside it
   */
  void begin(double lengthPm, double rimPm) {
    rim = rimPm;
    count = (int) Math.max(1, Math.min(MOST, Math.floor(lengthPm / cell)));
    perPm = lengthPm > 0 ? count / lengthPm : 0;
    Arrays.fill(lows, 0, count, Double.POSITIVE_INFINITY);
    Arrays.fill(highs, 0, count, Double.NEGATIVE_INFINITY);
    Arrays.fill(touched, 0, count, false);
    used = 0;
  }

  /**
   * Takes cells beside a straight way, given by their places along and across it.
   *
   * @param along place of the first one along the way
   * @param across place of the first one across
   * @param alongStep from one to the next
   * @param acrossStep from one to the next
   * @param cells how many
   */
  void line(double along, double across, double alongStep, double acrossStep, int cells) {
    double a = along;
    double c = across;
    if (acrossStep == 0) {
      double ahead2 = rim * rim - across * across;
      double ahead = ahead2 > 0 ? Math.sqrt(ahead2) : 0;
      for (int k = 0; k < cells; k++) {
        take(a - ahead, across);
        a += alongStep;
      }
      return;
    }
    for (int k = 0; k < cells; k++) {
      cell(a, c);
      a += alongStep;
      c += acrossStep;
    }
  }

  /** Takes one cell beside a straight way. */
  void cell(double along, double across) {
    double ahead2 = rim * rim - across * across;
    take(ahead2 > 0 ? along - Math.sqrt(ahead2) : along, across);
  }

  /**
   * Takes one cell beside an arc.
   *
   * @param along length of the arc from its start to beside the cell
   * @param distance of the cell from the arc's centre
   * @param radius radius of the arc
   * @param turn 1 for a counter-clockwise arc, -1 for a clockwise one
   */
  void arc(double along, double distance, double radius, double turn) {
    if (rim == 0 || distance == 0 || radius == 0) {
      take(along, turn * (radius - distance));
      return;
    }
    // The centre from which the rim reaches the cell lies back by this angle.
    double cosine = (radius * radius + distance * distance - rim * rim) / (2 * radius * distance);
    double back = cosine >= 1 ? 0 : cosine <= -1 ? Math.PI : StrictMath.acos(cosine);
    take(along - radius * back, turn * (radius - distance * Math.max(-1, Math.min(1, cosine))));
  }

  private void take(double place, double across) {
    int k = (int) (place * perPm);
    if (k < 0 || place < 0) {
      k = 0;
    } else if (k >= count) {
      k = count - 1;
    }
    if (!touched[k]) {
      touched[k] = true;
      used++;
    }
    // What the tool covers where it starts was taken by what brought it there, not by its rim.
    if (place >= -cell / 2) {
      if (across < lows[k]) {
        lows[k] = across;
      }
      if (across > highs[k]) {
        highs[k] = across;
      }
    }
  }

  /** Part of the way something is taken on; good to a station at each end of a stretch. */
  double contactShare() {
    return used / (double) count;
  }

  /**
   * The widest part of the rim that cuts anywhere on the way; empty where the way is too short for
   * every part to reach a cell.
   *
   * @param radiusPm radius of the tool
   */
  Optional<EngagedArc> widest(double radiusPm) {
    if (count < FEWEST_TO_TELL) {
      return Optional.empty();
    }
    double wide = -1;
    int at = 0;
    for (int k = 0; k < count; k++) {
      if (highs[k] - lows[k] > wide) {
        wide = highs[k] - lows[k];
        at = k;
      }
    }
    if (wide < 0) {
      return Optional.empty();
    }
    // A ball cuts on the diameter on which it meets the material.
    double outermost = Math.max(Math.abs(lows[at]), Math.abs(highs[at])) + cell / 2;
    return Optional.of(
        arc(lows[at], highs[at], rim > 0 ? radiusPm : Math.min(radiusPm, outermost)));
  }

  /** Cells reach half a cell beyond their centres; a cell from the flank, it is the flank. */
  private EngagedArc arc(double right, double left, double radius) {
    double flank = radius - cell;
    double rightEnd = right - cell / 2;
    double leftEnd = left + cell / 2;
    return new EngagedArc(
        (rightEnd <= -flank ? -radius : rightEnd) / PM_PER_MM,
        (leftEnd >= flank ? radius : leftEnd) / PM_PER_MM,
        radius / PM_PER_MM,
        cell / PM_PER_MM);
  }
}
