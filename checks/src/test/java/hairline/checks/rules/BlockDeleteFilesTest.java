package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rules hold with the block delete switch off and on, in the files of subprograms too. */
class BlockDeleteFilesTest {
  @TempDir Path folder;

  @BeforeEach
  void subprograms() throws IOException {
    write("O0001.nc", "O1", "G1 X1", "M99");
    write("O0002.nc", "O2", "G1 X2", "M99");
    write("O0003.nc", "O3", "/F100", "M99");
  }

  private Path write(String name, String... lines) throws IOException {
    return Files.write(folder.resolve(name), List.of(lines));
  }

  private ProgramResult check(String... lines) throws IOException {
    return ProgramCheck.of(new Selection(Set.of("feed-missing", "suppression-unused"), Set.of()))
        .check(write("main.nc", lines), Setup.builder().build());
  }

  /** "O0001.nc:2" and for which setting of the switch it holds. */
  private static Map<String, BlockDelete> byPlace(ProgramResult result) {
    return result.findings().stream()
        .collect(
            Collectors.toMap(
                f -> Path.of(result.files().get(f.at().file())).getFileName() + ":" + f.at().line(),
                Finding::blockDelete));
  }

  @Test
  void aMarkInTheFileOfASubprogramAloneIsSeen() throws IOException {
    ProgramResult result = check("G21 G90", "G0 X0", "M98 P3", "G1 X1", "M30");
    assertThat(byPlace(result)).containsExactly(Map.entry("main.nc:4", BlockDelete.ONLY_ON));
    assertThat(result.deletable()).isTrue();
  }

  @Test
  void noMarkInAnyFileIsNone() throws IOException {
    assertThat(check("G21 G90", "G0 X0", "M98 P1", "M30").deletable()).isFalse();
  }

  @Test
  void filesKeepTheirPlacesWhereTheSwitchChangesTheOrderOfCalls() throws IOException {
    ProgramResult result = check("G21 G90", "G0 X0", "/M98 P1", "S2000 M3", "M98 P2", "M30");
    assertThat(result.files()).hasSize(3);
    assertThat(byPlace(result))
        .containsOnly(
            Map.entry("O0001.nc:2", BlockDelete.ONLY_OFF),
            Map.entry("O0002.nc:2", BlockDelete.BOTH));
    assertThat(result.excerpts()).containsValue("G1 X1").containsValue("G1 X2");
  }

  @Test
  void aFileThatIsCalledWithTheSwitchOnAloneIsNamed() throws IOException {
    ProgramResult result = check("G21 G90", "G0 X0", "M98 P1", "/M30", "S2000 M3", "M98 P2", "M30");
    assertThat(byPlace(result))
        .containsOnly(
            Map.entry("O0001.nc:2", BlockDelete.BOTH),
            Map.entry("O0002.nc:2", BlockDelete.ONLY_ON));
    assertThat(result.excerpts()).containsValue("G1 X2");
  }

  @Test
  void anAcceptInASubprogramFileHoldsWithTheSwitchEitherWay() throws IOException {
    write("O0001.nc", "O1", "G1 X1 (hairline: accept feed-missing: set at the machine)", "M99");
    ProgramResult result = check("G21 G90", "G0 X0", "/M98 P2", "S2000 M3", "M98 P1", "M30");
    assertThat(byPlace(result)).containsExactly(Map.entry("O0002.nc:2", BlockDelete.ONLY_OFF));
    assertThat(result.accepted()).hasSize(1);
  }
}
