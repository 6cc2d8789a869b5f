package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.ProgramResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The demo: its programs are as their generator writes them, and the clean one is clean. */
class MixerInsertTest {
  private static final Path FOLDER = Programs.ROOT.resolve("mixer-insert");

  @Test
  void theProgramsAreFresh() throws IOException {
    assertFresh("mixer-insert.nc", MixerInsert.clean());
    assertFresh("mixer-insert-faulty.nc", MixerInsert.faulty());
  }

  private static void assertFresh(String name, String wanted) throws IOException {
    if (Boolean.getBoolean("bless")) {
      Files.writeString(FOLDER.resolve(name), wanted);
    }
    assertThat(Files.readString(FOLDER.resolve(name))).isEqualTo(wanted);
  }

  @Test
  void theCleanVersionHasNoFinding() {
    ProgramResult result = Programs.check(FOLDER.resolve("mixer-insert.nc"));
    assertThat(result.findings()).isEmpty();
    assertThat(result.accepted()).isEmpty();
    assertThat(result.embeddedSheet()).isFalse();
  }
}
