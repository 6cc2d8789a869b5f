package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.ToolShape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What moves take, against closed forms of plane geometry. */
class RemovalTest {
  private static final double CELL_UM = 4;
  private static final double CELL_MM = CELL_UM / 1000;
  private static final double RADIUS_MM = 0.2;

  private static Bench bench() {
    return Bench.flat().cell(CELL_UM).stock();
  }

  @Test
  void aSlotHasTheAreaOfItsCapsule() {
    Bench bench = bench().g0(-1000, 0, 100).g1(-1000, 0, -10).g1(1000, 300, -10);
    Removal plunge = bench.cut(bench.line(-1)).removal();
    Removal slot = bench.last().removal();
    double disc = Math.PI * RADIUS_MM * RADIUS_MM;
    double length = StrictMath.hypot(2, 0.3);
    assertThat(plunge.areaMm2()).isCloseTo(disc, within(2 * Math.PI * RADIUS_MM * CELL_MM / 2));
    assertThat(slot.areaMm2()).isCloseTo(length * 2 * RADIUS_MM, within(length * CELL_MM));
    assertThat(slot.volumeMm3().orElseThrow()).isCloseTo(slot.areaMm2() * 0.01, within(1e-12));
    assertThat(slot.deepestPm()).isEqualTo(10_000_000);
    assertThat(slot.meanDepthPm().orElseThrow()).isCloseTo(1e7, within(1e-3));
    assertThat(slot.contactShare()).isEqualTo(1);
    EngagedArc arc = slot.widest().orElseThrow();
    assertThat(arc.leftMm()).isCloseTo(RADIUS_MM, within(CELL_MM));
    assertThat(arc.rightMm()).isCloseTo(-RADIUS_MM, within(CELL_MM));
  }

  @Test
  void whatIsRemovedIsMissing() {
    Bench bench =
        bench()
            .tool(2, ToolShape.BALL, 400, 0, 1.5)
            .g0(-1000, 0, 100)
            .g1(-1000, 0, -10)
            .g1(1000, 300, -14)
            .arc(500, 300, 200, -14)
            .change(2)
            .g0(0, -500, 100)
            .g1(0, -500, -30)
            .g1(300, 500, -40);
    double volume =
        bench.cuts().stream().mapToDouble(c -> c.removal().volumeMm3().orElseThrow()).sum();
    // Known to be possible: the two paths cross, and the ball cuts floors of the flat tool again.
    assertThat(bench.last().removal().volumeMm3().orElseThrow()).isPositive();
    Surface surface = bench.surface("G54");
    double missing = 0;
    int reach = (int) (2_000 / CELL_UM);
    for (int row = -reach; row < reach; row++) {
      for (int column = -reach; column < reach; column++) {
        missing -= surface.grid.height(column, row) / 1e9 * CELL_MM * CELL_MM;
      }
    }
    assertThat(volume).isCloseTo(missing, within(1e-9 * missing));
  }

  /** φ = arccos(1 − 2 a_e/D), exact plane geometry; textbook: Altintas. */
  @ParameterizedTest
  @ValueSource(doubles = {20, 50, 100, 150, 200, 300, 380})
  void besideAWallTheArcIsThatOfTheStepover(double radialUm) {
    Bench bench =
        bench().g0(-7000, 0, -10).g1(7000, 0, -10).g1(7000, radialUm, -10).g1(-7000, radialUm, -10);
    EngagedArc arc = bench.last().removal().widest().orElseThrow();
    double angle = StrictMath.acos(1 - 2 * radialUm / 400);
    // Going back along X, the fresh material stands on the right.
    assertThat(arc.rightMm()).isCloseTo(-RADIUS_MM, within(CELL_MM));
    double longest = arc.longest().toRad() - arc.longest().fromRad();
    assertThat(longest).isGreaterThanOrEqualTo(angle);
    assertThat(arc.toRad() - arc.fromRad())
        .isCloseTo(angle, within(1.5 * (longest - angle) + 1e-9));
    assertThat(RADIUS_MM + arc.leftMm()).isCloseTo(radialUm / 1000, within(CELL_MM));
  }

  /**
   * In a square inside corner, cut before with the same stepover, the arc grows by arccos(1 −
   * a_e/R) beyond the front: exact plane geometry, derived here.
   */
  @ParameterizedTest
  @ValueSource(doubles = {20, 50, 100})
  void anInsideCornerEngagesBeyondTheFront(double radialUm) {
    Bench bench =
        bench()
            .g0(-2000, -radialUm, -10)
            .g1(-radialUm, -radialUm, -10)
            .g1(-radialUm, -2000, -10)
            .g0(-2000, -radialUm, 100)
            .g0(-2000, 0, 100)
            .g1(-2000, 0, -10)
            .g1(0, 0, -10);
    EngagedArc arc = bench.last().removal().widest().orElseThrow();
    double beyond = StrictMath.acos(1 - radialUm / 1000 / RADIUS_MM);
    assertThat(arc.leftMm()).isCloseTo(RADIUS_MM, within(CELL_MM));
    assertThat(arc.toRad()).isCloseTo(Math.PI / 2 + beyond, within(0.05));
  }

  /**
   * Round an outside corner, cut before with the same stepover, the second side engages as much as
   * a straight wall: arccos(1 − 2 a_e/D) at most.
   */
  @ParameterizedTest
  @ValueSource(doubles = {20, 50, 100})
  void anOutsideCornerEngagesNoMoreThanTheWall(double radialUm) {
    double first = 1000 + radialUm;
    Bench bench =
        bench()
            .g0(-first, -first, -10)
            .g1(first, -first, -10)
            .g1(first, 2000, -10)
            .g0(first, 2000, 100)
            .g0(-1000, -1000, 100)
            .g1(-1000, -1000, -10)
            .g1(1000, -1000, -10)
            .g1(1000, 1000, -10);
    EngagedArc arc = bench.last().removal().widest().orElseThrow();
    double angle = StrictMath.acos(1 - 2 * radialUm / 400);
    assertThat(arc.leftMm()).isCloseTo(RADIUS_MM, within(CELL_MM));
    assertThat(arc.rightMm()).isCloseTo(RADIUS_MM - radialUm / 1000, within(CELL_MM));
    assertThat(arc.longest().toRad() - arc.longest().fromRad()).isGreaterThanOrEqualTo(angle);
  }

  /**
   * Where the wall ends in an outside corner, the front of the rim is out of it already: from u
   * before the corner on, arcsin(u/R) is left of the arc. Exact plane geometry, derived here.
   */
  @ParameterizedTest
  @CsvSource({"50, 100", "50, 60", "100, 160", "200, 120"})
  void beforeTheEndOfAWallTheArcShrinks(double radialUm, double beforeUm) {
    Bench bench =
        bench()
            .g0(-7000, 0, -10)
            .g1(7000, 0, -10)
            .g1(7000, radialUm, -10)
            .g1(-6000 + beforeUm, radialUm, -10)
            .g1(-6040 + beforeUm, radialUm, -10);
    EngagedArc arc = bench.last().removal().widest().orElseThrow();
    double left = beforeUm / 1000;
    assertThat(arc.rightMm()).isCloseTo(-RADIUS_MM, within(CELL_MM));
    assertThat(arc.leftMm())
        .isCloseTo(-Math.sqrt(RADIUS_MM * RADIUS_MM - left * left), within(2 * CELL_MM));
    assertThat(arc.toRad() - arc.fromRad())
        .isCloseTo(StrictMath.asin(left / RADIUS_MM), within(0.06));
  }

  /** On an arc of radius r the rim meets a strip of width a_e sooner inside than outside. */
  @ParameterizedTest
  @CsvSource({"1000, 50, 1", "1000, 50, -1", "400, 40, 1", "400, 40, -1"})
  void arcsMeetTheirStripByTheLawOfCosines(double arcUm, double radialUm, int outwards) {
    double before = arcUm - outwards * radialUm;
    Bench bench =
        bench()
            .g0(before, 0, -10)
            .arc(0, 0, 360, -10)
            .g0(before, 0, 100)
            .g0(arcUm, 0, 100)
            .g1(arcUm, 0, -10)
            .arc(0, 0, 300, -10);
    EngagedArc arc = bench.last().removal().widest().orElseThrow();
    // Rim and border of the strip meet where the border's radius is before ± R.
    double r = arcUm / 1000;
    double border = before / 1000 + outwards * RADIUS_MM;
    double cosine = (r * r + border * border - RADIUS_MM * RADIUS_MM) / (2 * r * border);
    double inner = r - border * cosine;
    double outer = -outwards * RADIUS_MM;
    assertThat(arc.leftMm()).isCloseTo(Math.max(inner, outer), within(2 * CELL_MM));
    assertThat(arc.rightMm()).isCloseTo(Math.min(inner, outer), within(2 * CELL_MM));
  }

  @Test
  void halfInAirIsHalfInContact() {
    Bench bench = bench().g0(-8000, 0, -10).g1(-4000, 0, -10);
    // From into stock that begins at X-6: the rim arrives a radius sooner.
    assertThat(bench.last().removal().contactShare()).isCloseTo(2.2 / 4, within(1.0 / 128));
  }

  @Test
  void crossingASlotIsSeenAsAGap() {
    Bench bench = bench().g0(0, -2000, -10).g1(0, 2000, -10).g0(0, 2000, 100);
    bench.g0(-1000, 0, 100).g1(-1000, 0, -10).g1(1000, 0, -10);
    // The slot is 0.4 mm wide. In front of the rim nothing stands while the rim lies within it.
    assertThat(bench.last().removal().contactShare()).isBetween(0.8, 0.95);
    assertThat(bench.last().removal().areaMm2()).isCloseTo(1.6 * 0.4, within(0.06));
  }

  @Test
  void nothingIsKnownOfMaterialWithoutTop() {
    Bench bench = Bench.flat().cell(CELL_UM).g0(0, 0, 0).g1(0, 0, -10).g1(500, 0, -10);
    assertThat(bench.last().removal().volumeMm3()).isEmpty();
    assertThat(bench.last().removal().areaMm2()).isCloseTo(0.5 * 0.4, within(0.01));
  }

  @Test
  void airTakesNothing() {
    assertThat(bench().g0(0, 0, 100).g1(500, 0, 100).last().removal()).isEqualTo(Removal.NONE);
  }
}
