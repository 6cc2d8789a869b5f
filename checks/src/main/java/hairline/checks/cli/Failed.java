package hairline.checks.cli;

import hairline.checks.report.Trouble;
import org.jspecify.annotations.Nullable;

/** A failure of the catalogue that happened. */
final class Failed extends Exception {
  private static final long serialVersionUID = 1L;

  private final Failure failure;
  private final transient Trouble trouble;

  private Failed(Failure failure, Trouble trouble, @Nullable Throwable cause) {
    super(trouble.sentence(), cause);
    this.failure = failure;
    this.trouble = trouble;
  }

  /** A failure that nothing else caused. */
  static Failed of(Failure failure, Object... about) {
    return because(null, failure, about);
  }

  /** A failure behind which something else stands, for {@code --verbose}. */
  static Failed because(@Nullable Throwable cause, Failure failure, Object... about) {
    return new Failed(
        failure, new Trouble(failure.code(), failure.sentence(about), failure.cure(about)), cause);
  }

  Failure failure() {
    return failure;
  }

  Trouble trouble() {
    return trouble;
  }

  ExitStatus status() {
    return failure.status();
  }
}
