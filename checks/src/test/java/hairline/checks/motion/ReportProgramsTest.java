package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The sample programs of NISTIR 6556, appendix C, whole. */
class ReportProgramsTest {
  @Test
  void helloWorldOfC1() {
    List<Event> events = Runs.resource(Runs.TENTH_UM, "nistir-6556-c1.nc");
    List<Move> feeds = Runs.of(Move.class, events).stream().filter(Move::isFeed).toList();
    // Counted and added up by hand and by an independent script from the text of C.1.
    assertThat(feeds).hasSize(34);
    assertThat(feeds.stream().mapToDouble(Move::lengthMm).sum()).isCloseTo(183.4305, within(5e-5));
    assertThat(feeds).allSatisfy(move -> assertThat(move.feedMmPerMin()).hasValue(20));
    assertThat(feeds).allSatisfy(move -> assertThat(move.modes().turningRpm()).hasValue(4000.0));
    assertThat(feeds).allSatisfy(move -> assertThat(move.modes().tool().value()).hasValue(1));
    assertThat(Runs.only(Event.Ended.class, events).code()).hasValue("M2");
    // The program states no distance mode, feed mode, plane or offset.
    assertThat(Runs.of(Event.StartAssumed.class, events))
        .extracting(Event.StartAssumed::item)
        .containsExactly("distance", "feed mode", "plane");
    assertThat(Runs.of(Event.OffsetAssumed.class, events)).hasSize(1);
  }

  @Test
  void expressionsOfC2() {
    List<Event> events = Runs.resource(Runs.TENTH_UM, "nistir-6556-c2.nc");
    Pattern should = Pattern.compile("x should be (-?[0-9.]*[0-9])");
    int checked = 0;
    Position stands = Position.UNKNOWN;
    for (Event event : events) {
      if (event instanceof Move move) {
        stands = move.to();
      }
    }
    assertThat(stands.xPm()).isEqualTo(5_000_000_000L);
    for (Event.BlockStarted block : Runs.of(Event.BlockStarted.class, events)) {
      Matcher matcher = should.matcher(block.block().text());
      if (matcher.find()) {
        BigDecimal expected = new BigDecimal(matcher.group(1));
        BigDecimal x = BigDecimal.valueOf(xAfter(events, block.at().line()), 9);
        // The comments of C.2 give up to four decimals.
        assertThat(x).as(block.block().text()).isCloseTo(expected, within(new BigDecimal("0.001")));
        checked++;
      }
    }
    assertThat(checked).isEqualTo(44);
    // n0460: (asin(1/2.1 - 0.345) = 7.5541..., atan(4*2.1*sqrt 16.8 / -18) = 117.6...; redone with
    // an independent calculator)
    assertThat(xAfter(events, 46) * 1e-9).isCloseTo(n0460(), within(1e-4));
  }

  private static double n0460() {
    double asin = Math.toDegrees(Math.asin(1 / 2.1 - 0.345));
    double atan = Math.toDegrees(Math.atan2(4 * 2.1 * Math.sqrt(16.8), -18));
    return 2 + asin / (atan * atan);
  }

  /** Where X stands after a line. */
  private static long xAfter(List<Event> events, int line) {
    long x = 0;
    for (Move move : Runs.of(Move.class, events)) {
      if (move.at().line() <= line) {
        x = move.to().xPm();
      }
    }
    return x;
  }
}
