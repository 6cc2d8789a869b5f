package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Move;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** How two surfaces differ: lanes of a flat tool of 400 µm, areas and heights done in the head. */
class SurfaceDifferenceTest {

  private static List<SurfaceLeft> left(Bench bench) {
    return bench.end().all(PartLeft.class).get(0).surfaces();
  }

  /** A lane of a millimetre along X at this height and Y. */
  private static Bench lane(Bench bench, double y, double z) {
    return bench.g0(0, y, 1000).g0(0, y, 5).g1(0, y, z).g1(1000, y, z).g0(1000, y, 1000);
  }

  private static SurfaceDifference only(Bench before, Bench after) {
    List<SurfaceDifference> all = SurfaceDifference.of(left(before), left(after));
    assertThat(all).hasSize(1);
    return all.get(0);
  }

  @Test
  void equalSurfacesAreNoDifference() {
    assertThat(
            SurfaceDifference.of(
                left(lane(Bench.flat().stock(), 0, -5)), left(lane(Bench.flat().stock(), 0, -5))))
        .isEmpty();
  }

  @Test
  void aDeeperLaneIsLowerOnItsWholeArea() {
    Bench before = lane(lane(Bench.flat().stock(), 0, -5), 1000, -5);
    Bench after = lane(lane(Bench.flat().stock(), 0, -5), 1000, -7.5);
    SurfaceDifference lower = only(before, after);
    assertThat(lower.offset()).isEqualTo("G54");
    assertThat(lower.largestPm()).isEqualTo(-2_500_000);
    assertThat(lower.beforePm()).isEqualTo(-5_000_000);
    assertThat(lower.afterPm()).isEqualTo(-7_500_000);
    // 1 mm by 0.4 mm, and a circle at its ends.
    assertThat(lower.differentMm2()).isCloseTo(0.4 + Math.PI * 0.04, within(0.01));
    assertThat(lower.otherwiseMm2()).isZero();
    assertThat(lower.bordersOnly()).isFalse();
    assertThat(lower.differs()).isTrue();
    // The first of the lowest row of cells: at the lane's lower border.
    assertThat(lower.yPm() / 1e6).isBetween(800.0, 830.0);
    assertThat(lower.xPm() / 1e6).isBetween(-200.0, 1200.0);
    SurfaceDifference higher =
        only(
            lane(lane(Bench.flat().stock(), 0, -5), 1000, -7.5),
            lane(lane(Bench.flat().stock(), 0, -5), 1000, -5));
    assertThat(higher.largestPm()).isEqualTo(2_500_000);
    assertThat(higher.differentMm2()).isEqualTo(lower.differentMm2());
  }

  @Test
  void theLargestOfSeveralIsTold() {
    Bench before = lane(lane(lane(Bench.flat().stock(), -1000, -5), 0, -5), 1000, -5);
    Bench after = lane(lane(lane(Bench.flat().stock(), -1000, -6), 0, -8), 1000, -4);
    SurfaceDifference difference = only(before, after);
    assertThat(difference.largestPm()).isEqualTo(-3_000_000);
    assertThat(difference.yPm() / 1e6).isBetween(-200.0, 200.0);
  }

  @Test
  void aLaneThatIsMissingIsHigherByItsDepth() {
    SurfaceDifference difference =
        only(lane(lane(Bench.flat().stock(), 0, -5), 1000, -5), lane(Bench.flat().stock(), 0, -5));
    assertThat(difference.largestPm()).isEqualTo(5_000_000);
    assertThat(difference.afterPm()).isZero();
  }

  @Test
  void bordersThatMoveByLessThanACellAreBordersOnly() {
    SurfaceDifference difference =
        only(lane(Bench.flat().stock(), 0, -5), lane(Bench.flat().stock(), 13, -5));
    assertThat(difference.bordersOnly()).isTrue();
    assertThat(difference.differentMm2()).isBetween(0.001, 0.1);
    assertThat(
            only(lane(Bench.flat().stock(), 0, -5), lane(Bench.flat().stock(), 60, -5))
                .bordersOnly())
        .isFalse();
  }

  @Test
  void whatIsCutThroughOnOneSideOnlyIsNoHeight() {
    Bench before = lane(lane(thin(), 0, -5), 1000, -20);
    Bench after = lane(lane(thin(), 0, -5), 1000, -5);
    SurfaceDifference difference = only(before, after);
    assertThat(difference.largestPm()).isZero();
    assertThat(difference.otherwiseMm2()).isEqualTo(difference.differentMm2());
    assertThat(difference.differentMm2()).isCloseTo(0.4 + Math.PI * 0.04, within(0.01));
  }

  private static Bench thin() {
    return Bench.flat().stock(-3000, 3000, -2000, 2000, 0, -10);
  }

  @Test
  void whatCannotBeHeldAgainstEachOtherSaysWhy() {
    SurfaceDifference stocks = only(lane(Bench.flat().stock(), 0, -5), lane(thin(), 0, -5));
    assertThat(stocks.notCompared()).contains("the stocks on the two sheets differ");
    assertThat(stocks.differs()).isTrue();
    assertThat(stocks.none()).isFalse();
    SurfaceDifference cells =
        only(lane(Bench.flat().stock(), 0, -5), lane(Bench.flat().cell(50).stock(), 0, -5));
    assertThat(cells.notCompared()).contains("the surfaces are kept in cells of different size");
    assertThat(cells.differs()).isFalse();
    assertThat(cells.none()).isFalse();
    SurfaceDifference lost = only(lane(Bench.flat().stock(), 0, -5), lost());
    assertThat(lost.notCompared().orElseThrow()).endsWith("in one program");
    assertThat(lost.differs()).isTrue();
    SurfaceDifference both = only(lost(), lost());
    assertThat(both.notCompared().orElseThrow()).endsWith("in both programs");
    assertThat(both.differs()).isFalse();
  }

  /** A feed move whose course is not known. */
  private static Bench lost() {
    return lane(Bench.flat().stock(), 0, -5)
        .g0(0, 0, -5)
        .move(Move.Kind.LINE, Double.NaN, Double.NaN, -5, Optional.empty())
        .move(Move.Kind.LINE, 100, 0, -5, Optional.empty());
  }

  @Test
  void anOffsetOfOneProgramOnlyIsTold() {
    Bench before = lane(Bench.flat(), 0, -5);
    Bench after = lane(lane(Bench.flat(), 0, -5).offset("G55"), 0, -5);
    SurfaceDifference added = only(before, after);
    assertThat(added.offset()).isEqualTo("G55");
    assertThat(added.notCompared().orElseThrow())
        .isEqualTo("nothing is known to be cut under this offset in the program before");
    assertThat(added.differs()).isTrue();
    assertThat(
            only(lane(lane(Bench.flat(), 0, -5).offset("G55"), 0, -5), lane(Bench.flat(), 0, -5))
                .notCompared()
                .orElseThrow())
        .endsWith("in the program after");
  }
}
