package hairline.viewer.model;

/** What can be drawn along the program below the heights. */
public enum Trace {
  /** Nothing. */
  NONE("none", "", 0),
  /** The largest depth that a move takes off a place. */
  DEPTH("true depth", "µm", 6),
  /** The largest chip of each move, as a share of the smallest that forms. */
  CHIP("chip thickness", "µm", 6),
  /** The feed that the machine is planned to reach, on the average of a move. */
  FEED("planned feed", "mm/min", 3),
  /** How much the spindle has grown since it stood cold. */
  GROWTH("spindle growth", "µm", 6);

  private final String words;
  private final String unit;
  private final int scale;

  Trace(String words, String unit, int scale) {
    this.words = words;
    this.unit = unit;
    this.scale = scale;
  }

  /** What it is called. */
  public String words() {
    return words;
  }

  /** Its unit. */
  public String unit() {
    return unit;
  }

  /** A stored value is that of the unit times ten to this. */
  public int scale() {
    return scale;
  }
}
