package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.rules.Rules;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** {@code check --timings} on the demo. */
class TimingsOptionTest {
  private static final String DEMO = "../programs/mixer-insert/mixer-insert.nc";
  private static final Pattern PART =
      Pattern.compile("hairline: +([0-9.]+) s +([0-9.]+) %  (\\S.*)");

  @Test
  void theTimesOfStagesAndRulesStandOnStandardErrorAndTheReportIsTheSame() {
    Ran timed = Ran.of("check", "--timings", DEMO);
    Ran plain = Ran.of("check", DEMO);
    assertThat(timed.status()).isEqualTo(plain.status());
    assertThat(timed.out()).isEqualTo(plain.out());
    assertThat(plain.err()).isEmpty();
    List<Matcher> parts = timed.err().lines().map(PART::matcher).filter(Matcher::matches).toList();
    assertThat(parts).extracting(part -> part.group(3)).contains("stock", "planned feed");
    // Which rules reach 0.05 % depends on what else the machine does.
    assertThat(parts)
        .extracting(part -> part.group(3))
        .containsAnyElementsOf(Rules.all().stream().map(rule -> rule.info().name()).toList());
    List<Double> shares = parts.stream().map(part -> Double.valueOf(part.group(2))).toList();
    assertThat(shares).isSortedAccordingTo((a, b) -> Double.compare(b, a));
    // What is below 0.05 % is not listed, and each share is rounded.
    assertThat(shares.stream().mapToDouble(Double::doubleValue).sum()).isBetween(90.0, 103.0);
  }
}
