package hairline.checks.stock;

import hairline.checks.cutting.Cusp;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Place;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolShape;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Finds the cusps left between passes of balls and corner radii under one offset. The height field
 * is too coarse for them; so they follow from the paths: two parallel stretches of one tool have
 * the highest point of their cusp where their circles cross (exact for straight passes, d apart
 * across their direction: h = R − √(R² − (d/2)²)). It is left if no other stretch that was cut
 * comes below it, whichever came first, so that what later passes finish does not count.
 *
 * <p>Passes farther apart than the radius are taken for grooves of their own, not for finishing.
 */
public final class Cusps {
  /** Most stretches kept. */
  static final int MOST_STRETCHES = 400_000;

  /** Most entries of stretches in squares. */
  static final int MOST_ENTRIES = 8_000_000;

  private static final double PM_PER_MM = 1e9;
  private static final double PM_PER_UM = 1e6;

  /** Chords leave an arc by 0.1 µm at most. */
  private static final double SAGITTA_PM = 1e5;

  private static final double MOST_CHORDS = 720;

  /** Longest stretch, in radii of its tool. */
  private static final double LONGEST = 8;

  /** Parallel: up to 3.6° (the distance is that at the place looked at). */
  private static final double PARALLEL = 0.998;

  /** What comes this part of the allowed height below a cusp has cut it off. */
  private static final double CUT_OFF_SHARE = 0.05;

  /** Of short moves some are looked at: one in this part of the radius. */
  private static final double STATION_SHARE = 0.25;

  /** Rounding: distances that are equal as written. */
  private static final double EQUAL_WITHIN = 1e-9;

  private final List<Stretch> stretches = new ArrayList<>();
  private final IdentityHashMap<Tool, Optional<Cutter>> cutters = new IdentityHashMap<>();
  private double sinceStation = Double.POSITIVE_INFINITY;
  private boolean full;

  /** A straight stretch of the tip's path in contact, in picometres. */
  private record Stretch(
      Point3 from,
      Point3 to,
      double length,
      Point3 direction,
      Cutter cutter,
      boolean judged,
      int stations,
      Place at,
      int operation,
      Tool tool) {
    Point3 way() {
      return to.minus(from);
    }

    /** How far along it a place lies. */
    double foot(Point3 at) {
      return (at.x() - from.x()) * direction.x()
          + (at.y() - from.y()) * direction.y()
          + (at.z() - from.z()) * direction.z();
    }

    boolean sameToolAs(Stretch other) {
      return cutter.shape() == other.cutter.shape()
          && Math.abs(cutter.radiusPm() - other.cutter.radiusPm()) <= 1
          && Math.abs(cutter.cornerPm() - other.cutter.cornerPm()) <= 1;
    }

    /** Whether the tool came this far below a point, or farther. */
    boolean cutsBelow(Point3 point, double byPm) {
      double reach = cutter.radiusPm() + length;
      double dx = point.x() - from.x();
      double dy = point.y() - from.y();
      if (dx * dx + dy * dy > reach * reach) {
        return false;
      }
      if (cutter.shape() == ToolShape.BALL) {
        Point3 below = new Point3(point.x(), point.y(), point.z() - cutter.radiusPm());
        Point3 tip = from.plus(way().times(below.minus(from).nearestOn(way())));
        if (below.minus(tip).norm() < cutter.radiusPm() - byPm) {
          return true;
        }
      }
      Point3 plan = new Point3(way().x(), way().y(), 0);
      Point3 tip = from.plus(way().times(point.minus(from).nearestOn(plan)));
      double aside = point.minus(tip).inPlan();
      return aside < cutter.radiusPm() - byPm
          && tip.z() + cutter.profilePm(aside) < point.z() - byPm;
    }
  }

  /** Whether a cut is one whose cusps count: a fine cut of a ball or a corner radius. */
  public static boolean counts(Cut cut) {
    return cut.inContact()
        && cut.fine()
        && cut.tool().flatMap(Cutter::of).filter(c -> c.cornerPm() > 0).isPresent();
  }

  /** Keeps a cut in contact; those of other tools too, which may cut cusps off. */
  public void add(Cut cut) {
    Optional<Cutter> cutter = cut.tool().flatMap(tool -> cutters.computeIfAbsent(tool, Cutter::of));
    if (full || cutter.isEmpty() || !cut.inContact() || !cut.move().to().knowsXyz()) {
      return;
    }
    Path path = Path.of(cut.move());
    double arcRadius = Math.max(path.straight() ? 0 : path.startRadius(), SAGITTA_PM);
    double pieces =
        path.straight()
            ? 1
            : Math.abs(path.sweep()) / (2 * StrictMath.acos(1 - SAGITTA_PM / arcRadius));
    double lengthPm = cut.move().lengthMm() * PM_PER_MM;
    pieces =
        Math.max(Math.min(pieces, MOST_CHORDS), lengthPm / (LONGEST * cutter.get().radiusPm()));
    int count = (int) Math.max(1, Math.ceil(pieces));
    if (stretches.size() + (double) count > MOST_STRETCHES) {
      full = true;
      return;
    }
    for (int k = 0; k < count; k++) {
      stretches.add(
          stretch(
              cut, cutter.get(), point(path, (double) k / count), point(path, (k + 1.0) / count)));
    }
  }

  private Stretch stretch(Cut cut, Cutter cutter, Point3 from, Point3 to) {
    boolean judged = cut.fine() && cutter.cornerPm() > 0;
    double length = to.minus(from).norm();
    double radius = cutter.radiusPm();
    sinceStation += length;
    int stations = 0;
    if (judged && sinceStation >= STATION_SHARE * radius && to.minus(from).inPlan() > 0) {
      stations = (int) Math.max(1, length / (2 * radius));
      sinceStation = 0;
    }
    return new Stretch(
        from,
        to,
        length,
        length == 0 ? new Point3(0, 0, 0) : to.minus(from).times(1 / length),
        cutter,
        judged,
        stations,
        cut.at(),
        cut.move().modes().operation(),
        cut.tool().orElseThrow());
  }

  private static Point3 point(Path path, double fraction) {
    return new Point3(
        path.at(Axis.X, fraction), path.at(Axis.Y, fraction), path.at(Axis.Z, fraction));
  }

  /**
   * Finds the cusps above a height.
   *
   * @param surface the surface left under the offset
   * @param limitUm allowed height, above 0
   * @param each takes the highest of each move that was cut later than its neighbour
   * @return false where the table is full and nothing can be told
   */
  public boolean find(SurfaceLeft surface, double limitUm, Consumer<CuspLeft> each) {
    Squares squares = new Squares(stretches);
    if (full || squares.full) {
      return false;
    }
    Lines lines = new Lines(stretches);
    double cutOffPm = CUT_OFF_SHARE * limitUm * PM_PER_UM;
    Optional<CuspLeft> highest = Optional.empty();
    for (int k = 0; k < stretches.size(); k++) {
      Stretch later = stretches.get(k);
      if (highest.isPresent() && !highest.get().at().equals(later.at)) {
        each.accept(highest.get());
        highest = Optional.empty();
      }
      if (later.stations == 0 || limitUm * PM_PER_UM > later.cutter.cornerPm()) {
        continue;
      }
      for (int n = 0; n < later.stations; n++) {
        Point3 at = later.from.plus(later.way().times((n + 0.5) / later.stations));
        int[] abreast = abreast(lines, squares.at(at), at);
        for (int other : abreast) {
          if (other < k) {
            int one = k;
            Optional<Found> found =
                cusp(later, stretches.get(other), at, limitUm)
                    .filter(f -> stands(f, surface))
                    .filter(f -> !cutOff(abreast, f.top, one, other, cutOffPm))
                    .filter(f -> !cutOff(squares.at(f.top), f.top, one, other, cutOffPm));
            if (found.isPresent()
                && highest.map(h -> found.get().left.heightUm() > h.heightUm()).orElse(true)) {
              highest = Optional.of(found.get().left);
            }
          }
        }
      }
    }
    highest.ifPresent(each);
    return true;
  }

  /**
   * Those of the stretches near a place that pass beside it; what cuts off a cusp mostly is among
   * them.
   */
  private static int[] abreast(Lines lines, int[] near, Point3 at) {
    int[] abreast = new int[near.length];
    int count = 0;
    for (int k : near) {
      if (lines.passesBeside(k, at)) {
        abreast[count++] = k;
      }
    }
    return Arrays.copyOf(abreast, count);
  }

  private record Found(Point3 top, CuspLeft left) {}

  /** The cusp of two stretches, if it is above the limit and they lie side by side. */
  private static Optional<Found> cusp(Stretch later, Stretch earlier, Point3 at, double limitUm) {
    double foot = earlier.foot(at);
    if (!earlier.judged || foot < 0 || foot > earlier.length || earlier.length == 0) {
      return Optional.empty();
    }
    Point3 along = earlier.direction;
    if (!later.sameToolAs(earlier) || Math.abs(along.dot(later.direction)) < PARALLEL) {
      return Optional.empty();
    }
    Point3 apart = earlier.from.plus(along.times(foot)).minus(at);
    double flat = 2 * later.cutter.flatRadiusPm();
    if (flat > 0 && (Math.abs(apart.z()) > 1 || Math.abs(along.z()) > 0)) {
      return Optional.empty();
    }
    double corner = later.cutter.cornerPm();
    double cornerMm = corner / PM_PER_MM;
    double aboveMm = (apart.inPlan() - flat) / PM_PER_MM;
    double apartMm = (apart.norm() - flat) / PM_PER_MM;
    double allowedMm = Cusp.stepoverMm(cornerMm, limitUm);
    if (apartMm <= allowedMm * (1 + EQUAL_WITHIN)
        || aboveMm > cornerMm
        || apartMm >= 2 * cornerMm) {
      return Optional.empty();
    }
    Point3 across = apart.times(1 / apart.norm());
    Point3 down = new Point3(0, 0, -1);
    down = down.minus(along.times(down.dot(along)));
    down = down.minus(across.times(down.dot(across)));
    double steep = down.norm();
    double half = apartMm / 2;
    double reach = StrictMath.sqrt(cornerMm * cornerMm - half * half) * PM_PER_MM;
    Point3 top =
        at.plus(apart.times(0.5)).plus(new Point3(0, 0, corner)).plus(down.times(reach / steep));
    // The lower half of the ball leaves a surface; above it the shank leaves a wall.
    if (!(steep > 0) || top.z() > at.z() + Math.min(0, apart.z()) + corner) {
      return Optional.empty();
    }
    return Optional.of(
        new Found(
            top,
            new CuspLeft(
                later.at,
                later.operation,
                later.tool,
                cornerMm,
                Cusp.heightUm(cornerMm, apartMm),
                apartMm,
                aboveMm,
                flat / PM_PER_MM)));
  }

  /** Whether there is material up to the cusp's top. */
  private static boolean stands(Found found, SurfaceLeft surface) {
    return surface.standsAt(found.top.x(), found.top.y()) == Stands.SURFACE
        && surface.stock().map(box -> found.top.z() <= box.topPm()).orElse(true);
  }

  /** Whether another stretch comes below a place. */
  private boolean cutOff(int[] near, Point3 top, int one, int other, double byPm) {
    for (int k : near) {
      if (k != one && k != other && stretches.get(k).cutsBelow(top, byPm)) {
        return true;
      }
    }
    return false;
  }

  /**
   * The lines of the stretches, one behind the other in memory: most of them are only passed by.
   */
  private static final class Lines {
    private static final int NUMBERS = 7;
    private final double[] numbers;

    Lines(List<Stretch> stretches) {
      numbers = new double[NUMBERS * stretches.size()];
      int at = 0;
      for (Stretch one : stretches) {
        numbers[at++] = one.from.x();
        numbers[at++] = one.from.y();
        numbers[at++] = one.from.z();
        numbers[at++] = one.direction.x();
        numbers[at++] = one.direction.y();
        numbers[at++] = one.direction.z();
        numbers[at++] = one.length;
      }
    }

    /** Whether the foot of a place on the line of a stretch lies on the stretch. */
    boolean passesBeside(int stretch, Point3 place) {
      int i = NUMBERS * stretch;
      double foot =
          (place.x() - numbers[i]) * numbers[i + 3]
              + (place.y() - numbers[i + 1]) * numbers[i + 4]
              + (place.z() - numbers[i + 2]) * numbers[i + 5];
      return foot >= 0 && foot <= numbers[i + 6];
    }
  }

  /** Which stretches may reach a place. */
  private static final class Squares {
    private static final int[] NONE = {};
    private final Map<Long, int[]> entries = new HashMap<>();
    private final Map<Long, Integer> counts = new HashMap<>();
    private final double side;
    private boolean full;

    Squares(List<Stretch> stretches) {
      side = stretches.stream().mapToDouble(s -> s.cutter.radiusPm()).min().orElse(1);
      long kept = 0;
      for (int k = 0; k < stretches.size() && !full; k++) {
        Stretch one = stretches.get(k);
        double reach = one.cutter.radiusPm() + farther(one.cutter);
        long lastColumn = index(Math.max(one.from.x(), one.to.x()) + reach);
        long lastRow = index(Math.max(one.from.y(), one.to.y()) + reach);
        for (long c = index(Math.min(one.from.x(), one.to.x()) - reach); c <= lastColumn; c++) {
          for (long r = index(Math.min(one.from.y(), one.to.y()) - reach); r <= lastRow; r++) {
            if (++kept > MOST_ENTRIES) {
              full = true;
              return;
            }
            add(key(c, r), k);
          }
        }
      }
      counts.forEach(
          (key, count) -> entries.computeIfPresent(key, (k, a) -> Arrays.copyOf(a, count)));
      counts.clear();
    }

    /** Passes of a bull mill stand side by side up to its flat and a corner apart. */
    private static double farther(Cutter cutter) {
      return cutter.cornerPm() > 0 ? cutter.flatRadiusPm() : 0;
    }

    private void add(long key, int stretch) {
      int count = counts.merge(key, 1, Integer::sum) - 1;
      int[] held = entries.getOrDefault(key, NONE);
      if (count >= held.length) {
        held = Arrays.copyOf(held, Math.max(4, 2 * count));
        entries.put(key, held);
      }
      held[count] = stretch;
    }

    int[] at(Point3 place) {
      return entries.getOrDefault(key(index(place.x()), index(place.y())), NONE);
    }

    private long index(double coordinate) {
      return (long) Math.floor(coordinate / side);
    }

    private static long key(long column, long row) {
      return (column << 32) | (row & 0xFFFF_FFFFL);
    }
  }
}
