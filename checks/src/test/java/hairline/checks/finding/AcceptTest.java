package hairline.checks.finding;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AcceptTest {
  private static Place line(int line) {
    return new Place(0, line, new Span(1, 2));
  }

  private static Accept read(int line, String text) {
    List<Accept> all = Accept.read(line(line), text, true);
    assertThat(all).hasSize(1);
    return all.get(0);
  }

  @Test
  void readsRuleReachAndReason() {
    Accept one = read(3, " Hairline: accept Chip-Below-Minimum: burnishing pass ");
    assertThat(one.rule()).isEqualTo("chip-below-minimum");
    assertThat(one.untilEnd()).isFalse();
    assertThat(one.reason()).contains("burnishing pass");
    Accept rest = read(3, "hairline: accept syntax until end: read by our control: tried");
    assertThat(rest.untilEnd()).isTrue();
    assertThat(rest.reason()).contains("read by our control: tried");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "hairline: accept syntax",
        "hairline: accept syntax:",
        "hairline:accept syntax:  "
      })
  void seesThatNoReasonIsGiven(String text) {
    assertThat(read(1, text).reason()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "hairlines", "hairline-thin slot", "about hairline: accept x: y"})
  void passesOverOtherComments(String text) {
    assertThat(Accept.read(line(1), text, true)).isEmpty();
  }

  @Test
  void readsSeveralRulesJoinedByCommas() {
    List<Accept> all =
        Accept.read(line(3), "hairline: accept syntax , End-Missing until end: both: why", true);
    assertThat(all).extracting(Accept::rule).containsExactly("syntax", "end-missing");
    assertThat(all)
        .allMatch(accept -> accept.untilEnd() && accept.reason().equals(Optional.of("both: why")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "hairline | no colon",
        "HAIRLINE accept straight-plunge: soft | no colon",
        "hairline: | nothing stands",
        "hairline: ignore syntax: x | not ignore",
        "hairline: accept | no rule",
        "hairline: accept : soft | no rule",
        "hairline: accept straight-plunge known stuff | a colon is due",
        "hairline: accept syntax, : soft | a colon is due",
        "hairline: accept syntax end-missing: soft | a comma",
        "hairline: accept syntax until: soft | until end",
      })
  void seesWhatItDoesNotUnderstand(String text, String part) {
    Accept accept = read(1, text);
    assertThat(accept.problem().orElse("")).contains(part);
    assertThat(accept.reason()).isEmpty();
    Accepts accepts = new Accepts();
    accepts.add(accept, 1);
    assertThat(accepts.unused()).as("told as not understood, and once").isEmpty();
  }

  @Test
  void acceptsTheBlockItSpeaksOfOrTheRest() {
    Accepts accepts = new Accepts();
    accepts.add(read(2, "hairline: accept syntax: a"), 4);
    accepts.add(read(6, "hairline: accept end-missing until end: b"), 6);
    accepts.add(read(8, "hairline: accept feed-missing"), 8);
    assertThat(accepts.reasonFor("syntax", line(4))).contains("a");
    assertThat(accepts.reasonFor("syntax", line(5))).isEmpty();
    assertThat(accepts.reasonFor("code-unknown", line(4))).isEmpty();
    assertThat(accepts.reasonFor("syntax", new Place(1, 4, new Span(1, 2)))).isEmpty();
    assertThat(accepts.reasonFor("feed-missing", line(8))).as("no reason given").isEmpty();
    assertThat(accepts.unused()).extracting(Accept::rule).containsExactly("end-missing");
    assertThat(accepts.reasonFor("end-missing", line(5))).isEmpty();
    assertThat(accepts.reasonFor("end-missing", line(60))).isEqualTo(Optional.of("b"));
    assertThat(accepts.unused()).isEmpty();
  }
}
