package hairline.checks.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import java.util.Optional;

/**
 * Standard output that never interrupts who writes to it: after a first failure it swallows the
 * rest, and tells at the end. So the check goes on and the exit status is right, whether the reader
 * went away or the disk is full.
 */
final class WatchedOutput extends OutputStream {
  private final OutputStream out;
  private final boolean isPipe;
  private Optional<IOException> failure = Optional.empty();

  /**
   * @param isPipe whether it is known to be one: then a failure means that nobody reads any more
   */
  WatchedOutput(OutputStream out, boolean isPipe) {
    this.out = out;
    this.isPipe = isPipe;
  }

  /** Why something could not be written; empty also where only the reader went away. */
  Optional<IOException> failure() {
    return failure.filter(f -> !isBrokenPipe(f));
  }

  private boolean isBrokenPipe(IOException failure) {
    return isPipe || String.valueOf(failure.getMessage()).toLowerCase(Locale.ROOT).contains("pipe");
  }

  @Override
  public void write(int b) {
    write(new byte[] {(byte) b}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int from, int length) {
    if (failure.isEmpty()) {
      try {
        out.write(bytes, from, length);
      } catch (IOException e) {
        failure = Optional.of(e);
      }
    }
  }

  @Override
  public void flush() {
    if (failure.isEmpty()) {
      try {
        out.flush();
      } catch (IOException e) {
        failure = Optional.of(e);
      }
    }
  }
}
