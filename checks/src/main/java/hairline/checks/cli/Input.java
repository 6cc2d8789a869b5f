package hairline.checks.cli;

import hairline.parser.PartProgram;
import java.nio.file.Path;

/** One thing to check. */
sealed interface Input {
  /** How reports call it. */
  String name();

  /**
   * A program in a file.
   *
   * @param found whether a folder was named and it was found there, rather than named itself
   */
  record InFile(String name, Path path, boolean found) implements Input {}

  /** A program from standard input, spooled into a file. */
  record Spooled(String name, PartProgram program, Path file) implements Input {}

  /** What was named and can't be checked. */
  record Unusable(String name, Failed failed) implements Input {}
}
