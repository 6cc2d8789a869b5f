package hairline.checks.timing;

import java.util.Optional;

/** The planned feed of the move in hand: the stage that plans writes it, later ones read it. */
public final class PlannedFeed {
  private Optional<PlannedMove> move = Optional.empty();

  /** How the machine goes along the move in hand; empty where that can't be planned. */
  public Optional<PlannedMove> ofThisMove() {
    return move;
  }

  void set(Optional<PlannedMove> planned) {
    move = planned;
  }
}
