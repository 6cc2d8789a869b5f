package hairline.checks.motion;

import hairline.checks.motion.ProgramFiles.Found;
import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.Span;
import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * The blocks of a program in the order in which a control executes them: main program, subprograms
 * as they are called, repeats. Whoever executes the blocks says when one calls, returns or ends.
 *
 * <p>The memory it takes grows with the depth of calls only, which has a limit, and the blocks it
 * gives are limited by the step budget.
 */
public final class BlockFlow implements Closeable {
  private static final Span LINE_START = new Span(1, 1);
  // Common practice, no source: P51000 without L calls O1000 five times.
  private static final long PACKED = 10_000;

  /** How many repeats are followed of more than the budget holds; our choice, no source. */
  static final long REPEATS_FOLLOWED = 1_000;

  private static final class Frame {
    final Found found;
    final Place call;
    final OptionalLong tooMany;
    long repeatsLeft;
    BlockSource source;

    Frame(Found found, Place call, OptionalLong tooMany, long repeatsLeft, BlockSource source) {
      this.found = found;
      this.call = call;
      this.tooMany = tooMany;
      this.repeatsLeft = repeatsLeft;
      this.source = source;
    }
  }

  private final ProgramFiles files;
  private final int callDepth;
  private final long stepBudget;
  private final boolean blockDelete;
  private final EventSink sink;
  private final Deque<Frame> frames = new ArrayDeque<>();
  private long stepsTaken;
  private boolean budgetReached;
  private int lastFile;
  private int lastLine = 1;

  /**
   * The flow of the first program of the first file.
   *
   * @param callDepth how deep subprograms may nest
   * @param stepBudget how many steps may be taken, blocks and steps of cycles together
   * @param blockDelete whether the block delete switch is on: deletable blocks are left out
   * @param sink takes what happens at calls and returns
   * @throws IOException if the program cannot be read
   */
  public BlockFlow(
      ProgramFiles files, int callDepth, long stepBudget, boolean blockDelete, EventSink sink)
      throws IOException {
    this.files = files;
    this.callDepth = callDepth;
    this.stepBudget = stepBudget;
    this.blockDelete = blockDelete;
    this.sink = sink;
    Found main = files.main();
    frames.push(new Frame(main, last(), OptionalLong.empty(), 0, files.open(main)));
  }

  /**
   * The next block to be executed; nothing after {@link #end}, at the end of the main program's
   * text, and when the step budget is used up.
   *
   * @throws IOException if a file cannot be read
   */
  public Optional<Block> next() throws IOException {
    while (!frames.isEmpty()) {
      Frame frame = frames.element();
      Optional<Block> next = frame.source.next();
      if (next.isPresent()) {
        lastFile = frame.found.file();
        lastLine = next.get().line();
        if (stepsTaken == stepBudget) {
          reachBudget(last());
          return Optional.empty();
        }
        stepsTaken++;
        if (!blockDelete || !next.get().deletable()) {
          return next;
        }
      } else if (frames.size() == 1) {
        end();
      } else {
        sink.accept(new Event.SubprogramEndMissing(last(), frame.found.name()));
        // One without a block would be repeated for ever otherwise.
        if (step(last())) {
          returnFromSubprogram(last());
        }
      }
    }
    return Optional.empty();
  }

  /**
   * Takes a step of the budget; {@link #next} does it for each block, whoever executes a cycle does
   * it for each step of the cycle.
   *
   * @return false when the budget is used up; then the flow has ended
   */
  public boolean step(Place at) throws IOException {
    if (budgetReached) {
      return false;
    }
    if (stepsTaken == stepBudget) {
      reachBudget(at);
      return false;
    }
    stepsTaken++;
    return true;
  }

  private void reachBudget(Place at) throws IOException {
    budgetReached = true;
    sink.accept(new Event.StepBudgetReached(at, stepBudget));
    end();
  }

  /** Whether so many repeats, each of a step or more, are more than the budget still holds. */
  boolean isTooMany(long repeats) {
    return repeats > stepBudget - stepsTaken;
  }

  /**
   * Ends the flow behind the first of repeats that are too many: the others would show nothing new
   * and take long.
   *
   * @param at the block that asks for them
   */
  void endBehind(Place at, long repeats) throws IOException {
    if (!budgetReached) {
      budgetReached = true;
      sink.accept(new Event.StepBudgetReached(at, stepBudget, OptionalLong.of(repeats)));
      end();
    }
  }

  /**
   * Calls a subprogram: {@link #next} goes on with its first block. A call that cannot be followed
   * is told as an event and left out.
   *
   * @param at the call
   * @param number P
   * @param repeats L; where absent, once, or as often as the digits before the last four of P say
   *     when P as a whole names no program
   * @return whether the subprogram is entered
   * @throws IOException if its file cannot be read
   */
  public boolean call(Place at, long number, OptionalLong repeats) throws IOException {
    files.requireLook();
    Optional<Found> found = files.find(at.file(), number);
    long times = repeats.orElse(1);
    if (found.isEmpty() && repeats.isEmpty() && number >= PACKED) {
      found = files.find(at.file(), number % PACKED);
      times = number / PACKED;
    }
    if (found.isEmpty()) {
      Set<String> lookedAt = new LinkedHashSet<>(files.places(number));
      if (repeats.isEmpty() && number >= PACKED) {
        lookedAt.addAll(files.places(number % PACKED));
      }
      sink.accept(new Event.SubprogramMissing(at, "O" + number, List.copyOf(lookedAt)));
      return false;
    }
    if (times <= 0) {
      return false;
    }
    if (frames.size() > callDepth || isRunning(found.get())) {
      sink.accept(new Event.SubprogramEndless(at, chainTo(found.get()), callDepth));
      return false;
    }
    boolean tooMany = isTooMany(times);
    frames.push(
        new Frame(
            found.get(),
            at,
            tooMany ? OptionalLong.of(times) : OptionalLong.empty(),
            (tooMany ? Math.min(times, REPEATS_FOLLOWED) : times) - 1,
            files.open(found.get())));
    sink.accept(new Event.SubprogramEntered(at, nameOf(found.get()), depth()));
    return true;
  }

  /**
   * Returns from a subprogram (M99), or begins its next repeat.
   *
   * @param at the return
   * @return false in the main program, where there is nothing to return to
   * @throws IOException if a file cannot be read
   */
  public boolean returnFromSubprogram(Place at) throws IOException {
    if (frames.size() < 2) {
      return false;
    }
    Frame frame = frames.element();
    frame.source.close();
    sink.accept(new Event.SubprogramLeft(at, nameOf(frame.found), depth()));
    if (frame.repeatsLeft > 0) {
      frame.repeatsLeft--;
      frame.source = files.open(frame.found);
      sink.accept(new Event.SubprogramEntered(frame.call, nameOf(frame.found), depth()));
    } else {
      frames.pop();
      if (frame.tooMany.isPresent()) {
        endBehind(frame.call, frame.tooMany.getAsLong());
      }
    }
    return true;
  }

  /** Ends the program, whatever is left of it. */
  public void end() throws IOException {
    while (!frames.isEmpty()) {
      frames.pop().source.close();
    }
  }

  /** Index of the file of the block that {@link #next} gave last. */
  public int file() {
    return lastFile;
  }

  /** How many subprograms are being executed, one inside the other. */
  public int depth() {
    return Math.max(frames.size() - 1, 0);
  }

  /** Where the last block stood that was read. */
  public Place last() {
    return new Place(lastFile, lastLine, LINE_START);
  }

  /** Whether the step budget is used up. */
  public boolean isBudgetReached() {
    return budgetReached;
  }

  /** How many steps have been taken. */
  public long stepsTaken() {
    return stepsTaken;
  }

  @Override
  public void close() throws IOException {
    end();
  }

  private boolean isRunning(Found found) {
    return frames.stream().anyMatch(frame -> frame.found.equals(found));
  }

  private List<String> chainTo(Found found) {
    List<String> chain = new ArrayList<>();
    frames.descendingIterator().forEachRemaining(frame -> chain.add(nameOf(frame.found)));
    chain.add(nameOf(found));
    return List.copyOf(chain);
  }

  /** The name of a file without its folder. */
  String fileName(int file) {
    return files.shortName(file);
  }

  /** The number of a program, or the name of its file where it has none. */
  private String nameOf(Found found) {
    return found.name().isEmpty() ? files.name(found.file()) : found.name();
  }
}
