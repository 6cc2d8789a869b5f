package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.setup.ToolShape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Repeats of a path: deliberate, and told apart from thin cuts. */
class SpringPassTest {

  private static Bench contour(Bench bench, double out, double z) {
    bench.g0(-500 - out, -500 - out, 50).g1(-500 - out, -500 - out, z);
    return bench
        .g1(500 + out, -500 - out, z)
        .g1(500 + out, 500 + out, z)
        .g1(-500 - out, 500 + out, z)
        .g1(-500 - out, -500 - out, z)
        .g0(0, 0, 50);
  }

  private static PassEnded levelPass(Bench bench, int k) {
    return bench.all(PassEnded.class).stream().filter(p -> p.levelId() > 0).toList().get(k);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.1, 0.5, 1.5, -1.5})
  void aContourRepeatedWithinTheEdgeRadiusIsASpringPass(double out) {
    Bench bench = contour(contour(Bench.flat().stock(), 0, -4), out, -4).end();
    PassEnded first = levelPass(bench, 0);
    PassEnded second = levelPass(bench, 1);
    assertThat(first.spring()).isFalse();
    assertThat(second.spring()).isTrue();
    assertThat(second.levelId()).isEqualTo(first.levelId());
    assertThat(second.stepDownPm()).isEmpty();
    assertThat(second.fine()).isTrue();
    for (Cut cut : bench.cuts()) {
      if (cut.passId() == second.passId()) {
        assertThat(cut.contact()).isEqualTo(Contact.YES);
        assertThat(cut.spring()).isTrue();
        assertThat(cut.stepDowns()).isEmpty();
        assertThat(cut.surfacePartlyUnknown()).isFalse();
        assertThat(cut.radialMm()).isEmpty();
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.6, 4, 10})
  void aContourMovedOutBeyondTheEdgeRadiusCutsThatMuch(double out) {
    Bench bench = contour(contour(Bench.flat().stock(), 0, -4), out, -4).end();
    PassEnded second = levelPass(bench, 1);
    assertThat(second.spring()).isFalse();
    Cut side =
        bench.cuts().stream().filter(c -> c.passId() == second.passId()).findFirst().orElseThrow();
    assertThat(side.radialMm().getAsDouble()).isEqualTo(out / 1000);
    assertThat(side.materialSide()).contains(Side.RIGHT);
    assertThat(Bench.um(side)).containsExactly(4.0);
  }

  @Test
  void theRepeatMayRunBackwardsAndInOtherBlocks() {
    Bench bench = contour(Bench.flat().stock(), 0, -4).g0(-500, -500, 50).g1(-500, -500, -4);
    bench.g1(-500, -100, -4);
    assertThat(bench.last().spring()).isTrue();
    bench.g1(-500, 500, -4).g1(300, 500, -4);
    assertThat(bench.last().spring()).isTrue();
    bench.g1(500, 500, -4).g1(500, -500, -4).g1(-500, -500, -4);
    assertThat(bench.last().spring()).isTrue();
  }

  @Test
  void arcsAreRepeatedToo() {
    Bench bench = Bench.flat().stock().g0(1000, 0, 50).g1(1000, 0, -4).arc(0, 0, 360, -4);
    bench.arc(0, 0, 360, -4);
    assertThat(bench.last().spring()).isTrue();
    bench.arc(0, 0, -90, -4);
    assertThat(bench.last().spring()).isTrue();
  }

  @Test
  void deeperIsNoSpringPass() {
    Bench bench = contour(contour(Bench.flat().stock(), 0, -4), 0, -4.1);
    assertThat(levelPass(bench, 1).spring()).isFalse();
    assertThat(levelPass(bench, 1).stepDownPm()).hasValue(100_000);
  }

  @Test
  void anotherToolsPathIsNoRepeat() {
    Bench bench = Bench.flat().tool(2, ToolShape.FLAT, 402, 0, 1.5).stock();
    contour(bench, 0, -4).change(2);
    contour(bench, 0, -4).end();
    PassEnded second = levelPass(bench, 1);
    assertThat(second.spring()).isFalse();
  }

  @Test
  void withoutAnEdgeRadiusOnlyExactRepeatsCount() {
    Bench bench = new Bench().tool(1, ToolShape.FLAT, 400, 0, 0).change(1).stock();
    contour(contour(contour(bench, 0, -4), 0, -4), 0.1, -4).end();
    assertThat(bench.all(PassEnded.class))
        .filteredOn(p -> p.levelId() > 0)
        .extracting(PassEnded::spring)
        .containsExactly(false, true, false);
  }

  @Test
  void aRepeatWhereTheFloorWasLoweredSinceIsInAir() {
    Bench bench = contour(contour(Bench.flat().stock(), 0, -4), 0, -8);
    bench.g0(-500, -500, 50).g1(-500, -500, -4).g1(500, -500, -4);
    assertThat(bench.last().contact()).isEqualTo(Contact.NO);
    assertThat(bench.last().spring()).isFalse();
  }

  @Test
  void aSpringPassOverARoughLevelIsNoFineCut() {
    Bench bench = contour(contour(Bench.flat().stock(), 0, -100), 0, -100);
    assertThat(levelPass(bench, 1).spring()).isTrue();
    assertThat(levelPass(bench, 1).fine()).isFalse();
  }
}
