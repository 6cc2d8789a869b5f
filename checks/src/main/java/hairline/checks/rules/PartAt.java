package hairline.checks.rules;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.Move;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.setup.Setup;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.StockModel;
import hairline.checks.stock.StockStage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/** The part as it stands on the way: runs a program as far as one of its moves, asking no rule. */
public final class PartAt {
  /** Ends the run from within. */
  private static final class FarEnough extends RuntimeException {
    private static final long serialVersionUID = 1L;

    FarEnough() {
      super("far enough", null, false, false);
    }
  }

  private static final class UpTo implements EventSink {
    private final StockStage stock;
    private final long moves;
    private final BooleanSupplier cancelled;
    private long made;

    UpTo(StockStage stock, long moves, BooleanSupplier cancelled) {
      this.stock = stock;
      this.moves = moves;
      this.cancelled = cancelled;
    }

    @Override
    public void accept(Event event) {
      if (!(event instanceof Move move)) {
        stock.accept(event);
        return;
      }
      if (cancelled.getAsBoolean()) {
        throw new CancellationException();
      }
      if (made < moves) {
        made++;
        stock.accept(move);
      }
      if (made == moves) {
        stock.accept(new Event.Ended(move.at(), Optional.empty(), move.modes()));
        throw new FarEnough();
      }
    }
  }

  private PartAt() {}

  /**
   * The part behind so many moves, counted like the cuts of a run with the block delete switch off.
   *
   * @param cellPm edge of a cell of the surface; empty for the usual one
   * @param moves how many, 0 for the part before the first one
   * @param cancelled asked now and then; true ends it with a {@link CancellationException}
   * @return the part; empty where the program makes no move
   * @throws IOException if a file cannot be read
   */
  public static Optional<PartLeft> after(
      Path program, Setup setup, OptionalLong cellPm, long moves, BooleanSupplier cancelled)
      throws IOException {
    PartLeft[] left = new PartLeft[1];
    StockStage stock =
        new StockStage(
            StockModel.of(setup, cellPm),
            event -> {
              if (event instanceof PartLeft part) {
                left[0] = part;
              }
            });
    ProgramFiles files = ProgramFiles.of(program, event -> {});
    try {
      new Interpreter(SheetControl.of(setup), files).run(new UpTo(stock, moves, cancelled), false);
    } catch (FarEnough e) {
      return Optional.ofNullable(left[0]);
    }
    return Optional.ofNullable(left[0]);
  }
}
