package hairline.checks.motion;

/** The axes of ISO 841 that the interpreter follows; rotary ones are carried, not checked. */
public enum Axis {
  X(1, true),
  Y(2, true),
  Z(4, true),
  A(8, false),
  B(16, false),
  C(32, false);

  private final int bit;
  private final boolean linear;
  private final char letter;

  Axis(int bit, boolean linear) {
    this.bit = bit;
    this.linear = linear;
    this.letter = name().charAt(0);
  }

  /** This axis as one bit of {@link Position#unknown()}. */
  public int bit() {
    return bit;
  }

  /** Its address letter. */
  char letter() {
    return letter;
  }

  /** Whether it is X, Y or Z. */
  public boolean linear() {
    return linear;
  }
}
