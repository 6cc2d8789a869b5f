package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.ToolShape;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Sections along random lines against the cells themselves. */
class SectionProperties {
  private static final int CELL_UM = 20;
  private static final double CELL = CELL_UM * 1e6;

  /**
   * Points of a section are left out where they lie within 2 pm of a line, so walls lean so far.
   */
  private static final double WALL_PM = 4;

  @Provide
  Arbitrary<List<Integer>> cuts() {
    return Arbitraries.integers().between(-120, 120).list().ofMinSize(4).ofMaxSize(24);
  }

  @Provide
  Arbitrary<SectionLine> lines() {
    Arbitrary<Long> any = Arbitraries.longs().between(-2_000_000_000L, 2_000_000_000L);
    // On borders of cells, and along an axis.
    Arbitrary<Long> onGrid = Arbitraries.longs().between(-90, 90).map(k -> k * (long) CELL);
    Arbitrary<SectionLine> oblique =
        Combinators.combine(any, any, any, any)
            .filter((a, b, c, d) -> !a.equals(c) || !b.equals(d))
            .as(SectionLine::new);
    Arbitrary<SectionLine> diagonal =
        Combinators.combine(onGrid, onGrid, Arbitraries.longs().between(1, 80))
            .as((a, b, n) -> new SectionLine(a, b, a + n * (long) CELL, b - n * (long) CELL));
    Arbitrary<SectionLine> alongX =
        Combinators.combine(any, any, any)
            .filter((a, b, c) -> !a.equals(c))
            .as((a, b, c) -> new SectionLine(a, b, c, b));
    Arbitrary<SectionLine> alongY =
        Combinators.combine(onGrid, any, any)
            .filter((a, b, c) -> !b.equals(c))
            .as((a, b, c) -> new SectionLine(a, b, a, c));
    return Arbitraries.oneOf(oblique, diagonal, alongX, alongY);
  }

  private static SurfaceLeft flats(List<Integer> cuts, boolean stock) {
    Bench bench = Bench.flat().cell(CELL_UM);
    if (stock) {
      bench.stock(-1110, 970, -1250, 1330, 0, -30);
    }
    bench.g0(0, 0, 50);
    for (int k = 0; k + 3 < cuts.size(); k += 4) {
      double z = -2 - Math.floorMod(cuts.get(k), 14);
      bench.g0(10.0 * cuts.get(k), 10.0 * cuts.get(k + 1), 50);
      bench.g1(10.0 * cuts.get(k), 10.0 * cuts.get(k + 1), z);
      bench.g1(10.0 * cuts.get(k + 2), 10.0 * cuts.get(k + 3), z);
      bench.g0(10.0 * cuts.get(k + 2), 10.0 * cuts.get(k + 3), 50);
    }
    bench.end();
    return bench.all(PartLeft.class).get(0).surfaces().get(0);
  }

  private static double height(Section section, double at) {
    List<Section.Point> points = section.points();
    for (int k = 1; k < points.size(); k++) {
      Section.Point a = points.get(k - 1);
      Section.Point b = points.get(k);
      if (a.distancePm() <= at && at <= b.distancePm() && b.distancePm() > a.distancePm()) {
        if (a.heightPm().isEmpty() || b.heightPm().isEmpty()) {
          return Double.NaN;
        }
        double f = (at - a.distancePm()) / (b.distancePm() - a.distancePm());
        return a.heightPm().getAsLong() + f * (b.heightPm().getAsLong() - a.heightPm().getAsLong());
      }
    }
    throw new AssertionError("nothing at " + at + " of " + points);
  }

  private static double toBorder(double coordinate) {
    double off = coordinate / CELL - Math.rint(coordinate / CELL);
    return Math.abs(off) * CELL;
  }

  @Property(tries = 300)
  void flatPartsHaveTheHeightOfTheCellEverywhere(
      @ForAll("cuts") List<Integer> cuts, @ForAll("lines") SectionLine line, @ForAll boolean box) {
    SurfaceLeft surface = flats(cuts, box);
    Section section = surface.section(line);
    assertThat(section.complete()).isTrue();
    double length = line.lengthPm();
    assertThat(section.points().get(0).distancePm()).isZero();
    assertThat(section.points().get(section.points().size() - 1).distancePm()).isEqualTo(length);
    for (int k = 0; k < 997; k++) {
      double at = length * (k + 0.5) / 997;
      double x = line.x0Pm() + (line.x1Pm() - line.x0Pm()) * (at / length);
      double y = line.y0Pm() + (line.y1Pm() - line.y0Pm()) * (at / length);
      boolean onBorder =
          (toBorder(x) < WALL_PM && line.x0Pm() != line.x1Pm())
              || (toBorder(y) < WALL_PM && line.y0Pm() != line.y1Pm());
      if (onBorder) {
        continue;
      }
      double shown = height(section, at);
      if (surface.heightPm(x, y).isEmpty()) {
        assertThat(shown).as("at %s", at).isNaN();
        Stands why = surface.standsAt(x, y);
        assertThat(section.gaps())
            .anyMatch(g -> g.fromPm() <= at && at <= g.toPm() && g.why() == why);
      } else {
        assertThat(shown).as("at %s", at).isEqualTo((double) surface.heightPm(x, y).getAsLong());
      }
    }
  }

  @Property(tries = 100)
  void contouredPartsPassThroughTheHeightsOfTheirCells(
      @ForAll("cuts") List<Integer> cuts, @ForAll("lines") SectionLine line) {
    Bench bench = Bench.flat().tool(2, ToolShape.BALL, 600, 0, 1).cell(CELL_UM);
    bench.stock(-1110, 970, -1250, 1330, 0, -300).change(2).g0(0, 0, 50);
    for (int k = 0; k + 3 < cuts.size(); k += 4) {
      bench.g0(10.0 * cuts.get(k), 10.0 * cuts.get(k + 1), 50);
      bench.g1(10.0 * cuts.get(k), 10.0 * cuts.get(k + 1), -20);
      bench.g1(10.0 * cuts.get(k + 2), 10.0 * cuts.get(k + 3), -40);
    }
    bench.end();
    SurfaceLeft surface = bench.all(PartLeft.class).get(0).surfaces().get(0);
    Section section = surface.section(line);
    double length = line.lengthPm();
    for (int k = 0; k < 997; k++) {
      double at = length * (k + 0.5) / 997;
      double shown = height(section, at);
      // Within a cell stands a cell at least as high, and one at most as high.
      double lowest = Double.POSITIVE_INFINITY;
      double highest = Double.NEGATIVE_INFINITY;
      boolean gap = false;
      double x = line.x0Pm() + (line.x1Pm() - line.x0Pm()) * (at / length);
      double y = line.y0Pm() + (line.y1Pm() - line.y0Pm()) * (at / length);
      for (int n = 0; n < 9; n++) {
        OptionalLong near = surface.heightPm(x + (n % 3 - 1) * CELL, y + (n / 3 - 1) * CELL);
        gap |= near.isEmpty();
        lowest = Math.min(lowest, near.isPresent() ? near.getAsLong() : lowest);
        highest = Math.max(highest, near.isPresent() ? near.getAsLong() : highest);
      }
      if (Double.isNaN(shown)) {
        assertThat(gap).isTrue();
      } else if (!gap) {
        assertThat(shown).isBetween(lowest - 2, highest + 2);
      }
    }
  }

  @Property(tries = 60)
  void backwardIsTheSameTurnedRound(
      @ForAll("cuts") List<Integer> cuts, @ForAll("lines") SectionLine line) {
    // Lines along borders of cells belong to the cell on one side, whichever way they run.
    SurfaceLeft surface = flats(cuts, true);
    Section there = surface.section(line);
    Section back =
        surface.section(new SectionLine(line.x1Pm(), line.y1Pm(), line.x0Pm(), line.y0Pm()));
    List<Section.Point> turned = new ArrayList<>(back.points());
    java.util.Collections.reverse(turned);
    boolean throughCorners =
        Math.abs(line.x1Pm() - line.x0Pm()) == Math.abs(line.y1Pm() - line.y0Pm());
    if (throughCorners) {
      return;
    }
    assertThat(turned)
        .extracting(Section.Point::heightPm)
        .isEqualTo(there.points().stream().map(Section.Point::heightPm).toList());
    for (int k = 0; k < turned.size(); k++) {
      assertThat(line.lengthPm() - turned.get(k).distancePm())
          .isEqualTo(there.points().get(k).distancePm(), within(2.0));
    }
  }
}
