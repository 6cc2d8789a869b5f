package hairline.checks.motion;

import java.util.HashMap;
import java.util.Map;

/**
 * The numbered parameters of a program. None has a value before the program sets it: a control
 * keeps parameters from one program to the next (NISTIR 6556 §3.2.1), so what stands there at the
 * start cannot be told from the program.
 *
 * <p>Parameters run from 1 to {@value #LAST}; NISTIR 6556 §3.3.2.2 has 5399, controls of today more
 * (common practice, no source). The range bounds the table.
 */
public final class Parameters {
  /** The largest parameter number. */
  public static final int LAST = 9999;

  private final Map<Integer, Evaluated> values = new HashMap<>();
  private int forgottenAt;
  private String forgottenBy = "";
  private String file = "";

  /**
   * The value of a parameter, never {@link Evaluated.Refused}.
   *
   * @param index from 1 to {@value #LAST}
   */
  public Evaluated get(int index) {
    Evaluated value = values.get(index);
    if (value != null) {
      return value;
    }
    return forgottenAt == 0
        ? new Evaluated.Unknown(0, "#" + index + " was never set")
        : new Evaluated.Unknown(
            forgottenAt, forgottenBy + " may have set #" + index + " to anything");
  }

  /**
   * Sets a parameter.
   *
   * @param index from 1 to {@value #LAST}
   * @param value its value; one that was refused makes it unknown
   * @param line the line that sets it
   */
  public void set(int index, Evaluated value, int line) {
    if (index < 1 || index > LAST) {
      throw new IllegalArgumentException("parameter " + index);
    }
    values.put(
        index,
        value instanceof Evaluated.Refused refused
            ? new Evaluated.Unknown(
                line, line(line) + " sets #" + index + " to no number: " + refused.why())
            : value);
  }

  /**
   * Lines are of this file from here on.
   *
   * @param name what reasons call it; empty for the program's own
   */
  public void enterFile(String name) {
    file = name;
  }

  private String line(int line) {
    return "line " + line + (file.isEmpty() ? "" : " of " + file);
  }

  /** Makes every parameter unknown because of this line. */
  public void forgetAll(int line) {
    values.clear();
    forgottenAt = line;
    forgottenBy = line(line);
  }
}
