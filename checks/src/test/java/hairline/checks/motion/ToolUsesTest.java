package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** What a program does with each tool; lengths and feeds by hand. */
class ToolUsesTest {
  private static ToolUses uses(String... lines) {
    ToolUses uses = new ToolUses();
    Runs.events(Runs.TENTH_UM, lines).forEach(uses::accept);
    return uses;
  }

  @Test
  void feedsAndTheLengthOfFeedMovesAreThoseOfTheTool() {
    List<ToolUse> list =
        uses(
                "G21 G90 G94 G17 G0 X0 Y0 Z0",
                "T3 M6",
                "S30000 M3",
                "G0 X9 Y9",
                "G1 X12 Y13 F100",
                "X12 Y3 F40",
                "S40000 X13 F70",
                "T7 M6",
                "G1 Y4 F5",
                "T3 M6",
                "S30000 M3",
                "G1 Y6 F300",
                "M30")
            .list();
    assertThat(list)
        .extracting(ToolUse::number)
        .containsExactly(OptionalInt.of(3), OptionalInt.of(7));
    ToolUse three = list.get(0);
    assertThat(three.first().line()).isEqualTo(2);
    assertThat(three.speedsRpm()).containsExactly(30_000.0, 40_000.0);
    // 3-4-5, then 10, 1 and, the second time, 2 mm.
    assertThat(three.feedMm()).isCloseTo(18, within(1e-9));
    assertThat(three.feedsMmPerMin()).contains(new ToolUse.Feeds(40, 300));
    ToolUse seven = list.get(1);
    assertThat(seven.first().line()).isEqualTo(8);
    assertThat(seven.feedMm()).isCloseTo(1, within(1e-9));
    assertThat(seven.feedsMmPerMin()).contains(new ToolUse.Feeds(5, 5));
  }

  @Test
  void aToolThatOnlyMovesAtRapidFeedsNothing() {
    ToolUse use = uses("G0 X0 Y0 Z0", "T3 M6", "S30000 M3", "G0 X9", "M30").list().get(0);
    assertThat(use.feedMm()).isZero();
    assertThat(use.feedsMmPerMin()).isEqualTo(Optional.empty());
    assertThat(use.speedsRpm()).containsExactly(30_000.0);
  }

  @Test
  void whatIsDoneWithoutAToolStandsByItself() {
    List<ToolUse> list =
        uses("G0 X0 Y0 Z0", "G1 X4 F10", "T3 M6", "S100 M3", "G1 X5", "M30").list();
    assertThat(list)
        .extracting(ToolUse::number)
        .containsExactly(OptionalInt.empty(), OptionalInt.of(3));
    assertThat(list.get(0).first().line()).isEqualTo(2);
    assertThat(list.get(0).feedMm()).isCloseTo(4, within(1e-9));
  }

  @Test
  void oneSpeedMoreThanIsKeptIsSaid() {
    List<String> lines = new ArrayList<>(List.of("T3 M6", "M3 S1"));
    for (int i = 2; i <= ToolUses.SPEEDS_CAP; i++) {
      lines.add("S" + i);
    }
    ToolUses full = uses(lines.toArray(String[]::new));
    assertThat(full.list().get(0).speedsRpm()).hasSize(ToolUses.SPEEDS_CAP);
    assertThat(full.isCapReached()).isFalse();
    lines.add("S" + (ToolUses.SPEEDS_CAP + 1));
    ToolUses over = uses(lines.toArray(String[]::new));
    assertThat(over.list().get(0).speedsRpm()).hasSize(ToolUses.SPEEDS_CAP);
    assertThat(over.isCapReached()).isTrue();
  }

  @Test
  void oneToolMoreThanIsFollowedIsSaid() {
    List<String> lines = new ArrayList<>();
    for (int i = 1; i <= ToolUses.TOOLS_CAP; i++) {
      lines.add("T" + i + " M6");
    }
    ToolUses full = uses(lines.toArray(String[]::new));
    assertThat(full.list()).hasSize(ToolUses.TOOLS_CAP);
    assertThat(full.isCapReached()).isFalse();
    lines.addAll(List.of("T5000 M6", "G1 X0 Y0 Z0 F1", "X9"));
    ToolUses over = uses(lines.toArray(String[]::new));
    assertThat(over.list()).hasSize(ToolUses.TOOLS_CAP);
    assertThat(over.isCapReached()).isTrue();
    assertThat(over.list()).allMatch(use -> use.feedMm() == 0);
  }
}
