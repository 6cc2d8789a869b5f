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

  @Test
  void cyclesOfC3() {
    List<Event> events = Runs.resource(Runs.TENTH_UM, "nistir-6556-c3.nc");
    assertThat(Runs.of(Event.WordRefused.class, events)).isEmpty();
    assertThat(Runs.of(Event.CodesConflict.class, events)).isEmpty();
    assertThat(Runs.of(Event.CodeUnknown.class, events)).isEmpty();
    List<Move> moves = Runs.of(Move.class, events);
    // Counted from the text of C.3 and the steps of §3.5.16: in the XY-plane G81 5 holes, G82 6,
    // G83 7 pecks (1.3 in by 0.21), G84 2 feeds, G85 2, G86 2 holes, G87 3 with 2 feeds each, G88
    // 2,
    // G89 2 feeds; in the other two planes each 4, 5, 7, 2, 2, 1, 4, 1, 2.
    int inXy = 5 + 6 + 7 + 2 + 2 + 2 + 6 + 2 + 2;
    int inEachOther = 4 + 5 + 7 + 2 + 2 + 1 + 4 + 1 + 2;
    assertThat(moves.stream().filter(Move::isFeed)).hasSize(inXy + 2 * inEachOther);
    assertThat(Runs.of(Event.Dwelled.class, events)).hasSize(6 + 2 + 2 + 1 + 2 * (5 + 3));
    assertThat(Runs.of(Event.Stopped.class, events)).hasSize(4);
    assertThat(moves).allSatisfy(m -> assertThat(m.source()).isEqualTo(Move.Source.CYCLE));
    // Where the holes of n0190, n0350 and n0550 are, added up by hand, in inches.
    assertHole(moves, 20, Axis.X, 58, Axis.Y, 63);
    assertHole(moves, 34, Axis.Z, 31, Axis.X, 33);
    assertHole(moves, 48, Axis.Y, 31, Axis.Z, 33);
    // n0090: the last peck of G83 ends at -1.1 in.
    assertThat(moves.stream().filter(m -> m.at().line() == 9 && m.isFeed()))
        .last()
        .satisfies(m -> assertThat(m.to().zPm()).isEqualTo(-27_940_000_000L));
  }

  private static void assertHole(
      List<Move> moves, int line, Axis first, int firstInch, Axis second, int secondInch) {
    Position hole =
        moves.stream()
            .filter(m -> m.at().line() == line && m.isFeed())
            .findFirst()
            .orElseThrow()
            .to();
    assertThat(hole.get(first)).isEqualTo(firstInch * 25_400_000_000L);
    assertThat(hole.get(second)).isEqualTo(secondInch * 25_400_000_000L);
  }
}
