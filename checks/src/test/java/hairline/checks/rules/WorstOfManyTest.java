package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Of findings that are told as one, the one farthest beyond the limit counts as the worst. */
class WorstOfManyTest {

  /**
   * @param line of the worst; the comment at the head of the program says why it is that
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "chip-below-minimum | speaks-twice.nc | 14",
        "runout-exceeds-feed | speaks-twice.nc | 14",
        "flex-exceeds-step | speaks-twice.nc | 15",
        "tools-share-step | speaks-twice.nc | 21",
        "surface-speed-off | speaks-ball-twice.nc | 14",
        "surface-speed-off | speaks-fast-twice.nc | 14",
        "blend-exceeds-step | speaks-twice.nc | 14",
        "wall-left | speaks-two.nc | 18",
        "step-below-smallest | speaks-two.nc | 14",
        "spindle-not-up-to-speed | speaks-twice.nc | 10",
      })
  void standsInTheLine(String rule, String file, int line) {
    Finding finding = Programs.findings(rule, file).get(0);
    assertThat(finding.count()).isGreaterThan(1);
    assertThat(finding.worst().at().line()).isEqualTo(line);
  }
}
