package hairline.checks.cli;

import java.nio.file.Path;
import java.util.Optional;

/** The window, where it is installed; found by {@link java.util.ServiceLoader}. */
public interface Viewer {

  /**
   * Opens the window and comes back when it is closed.
   *
   * @param program the program to show; empty for an empty window
   * @param sheet the setup sheet that the user names for it
   * @return why no window could be opened, as a clause; empty where one was
   */
  Optional<String> show(Optional<Path> program, Optional<Path> sheet);
}
