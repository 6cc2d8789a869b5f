package hairline.viewer.panes;

import hairline.checks.rules.PartAt;
import hairline.checks.setup.Setup;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.SurfaceLeft;
import hairline.viewer.model.Operation;
import hairline.viewer.model.PartPicture;
import hairline.viewer.model.Program;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import javafx.animation.PauseTransition;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.util.Duration;

/**
 * Keeps the picture of the part in step with the cursor, on a thread of its own: the program is run
 * anew up to the move in question. While that goes on the older picture stays, and says so.
 */
public final class PartFollower implements AutoCloseable {
  private static final double REST_MS = 180;

  private final Shared shared;
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "hairline-part");
            thread.setDaemon(true);
            return thread;
          });
  private final AtomicLong wanted = new AtomicLong();
  private final PauseTransition rest = new PauseTransition(Duration.millis(REST_MS));
  private final ReadOnlyStringWrapper remark = new ReadOnlyStringWrapper("");
  private boolean atCursor = true;
  private Optional<Program> endOf = Optional.empty();
  private volatile Optional<Ends> ends = Optional.empty();

  /** The part that a program leaves, by work offsets. */
  private record Ends(Program of, List<PartPicture> pictures) {}

  /** Follows the cursor that is shared. */
  public PartFollower(Shared shared) {
    this.shared = shared;
    rest.setOnFinished(e -> ask());
    shared.cursor().addListener(o -> rest.playFromStart());
    shared.program().addListener(o -> reset());
  }

  /** What the picture shows, in words. */
  public ReadOnlyStringProperty remark() {
    return remark.getReadOnlyProperty();
  }

  /** Whether the part is shown as it stands at the cursor; else as the program leaves it. */
  public void setAtCursor(boolean at) {
    atCursor = at;
    ask();
  }

  private void reset() {
    wanted.incrementAndGet();
    endOf = Optional.empty();
    ends = Optional.empty();
    shared.part().set(Optional.empty());
    remark.set("");
  }

  /** The program has grown. */
  public void grown() {
    Optional<Program> program = shared.program().get();
    if (program.isPresent() && endOf.isEmpty() && !program.get().part().isEmpty()) {
      endOf = program;
      ask();
    }
  }

  private void ask() {
    Optional<Program> program = shared.program().get();
    if (program.isEmpty() || program.get().setup().isEmpty()) {
      return;
    }
    Program of = program.get();
    long cursor = shared.cursor().get();
    boolean endKnown = !of.part().isEmpty();
    // What is left at the end is not known before all is read; what stands at the cursor may be.
    boolean onTheWay = !endKnown && of.result().isEmpty() && atCursor && cursor >= 0;
    if (!endKnown && !onTheWay) {
      return;
    }
    long number = wanted.incrementAndGet();
    boolean atEnd = endKnown && (!atCursor || cursor < 0 || cursor >= of.moves().count() - 1);
    remark.set("the part is being computed");
    worker.execute(() -> work(number, of, of.setup().orElseThrow(), cursor, atEnd));
  }

  private void work(long number, Program program, Setup setup, long cursor, boolean atEnd) {
    if (number != wanted.get()) {
      return;
    }
    try {
      Optional<PartPicture> end = chosen(ends(program, setup), program, cursor);
      Optional<PartPicture> shown = atEnd ? end : at(number, program, setup, cursor, end);
      String words =
          atEnd ? "the part at the end" : "the part at line " + program.moves().line(cursor);
      Platform.runLater(
          () -> {
            if (number == wanted.get()) {
              shared.part().set(shown);
              remark.set(shown.isPresent() ? words : "nothing is cut yet");
            }
          });
    } catch (CancellationException e) {
      return;
    } catch (IOException | RuntimeException e) {
      Platform.runLater(
          () -> {
            if (number == wanted.get()) {
              remark.set("the part can't be computed here: reload the program");
            }
          });
    }
  }

  private List<PartPicture> ends(Program program, Setup setup) {
    if (program.part().isEmpty()) {
      return List.of();
    }
    Optional<Ends> known = ends.filter(e -> e.of().equals(program));
    if (known.isEmpty()) {
      known =
          Optional.of(
              new Ends(
                  program,
                  program.part().stream()
                      .flatMap(s -> PartPicture.of(s, setup, Optional.empty()).stream())
                      .toList()));
      ends = known;
    }
    return known.get().pictures();
  }

  /** The picture for the work offset in force at the cursor, else the first. */
  private static Optional<PartPicture> chosen(List<PartPicture> all, Program program, long cursor) {
    Optional<String> offset = program.operationOf(cursor).flatMap(Operation::offset);
    return all.stream()
        .filter(picture -> offset.isEmpty() || picture.offset().equals(offset.get()))
        .findFirst()
        .or(() -> all.stream().findFirst());
  }

  private Optional<PartPicture> at(
      long number, Program program, Setup setup, long cursor, Optional<PartPicture> end)
      throws IOException {
    Optional<PartLeft> part =
        PartAt.after(
            program.file(), setup, OptionalLong.empty(), cursor + 1, () -> number != wanted.get());
    Optional<String> offset = end.map(PartPicture::offset);
    Optional<SurfaceLeft> surface =
        part.flatMap(
            left ->
                left.surfaces().stream()
                    .filter(s -> offset.isEmpty() || s.offset().equals(offset.get()))
                    .findFirst());
    return surface.flatMap(s -> PartPicture.of(s, setup, end.map(PartPicture::colours)));
  }

  @Override
  public void close() {
    wanted.incrementAndGet();
    rest.stop();
    worker.shutdownNow();
  }
}
