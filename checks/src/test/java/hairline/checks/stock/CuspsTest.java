package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.ToolShape;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Cusps between passes of a ball of 200 µm radius: two circles d apart cross h = R − √(R² − (d/2)²)
 * above their lowest points (plane geometry).
 */
class CuspsTest {
  private static final double R = 200;

  private static double height(double apart) {
    return R - Math.sqrt(R * R - apart * apart / 4);
  }

  private static Bench ball() {
    return new Bench().tool(1, ToolShape.BALL, 400, 0, 1.5).stock().change(1);
  }

  /** A pass along X at a depth of 5 µm, which reaches 44 µm aside. */
  private static Bench pass(Bench bench, double y) {
    return pass(bench, y, -5);
  }

  private static Bench pass(Bench bench, double y, double z) {
    return bench.g0(0, y, 1000).g0(0, y, 5).g1(0, y, z).g1(1000, y, z).g0(1000, y, 1000);
  }

  private static List<CuspLeft> cusps(Bench bench, double limitUm) {
    SurfaceLeft surface = bench.end().all(PartLeft.class).get(0).surfaces().get(0);
    Cusps cusps = new Cusps();
    bench.cuts().forEach(cusps::add);
    List<CuspLeft> found = new ArrayList<>();
    assertThat(cusps.find(surface, limitUm, found::add)).isTrue();
    return found;
  }

  @Test
  void theCuspOfTwoPassesFollowsFromTheirDistance() {
    for (double apart : new double[] {20, 40, 80}) {
      double h = height(apart);
      List<CuspLeft> found = cusps(pass(pass(ball(), 0), apart), 0.9 * h);
      assertThat(found).as("%s µm apart", apart).hasSize(1);
      CuspLeft cusp = found.get(0);
      assertThat(cusp.heightUm()).isCloseTo(h, within(1e-9));
      // The second pass begins on line 7: five blocks a pass, the first of them on line 2.
      assertThat(cusp.at().line()).isEqualTo(10);
      assertThat(cusps(pass(pass(ball(), 0), apart), 1.1 * h)).isEmpty();
    }
  }

  @Test
  void theOrderOfPassesAndTheirDirectionDoNotCount() {
    Bench back =
        ball()
            .g0(0, 40, 5)
            .g1(0, 40, -5)
            .g1(1000, 40, -5)
            .g0(1000, 40, 5)
            .g0(1000, 0, 5)
            .g1(1000, 0, -5)
            .g1(0, 0, -5)
            .g0(0, 0, 1000);
    List<CuspLeft> found = cusps(back, 0.5);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).heightUm()).isCloseTo(height(40), within(1e-9));
  }

  @Test
  void aPassBetweenCutsTheCuspOff() {
    double between = height(20);
    for (double[] order : new double[][] {{0, 40, 20}, {0, 20, 40}, {20, 0, 40}}) {
      Bench bench = ball();
      for (double y : order) {
        pass(bench, y);
      }
      assertThat(cusps(bench, 1.2 * between)).isEmpty();
      Bench again = ball();
      for (double y : order) {
        pass(again, y);
      }
      assertThat(cusps(again, 0.8 * between))
          .isNotEmpty()
          .allSatisfy(c -> assertThat(c.heightUm()).isCloseTo(between, within(1e-9)));
    }
  }

  @Test
  void whatAnotherToolMillsOffIsGone() {
    Bench bench =
        new Bench()
            .tool(1, ToolShape.BALL, 400, 0, 1.5)
            .tool(2, ToolShape.FLAT, 400, 0, 1.5)
            .stock()
            .change(1);
    pass(pass(bench, 0), 40).change(2);
    assertThat(cusps(pass(bench, 20), 0.5)).isEmpty();
  }

  @Test
  void groovesOfTheirOwnAndPassesThatCrossHaveNone() {
    Bench wide = ball().fineStep(60);
    assertThat(cusps(pass(pass(wide, 0, -40), 201, -40), 0.5)).isEmpty();
    Bench close = ball().fineStep(60);
    assertThat(cusps(pass(pass(close, 0, -40), 199, -40), 0.5)).hasSize(1);
    // So far apart that at this depth uncut stock stands between them.
    assertThat(cusps(pass(pass(ball(), 0), 120), 0.5)).isEmpty();
    Bench crossing =
        pass(ball(), 0).g0(500, -500, 5).g1(500, -500, -5).g1(500, 500, -5).g0(500, 500, 1000);
    assertThat(cusps(crossing, 0.5)).isEmpty();
  }

  @Test
  void onASlopeTheDistanceAcrossCounts() {
    // Passes along X, the second one 40 µm aside and 9 µm higher: 41 µm apart.
    Bench bench = ball().fineStep(60);
    List<CuspLeft> found = cusps(pass(pass(bench, 0, -45), 40, -36), 0.5);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).heightUm()).isCloseTo(height(41), within(1e-9));
    assertThat(found.get(0).apartMm()).isCloseTo(0.041, within(1e-12));
    assertThat(found.get(0).apartAboveMm()).isCloseTo(0.04, within(1e-12));
    // So steep that where they cross lies above the stock: 40 aside, 30 higher.
    Bench steep = ball().fineStep(60);
    assertThat(cusps(pass(pass(steep, 0, -45), 40, -15), 0.5)).isEmpty();
  }

  @Test
  void aCornerRadiusHasItsFlatBetween() {
    // Radius 200 µm of which 50 µm are the corner: flat up to 300 µm apart.
    double corner = 50;
    double h = corner - Math.sqrt(corner * corner - 20 * 20 / 4.0);
    Bench bench = new Bench().tool(1, ToolShape.BULL, 400, 50, 1.5).stock().change(1);
    List<CuspLeft> found = cusps(pass(pass(bench, 0), 320), 0.9 * h);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).heightUm()).isCloseTo(h, within(1e-9));
    Bench flat = new Bench().tool(1, ToolShape.BULL, 400, 50, 1.5).stock().change(1);
    assertThat(cusps(pass(pass(flat, 0), 300), 0.1)).isEmpty();
  }

  @Test
  void onlyFineCutsOfRoundToolsCount() {
    Bench bench = pass(pass(ball(), 0), 40);
    assertThat(bench.cuts().stream().filter(Cusps::counts)).isNotEmpty();
    assertThat(pass(Bench.flat().stock(), 0).cuts().stream().filter(Cusps::counts)).isEmpty();
    Bench rough = ball().g0(0, 0, 5).g1(0, 0, -100).g1(1000, 0, -100).g0(1000, 0, 5);
    assertThat(rough.cuts().stream().filter(Cusps::counts)).isEmpty();
  }
}
