package hairline.checks.stock;

import java.util.Optional;

/**
 * Where the last cut ended. Under the tool there, nothing stands above its end; so a cut that goes
 * on from there with the same tool need not ask what it leaves behind.
 */
final class Rest {
  private Optional<Cutter> cutter = Optional.empty();
  private double x;
  private double y;
  private double z;
  private boolean oneId;
  private int id;

  /** Forgets it. */
  void forget() {
    cutter = Optional.empty();
  }

  /**
   * A straight stretch has been cut.
   *
   * @param leftFloor whether all that lies at its Z under the tool has one id
   * @param floorId that id
   * @param shortest stretches shorter than this, but for plunges, may leave a picometre standing
   */
  void at(Surface.Piece piece, Cutter of, boolean leftFloor, int floorId, double shortest) {
    double run = Math.abs(piece.x1() - piece.x0()) + Math.abs(piece.y1() - piece.y0());
    if (run > 0 && run < shortest) {
      forget();
      return;
    }
    if (cutter.isEmpty() || !cutter.get().equals(of)) {
      cutter = Optional.of(of);
    }
    x = piece.x1();
    y = piece.y1();
    z = piece.z1();
    oneId = leftFloor;
    id = floorId;
  }

  /** The floor that the last cut left was given to another level. */
  void relabelled(int fromId, int toId) {
    if (fromId == HeightGrid.WHICHEVER) {
      oneId = true;
      id = toId;
    } else if (id == fromId) {
      id = toId;
    }
  }

  /** Whether a stretch goes on from here with the same tool. */
  boolean goesOn(Surface.Piece piece, Cutter with) {
    return cutter.isPresent()
        && cutter.get().equals(with)
        && x == piece.x0()
        && y == piece.y0()
        && z == piece.z0();
  }

  /** Whether all that lies at the Z of the last cut under the tool has this id. */
  boolean allOf(int floorId) {
    return oneId && id == floorId;
  }
}
