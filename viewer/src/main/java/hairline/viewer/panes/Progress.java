package hairline.viewer.panes;

import java.util.concurrent.CancellationException;

/** Is told how far a file is written, and may end the writing. */
public interface Progress {
  /** Nobody looks, and nobody ends it. */
  Progress UNSEEN = share -> {};

  /**
   * So much is written.
   *
   * @param share 0 to 1
   * @throws CancellationException if the writing is to end
   */
  void at(double share);
}
