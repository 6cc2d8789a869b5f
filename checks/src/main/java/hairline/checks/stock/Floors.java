package hairline.checks.stock;

import hairline.checks.setup.ToolShape;

/** The floors that tools leave where it is not one height: under ramps, balls, corner radii. */
final class Floors {
  private Floors() {}

  /** The floor under one stretch of a path. */
  static HeightGrid.Floor of(Path path, Surface.Piece piece, Cutter cutter) {
    if (piece.arc()) {
      return levelArc(path, cutter);
    }
    return new Straight(piece, cutter);
  }

  private static HeightGrid.Floor levelArc(Path path, Cutter cutter) {
    double r = (path.startRadius() + path.endRadius()) / 2;
    double startX = path.x0 - path.centreX();
    double startY = path.y0 - path.centreY();
    double endX = path.x1 - path.centreX();
    double endY = path.y1 - path.centreY();
    return (x, y) -> {
      double dx = x - path.centreX();
      double dy = y - path.centreY();
      double distance =
          Spans.inSector(dx, dy, path.sweep(), startX, startY, endX, endY)
              ? Math.abs(Math.sqrt(dx * dx + dy * dy) - r)
              : Math.min(distance(dx - startX, dy - startY), distance(dx - endX, dy - endY));
      return path.z0 + Math.round(cutter.profilePm(distance));
    };
  }

  private static double distance(double dx, double dy) {
    return Math.sqrt(dx * dx + dy * dy);
  }

  /**
   * The lowest that the tool's end comes over a point while the tip goes straight from one point to
   * another. Exact for flat and ball tools; for a corner radius on a slope the lower of a few
   * places of the tool is taken, which may lie a little too high.
   */
  private static final class Straight implements HeightGrid.Floor {
    private final Surface.Piece piece;
    private final Cutter cutter;
    private final double dx;
    private final double dy;
    private final double length;
    private final double slope;
    private final double sine;

    Straight(Surface.Piece piece, Cutter cutter) {
      this.piece = piece;
      this.cutter = cutter;
      double runX = piece.x1() - piece.x0();
      double runY = piece.y1() - piece.y0();
      this.length = Math.sqrt(runX * runX + runY * runY);
      this.dx = length == 0 ? 1 : runX / length;
      this.dy = length == 0 ? 0 : runY / length;
      this.slope = length == 0 ? 0 : (piece.z1() - piece.z0()) / length;
      this.sine = slope / Math.sqrt(1 + slope * slope);
    }

    @Override
    public long at(double x, double y) {
      double px = x - piece.x0();
      double py = y - piece.y0();
      double along = px * dx + py * dy;
      double across = py * dx - px * dy;
      double across2 = across * across;
      double nearest = Math.max(0, Math.min(length, along));
      if (length == 0) {
        return Math.round(
            Math.min(piece.z0(), piece.z1()) + cutter.profilePm(Math.sqrt(px * px + py * py)));
      }
      if (slope == 0) {
        return Math.round(piece.z0() + profile(nearest - along, across2));
      }
      if (cutter.shape() == ToolShape.BALL) {
        double wide = Math.sqrt(Math.max(0, cutter.radiusPm() * cutter.radiusPm() - across2));
        return tip(clamp(along - wide * sine, along, wide), along, across2);
      }
      double flat2 = cutter.flatRadiusPm() * cutter.flatRadiusPm() - across2;
      long low = tip(nearest, along, across2);
      if (flat2 >= 0) {
        double flat = Math.sqrt(flat2);
        low =
            Math.min(
                low, tip(clamp(along - Math.signum(slope) * flat, along, flat), along, across2));
      }
      if (!cutter.flat()) {
        double lean = cutter.cornerPm() * sine;
        low = Math.min(low, tip(clamp(along - lean, along, Math.abs(lean)), along, across2));
        double out = Math.sqrt(Math.max(0, flat2)) + Math.abs(lean);
        low =
            Math.min(low, tip(clamp(along - Math.signum(slope) * out, along, out), along, across2));
      }
      return low;
    }

    /** A place of the tool on its way, no farther from the point than the reach. */
    private double clamp(double place, double along, double reach) {
      double nearest = Math.max(0, Math.min(length, along));
      double inside = Math.max(0, Math.min(length, place));
      return Math.abs(inside - along) <= reach ? inside : nearest;
    }

    private long tip(double place, double along, double across2) {
      double z =
          place <= 0 ? piece.z0() : place >= length ? piece.z1() : piece.z0() + slope * place;
      return Math.round(z + profile(place - along, across2));
    }

    private double profile(double ahead, double across2) {
      return cutter.profilePm(Math.sqrt(ahead * ahead + across2));
    }
  }
}
