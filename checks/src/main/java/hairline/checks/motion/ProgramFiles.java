package hairline.checks.motion;

import hairline.checks.motion.ProgramIndex.Program;
import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.PartProgram;
import hairline.parser.PartPrograms;
import hairline.parser.ReadAhead;
import hairline.parser.Span;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * The file of a program, and the files beside it that hold its subprograms. Each is looked through
 * once, when it is first needed; then its problems go to the sink.
 *
 * <p>A file beside is looked for only by names made of digits, only in the folder of the program,
 * and never followed out of it.
 */
public final class ProgramFiles {
  /** How many files one program may draw on. */
  static final int FILES_CAP = 1_000;

  /** For how many programs it is remembered where they stand and that they were opened. */
  static final int REMEMBERED_CAP = 10_000;

  /** Longest text of a subprogram that is kept for the next call. */
  static final long KEPT_PROGRAM_BYTES = 65_536;

  /** From this length on a program is read ahead by a thread of its own. */
  static final long READ_AHEAD_BYTES = 524_288;

  /** Longest text of all subprograms kept. */
  static final long KEPT_BYTES = 1_048_576;

  /**
   * A program found.
   *
   * @param file index of its file
   */
  record Found(int file, Program program) {
    String name() {
      return program.name();
    }
  }

  private record Source(PartProgram text, ProgramIndex index, Map<Long, Program> numbered) {
    Source(PartProgram text, ProgramIndex index) {
      this(text, index, new HashMap<>());
      for (Program program : index.programs()) {
        program.number().ifPresent(number -> numbered.putIfAbsent(number, program));
      }
    }

    Optional<Program> program(long number) {
      return Optional.ofNullable(numbered.get(number));
    }
  }

  private final EventSink sink;
  private final Optional<Path> folder;
  private final String extension;
  // Who judges may look at files while the interpreter draws on more.
  private final List<Optional<Source>> sources = new CopyOnWriteArrayList<>();
  private final List<Integer> drawnOn = new CopyOnWriteArrayList<>();
  private final List<String> known;
  private final Map<Path, Integer> indexOfPath = new HashMap<>();
  private final Map<Long, Optional<Found>> searched = new HashMap<>();
  private final Set<String> unreadable = new HashSet<>();
  private final Map<Found, List<Block>> kept = new HashMap<>();
  private final Set<Found> openedBefore = new HashSet<>();
  private long keptBytes;

  /** Goes on while the program is read, where its file was not looked through before. */
  private Optional<LookWhileReading> look = Optional.empty();

  private ProgramFiles(
      EventSink sink, Optional<Path> folder, String extension, List<String> known) {
    this.sink = sink;
    this.folder = folder;
    this.extension = extension;
    this.known = List.copyOf(known);
    known.forEach(name -> sources.add(Optional.empty()));
  }

  /**
   * The program in a file, with the folder it stands in.
   *
   * @param sink takes what the first look at each file notices
   * @throws IOException if the file cannot be read
   */
  public static ProgramFiles of(Path file, EventSink sink) throws IOException {
    return of(file, List.of(), sink);
  }

  /**
   * The same opened once more: a file that was drawn on before keeps its index, whichever call
   * comes first now.
   *
   * @param known the names of its files as they were, by index; empty the first time
   */
  public static ProgramFiles of(Path file, List<String> known, EventSink sink) throws IOException {
    ProgramFiles files = beside(file, known, sink);
    files.add(PartPrograms.of(file));
    files.realPath(file).ifPresent(path -> files.indexOfPath.put(path, 0));
    return files;
  }

  /**
   * The program in a file that is looked through only while it is read to be run, once; nothing
   * where its head or its tail promises a failure. {@link #endLook} tells afterwards whether the
   * run is worth something, unless reading has ended with {@link NotAsAssumedException}.
   *
   * @param sink takes what the first look at files beside it notices
   * @throws IOException if the file cannot be read
   */
  public static Optional<ProgramFiles> lookingWhileReading(Path file, EventSink sink)
      throws IOException {
    long bytes = Files.size(file);
    PartProgram text = PartPrograms.of(file);
    Optional<LookWhileReading> look = LookWhileReading.at(text, bytes);
    if (look.isEmpty()) {
      return Optional.empty();
    }
    ProgramFiles files = beside(file, List.of(), sink);
    files.look = look;
    files.sources.add(Optional.of(new Source(text, look.get().assumed(bytes))));
    files.drawnOn.add(0);
    files.realPath(file).ifPresent(path -> files.indexOfPath.put(path, 0));
    return Optional.of(files);
  }

  /**
   * Whether a file is so long that a second thread pays, and looking through it first takes time.
   *
   * @throws IOException if it cannot be read
   */
  public static boolean isLong(Path file) throws IOException {
    return Files.size(file) >= READ_AHEAD_BYTES;
  }

  private static ProgramFiles beside(Path file, List<String> known, EventSink sink) {
    Path name = file.getFileName();
    String text = name == null ? "" : name.toString();
    int dot = text.lastIndexOf('.');
    // As the user wrote it: a relative program has relative files beside it.
    Path parent = file.getParent();
    return new ProgramFiles(
        sink,
        Optional.of(parent == null ? Path.of("") : parent),
        dot > 0 ? text.substring(dot) : "",
        known);
  }

  /**
   * Ends a look that went along with reading, if there was one: from now on the index of the file
   * is what was found.
   *
   * @throws NotAsAssumedException if that is not what was assumed: the run is to be made again
   * @throws IOException if the file cannot be read
   */
  public void endLook() throws IOException {
    if (look.isPresent()) {
      sources.set(0, Optional.of(new Source(text(0), look.get().found())));
      look = Optional.empty();
    }
  }

  /**
   * A program that stands in no folder, such as one from standard input; its subprograms must stand
   * in the same text.
   *
   * @param sink takes what the first look notices
   * @throws IOException if it cannot be read
   */
  public static ProgramFiles alone(PartProgram program, EventSink sink) throws IOException {
    ProgramFiles files = new ProgramFiles(sink, Optional.empty(), "", List.of());
    files.add(program);
    return files;
  }

  /** Whether the program is so long that a second thread pays. */
  public boolean isLong() {
    return length(main()) >= READ_AHEAD_BYTES;
  }

  /** How many files are known, by an earlier opening or by now. */
  public int count() {
    return sources.size();
  }

  /** The indices of the files drawn on so far, in the order in which they were. */
  public List<Integer> drawnOn() {
    return drawnOn;
  }

  /** Whether the text of a known file was drawn on. */
  public boolean isDrawnOn(int file) {
    return sources.get(file).isPresent();
  }

  /** Whether a file drawn on so far has blocks that the block delete switch leaves out. */
  public boolean deletableBlocks() {
    return sources.stream().flatMap(Optional::stream).anyMatch(s -> s.index().deletableBlocks());
  }

  private Source source(int file) {
    return sources.get(file).orElseThrow();
  }

  /** The files drawn on beside that of the program, by their real paths. */
  Set<Path> realPathsBeside() {
    Set<Path> paths = new HashSet<>();
    indexOfPath.forEach(
        (path, index) -> {
          if (index != 0) {
            paths.add(path);
          }
        });
    return paths;
  }

  /** How a report calls a file: index 0 is the program, the others follow as they were called. */
  public String name(int file) {
    return sources.get(file).map(source -> source.text().name()).orElseGet(() -> known.get(file));
  }

  /** The same without its folder. */
  public String shortName(int file) {
    String name = name(file);
    return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  }

  /** The text of a file. */
  public PartProgram text(int file) {
    return source(file).text();
  }

  /**
   * Before subprograms are looked for, it must be known which of them stand in the file.
   *
   * @throws NotAsAssumedException if the look at it goes along with reading, and there are some
   * @throws IOException if it cannot be read
   */
  void requireLook() throws IOException {
    if (look.isPresent()) {
      look.get().requireWhole();
    }
  }

  /** What the first look at a file told. */
  public ProgramIndex index(int file) {
    return source(file).index();
  }

  /** The program that runs. */
  Found main() {
    return new Found(0, index(0).first());
  }

  /** The files beside in which a program is looked for, for a message. */
  List<String> places(long number) {
    Set<String> places = new LinkedHashSet<>();
    for (String name : fileNames(number)) {
      places.add(unreadable.contains(name) ? name + " (cannot be read)" : name);
    }
    return List.copyOf(places);
  }

  /**
   * The program with this number: in the calling file, in the file of the main program, or in a
   * file beside it. The files must have been looked through ({@link #requireLook}).
   */
  Optional<Found> find(int callingFile, long number) {
    for (int file : new int[] {callingFile, 0}) {
      Optional<Program> program = source(file).program(number);
      if (program.isPresent()) {
        return Optional.of(new Found(file, program.get()));
      }
    }
    Optional<Found> before = searched.get(number);
    if (before != null) {
      return before;
    }
    Optional<Found> found =
        fileNames(number).stream()
            .flatMap(name -> beside(name).stream())
            .findFirst()
            .map(
                file ->
                    new Found(file, source(file).program(number).orElseGet(index(file)::first)));
    if (searched.size() < REMEMBERED_CAP) {
      searched.put(number, found);
    }
    return found;
  }

  /** O7777.EXT, O7777, 7777.EXT; numbers below 1000 with leading zeros too. */
  private List<String> fileNames(long number) {
    if (folder.isEmpty() || number < 0) {
      return List.of();
    }
    Set<String> names = new LinkedHashSet<>();
    for (String digits : List.of(String.format(Locale.ROOT, "%04d", number), "" + number)) {
      names.add("O" + digits + extension);
      names.add("O" + digits);
      names.add(digits + extension);
    }
    return List.copyOf(names);
  }

  /** The index of a file in the folder; nothing where it is not there or leads out of it. */
  private Optional<Integer> beside(String name) {
    Path file = folder.orElseThrow().resolve(name);
    Optional<Path> real = realPath(file).filter(Files::isRegularFile);
    if (real.isEmpty() || !real.map(Path::getParent).equals(folder.flatMap(this::realPath))) {
      return Optional.empty();
    }
    Integer before = indexOfPath.get(real.get());
    if (before != null) {
      return Optional.of(before);
    }
    if (drawnOn.size() >= FILES_CAP) {
      sink.accept(
          new Event.CapReached(new Place(0, 1, new Span(1, 1)), "files of subprograms", FILES_CAP));
      return Optional.empty();
    }
    try {
      int index = add(PartPrograms.of(file));
      indexOfPath.put(real.get(), index);
      return Optional.of(index);
    } catch (IOException e) {
      unreadable.add(name);
      return Optional.empty();
    }
  }

  private int add(PartProgram text) throws IOException {
    int before = known.indexOf(text.name());
    int index = before < 0 || isDrawnOn(before) ? sources.size() : before;
    Optional<Source> source =
        Optional.of(new Source(text, ProgramIndexer.index(text, index, sink)));
    if (index == sources.size()) {
      sources.add(source);
    } else {
      sources.set(index, source);
    }
    drawnOn.add(index);
    return index;
  }

  private Optional<Path> realPath(Path path) {
    try {
      return Optional.of(path.toRealPath());
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /**
   * The blocks of a program, its text only. A short one that is opened again is kept, so that a
   * thousand repeats do not read the file a thousand times.
   */
  BlockSource open(Found found) throws IOException {
    List<Block> blocks = kept.get(found);
    if (blocks == null && isOpenedAgain(found) && fits(found)) {
      blocks = readAll(found);
      kept.put(found, blocks);
      keptBytes += length(found);
    }
    return blocks == null ? stream(found) : new Replayed(blocks);
  }

  private boolean isOpenedAgain(Found found) {
    if (openedBefore.contains(found)) {
      return true;
    }
    if (openedBefore.size() < REMEMBERED_CAP) {
      openedBefore.add(found);
    }
    return false;
  }

  private boolean fits(Found found) {
    long length = length(found);
    return length <= KEPT_PROGRAM_BYTES && keptBytes + length <= KEPT_BYTES;
  }

  private static long length(Found found) {
    return found.program().endByteOffset() - found.program().byteOffset();
  }

  private List<Block> readAll(Found found) throws IOException {
    List<Block> blocks = new ArrayList<>();
    try (BlockSource source = stream(found)) {
      for (Optional<Block> next = source.next(); next.isPresent(); next = source.next()) {
        blocks.add(next.get());
      }
    }
    return List.copyOf(blocks);
  }

  private BlockSource stream(Found found) throws IOException {
    if (look.isPresent() && found.file() == 0) {
      return new ReadAhead(look.get().blocks());
    }
    Program program = found.program();
    BlockSource blocks =
        text(found.file()).blocksOf(program.byteOffset(), program.line(), program.endByteOffset());
    return length(found) < READ_AHEAD_BYTES ? blocks : new ReadAhead(blocks);
  }

  private static final class Replayed implements BlockSource {
    private final List<Block> blocks;
    private int position;

    Replayed(List<Block> blocks) {
      this.blocks = blocks;
    }

    @Override
    public Optional<Block> next() {
      return position < blocks.size() ? Optional.of(blocks.get(position++)) : Optional.empty();
    }

    @Override
    public void close() {}
  }
}
