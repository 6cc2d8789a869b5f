package hairline.checks.motion;

import java.io.IOException;

/**
 * A program that was run while it was still looked through is not what {@link LookWhileReading}
 * assumed. What came out of the run is worth nothing; it is to be looked through first.
 */
public final class NotAsAssumedException extends IOException {
  private static final long serialVersionUID = 1;

  /**
   * Why the run is worth nothing.
   *
   * @param what stands in the file that was not assumed
   */
  public NotAsAssumedException(String what) {
    super(what);
  }
}
