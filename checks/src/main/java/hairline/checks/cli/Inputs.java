package hairline.checks.cli;

import hairline.parser.BlockSource;
import hairline.parser.PartProgram;
import hairline.parser.PartPrograms;
import hairline.parser.SkimmedBlocks;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileVisitResult;
import java.nio.file.FileVisitor;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;

/** From the paths of a command line to the programs of a run, in an order that they decide. */
final class Inputs {
  /** By these endings a program is known in a folder, upper or lower case. */
  static final List<String> ENDINGS =
      List.of("nc", "cnc", "ncc", "tap", "gcode", "gc", "ngc", "eia", "iso", "din");

  /** What stands for standard input. */
  static final String STANDARD_INPUT = "-";

  private static final String STANDARD_INPUT_NAME = "standard input";
  private static final char UNREADABLE_CHARACTER = '\uFFFD';
  private static final int LOOKED_AT = 4096;

  // By name: the order in which programs are reported does not depend on that of the arguments.
  private final TreeMap<String, Input> byName = new TreeMap<>();
  private final InputStream standardInput;

  private Inputs(InputStream standardInput) {
    this.standardInput = standardInput;
  }

  /** The programs that these paths name, each once, in the order of their names. */
  static List<Input> of(List<String> paths, InputStream standardInput) {
    Inputs inputs = new Inputs(standardInput);
    for (String path : paths) {
      inputs.add(path);
    }
    return inputs.distinct();
  }

  private List<Input> distinct() {
    Set<Path> named = new HashSet<>();
    for (Input input : byName.values()) {
      if (input instanceof Input.InFile file && !file.found()) {
        named.add(real(file.path()));
      }
    }
    Set<Path> seen = new HashSet<>();
    List<Input> all = new ArrayList<>();
    for (Input input : byName.values()) {
      if (!(input instanceof Input.InFile file)) {
        all.add(input);
      } else if (seen.add(real(file.path()))) {
        boolean found = !named.contains(real(file.path()));
        all.add(new Input.InFile(file.name(), file.path(), found));
      }
    }
    return all;
  }

  /** The same file by one path, whatever links lead to it. */
  static Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path.toAbsolutePath();
    }
  }

  private void add(String argument) {
    if (argument.equals(STANDARD_INPUT)) {
      byName.computeIfAbsent(STANDARD_INPUT_NAME, name -> spooled());
      return;
    }
    Path path;
    try {
      path = Path.of(argument).normalize();
    } catch (InvalidPathException e) {
      unusable(argument, Failed.because(e, Failure.INPUT_NOT_NAMEABLE, argument));
      return;
    }
    if (argument.isEmpty()) {
      unusable(argument, Failed.of(Failure.INPUT_MISSING, argument));
    } else if (path.toString().isEmpty() || Files.isDirectory(path)) {
      folder(path, argument);
    } else {
      byName.put(name(path), new Input.InFile(name(path), path, false));
    }
  }

  private void unusable(String name, Failed failed) {
    byName.put(name, new Input.Unusable(name, failed));
  }

  static String name(Path path) {
    return path.toString().replace(File.separatorChar, '/');
  }

  private void folder(Path folder, String argument) {
    List<Path> found = new ArrayList<>();
    int troubles = byName.size();
    FileVisitor<Path> visitor =
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path at, BasicFileAttributes attributes) {
            return !at.equals(folder) && isHidden(at)
                ? FileVisitResult.SKIP_SUBTREE
                : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path at, BasicFileAttributes attributes) {
            if (!isHidden(at) && hasEnding(at)) {
              found.add(at);
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path at, IOException e) {
            unusable(name(at), unreadable(name(at), e));
            return FileVisitResult.CONTINUE;
          }
        };
    try {
      Files.walkFileTree(folder, visitor);
    } catch (IOException e) {
      unusable(argument, unreadable(argument, e));
    }
    for (Path path : found) {
      Path normal = path.normalize();
      String name = name(normal);
      if (name.indexOf(UNREADABLE_CHARACTER) >= 0) {
        // Two such names may look alike: none is taken for the other.
        unusable(name, Failed.of(Failure.INPUT_NOT_NAMEABLE, name));
      } else {
        byName.putIfAbsent(name, new Input.InFile(name, normal, true));
      }
    }
    if (found.isEmpty() && byName.size() == troubles) {
      unusable(
          argument,
          Failed.of(Failure.FOLDER_WITHOUT_PROGRAMS, argument, String.join(", ", ENDINGS)));
    }
  }

  private static boolean isHidden(Path path) {
    return fileName(path).startsWith(".");
  }

  private static boolean hasEnding(Path path) {
    String name = fileName(path);
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    return name.lastIndexOf('.') > 0 && ENDINGS.contains(ending);
  }

  private static String fileName(Path path) {
    Path name = path.getFileName();
    return name == null ? "" : name.toString();
  }

  /**
   * Looks at the beginning of a file, before it is read as a program.
   *
   * @throws Failed if it is not there, can't be read, is empty or is no text
   */
  static void lookAt(Input.InFile input) throws Failed {
    String name = input.name();
    if (!Files.exists(input.path()) && Files.isSymbolicLink(input.path())) {
      throw Failed.of(Failure.INPUT_DEAD_LINK, name);
    }
    if (!Files.exists(input.path())) {
      throw Failed.of(Failure.INPUT_MISSING, name);
    }
    if (!Files.isRegularFile(input.path())) {
      throw Failed.of(Failure.INPUT_NO_FILE, name);
    }
    try (InputStream in = Files.newInputStream(input.path())) {
      lookAt(name, in.readNBytes(LOOKED_AT));
    } catch (IOException e) {
      throw unreadable(name, e);
    }
  }

  private static void lookAt(String name, byte[] start) throws Failed {
    if (start.length == 0) {
      throw Failed.of(Failure.INPUT_EMPTY, name);
    }
    int odd = 0;
    int first = -1;
    for (int i = 0; i < start.length; i++) {
      if (isNoText(start[i])) {
        odd++;
        first = first < 0 ? i : first;
      }
    }
    // Tape has its leaders of NUL bytes, and a stray byte is for the grammar to tell.
    if (odd * 10 > start.length) {
      throw Failed.of(
          Failure.INPUT_BINARY,
          name,
          first + 1,
          String.format(Locale.ROOT, "%02X (hexadecimal)", start[first] & 0xFF));
    }
  }

  private static boolean isNoText(byte b) {
    return (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r' && b != '\f') || b == 0x7F;
  }

  /** Why a file could not be read, as far as the system tells. */
  static Failed unreadable(String name, IOException e) {
    if (e instanceof NoSuchFileException) {
      return Failed.because(e, Failure.INPUT_MISSING, name);
    }
    return Failed.because(e, Failure.INPUT_UNREADABLE, name, Reasons.of(e));
  }

  private Input spooled() {
    return spooled(standardInput);
  }

  /** The program that comes by standard input, spooled. */
  static Input spooled(InputStream standardInput) {
    try {
      Path file = Files.createTempFile("hairline-", ".nc");
      file.toFile().deleteOnExit();
      Files.copy(standardInput, file, StandardCopyOption.REPLACE_EXISTING);
      try (InputStream in = Files.newInputStream(file)) {
        lookAt(STANDARD_INPUT_NAME, in.readNBytes(LOOKED_AT));
      }
      return new Input.Spooled(
          STANDARD_INPUT_NAME, new Named(STANDARD_INPUT_NAME, PartPrograms.of(file)), file);
    } catch (IOException e) {
      return new Input.Unusable(
          STANDARD_INPUT_NAME,
          Failed.because(e, Failure.INPUT_UNREADABLE, STANDARD_INPUT_NAME, Reasons.of(e)));
    } catch (Failed e) {
      return new Input.Unusable(STANDARD_INPUT_NAME, e);
    }
  }

  /** A program under another name than its file's. */
  private record Named(String name, PartProgram program) implements PartProgram {
    @Override
    public BlockSource blocksFrom(long byteOffset, int line) throws IOException {
      return program.blocksFrom(byteOffset, line);
    }

    @Override
    public BlockSource blocksOf(long byteOffset, int line, long endByteOffset) throws IOException {
      return program.blocksOf(byteOffset, line, endByteOffset);
    }

    @Override
    public SkimmedBlocks skim() throws IOException {
      return program.skim();
    }

    @Override
    public Map<Integer, String> texts(SortedSet<Integer> lines) throws IOException {
      return program.texts(lines);
    }
  }

  /** The files among these inputs. */
  static List<Path> files(List<Input> inputs) {
    return inputs.stream()
        .flatMap(
            input ->
                input instanceof Input.InFile file
                    ? Optional.of(file.path()).stream()
                    : Optional.<Path>empty().stream())
        .toList();
  }
}
