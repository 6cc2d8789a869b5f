package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Times that add up to a thousand seconds: a share of 0.05 % is half a second. */
class TimingsTextTest {

  @Test
  void partsStandLongestFirstAndSmallOnesAreCounted() {
    Map<String, Long> nanos = new LinkedHashMap<>();
    nanos.put("stock", 249_000_000_000L);
    nanos.put("reading", 750_000_000_000L);
    nanos.put("motion", 500_000_000L);
    nanos.put("cuts-air", 499_999_999L);
    nanos.put("syntax", 1L);
    assertThat(TimingsText.of(nanos, 600.254))
        .containsExactly(
            "600.25 s in all; on all threads together, the clock's own time with them:",
            "  750.000 s   75.0 %  reading",
            "  249.000 s   24.9 %  stock",
            "    0.500 s    0.1 %  motion",
            "and 2 parts below 0.05 % each");
  }

  @Test
  void aSmallPartAloneIsOneAndNoneIsNotMentioned() {
    assertThat(TimingsText.of(Map.of("reading", 10_000L, "syntax", 1L), 0))
        .hasSize(3)
        .last()
        .isEqualTo("and 1 part below 0.05 % each");
    assertThat(TimingsText.of(Map.of("reading", 10_000L), 0)).hasSize(2);
    assertThat(TimingsText.of(Map.of(), 0)).as("nothing was timed").hasSize(1);
  }
}
