package hairline.checks.stock;

import hairline.checks.motion.Axis;
import hairline.checks.motion.Place;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/** What is known of the part under one work offset. */
final class Surface {
  /** Cells along a square of the path index: few moves of one pass then cross one square. */
  private static final int CELLS_PER_SQUARE = 2;

  /** Shorter moves are followed as if they came from elsewhere. */
  private static final double SHORTEST_CELLS = 0.01;

  private static final double NOT_GOING_ON = Double.POSITIVE_INFINITY;

  final String offset;
  final Optional<StockModel.Box> box;
  final HeightGrid grid;
  final PathIndex index;
  final Engagement.Finder engagement;
  final Standing standing;
  final Clearance clearance;
  private final Swath swath;
  private final Carver carver;
  private final Spans spans;
  private final Rest rest = new Rest();
  private final double shortest;
  private final double chordError;
  private final Map<Integer, Long> lowestRapid = new HashMap<>();
  private final Map<Integer, Place> staysAbove = new LinkedHashMap<>();
  private final Set<Integer> cutsBelow = new HashSet<>();
  private long highestFloor = Long.MIN_VALUE;
  private boolean lost;
  private boolean asksEveryCell;

  Surface(String offset, StockModel model, HeightGrid.TileBudget budget) {
    this.offset = offset;
    this.box = model.box().filter(b -> b.offset().equals(offset));
    this.grid = new HeightGrid(model.cellPm(), box, budget);
    this.index = new PathIndex(CELLS_PER_SQUARE * (double) model.cellPm(), model.limits().paths());
    this.engagement = new Engagement.Finder(grid, index);
    this.standing = new Standing(grid, box);
    this.swath = new Swath(grid);
    this.carver = new Carver(grid, swath);
    this.clearance = new Clearance(grid, box, model.chordErrorPm());
    this.spans = new Spans(grid);
    this.chordError = model.chordErrorPm();
    this.shortest = model.cellPm() * SHORTEST_CELLS;
  }

  /** Whether a move of unknown course or tool may have cut anywhere. */
  boolean lost() {
    return lost;
  }

  void lose() {
    lost = true;
  }

  /** From here on every cell under the tool is asked, which takes longer and changes nothing. */
  void askEveryCell() {
    asksEveryCell = true;
  }

  /** A rapid move of this tool ended here. */
  void rapidTo(int tool, long zPm) {
    lowestRapid.merge(tool, zPm, Math::min);
  }

  /** Where contact may begin: the stock's top, else the lowest rapid Z of the tool. */
  OptionalLong contactBelow(int tool) {
    if (box.isPresent()) {
      return OptionalLong.of(box.get().topPm());
    }
    Long lowest = lowestRapid.get(tool);
    return lowest == null ? OptionalLong.empty() : OptionalLong.of(lowest);
  }

  /** Without a stock: a feed move of this tool stays above where contact may begin. */
  void notBelow(int tool, Place at) {
    if (!cutsBelow.contains(tool)) {
      staysAbove.putIfAbsent(tool, at);
    }
  }

  /** A feed move of this tool goes below where contact may begin. */
  void isBelow(int tool) {
    if (cutsBelow.add(tool)) {
      staysAbove.remove(tool);
    }
  }

  /** The first feed move of a tool that never goes below where contact may begin. */
  Optional<Place> neverBelow() {
    return staysAbove.values().stream().findFirst();
  }

  /** A move in contact came down to here. */
  void cutAt(long zPm) {
    highestFloor = Math.max(highestFloor, zPm);
  }

  /** The highest floor of a move in contact; meaningless before there is one. */
  long highestFloor() {
    return highestFloor;
  }

  /** Whether this height lies below the stock, so that no floor is left there. */
  boolean belowBottom(long zPm) {
    return depthBelowBottom(zPm) > 0;
  }

  /** How far this height lies below the stock; 0 where it doesn't, or the bottom isn't known. */
  long depthBelowBottom(long zPm) {
    OptionalLong bottom = box.map(StockModel.Box::bottomPm).orElse(OptionalLong.empty());
    return bottom.isPresent() ? Math.max(0, bottom.getAsLong() - zPm) : 0;
  }

  /** Whether the footprint of a path reaches the stock box, seen from above. */
  boolean reachesBox(Path path, double radius) {
    if (box.isEmpty()) {
      return true;
    }
    boolean[] any = {false};
    pieces(
        path,
        radius,
        piece -> {
          spans.of(swath);
          any[0] |= !spans.isEmpty();
        });
    return any[0];
  }

  // Cutting.

  /** A stretch of a path: a straight line, or the whole of an arc when it is level. */
  record Piece(
      double x0, double y0, double z0, double x1, double y1, double z1, double from, boolean arc) {}

  /** Takes the stretches of a path in turn; the swath then is that of each. */
  @FunctionalInterface
  private interface PieceSink {
    void accept(Piece piece);
  }

  private void pieces(Path path, double radius, PieceSink sink) {
    if (path.arcInPlan() && path.level() && round(path)) {
      swath.arc(path, radius);
      sink.accept(new Piece(path.x0, path.y0, path.z0, path.x1, path.y1, path.z1, 0, true));
      return;
    }
    int chords = path.chords(chordError);
    double x = path.x0;
    double y = path.y0;
    double z = path.z0;
    double along = 0;
    for (int k = 1; k <= chords; k++) {
      double f = (double) k / chords;
      double x2 = path.at(Axis.X, f);
      double y2 = path.at(Axis.Y, f);
      double z2 = path.at(Axis.Z, f);
      swath.segment(x, y, x2, y2, radius);
      sink.accept(new Piece(x, y, z, x2, y2, z2, along, false));
      along += Math.sqrt((x2 - x) * (x2 - x) + (y2 - y) * (y2 - y));
      x = x2;
      y = y2;
      z = z2;
    }
  }

  /** Whether an arc has one radius within the chord error. */
  private boolean round(Path path) {
    return Math.abs(path.startRadius() - path.endRadius()) <= chordError;
  }

  /**
   * Cuts a move.
   *
   * @param path its path
   * @param cutter its tool
   * @param id what leaves a flat floor at its lower Z
   * @param otherId what leaves the rest
   * @param found takes what was there
   */
  void cut(Path path, Cutter cutter, int id, int otherId, Removed found) {
    found.begin(path.planLength(), cutter);
    long z = Math.min(path.z0, path.z1);
    pieces(
        path,
        cutter.radiusPm(),
        piece -> {
          measure(path, piece, found);
          cut(path, piece, cutter, z, id, otherId, found);
        });
  }

  private void cut(
      Path path, Piece piece, Cutter cutter, long z, int id, int otherId, Removed found) {
    boolean oneHeight = cutter.flat() && (path.level() || !path.movesInPlan());
    if (asksEveryCell || grid.lossy()) {
      spans.of(swath);
      if (oneHeight) {
        grid.cutFlat(spans, z, id, found);
      } else {
        grid.cut(spans, Floors.of(path, piece, cutter), z, id, otherId, found);
      }
      return;
    }
    boolean goesOn = !piece.arc() && rest.goesOn(piece, cutter);
    if (oneHeight) {
      carver.cutFlat(z, id, goesOn && piece.z0() == z && rest.allOf(id), found);
    } else {
      HeightGrid.Floor floor = Floors.of(path, piece, cutter, goesOn ? shortest : NOT_GOING_ON);
      double lowest = Math.min(piece.z0(), piece.z1());
      boolean notes = cutter.leavesFloor() && path.level();
      carver.cut(floor, cutter, lowest, z, id, otherId, notes, found);
    }
    if (piece.arc()) {
      rest.forget();
    } else {
      rest.at(piece, cutter, oneHeight && !found.sawOther(), id, shortest);
    }
  }

  private static void measure(Path path, Piece piece, Removed found) {
    if (piece.arc()) {
      found.alongArc(
          path.centreX(), path.centreY(), path.startRadius(), path.startAngle(), path.sweep());
      return;
    }
    double dx = piece.x1() - piece.x0();
    double dy = piece.y1() - piece.y0();
    double length = Math.sqrt(dx * dx + dy * dy);
    found.alongLine(
        piece.x0(),
        piece.y0(),
        length == 0 ? 1 : dx / length,
        length == 0 ? 0 : dy / length,
        piece.from(),
        path.planLength());
  }

  /** Gives the floor of a level move, as far as it lies at its Z, to a level. */
  void relabel(Path path, Cutter cutter, int fromId, int toId) {
    pieces(
        path,
        cutter.radiusPm(),
        piece -> {
          spans.of(swath);
          grid.relabel(spans, path.z0, fromId, toId);
        });
    rest.relabelled(fromId, toId);
  }

  /** Loses what a move of unknown height or shift may have cut. */
  void lose(Path path, double radius) {
    pieces(
        path,
        radius,
        piece -> {
          spans.of(swath);
          grid.lose(spans);
        });
  }
}
