package hairline.viewer.model;

import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import hairline.checks.report.Trouble;
import hairline.checks.setup.Setup;
import hairline.checks.setup.StockKeys;
import hairline.checks.stock.SurfaceLeft;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A program as it is shown; grows while it is read. What is asked of it holds for what was read by
 * then.
 *
 * <p>Beside moves and lines at most {@link #MOST_LEVELS} levels and {@link #MOST_OPERATIONS}
 * operations are kept, and as many findings as a check keeps.
 */
public final class Program implements AutoCloseable {
  /** Most levels kept. */
  public static final int MOST_LEVELS = 20_000;

  /** Of so many files of subprograms the lines are kept in mind. */
  private static final int MOST_FILES_BESIDE = 8;

  /** Most operations kept. */
  public static final int MOST_OPERATIONS = 20_000;

  private final Path file;
  private final Optional<Setup> setup;
  private final Lines lines;
  private final Moves moves = new Moves();
  private final Calls calls = new Calls();
  private final Map<Integer, Lines> linesBeside = new LinkedHashMap<>(16, 0.75f, true);
  private final List<LevelMark> levels = Collections.synchronizedList(new ArrayList<>());
  private final List<Operation> operations = Collections.synchronizedList(new ArrayList<>());
  private final AtomicLong changes = new AtomicLong();
  private volatile Optional<ProgramResult> result = Optional.empty();
  private volatile List<FindingMark> findings = List.of();
  private volatile List<NotChecked> notChecked = List.of();
  private volatile List<String> files = List.of();
  private volatile boolean ended;
  private volatile Optional<double[]> extentMm = Optional.empty();
  private final AtomicLong findingsChanges = new AtomicLong();
  private volatile List<SurfaceLeft> part = List.of();
  private volatile Optional<Trouble> trouble = Optional.empty();
  private volatile boolean truncated;
  private volatile boolean finished;
  private volatile boolean cancelled;
  private volatile boolean closed;

  /**
   * A program of which nothing is read yet.
   *
   * @param setup its sheet; empty where it can't be used
   */
  public Program(Path file, Optional<Setup> setup) {
    this.file = file;
    this.setup = setup;
    this.lines = new Lines(file);
  }

  /** Its file. */
  public Path file() {
    return file;
  }

  /** Its file's name without folders. */
  public String name() {
    Path name = file.getFileName();
    return name == null ? file.toString() : name.toString();
  }

  /** What its sheet says. */
  public Optional<Setup> setup() {
    return setup;
  }

  /** The lines of its own file. */
  public Lines lines() {
    return lines;
  }

  /** The file of this index, 0 the program itself: subprograms stand in its folder. */
  public Path path(int index) {
    if (index == 0) {
      return file;
    }
    Path name = Path.of(fileName(index)).getFileName();
    return name == null ? file : file.resolveSibling(name);
  }

  /**
   * The lines of the file of this index; those of a subprogram's file are found, on a thread of
   * their own, once they are asked for.
   */
  public Lines lines(int index) {
    if (index == 0) {
      return lines;
    }
    synchronized (linesBeside) {
      Lines known = linesBeside.get(index);
      if (known != null) {
        return known;
      }
      Lines found = new Lines(path(index));
      linesBeside.put(index, found);
      if (linesBeside.size() > MOST_FILES_BESIDE) {
        linesBeside.remove(linesBeside.keySet().iterator().next());
      }
      Thread finder = new Thread(() -> find(found), "hairline-lines");
      finder.setDaemon(true);
      finder.start();
      return found;
    }
  }

  private void find(Lines beside) {
    try {
      beside.find(() -> closed);
    } catch (IOException e) {
      // Nothing of it is shown; reading the program anew tells why.
      return;
    } finally {
      changes.incrementAndGet();
    }
  }

  /** The places of the calls that lead to a move, from the outermost on. */
  public List<Place> callsTo(long move) {
    return calls.at(move);
  }

  /** The moves of the call that a move is made in, with those it calls itself. */
  public Range callAround(long move) {
    return calls.around(move, moves.count());
  }

  /** Of whom moves are called, as it grows. */
  Calls calls() {
    return calls;
  }

  /** Its moves. */
  public Moves moves() {
    return moves;
  }

  /** The levels in the order first cut. */
  public List<LevelMark> levels() {
    synchronized (levels) {
      return List.copyOf(levels);
    }
  }

  /** The height of the uncut top, where the sheet gives one. */
  public OptionalLong topPm() {
    return setup
        .flatMap(sheet -> sheet.get(StockKeys.TOP))
        .map(top -> OptionalLong.of(top.pm()))
        .orElse(OptionalLong.empty());
  }

  /** The different heights of the levels and of the uncut top, from the lowest on. */
  public SortedSet<Long> heights() {
    TreeSet<Long> heights = new TreeSet<>();
    levels().forEach(level -> heights.add(level.zPm()));
    topPm().ifPresent(heights::add);
    return heights;
  }

  /** How many levels there are by now. */
  public int levelCount() {
    return levels.size();
  }

  /** The operations in their order. */
  public List<Operation> operations() {
    synchronized (operations) {
      return List.copyOf(operations);
    }
  }

  /** The last operation that begins at a move or before it; -1 where there is none. */
  private int indexOfOperation(long move) {
    int low = 0;
    int high = operations.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (operations.get(middle).firstMove() <= move) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low - 1;
  }

  /** The operation of a move. */
  public Optional<Operation> operationOf(long move) {
    int at = indexOfOperation(move);
    return at < 0 ? Optional.empty() : Optional.of(operations.get(at));
  }

  /** The moves of an operation: from its first to one past its last. */
  public Range movesOf(Operation operation) {
    int next = indexOfOperation(operation.firstMove()) + 1;
    return new Range(
        operation.firstMove(),
        next < operations.size() ? operations.get(next).firstMove() : moves.count());
  }

  /** What the check said, once it is through. */
  public Optional<ProgramResult> result() {
    return result;
  }

  /**
   * The findings with the moves they concern: all of them once there is a {@link #result}, before
   * it what was found by then, of which some may still be explained away.
   */
  public List<FindingMark> findings() {
    return findings;
  }

  /** What could not be decided by now. */
  public List<NotChecked> notChecked() {
    return notChecked;
  }

  /** A number that grows whenever findings or what is not checked change. */
  public long findingsChanges() {
    return findingsChanges.get();
  }

  /** How a file of the program is called, as far as it is known by now. */
  public String fileName(int index) {
    List<String> names = files;
    return index < names.size() ? names.get(index) : "file " + index;
  }

  /** How many files the program draws on by now. */
  public int fileCount() {
    return Math.max(1, files.size());
  }

  /** Where moves at feed have ended by now, in mm: least X and Y, greatest X and Y. */
  public Optional<double[]> extentMm() {
    return extentMm.map(double[]::clone);
  }

  void setExtentMm(double... extent) {
    extentMm = Optional.of(extent.clone());
  }

  /** Whether all moves are run; the check may still go on. */
  public boolean ended() {
    return ended;
  }

  /** The part it leaves, under each work offset, once the check is through. */
  public List<SurfaceLeft> part() {
    return part;
  }

  /** Why not all of it could be read. */
  public Optional<Trouble> trouble() {
    return trouble;
  }

  /** Whether there are more moves than are kept. */
  public boolean truncated() {
    return truncated;
  }

  /** Whether nothing more comes. */
  public boolean finished() {
    return finished;
  }

  /** Whether reading was cancelled. */
  public boolean cancelled() {
    return cancelled;
  }

  /** A number that grows with each change beside that of moves and lines. */
  public long changes() {
    return changes.get();
  }

  /** How far it is read: 0 to 1. */
  public double progress() {
    if (finished) {
      return 1;
    }
    long n = moves.count();
    int total = lines.count();
    return n == 0 || total == 0 || moves.file(n - 1) != 0
        ? 0
        : Math.min(1, moves.line(n - 1) / (double) total);
  }

  void add(LevelMark level) {
    if (levels.size() < MOST_LEVELS) {
      levels.add(level);
      changes.incrementAndGet();
    }
  }

  void add(Operation operation) {
    if (operations.size() < MOST_OPERATIONS) {
      operations.add(operation);
      changes.incrementAndGet();
    }
  }

  void setPart(List<SurfaceLeft> surfaces) {
    part = List.copyOf(surfaces);
    changes.incrementAndGet();
  }

  void setEnded() {
    ended = true;
    changes.incrementAndGet();
  }

  /** Takes the names of the files known by now. */
  void setFiles(List<String> names) {
    files = List.copyOf(names);
    changes.incrementAndGet();
  }

  /** Takes what is found by now, on the thread that adds moves. */
  void setFoundSoFar(List<Finding> found, List<NotChecked> undecided) {
    put(found, undecided);
  }

  void setTruncated() {
    truncated = true;
  }

  void setTrouble(Trouble why) {
    trouble = Optional.of(why);
    changes.incrementAndGet();
  }

  void setCancelled() {
    cancelled = true;
    changes.incrementAndGet();
  }

  void setFinished() {
    finished = true;
    changes.incrementAndGet();
  }

  void setResult(ProgramResult checked) {
    List<Finding> all = new ArrayList<>(checked.findings());
    all.addAll(checked.accepted());
    setFiles(checked.files());
    result = Optional.of(checked);
    put(all, checked.notChecked());
  }

  private void put(List<Finding> found, List<NotChecked> undecided) {
    Map<Long, Long> moveOf = new HashMap<>();
    long n = moves.count();
    List<FindingMark> marks = new ArrayList<>();
    for (Finding finding : found) {
      long move =
          moveOf.computeIfAbsent(
              key(finding.at()),
              place -> n == 0 ? -1 : moves.firstOf((int) (place >> 32), (int) (long) place));
      marks.add(new FindingMark(finding, move));
    }
    marks.sort(Comparator.comparingLong(FindingMark::move));
    findings = List.copyOf(marks);
    notChecked = List.copyOf(undecided);
    findingsChanges.incrementAndGet();
    changes.incrementAndGet();
  }

  private static long key(Place place) {
    return ((long) place.file() << 32) | place.line();
  }

  @Override
  public void close() throws IOException {
    closed = true;
    moves.close();
    calls.close();
  }
}
