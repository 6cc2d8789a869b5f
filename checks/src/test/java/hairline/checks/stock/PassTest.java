package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.ToolShape;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where passes and levels begin and end, and what is told of them. */
class PassTest {

  private static List<PassEnded> passes(Bench bench) {
    return bench.all(PassEnded.class);
  }

  @Test
  void aPassLastsWhileItKeepsToItsLevel() {
    Bench bench = Bench.flat().stock().feature("f", 0, 3000, -500, 500, 0).g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(1000, 0, -4).g1(1000, 300, -4).arc(1000, 400, 90, -4);
    int last = bench.line();
    bench.g1(1000, 0, -8);
    int deeper = bench.line();
    bench.g1(2000, 0, -8).g0(2000, 0, 50).end();
    assertThat(passes(bench)).hasSize(4);
    PassEnded first = passes(bench).get(1);
    assertThat(first.passId()).isEqualTo(2);
    assertThat(first.levelId()).isEqualTo(1);
    assertThat(first.at().line()).isEqualTo(deeper);
    assertThat(first.first().line()).isEqualTo(4);
    assertThat(first.last().line()).isEqualTo(last);
    assertThat(first.lengthMm()).isCloseTo(1.3 + 0.1 * Math.PI / 2, within(1e-6));
    assertThat(first.stepDownPm()).hasValue(Bench.pm(4));
    assertThat(first.writtenStepDownPm()).hasValue(Bench.pm(4));
    assertThat(first.spring()).isFalse();
    assertThat(first.fine()).isTrue();
    assertThat(first.operation()).isEqualTo(2);
    assertThat(first.offset()).isEqualTo("G54");
    assertThat(first.tool().orElseThrow().number()).isEqualTo(1);
    assertThat(first.feature().orElseThrow().name()).isEqualTo("f");
    assertThat(bench.cut(last).passId()).isEqualTo(2);
    assertThat(bench.cut(last).levelId()).isEqualTo(1);
  }

  @Test
  void aLevelIsToldBeforeItsFirstCut() {
    Bench bench = Bench.flat().stock().feature("f", 0, 3000, -500, 500, 0).g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(1000, 0, -4);
    LevelReached level = bench.levels().get(0);
    assertThat(bench.events.indexOf(level)).isEqualTo(bench.events.size() - 2);
    assertThat(level.at()).isEqualTo(bench.last().at());
    assertThat(level.passId()).isEqualTo(bench.last().passId());
    assertThat(level.levelId()).isEqualTo(1);
    assertThat(level.again()).isFalse();
    assertThat(level.storedZPm()).isEqualTo(Bench.pm(-4));
    assertThat(level.writtenZPm()).isEqualTo(Bench.pm(-4));
    assertThat(level.approach()).isEqualTo(ApproachDirection.FROM_ABOVE);
    assertThat(level.tool().orElseThrow().number()).isEqualTo(1);
    assertThat(level.operation()).isEqualTo(2);
    assertThat(level.feature().orElseThrow().name()).isEqualTo("f");
    assertThat(level.offset()).isEqualTo("G54");
    assertThat(level.stepDownPm()).hasValue(Bench.pm(4));
    assertThat(level.writtenStepDownPm()).hasValue(Bench.pm(4));
  }

  @Test
  void theApproachIsTheLastMotionOfZ() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g0(0, 0, -20).g1(0, 0, -8).g1(900, 0, -8);
    bench.g0(0, 2000, -8).g1(0, 2000, -8).g1(900, 2000, -8);
    bench.g0(0, -2000, -8).g0(0, -2000, -6).g0(0, -2000, -8).g1(900, -2000, -8);
    assertThat(bench.levels())
        .extracting(LevelReached::approach)
        .containsExactly(
            ApproachDirection.FROM_BELOW,
            ApproachDirection.FROM_BELOW,
            ApproachDirection.FROM_ABOVE);
    bench.move(
        hairline.checks.motion.Move.Kind.RAPID, 0, 3000, Double.NaN, java.util.Optional.empty());
    bench.g0(0, 3000, -8).g1(900, 3000, -8).end();
    assertThat(bench.levels().get(3).approach()).isEqualTo(ApproachDirection.UNKNOWN);
    assertThat(bench.steps().get(0).lower().approach()).isEqualTo(ApproachDirection.FROM_BELOW);
    assertThat(bench.steps().get(0).upper().approach()).isEqualTo(ApproachDirection.UNKNOWN);
  }

  @Test
  void airAtTheLevelDoesNotEndThePassAirElsewhereDoes() {
    Bench bench = Bench.flat().stock(-1000, 1000, -4000, 4000, 0, -3000).g0(-2000, 0, 50);
    bench.g1(-2000, 0, -4).g1(2000, 0, -4).g1(2000, 1000, -4).g1(-2000, 1000, -4);
    assertThat(passes(bench)).isEmpty();
    assertThat(bench.levels()).hasSize(1);
    assertThat(bench.last().passId()).isEqualTo(1);
    bench.g1(-2000, 1000, 5);
    assertThat(passes(bench)).hasSize(1);
    // In air nothing counts: twice 2.2 mm... of moves 4 mm long.
    assertThat(passes(bench).get(0).lengthMm()).isEqualTo(8);
    bench.g1(-2000, 2000, -4).g1(2000, 2000, -4).speed().g1(-2000, 2100, -4);
    assertThat(passes(bench)).hasSize(2);
    assertThat(bench.levels()).hasSize(3);
    assertThat(bench.levels().get(2).operation()).isEqualTo(3);
  }

  @Test
  void connectedAreasAreOneLevelAndOthersAreNot() {
    Bench bench = Bench.flat().stock();
    bench.g0(0, 0, 50).g1(0, 0, -4).g1(900, 0, -4);
    bench.g0(0, 2000, 50).g1(0, 2000, -4).g1(900, 2000, -4);
    bench.g0(0, 300, 50).g1(0, 300, -4).g1(900, 300, -4);
    bench.g0(0, 1700, 50).g1(0, 1700, -4).g1(900, 1700, -4);
    assertThat(bench.levels())
        .extracting(l -> l.levelId() + " " + l.again())
        .containsExactly("1 false", "2 false", "1 true", "2 true");
    // And joined at last, the later one goes on.
    bench.g0(450, 0, 50).g1(450, 0, -4).g1(450, 2000, -4).end();
    assertThat(bench.levels().get(4).again()).isTrue();
    assertThat(bench.steps()).extracting(StepFound::heightPm).containsOnly(Bench.pm(4));
  }

  @Test
  void theFirstAndLastCutOfALevelAreKept() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(900, 0, -4);
    int first = bench.line();
    bench.speed().g0(0, 300, 50).g1(0, 300, -4).g1(900, 300, -4);
    int last = bench.line();
    bench.end();
    Terrace lower = bench.steps().get(0).lower();
    assertThat(lower.first().orElseThrow().line()).isEqualTo(first);
    assertThat(lower.last().orElseThrow().line()).isEqualTo(last);
    assertThat(lower.firstOperation()).isEqualTo(2);
    assertThat(lower.lastOperation()).isEqualTo(3);
    assertThat(lower.uncut()).isFalse();
    Terrace top = bench.steps().get(0).upper();
    assertThat(top.uncut()).isTrue();
    assertThat(top.firstOperation()).isZero();
    assertThat(top.lastOperation()).isZero();
    assertThat(top.first()).isEmpty();
    assertThat(top.last()).isEmpty();
    assertThat(top.tool()).isEmpty();
    assertThat(top.storedZPm()).isZero();
    assertThat(top.writtenZPm()).isZero();
  }

  @Test
  void anotherToolOnTheSameFloorTakesItOver() {
    Bench bench = Bench.flat().tool(2, ToolShape.FLAT, 400, 0, 1.5).stock().g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(900, 0, -4).change(2).g0(0, 100, 50).g1(0, 100, -4).g1(900, 100, -4);
    assertThat(bench.levels()).extracting(LevelReached::levelId).containsExactly(1, 2);
    assertThat(Bench.um(bench.last())).containsExactly(4.0);
    bench.end();
    // What the second passed over is its own: of the first a strip of 100 µm is left.
    assertThat(bench.steps())
        .extracting(s -> s.lower().tool().orElseThrow().number())
        .containsExactly(1, 2);
  }

  @Test
  void aLevelWrittenOtherwiseIsAnotherLevelAtTheSameHeight() {
    // Both stored -4; written -3.96 and -4.04, then within a nanometre of the latter.
    Bench bench = Bench.flat().stock().written(0.04).g0(0, 0, 50).g1(0, 0, -4).g1(900, 0, -4);
    bench.written(-0.04).g1(900, 200, -4).g1(0, 200, -4);
    bench.written(-0.0405).g1(0, 300, -4).g1(900, 300, -4);
    assertThat(bench.levels())
        .extracting(LevelReached::writtenZPm)
        .containsExactly(Bench.pm(-3.96), Bench.pm(-4.04));
    bench.written(-0.041).g1(900, 400, -4);
    assertThat(bench.levels()).hasSize(3);
    bench.end();
    assertThat(bench.steps()).extracting(StepFound::heightPm).containsOnly(Bench.pm(4));
  }

  @Test
  void aMoveThatStandsStillIsNothing() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(900, 0, -4).g1(900, 0, -4);
    assertThat(bench.last().contact()).isEqualTo(Contact.NO);
    assertThat(bench.last().runsAtLevel()).isFalse();
    bench.g1(900, 200, -4);
    assertThat(bench.levels()).hasSize(1);
  }
}
