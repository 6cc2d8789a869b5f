package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What the bar says, cell by cell. */
class ProgressTest {

  @Test
  void theBarFillsByTheShareThatIsDone() {
    assertThat(Progress.bar(0, 4, "checked", 1))
        .isEqualTo("░".repeat(24) + " 0 of 4 programs checked, 1 s");
    assertThat(Progress.bar(1, 4, "checked", 2))
        .isEqualTo("█".repeat(6) + "░".repeat(18) + " 1 of 4 programs checked, 2 s");
    assertThat(Progress.bar(4, 4, "checked", 75))
        .isEqualTo("█".repeat(24) + " 4 of 4 programs checked, 75 s");
    assertThat(Progress.bar(0, 1, "read", 3))
        .isEqualTo("░".repeat(24) + " 0 of 1 program read, 3 s");
    assertThat(Progress.bar(0, 0, "checked", 0)).startsWith("░".repeat(24)).contains("0 of 0");
    assertThat(Progress.bar(1_000_000_000, 2_000_000_000, "checked", 0))
        .as("no product overflows")
        .startsWith("█".repeat(12) + "░".repeat(12) + " 1000000000");
  }
}
