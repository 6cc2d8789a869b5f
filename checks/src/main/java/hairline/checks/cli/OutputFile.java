package hairline.checks.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A file that is there whole or not at all: written beside under another name, then moved. What is
 * no regular file, such as a device, is written to as it is.
 */
final class OutputFile implements AutoCloseable {
  private static final List<String> SHEET_ENDINGS = List.of("yaml", "yml");

  /** A subprogram may stand in a file of its number without an ending. */
  private static final Pattern SUBPROGRAM = Pattern.compile("o?[0-9]+");

  private static final int NAMES_TRIED = 10_000;

  private final Path target;
  private final Path written;
  private final OutputStream out;

  private OutputFile(Path target, Path written, OutputStream out) {
    this.target = target;
    this.written = written;
    this.out = out;
  }

  /**
   * Whether a file may be written there.
   *
   * @param inputs files that must stay as they are
   * @throws Failed if not
   */
  static Path checked(String name, List<Path> inputs) throws Failed {
    if (name.equals(Inputs.STANDARD_INPUT)) {
      throw Failed.of(Failure.OUTPUT_IS_DASH);
    }
    Path file;
    try {
      file = Path.of(name);
    } catch (InvalidPathException e) {
      throw Failed.because(e, Failure.INPUT_NOT_NAMEABLE, name);
    }
    Path folder = file.toAbsolutePath().normalize().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw Failed.of(Failure.OUTPUT_FOLDER_MISSING, name);
    }
    if (Files.isDirectory(file)) {
      throw Failed.of(Failure.OUTPUT_IS_FOLDER, name);
    }
    if (Files.isSymbolicLink(file) && !Files.exists(file)) {
      // Where it leads nothing is known: neither whether that would be a program, nor an input.
      throw Failed.of(Failure.OUTPUT_DEAD_LINK, name);
    }
    for (Path input : inputs) {
      if (same(file, input)) {
        throw Failed.of(Failure.OUTPUT_IS_INPUT, name);
      }
    }
    return file;
  }

  /**
   * Whether a report may be written there. It replaces an older report, but neither replaces nor
   * makes what looks like a program, a subprogram or a sheet: a program may call files, and a sheet
   * name others, that are read only later.
   *
   * @param inputs files that must stay as they are
   * @throws Failed if not
   */
  static Path checkedReport(String name, List<Path> inputs) throws Failed {
    Path file = checked(name, inputs);
    if (!isDevice(file) && (isSource(file) || isSource(realPath(file)))) {
      throw Failed.of(Failure.OUTPUT_IS_SOURCE, name);
    }
    return file;
  }

  /**
   * Whether a starter sheet may be written there: over an older sheet where that is asked for, but
   * under no name of a program or subprogram.
   *
   * @param inputs files that must stay as they are
   * @throws Failed if not
   */
  static Path checkedSheet(String name, List<Path> inputs) throws Failed {
    Path file = checked(name, inputs);
    if (!isDevice(file) && (isProgram(file) || isProgram(realPath(file)))) {
      throw Failed.of(Failure.OUTPUT_IS_SOURCE, name);
    }
    return file;
  }

  private static boolean isDevice(Path file) {
    return Files.exists(file) && !Files.isRegularFile(file);
  }

  private static Path realPath(Path file) {
    try {
      return file.toRealPath();
    } catch (IOException e) {
      return file;
    }
  }

  private static boolean isSource(Path file) {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    String ending = name.substring(name.lastIndexOf('.') + 1);
    return SHEET_ENDINGS.contains(ending) || isProgram(file);
  }

  private static boolean isProgram(Path file) {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    String ending = name.substring(name.lastIndexOf('.') + 1);
    return Inputs.ENDINGS.contains(ending) || SUBPROGRAM.matcher(name).matches();
  }

  /** Whether both lead to one file, there or not yet. */
  static boolean same(Path a, Path b) {
    try {
      return (Files.exists(a) && Files.exists(b))
          ? Files.isSameFile(a, b)
          : a.toAbsolutePath().normalize().equals(b.toAbsolutePath().normalize());
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Begins to write.
   *
   * @throws Failed if that is not possible
   */
  static OutputFile open(Path file) throws Failed {
    try {
      if (Files.exists(file) && !Files.isRegularFile(file)) {
        OutputStream device = Files.newOutputStream(file, StandardOpenOption.WRITE);
        return new OutputFile(file, file, new BufferedOutputStream(device));
      }
      // A link keeps being one: what it leads to is replaced.
      Path target = Files.exists(file) ? file.toRealPath() : file;
      return beside(target);
    } catch (NoSuchFileException e) {
      // The folder is there, as was seen before; some, such as those of the system, take no files.
      throw Failed.because(e, Failure.OUTPUT_FOLDER_TAKES_NONE, Inputs.name(file));
    } catch (IOException e) {
      throw failed(file, e);
    }
  }

  private static OutputFile beside(Path target) throws IOException {
    for (int i = 0; i < NAMES_TRIED; i++) {
      Path written =
          target.resolveSibling(String.format(Locale.ROOT, ".%s.%d.part", target.getFileName(), i));
      try {
        FileChannel channel =
            FileChannel.open(written, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        written.toFile().deleteOnExit();
        return new OutputFile(
            target, written, new BufferedOutputStream(Channels.newOutputStream(channel)));
      } catch (java.nio.file.FileAlreadyExistsException e) {
        // Another run writes there, or one was killed: take the next name.
      }
    }
    throw new IOException("too many unfinished files beside it");
  }

  private static Failed failed(Path file, IOException e) {
    return Failed.because(e, Failure.OUTPUT_FAILED, "`" + Inputs.name(file) + "`", Reasons.of(e));
  }

  OutputStream stream() {
    return out;
  }

  /** The failure for something that could not be written here. */
  Failed failed(IOException e) {
    return failed(target, e);
  }

  /**
   * Puts what was written in its place.
   *
   * @throws Failed if that is not possible
   */
  void commit() throws Failed {
    try {
      out.close();
      if (!written.equals(target)) {
        move();
      }
    } catch (IOException e) {
      throw failed(target, e);
    }
  }

  private void move() throws IOException {
    try {
      Files.move(written, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(written, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Ends; what was not committed is taken away. */
  @Override
  public void close() {
    try {
      out.close();
    } catch (IOException e) {
      // Whoever wrote here was told already.
    }
    if (!written.equals(target)) {
      try {
        Files.deleteIfExists(written);
      } catch (IOException e) {
        // It stays under a name that says so.
      }
    }
  }
}
