package hairline.checks.cli;

import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.rules.ProgramCheck;
import hairline.checks.setup.Setup;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The one program that a command takes, in a file or from standard input. */
record OneProgram(Input input) {

  /**
   * The program that this argument names.
   *
   * @throws Failed if it can't be read
   */
  static OneProgram of(String argument, Streams streams) throws Failed {
    if (argument.equals(Inputs.STANDARD_INPUT)) {
      Input input = Inputs.spooled(streams.in());
      if (input instanceof Input.Unusable unusable) {
        throw unusable.failed();
      }
      return new OneProgram(input);
    }
    Path path;
    try {
      path = Path.of(argument);
    } catch (InvalidPathException e) {
      throw Failed.because(e, Failure.INPUT_NOT_NAMEABLE, argument);
    }
    if (Files.isDirectory(path)) {
      throw Failed.of(Failure.WANTS_A_FILE, argument);
    }
    Input.InFile file = new Input.InFile(Inputs.name(path), path, false);
    Inputs.lookAt(file);
    return new OneProgram(file);
  }

  String name() {
    return input.name();
  }

  /** Its file, where it has one. */
  Optional<Path> path() {
    return input instanceof Input.InFile file ? Optional.of(file.path()) : Optional.empty();
  }

  /** The file with its bytes, spooled or its own. */
  Path file() {
    return input instanceof Input.Spooled spooled ? spooled.file() : path().orElseThrow();
  }

  ProgramFiles open(EventSink sink) throws IOException {
    return open(List.of(), sink);
  }

  /** Opens it once more; its files keep the places they had among these names. */
  ProgramFiles open(List<String> known, EventSink sink) throws IOException {
    return input instanceof Input.Spooled spooled
        ? ProgramFiles.alone(spooled.program(), sink)
        : ProgramFiles.of(path().orElseThrow(), known, sink);
  }

  ProgramResult check(ProgramCheck check, Setup sheet, EventSink watcher) throws IOException {
    return input instanceof Input.Spooled spooled
        ? check.check(spooled.program(), sheet, watcher)
        : check.check(path().orElseThrow(), sheet, watcher);
  }

  /** What reads a program. */
  interface Reading<T> {
    T read() throws IOException;
  }

  /**
   * Does what reads the program.
   *
   * @throws Failed if it can't be read
   */
  <T> T read(Reading<T> reading) throws Failed {
    try {
      return reading.read();
    } catch (UncheckedIOException e) {
      throw Inputs.unreadable(name(), e.getCause() == null ? new IOException(e) : e.getCause());
    } catch (IOException e) {
      throw Inputs.unreadable(name(), e);
    }
  }
}
