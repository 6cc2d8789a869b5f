package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.ToolBeam.Part;
import hairline.checks.cutting.ToolBeam.Segment;
import hairline.checks.cutting.ToolBody.Neck;
import hairline.checks.cutting.ToolBody.Shank;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class ToolBodyTest {

  private static final Shank SHANK = new Shank(3, 10.5);
  private static final ToolBody NECKED =
      new ToolBody(0.5, 1, Optional.of(new Neck(0.47, 4)), 5.5, SHANK);

  /** The stepped example: D 0.5 counts as 0.40; 21.602 µm, recomputed independently. */
  @Test
  void fluteNeckConeShank() {
    assertThat(NECKED.beam().segments())
        .containsExactly(
            new Segment(Part.FLUTE, 0, 1, 0.4, 0.4),
            new Segment(Part.NECK, 1, 4, 0.47, 0.47),
            new Segment(Part.CONE, 4, 9.5, 0.47, 3),
            new Segment(Part.SHANK, 9.5, 20, 3, 3));
    assertThat(NECKED.beam().deflectionUmPerN(0, 580)).isCloseTo(21.602, within(5e-4));
  }

  @Test
  void aNeckThinnerThanTheFluteRulesTheFlute() {
    ToolBody body = new ToolBody(0.5, 1, Optional.of(new Neck(0.35, 4)), 5.5, SHANK);
    assertThat(body.beam().segments().get(0)).isEqualTo(new Segment(Part.FLUTE, 0, 1, 0.35, 0.35));
  }

  @Test
  void withoutNeckOrCone() {
    assertThat(new ToolBody(3, 8, Optional.empty(), 4, new Shank(6, 10)).beam().segments())
        .containsExactly(
            new Segment(Part.FLUTE, 0, 8, 3 * 0.8, 3 * 0.8),
            new Segment(Part.CONE, 8, 12, 3 * 0.8, 6),
            new Segment(Part.SHANK, 12, 22, 6, 6));
    assertThat(new ToolBody(3, 8, Optional.empty(), 0, new Shank(6, 10)).beam().segments())
        .extracting(Segment::part)
        .containsExactly(Part.FLUTE, Part.SHANK);
    assertThat(new ToolBody(3, 8, Optional.empty(), 0, new Shank(6, 0)).beam().segments())
        .extracting(Segment::part)
        .containsExactly(Part.FLUTE);
    // A neck as long as the flutes is none.
    assertThat(
            new ToolBody(3, 8, Optional.of(new Neck(2.8, 8)), 4, new Shank(6, 10))
                .beam()
                .segments())
        .extracting(Segment::part)
        .containsExactly(Part.FLUTE, Part.CONE, Part.SHANK);
  }

  @Test
  void refusesWhatNoToolHas() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ToolBody(0.5, 1, Optional.of(new Neck(0.47, 0.9)), 5.5, SHANK))
        .withMessage("neck length is 0.9, it must reach the cutting length 1.0 at least");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ToolBody(0, 1, Optional.empty(), 1, SHANK));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ToolBody(1, 0, Optional.empty(), 1, SHANK));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ToolBody(1, 1, Optional.empty(), -1, SHANK));
    assertThatIllegalArgumentException().isThrownBy(() -> new Neck(0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Neck(1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> new Shank(0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Shank(1, -1));
  }

  @Test
  void theForceActsAtHalfTheDepthOfWhatCuts() {
    assertThat(NECKED.forceAtMm(0.1)).isEqualTo(0.05);
    assertThat(NECKED.forceAtMm(1)).isEqualTo(0.5);
    assertThat(NECKED.forceAtMm(100)).isEqualTo(0.5);
    assertThatIllegalArgumentException().isThrownBy(() -> NECKED.forceAtMm(0));
  }

  @Test
  void theLongestNeckIsTheOneAtTheLimit() {
    ToDoubleFunction<ToolBeam> flex = beam -> beam.deflectionUmPerN(0, 580);
    double longest = NECKED.longestNeckMm(flex, 10).orElseThrow();
    assertThat(longest).isBetween(1.0, 4.0);
    assertThat(flex.applyAsDouble(withNeck(longest).beam())).isCloseTo(10, within(1e-9));
    assertThat(flex.applyAsDouble(withNeck(longest + 1e-6).beam())).isGreaterThan(10);
  }

  @Test
  void theLongestNeckIsThePresentOneWhereThatDoes() {
    assertThat(NECKED.longestNeckMm(beam -> beam.deflectionUmPerN(0, 580), 22)).hasValue(4);
  }

  @Test
  void noNeckDoesWhereEvenTheShortestFlexesTooMuch() {
    ToDoubleFunction<ToolBeam> flex = beam -> beam.deflectionUmPerN(0, 580);
    double shortest = flex.applyAsDouble(withNeck(1).beam());
    assertThat(NECKED.longestNeckMm(flex, shortest * 0.999)).isEmpty();
    assertThat(NECKED.longestNeckMm(flex, shortest).orElseThrow()).isCloseTo(1, within(1e-6));
    assertThat(new ToolBody(3, 8, Optional.empty(), 4, SHANK).longestNeckMm(flex, 1000)).isEmpty();
  }

  private static ToolBody withNeck(double lengthMm) {
    return new ToolBody(0.5, 1, Optional.of(new Neck(0.47, lengthMm)), 5.5, SHANK);
  }
}
