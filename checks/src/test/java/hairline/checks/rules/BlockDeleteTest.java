package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Rules hold with the block delete switch off and on; where they differ, the finding says so. */
class BlockDeleteTest {
  private static ProgramResult check(String... lines) throws IOException {
    byte[] bytes = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    return ProgramCheck.of(new Selection(Set.of("feed-missing", "suppression-unused"), Set.of()))
        .check(PartPrograms.of("program", bytes), Setup.builder().build());
  }

  private static Map<Integer, BlockDelete> byLine(ProgramResult result) {
    return result.findings().stream()
        .collect(Collectors.toMap(f -> f.at().line(), Finding::blockDelete));
  }

  @Test
  void aFaultThatHoldsEitherWayStandsOnce() throws IOException {
    assertThat(byLine(check("G21 G90", "G0 X0", "G1 X1", "/M8", "M30")))
        .containsExactly(Map.entry(3, BlockDelete.BOTH));
  }

  @Test
  void aFeedInADeletableBlockIsMissingWithTheSwitchOn() throws IOException {
    assertThat(byLine(check("G21 G90", "G0 X0", "/F100", "G1 X1", "M30")))
        .containsExactly(Map.entry(4, BlockDelete.ONLY_ON));
  }

  @Test
  void aMoveInADeletableBlockIsAtFaultWithTheSwitchOff() throws IOException {
    assertThat(byLine(check("G21 G90", "G0 X0", "/G1 X1", "F100", "G1 X2", "M30")))
        .containsExactly(Map.entry(3, BlockDelete.ONLY_OFF));
  }

  @Test
  void anAcceptCommentIsNeededIfEitherWayNeedsIt() throws IOException {
    ProgramResult result =
        check("G21 G90", "G0 X0", "/F100", "G1 X1 (hairline: accept feed-missing: why)", "M30");
    assertThat(result.findings()).isEmpty();
    assertThat(result.accepted()).hasSize(1);
  }

  private static Map<String, BlockDelete> budgets(String deletable) throws Exception {
    Setup setup =
        new SheetReader()
            .parse(
                """
                machine: {resolution: 0.1 um}
                tools: [{number: 3, shape: flat, diameter: 0.4 mm, flutes: 2}]
                stock: {x: [-2 mm, 2 mm], y: [-1 mm, 1 mm], top: 0 mm, bottom: -1 mm}
                """,
                "sheet");
    String program =
        String.format(
            Locale.ROOT,
            """
        G21 G90 G17 G94 G54
        T3 M6
        S30000 M3
        G0 G43 H3 X-3. Y0. Z1.
        Z-0.004
        %s
        G1 X3. F100.
        M30
        """,
            deletable);
    ProgramResult result =
        ProgramCheck.of(new Selection(Set.of("budget-exceeds-tolerance"), Set.of()))
            .check(PartPrograms.of("program", program.getBytes(StandardCharsets.UTF_8)), setup);
    return result.budgets().stream()
        .collect(
            Collectors.toMap(
                b -> b.step().step().heightPm() / 1_000_000 + " µm",
                ProgramResult.Budget::blockDelete));
  }

  @Test
  void aBudgetSaysForWhichSettingOfTheSwitchItHolds() throws Exception {
    assertThat(budgets("/M8")).containsOnly(Map.entry("4 µm", BlockDelete.BOTH));
    assertThat(budgets("/Z-0.006"))
        .containsOnly(
            Map.entry("6 µm", BlockDelete.ONLY_OFF), Map.entry("4 µm", BlockDelete.ONLY_ON));
  }
}
