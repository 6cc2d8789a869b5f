package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.EndMill.Shape;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class ToothLoadTest {

  private static final Band EDGE = Band.ofExact(1.5);
  private static final EndMill FLAT = mill(Shape.FLAT, 0.5, 0, Optional.empty());

  private static EndMill mill(Shape shape, double diameter, double corner, Optional<Band> runout) {
    return new EndMill(shape, diameter, corner, 2, Optional.of(EDGE), runout);
  }

  // D 0.5, a_e 0.05, f_z 4 µm: h_max 2.4000, recomputed independently.
  @Test
  void chipOfAFlatTool() {
    ToothLoad load = new ToothLoad(FLAT, 0.1, 4, FLAT.besideWall(0.05, 0.1));
    assertThat(load.chipUm().typical()).isCloseTo(2.4, within(5e-5));
    assertThat(load.chipUm().isExact()).isTrue();
    assertThat(load.chipWithRunoutUm()).isEqualTo(load.chipUm());
    assertThat(load.radialFeedUm()).isCloseTo(2.4, within(5e-5));
  }

  @Test
  void runoutIsCountedIn() {
    EndMill mill = mill(Shape.FLAT, 0.5, 0, Optional.of(new Band(0.5, 1, 3)));
    ToothLoad load = new ToothLoad(mill, 0.1, 4, mill.besideWall(0.05, 0.1));
    // Smaller of f_z sin φ + reading and 2 f_z sin φ.
    assertThat(load.chipWithRunoutUm().low()).isCloseTo(2.9, within(5e-5));
    assertThat(load.chipWithRunoutUm().typical()).isCloseTo(3.4, within(5e-5));
    assertThat(load.chipWithRunoutUm().high()).isCloseTo(4.8, within(5e-5));
    assertThat(load.chipUm().typical()).isCloseTo(2.4, within(5e-5));
  }

  @Test
  void belowTheEdgeRadiusTheChipIsThinner() {
    // a_p 0.3 µm on an edge of 1.5 µm: cos κ = 0.8, sin κ = 0.6.
    ToothLoad load = new ToothLoad(FLAT, 0.0003, 4, Engagement.slot());
    assertThat(load.chipUm().typical()).isCloseTo(2.4, within(1e-9));
    // An edge known as a band gives a chip known as a band.
    EndMill vague =
        new EndMill(Shape.FLAT, 0.5, 0, 2, Optional.of(new Band(0.2, 1.5, 3)), Optional.empty());
    Band chip = new ToothLoad(vague, 0.0003, 4, Engagement.slot()).chipUm();
    assertThat(chip.high()).isEqualTo(4);
    assertThat(chip.typical()).isCloseTo(2.4, within(1e-9));
    assertThat(chip.low()).isCloseTo(4 * StrictMath.sqrt(0.19), within(1e-9));
  }

  @Test
  void theLargerOfCornerAndEdgeRadiusCounts() {
    EndMill rounded = mill(Shape.FLAT, 0.5, 0.005, Optional.empty());
    // r_c 5 µm, a_p 1 µm: sin κ 0.60.
    assertThat(rounded.sinKappa(0.001).typical()).isCloseTo(0.6, within(1e-12));
    EndMill sharp = new EndMill(Shape.FLAT, 0.5, 0, 2, Optional.empty(), Optional.empty());
    assertThat(sharp.sinKappa(0.001)).isEqualTo(Band.ofExact(1));
  }

  @Test
  void ballAndBullCutAtTheirDepth() {
    EndMill ball = mill(Shape.BALL, 0.5, 0, Optional.empty());
    assertThat(ball.effectiveDiameterMm(0.02)).isCloseTo(0.19596, within(5e-6));
    assertThat(StrictMath.toDegrees(StrictMath.asin(ball.sinKappa(0.02).typical())))
        .isCloseTo(23.07, within(5e-3));
    EndMill bull = mill(Shape.BULL, 1, 0.1, Optional.empty());
    assertThat(bull.effectiveDiameterMm(0.02)).isCloseTo(0.92, within(5e-6));
    assertThat(StrictMath.toDegrees(StrictMath.asin(bull.sinKappa(0.02).typical())))
        .isCloseTo(36.87, within(5e-3));
    EndMill flat = mill(Shape.FLAT, 1, 0.1, Optional.empty());
    assertThat(flat.effectiveDiameterMm(0.02)).isEqualTo(1);
    // The engagement of a ball counts over its effective diameter.
    assertThat(ball.besideWall(0.19596 / 2, 0.02).angleDeg()).isCloseTo(90, within(0.01));
    assertThat(ball.besideWall(0.2, 0.02).isSlot()).isTrue();
  }

  @Test
  void aBullRoundedToHalfItsDiameterIsABall() {
    EndMill ball = mill(Shape.BALL, 0.5, 0, Optional.empty());
    EndMill bull = mill(Shape.BULL, 0.5, 0.25, Optional.empty());
    assertThat(bull.effectiveDiameterMm(0.02)).isEqualTo(ball.effectiveDiameterMm(0.02));
    assertThat(bull.sinKappa(0.02)).isEqualTo(ball.sinKappa(0.02));
    assertThat(bull.floorRadiusMm()).isZero();
  }

  @Test
  void flatPartOfTheEndFace() {
    assertThat(FLAT.floorRadiusMm()).isEqualTo(0.25);
    assertThat(mill(Shape.BULL, 1, 0.1, Optional.empty()).floorRadiusMm()).isEqualTo(0.4);
    assertThat(mill(Shape.BALL, 0.5, 0, Optional.empty()).floorRadiusMm()).isEqualTo(0);
  }

  @Test
  void minimumChipNeedsTheEdgeRadius() {
    ToothLoad load = new ToothLoad(FLAT, 0.1, 4, Engagement.slot());
    assertThat(load.minimumChipUm(new Band(0.2, 0.3, 0.4)).orElseThrow().typical())
        .isCloseTo(0.45, within(1e-12));
    EndMill unknown = new EndMill(Shape.FLAT, 0.5, 0, 2, Optional.empty(), Optional.empty());
    assertThat(new ToothLoad(unknown, 0.1, 4, Engagement.slot()).minimumChipUm(EDGE)).isEmpty();
  }

  /** C45 (2220, 0.14): 1.2398 N by the formula, recomputed independently. */
  @Test
  void peakForceTakesTheMostLoadedTooth() {
    Kienzle c45 = Kienzle.ofExact(2220, 0.14);
    ToothLoad calm = new ToothLoad(FLAT, 0.1, 4, FLAT.besideWall(0.05, 0.1));
    CuttingForce.Cutting force =
        (CuttingForce.Cutting) calm.peakForce(c45, calm.minimumChipUm(Band.ofExact(0.3)));
    assertThat(force.tangentialN().low()).isCloseTo(1.2398, within(5e-5));

    EndMill running = mill(Shape.FLAT, 0.5, 0, Optional.of(Band.ofExact(1)));
    CuttingForce.Cutting more =
        (CuttingForce.Cutting)
            new ToothLoad(running, 0.1, 4, running.besideWall(0.05, 0.1))
                .peakForce(c45, Optional.empty());
    assertThat(more.tangentialN().low())
        .isCloseTo(2220 * 0.1 * StrictMath.pow(0.0034, 0.86), within(1e-4));
    assertThat(more.chipUm().typical()).isCloseTo(3.4, within(5e-5));
  }

  @Test
  void aChipBelowTheMinimumPloughs() {
    ToothLoad load = new ToothLoad(FLAT, 0.1, 0.4, Engagement.slot());
    assertThat(load.peakForce(Kienzle.ofExact(2220, 0.14), load.minimumChipUm(Band.ofExact(0.3))))
        .isInstanceOf(CuttingForce.Ploughing.class);
  }

  @Property
  void theFeedThatWouldDoDoes(
      @ForAll @Scale(3) @DoubleRange(min = 0.01, max = 3) double wanted,
      @ForAll @Scale(3) @DoubleRange(min = 0, max = 4) double reading,
      @ForAll @IntRange(min = 1, max = 6) int flutes,
      @ForAll @Scale(3) @DoubleRange(min = 0.01, max = 0.6) double stepover) {
    EndMill mill =
        new EndMill(
            Shape.FLAT, 0.5, 0, flutes, Optional.of(EDGE), Optional.of(Band.ofExact(reading)));
    double depth = 0.0005;
    Engagement arc = mill.besideWall(stepover, depth);
    double feed = new ToothLoad(mill, depth, 1, arc).feedPerToothForChipUm(wanted);
    assertThat(new ToothLoad(mill, depth, feed, arc).chipWithRunoutUm().typical())
        .isCloseTo(wanted, within(1e-9));
    assertThat(new ToothLoad(mill, depth, feed * 0.99, arc).chipWithRunoutUm().typical())
        .isLessThan(wanted);
  }

  @Test
  void refusesWhatNoPassHas() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ToothLoad(FLAT, 0, 1, Engagement.slot()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ToothLoad(FLAT, 1, 0, Engagement.slot()));
    ToothLoad load = new ToothLoad(FLAT, 1, 1, Engagement.slot());
    assertThatIllegalArgumentException().isThrownBy(() -> load.feedPerToothForChipUm(-1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> mill(Shape.BULL, 1, 0.51, Optional.empty()))
        .withMessageContaining("corner radius");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> mill(Shape.BULL, 1, -0.1, Optional.empty()));
    assertThatIllegalArgumentException().isThrownBy(() -> mill(Shape.FLAT, 0, 0, Optional.empty()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> mill(Shape.FLAT, 1, 0, Optional.of(new Band(-1, 0, 1))));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new EndMill(Shape.FLAT, 1, 0, 0, Optional.empty(), Optional.empty()));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new EndMill(Shape.FLAT, 1, 0, 2, Optional.of(Band.ofExact(0)), Optional.empty()));
  }

  @Test
  void aChipBelowZeroIsRefused() {
    ToothLoad load = new ToothLoad(FLAT, 0.1, 4, Engagement.slot());
    assertThatIllegalArgumentException().isThrownBy(() -> load.feedPerToothForChipUm(-0.1));
    assertThat(load.feedPerToothForChipUm(0)).isZero();
  }
}
