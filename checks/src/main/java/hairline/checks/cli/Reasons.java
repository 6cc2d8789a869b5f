package hairline.checks.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Optional;

/** What the system says of a failure, without the path that the sentence already names. */
final class Reasons {
  private Reasons() {}

  static String of(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "no permission";
    }
    if (e instanceof NoSuchFileException) {
      return "it does not exist";
    }
    Optional<String> reason =
        e instanceof FileSystemException system
            ? Optional.ofNullable(system.getReason())
            : Optional.ofNullable(e.getMessage());
    return reason.map(text -> text.replaceAll("\\s+", " ")).orElse("the system gives no reason");
  }
}
