package hairline.checks.stock;

/**
 * The ramp or plunge with which an uninterrupted motion at feed goes down. What it leaves counts,
 * for the level that follows, as the surface it came from: the step-down of a level does not shrink
 * by the wedge that its own entry took.
 */
final class Entry {
  private int id = HeightGrid.FIRST_ENTRY + 1;
  private boolean open;

  /** The id of the entry that runs; a new one where none does. */
  int id(Removed found) {
    if (!open) {
      open = true;
      id--;
      found.beginEntry(id);
    }
    return id;
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
