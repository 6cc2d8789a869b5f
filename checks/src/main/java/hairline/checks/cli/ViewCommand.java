package hairline.checks.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.ServiceLoader;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code hairline view}. */
@Command(
    name = "view",
    description =
        "Opens the window: heights along the path, the part from above, sections, the program and"
            + " its findings. The window is a part of its own, hairline-viewer.jar, and need not be"
            + " there for anything else.")
final class ViewCommand implements Action {
  @Parameters(arity = "0..1", paramLabel = "PROGRAM", description = "The part program to show.")
  private @Nullable String program;

  @Option(names = "--setup", paramLabel = "FILE", description = "The setup sheet for it.")
  private @Nullable String setup;

  @Override
  public ExitStatus run(Streams streams, Messages messages) throws Failed {
    Optional<Path> file = path(program);
    Optional<Path> sheet = path(setup);
    Viewer viewer =
        ServiceLoader.load(Viewer.class)
            .findFirst()
            .orElseThrow(() -> Failed.of(Failure.VIEWER_MISSING));
    Optional<String> refused = viewer.show(file, sheet);
    if (refused.isPresent()) {
      throw Failed.of(Failure.VIEWER_REFUSED, refused.get());
    }
    return ExitStatus.CLEAN;
  }

  private static Optional<Path> path(@Nullable String text) throws Failed {
    try {
      return text == null ? Optional.empty() : Optional.of(Path.of(text));
    } catch (InvalidPathException e) {
      throw Failed.because(e, Failure.INPUT_NOT_NAMEABLE, String.valueOf(text));
    }
  }
}
