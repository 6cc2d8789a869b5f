package hairline.checks.stock;

import hairline.checks.setup.ToolShape;

/** The floors that tools leave where it is not one height: under ramps, balls, corner radii. */
final class Floors {
  /** What rounding may do to a distance. */
  private static final double ROUNDING_PM = 1;

  /** What rounding may do to a height, near the rim of a ball too: a part of its radius. */
  private static final double ROUNDING_SHARE = 1e-6;

  /** Far enough from the lowest place that rounding can't matter: a part of the radius. */
  private static final double LEAD_SHARE = 1e-3;

  private static final int TABLE = 33;
  private static final int SEARCHES = 30;

  private Floors() {}

  /** The floor under one stretch of a path. */
  static HeightGrid.Floor of(Path path, Surface.Piece piece, Cutter cutter) {
    return of(path, piece, cutter, Double.POSITIVE_INFINITY);
  }

  /**
   * The same, where the tool may already have been at the start of the stretch.
   *
   * @param goesOnFromPm a stretch of this length or more goes on from a cut of the same tool
   */
  static HeightGrid.Floor of(Path path, Surface.Piece piece, Cutter cutter, double goesOnFromPm) {
    return piece.arc() ? levelArc(path, cutter) : new Straight(piece, cutter, goesOnFromPm);
  }

  /** The floor under a straight stretch. */
  static HeightGrid.Floor straight(Surface.Piece piece, Cutter cutter) {
    return new Straight(piece, cutter, Double.POSITIVE_INFINITY);
  }

  private static HeightGrid.Floor levelArc(Path path, Cutter cutter) {
    double r = (path.startRadius() + path.endRadius()) / 2;
    double startX = path.x0 - path.centreX();
    double startY = path.y0 - path.centreY();
    double endX = path.x1 - path.centreX();
    double endY = path.y1 - path.centreY();
    double[] bounds = Spans.bounds(path, r);
    double unround = Math.abs(path.startRadius() - path.endRadius()) + ROUNDING_PM;
    Profile profile = new Profile(cutter, (double) path.z0);
    return new HeightGrid.Floor() {
      @Override
      public long at(double x, double y) {
        double dx = x - path.centreX();
        double dy = y - path.centreY();
        double distance =
            Math.min(distance(x - path.x0, y - path.y0), distance(x - path.x1, y - path.y1));
        if (Spans.inSector(dx, dy, path.sweep(), startX, startY, endX, endY)) {
          distance = Math.min(distance, Math.abs(distance(dx, dy) - r));
        }
        return round(path.z0 + cutter.profilePm(distance));
      }

      @Override
      public boolean spares(long height, double x, double y, double half) {
        if (height <= path.z0) {
          return true;
        }
        double fromRing = Math.abs(distance(x - path.centreX(), y - path.centreY()) - r);
        double beside = Math.max(0, Math.max(bounds[0] - x, x - bounds[1]));
        double before = Math.max(0, Math.max(bounds[2] - y, y - bounds[3]));
        double away = Math.max(fromRing, distance(beside, before)) - Math.sqrt(2) * half - unround;
        return profile.spares(height, away <= 0 ? 0 : away * away);
      }

      @Override
      public long tip(double x, double y, long floor) {
        return cutter.leavesFloor() ? floor : path.z0;
      }
    };
  }

  /**
   * How far from its axis the end of a tool, for certain, does not lie below a height.
   *
   * @param above how far the height is above the tip
   */
  static double reach(Cutter cutter, double above) {
    double corner = cutter.cornerPm();
    double below = corner - 2 - ROUNDING_SHARE * corner - Math.max(0, above);
    return below <= 0
        ? cutter.radiusPm()
        : Math.min(
            cutter.radiusPm(),
            cutter.flatRadiusPm() + Math.sqrt(corner * corner - below * below) + 2 * ROUNDING_PM);
  }

  /** Tells which heights the end of a tool doesn't reach, without roots where it can. */
  private static final class Profile {
    private final double flat;
    private final double corner2;
    private final double top;
    private final double outside2;
    private final double flat2;

    Profile(Cutter cutter, double lowest) {
      this.flat = cutter.flatRadiusPm();
      this.flat2 = flat * flat;
      double corner = cutter.cornerPm();
      this.corner2 = corner * corner;
      this.top = lowest + corner - 2 - ROUNDING_SHARE * corner;
      this.outside2 = cutter.radiusPm() * cutter.radiusPm() * (1 + ROUNDING_SHARE);
    }

    /** Whether the end lies above this height, or is not there, this far from the tip and more. */
    boolean spares(long height, double distance2) {
      if (distance2 > outside2) {
        return true;
      }
      double below = top - height;
      if (below <= 0 || distance2 <= flat2) {
        return false;
      }
      double out2 = distance2;
      if (flat > 0) {
        double out = Math.sqrt(distance2) - flat;
        out2 = out * out;
      }
      return out2 + below * below >= corner2;
    }
  }

  /** To the nearest picometre, halves upwards. */
  static long round(double heightPm) {
    return (long) Math.floor(heightPm + 0.5);
  }

  private static double distance(double dx, double dy) {
    return Math.sqrt(dx * dx + dy * dy);
  }

  /**
   * The lowest that the tool's end comes over a point while the tip goes straight from one point to
   * another. How far the tip then is ahead of the point depends on the point's distance across the
   * path alone: in closed form for flat and ball tools, for a corner radius from a short table.
   */
  private static final class Straight implements HeightGrid.Floor {
    private final Surface.Piece piece;
    private final Cutter cutter;
    private final double dx;
    private final double dy;
    private final double length;
    private final double slope;
    private final double sine;
    private final double[] aheads;
    private final double lowest;
    private final double spread;
    private final boolean ball;
    private final double radius2;

    /** A ball's tip is lowest over a point at most so far ahead or behind, and then some. */
    private final double lead;

    /** What lies farther behind the start than this is as low as the tool leaves it already. */
    private final double behind;

    private final Profile profile;

    Straight(Surface.Piece piece, Cutter cutter, double goesOnFromPm) {
      this.piece = piece;
      this.cutter = cutter;
      double runX = piece.x1() - piece.x0();
      double runY = piece.y1() - piece.y0();
      this.length = Math.sqrt(runX * runX + runY * runY);
      this.dx = length == 0 ? 1 : runX / length;
      this.dy = length == 0 ? 0 : runY / length;
      this.slope = length == 0 ? 0 : (piece.z1() - piece.z0()) / length;
      this.sine = slope / Math.sqrt(1 + slope * slope);
      this.lowest = Math.min(piece.z0(), piece.z1());
      this.spread = Math.abs(dx) + Math.abs(dy);
      this.profile = new Profile(cutter, lowest);
      this.ball = cutter.shape() == ToolShape.BALL;
      this.radius2 = cutter.radiusPm() * cutter.radiusPm();
      this.lead = (Math.abs(sine) + LEAD_SHARE) * cutter.radiusPm();
      this.behind = ball && length >= goesOnFromPm ? -lead : Double.NEGATIVE_INFINITY;
      this.aheads = slope != 0 && cutter.shape() == ToolShape.BULL ? searchAheads() : new double[0];
    }

    @Override
    public long at(double x, double y) {
      double px = x - piece.x0();
      double py = y - piece.y0();
      double qx = x - piece.x1();
      double qy = y - piece.y1();
      double fromStart2 = px * px + py * py;
      double fromEnd2 = qx * qx + qy * qy;
      if (length == 0) {
        return round(lowest + cutter.profileOfSquarePm(fromStart2));
      }
      double along = px * dx + py * dy;
      double across = py * dx - px * dy;
      double across2 = across * across;
      if (slope == 0) {
        // Never higher than at its ends: stretches that go on from one another agree there.
        double nearest2 = Math.min(fromStart2, fromEnd2);
        if (along > 0 && along < length) {
          nearest2 = Math.min(nearest2, across2);
        }
        return round(piece.z0() + cutter.profileOfSquarePm(nearest2));
      }
      if (ball && fromEnd2 <= radius2 && along - lead >= length) {
        return round(piece.z1() + cutter.profileOfSquarePm(fromEnd2));
      }
      if (ball && fromStart2 <= radius2 && along + lead <= 0) {
        return round(piece.z0() + cutter.profileOfSquarePm(fromStart2));
      }
      double wide = Math.sqrt(Math.max(0, radius2 - across2));
      long low = tip(clamp(along + ahead(Math.abs(across), wide), along, wide), along, across2);
      if (fromStart2 <= radius2) {
        low = Math.min(low, round(piece.z0() + cutter.profileOfSquarePm(fromStart2)));
      }
      if (fromEnd2 <= radius2) {
        low = Math.min(low, round(piece.z1() + cutter.profileOfSquarePm(fromEnd2)));
      }
      return low;
    }

    @Override
    public boolean spares(long height, double x, double y, double half) {
      if (height <= lowest) {
        return true;
      }
      double px = x - piece.x0();
      double py = y - piece.y0();
      double reach = half * spread + ROUNDING_PM;
      double along = px * dx + py * dy;
      if (along + reach <= behind) {
        return true;
      }
      double beyond = Math.max(0, Math.max(-along, along - length) - reach);
      double beside = Math.max(0, Math.abs(py * dx - px * dy) - reach);
      return profile.spares(height, beyond * beyond + beside * beside);
    }

    @Override
    public double begins() {
      return behind;
    }

    /** A ball cuts as deep as its tip beside the point; what has a floor as deep as that. */
    @Override
    public long tip(double x, double y, long floor) {
      if (cutter.leavesFloor()) {
        return floor;
      }
      if (length == 0) {
        return round(lowest);
      }
      double along = (x - piece.x0()) * dx + (y - piece.y0()) * dy;
      double z =
          along <= 0 ? piece.z0() : along >= length ? piece.z1() : piece.z0() + slope * along;
      return round(z);
    }

    /** How far ahead of a point the tip is when the tool is lowest over it. */
    private double ahead(double across, double wide) {
      return switch (cutter.shape()) {
        case FLAT -> -Math.signum(slope) * wide;
        case BALL -> -sine * wide;
        case BULL -> {
          double place = across / cutter.radiusPm() * (TABLE - 1);
          int below = (int) Math.max(0, Math.min(TABLE - 2, Math.floor(place)));
          yield aheads[below] + (aheads[below + 1] - aheads[below]) * (place - below);
        }
      };
    }

    /** For a corner radius: searched, as the height is convex along the way. */
    private double[] searchAheads() {
      double[] table = new double[TABLE];
      for (int k = 0; k < TABLE; k++) {
        double across = cutter.radiusPm() * k / (TABLE - 1);
        double wide =
            Math.sqrt(Math.max(0, cutter.radiusPm() * cutter.radiusPm() - across * across));
        double low = -wide;
        double high = wide;
        for (int n = 0; n < SEARCHES; n++) {
          double a = low + (high - low) / 3;
          double b = high - (high - low) / 3;
          if (slope * a + profile(a, across * across) <= slope * b + profile(b, across * across)) {
            high = b;
          } else {
            low = a;
          }
        }
        table[k] = (low + high) / 2;
      }
      return table;
    }

    /** A place of the tool on its way, no farther from the point than the reach. */
    private double clamp(double place, double along, double reach) {
      double nearest = Math.max(0, Math.min(length, along));
      double inside = Math.max(0, Math.min(length, place));
      return Math.abs(inside - along) <= reach + ROUNDING_PM ? inside : nearest;
    }

    private long tip(double place, double along, double across2) {
      double z =
          place <= 0 ? piece.z0() : place >= length ? piece.z1() : piece.z0() + slope * place;
      return round(z + profile(place - along, across2));
    }

    private double profile(double ahead, double across2) {
      return cutter.profileOfSquarePm(ahead * ahead + across2);
    }
  }
}
