package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
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
}
