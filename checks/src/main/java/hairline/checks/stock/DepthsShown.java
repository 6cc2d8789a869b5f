package hairline.checks.stock;

import hairline.checks.motion.Place;
import java.util.ArrayList;
import java.util.List;

/**
 * The depths that the moves of a program take along their paths.
 *
 * @param moves the moves that take something, in the order of the program
 * @param complete whether all of them are there
 */
public record DepthsShown(List<Taken> moves, boolean complete) {
  /** So many stretches are kept. */
  public static final int MOST_STRETCHES = 200_000;

  /**
   * One move.
   *
   * @param at its block
   * @param stretches its stretches, together the whole path
   */
  public record Taken(Place at, List<DepthStretch> stretches) {
    public Taken {
      stretches = List.copyOf(stretches);
    }
  }

  public DepthsShown {
    moves = List.copyOf(moves);
  }

  /** Gathers them while a program runs. */
  public static final class Gatherer {
    private final List<Taken> moves = new ArrayList<>();
    private int stretches;
    private boolean complete = true;

    /** Takes a move. */
    public void take(DepthsTaken taken) {
      if (stretches + taken.stretches().size() > MOST_STRETCHES) {
        complete = false;
        return;
      }
      stretches += taken.stretches().size();
      moves.add(new Taken(taken.at(), taken.stretches()));
    }

    /** What came so far. */
    public DepthsShown shown() {
      return new DepthsShown(moves, complete);
    }
  }
}
