package hairline.checks.cli;

import hairline.checks.report.Trouble;
import hairline.checks.setup.Setup;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What the commands and the window do alike before they check a program: look at its file, find its
 * sheet and read that. Either both are there, or what is the trouble.
 *
 * @param program the file
 * @param setup what its sheet says; empty in trouble
 * @param trouble why it can't be checked
 */
public record Opened(Path program, Optional<Setup> setup, Optional<Trouble> trouble) {

  /**
   * Opens a program.
   *
   * @param sheet the sheet that the user names for it
   */
  public static Opened of(Path program, Optional<Path> sheet) {
    try {
      Inputs.lookAt(new Input.InFile(Inputs.name(program), program, false));
      Setup setup = new Sheets(sheet, List.of()).setupFor(Optional.of(program));
      return new Opened(program, Optional.of(setup), Optional.empty());
    } catch (Failed e) {
      return new Opened(program, Optional.empty(), Optional.of(e.trouble()));
    }
  }

  /** The trouble of a file that ceased to be readable on the way. */
  public static Trouble unreadable(Path program, IOException e) {
    return Inputs.unreadable(Inputs.name(program), e).trouble();
  }

  /** The trouble of something that could not have happened. */
  public static Trouble fault(Path program, Throwable e) {
    return e instanceof OutOfMemoryError
        ? Failed.because(e, Failure.OUT_OF_MEMORY, Inputs.name(program)).trouble()
        : CheckRun.ownFault(e, " in `" + Inputs.name(program) + "`").trouble();
  }
}
