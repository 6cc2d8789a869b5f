package hairline.viewer.model;

/** What runs along the strip: the length of the path, or the time. */
public enum Along {
  /** Path length in millimetres. */
  PATH("path", "mm"),
  /** Time in seconds, as planned. */
  TIME("time", "s");

  private final String words;
  private final String unit;

  Along(String words, String unit) {
    this.words = words;
    this.unit = unit;
  }

  /** What it is called. */
  public String words() {
    return words;
  }

  /** Its unit. */
  public String unit() {
    return unit;
  }

  /** How far the end of a move lies from the start of the program; 0 for move -1. */
  public double at(Moves moves, long move) {
    return this == PATH ? moves.pathMm(move) : moves.seconds(move);
  }

  /** How far the start of a move lies from the start of the program. */
  public double start(Moves moves, long move) {
    return this == PATH ? moves.pathMm(move - 1) : moves.startSeconds(move);
  }

  /**
   * The first move that ends at a place or beyond it; the count where none does.
   *
   * @param count how many moves to look at
   */
  public long moveAt(Moves moves, long count, double place) {
    long low = 0;
    long high = count;
    while (low < high) {
      long middle = (low + high) >>> 1;
      if (at(moves, middle) < place) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
