package hairline.checks.setup;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Optional;

/** Finds the setup sheet that goes with a program. */
public final class SheetFinder {
  /** The sheet of a folder and of all below it. */
  public static final String FOLDER_SHEET = "setup.yaml";

  private static final String OWN_SHEET_ENDING = ".setup.yaml";

  private SheetFinder() {}

  /**
   * The sheet of a program: {@code NAME.setup.yaml} beside {@code NAME.nc}, else {@code setup.yaml}
   * in the program's folder, else in the nearest folder above it. A link that leads nowhere counts
   * as found, so that reading it tells the user.
   *
   * @return the sheet as the user would name it: as a relative path where the program is one;
   *     nothing where there is no sheet
   */
  public static Optional<Path> find(Path program) {
    return find(program, Path.of("").toAbsolutePath().normalize());
  }

  /** The same, run in another folder. */
  static Optional<Path> find(Path program, Path here) {
    Optional<Path> found = findAbsolute(here.resolve(program).normalize());
    if (program.isAbsolute()) {
      return found;
    }
    return found.map(sheet -> here.relativize(sheet));
  }

  private static Optional<Path> findAbsolute(Path program) {
    Path fileName = program.getFileName();
    if (fileName != null) {
      Path own = program.resolveSibling(withoutEnding(fileName.toString()) + OWN_SHEET_ENDING);
      if (isThere(own)) {
        return Optional.of(own);
      }
    }
    for (Path folder = program.getParent(); folder != null; folder = folder.getParent()) {
      Path sheet = folder.resolve(FOLDER_SHEET);
      if (isThere(sheet)) {
        return Optional.of(sheet);
      }
    }
    return Optional.empty();
  }

  private static String withoutEnding(String name) {
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private static boolean isThere(Path sheet) {
    return Files.exists(sheet, LinkOption.NOFOLLOW_LINKS) && !Files.isDirectory(sheet);
  }
}
