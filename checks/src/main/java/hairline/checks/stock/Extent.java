package hairline.checks.stock;

/** Cells, and how far they reach across (left is positive) and along the path. */
final class Extent {
  int cells;
  double acrossLow;
  double acrossHigh;
  private double leftLow;
  private double rightHigh;

  void clear() {
    cells = 0;
    acrossLow = Double.POSITIVE_INFINITY;
    acrossHigh = Double.NEGATIVE_INFINITY;
    leftLow = Double.POSITIVE_INFINITY;
    rightHigh = Double.NEGATIVE_INFINITY;
  }

  /**
   * Takes a run of cells.
   *
   * @param count how many
   * @param first where its first one lies across the path
   * @param last where its last one lies across
   */
  void cover(int count, double first, double last) {
    cells += count;
    double low = Math.min(first, last);
    double high = Math.max(first, last);
    if (low < acrossLow) {
      acrossLow = low;
    }
    if (high > acrossHigh) {
      acrossHigh = high;
    }
    if (high < 0) {
      if (high > rightHigh) {
        rightHigh = high;
      }
    } else if (low >= 0) {
      if (low < leftLow) {
        leftLow = low;
      }
    } else {
      // From one side of the path to the other.
      leftLow = 0;
      rightHigh = 0;
    }
  }

  /** Takes one cell. */
  void cover(double across) {
    cells++;
    if (across < acrossLow) {
      acrossLow = across;
    }
    if (across > acrossHigh) {
      acrossHigh = across;
    }
    if (across < 0) {
      if (across > rightHigh) {
        rightHigh = across;
      }
    } else if (across < leftLow) {
      leftLow = across;
    }
  }

  void cover(Extent other) {
    if (other.cells > 0) {
      cells += other.cells;
      acrossLow = Math.min(acrossLow, other.acrossLow);
      acrossHigh = Math.max(acrossHigh, other.acrossHigh);
      leftLow = Math.min(leftLow, other.leftLow);
      rightHigh = Math.max(rightHigh, other.rightHigh);
    }
  }

  /** Distance of the outermost cell centres across. */
  double across() {
    return acrossHigh - acrossLow;
  }

  /**
   * Width of the widest strip: the whole, or where two strips lie apart on either side of the path,
   * the wider one.
   */
  double width(double cell) {
    if (leftLow - rightHigh <= 1.5 * cell || acrossLow >= 0 || acrossHigh < 0) {
      return across() + cell;
    }
    return Math.max(acrossHigh - leftLow, rightHigh - acrossLow) + cell;
  }

  /** The length that its cells have at that width. */
  double length(double cell) {
    return cells * cell * cell / width(cell);
  }
}
