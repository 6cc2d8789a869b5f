package hairline.checks.stock;

/**
 * The ramp or plunge with which an uninterrupted motion at feed goes down. What it leaves counts,
 * for the level that follows, as the surface it came from: the step-down of a level does not shrink
 * by the wedge that its own entry took.
 */
final class Entry {
  private int id = HeightGrid.FIRST_ENTRY + 1;
  private boolean open;
  private boolean settled;

  /** The id of the entry that runs; a new one where none does. */
  int id(Removed found) {
    if (!open) {
      open = true;
      settled = false;
      id--;
      found.forgetEntry();
    }
    return id;
  }

  /** Remembers from which surface the entry goes down: its largest. */
  void settle(Removed found) {
    if (settled || found.nothing()) {
      return;
    }
    settled = true;
    int largest = -1;
    int cells = found.unknown().cells;
    for (int k = 0; k < found.surfaces(); k++) {
      if (found.extent(k).cells > cells) {
        largest = k;
        cells = found.extent(k).cells;
      }
    }
    if (largest < 0) {
      found.setEntry(id, HeightGrid.VIRGIN, 0);
    } else if (found.id(largest) >= 0) {
      found.setEntry(id, found.id(largest), found.height(largest));
    }
  }

  /** A level has been reached: the next ramp is another entry. */
  void reachedLevel() {
    open = false;
  }

  /** The tool has left. */
  void over(Removed found) {
    open = false;
    found.forgetEntry();
  }
}
