package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.parser.Span;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReturnsTest {
  private static final String[] START = {"G21 G90 G94 G17 G54", "G1 X1. Y1. Z1. F100."};

  private static List<Event> run(String... lines) {
    String[] all = new String[START.length + lines.length];
    System.arraycopy(START, 0, all, 0, START.length);
    System.arraycopy(lines, 0, all, START.length, lines.length);
    return Runs.events(Runs.TENTH_UM, all);
  }

  @Test
  void isSureOfNothingBehindAReturnToASequenceNumber() {
    List<Event> events = run("M98 P20", "G1 X2.", "M30", "O20", "M99 P30");
    assertThat(Runs.only(Event.CodeUnknown.class, events))
        .isEqualTo(new Event.CodeUnknown(new Place(0, 7, new Span(1, 8)), "M99 P"));
    Move behind = Runs.of(Move.class, events).get(1);
    assertThat(behind.at().line()).isEqualTo(4);
    assertThat(behind.to().knows(Axis.Y)).isFalse();
    assertThat(behind.feedMmPerMin()).isEmpty();
  }

  @Test
  void isSureBehindAPlainReturn() {
    List<Event> events = run("M98 P20", "G1 X2.", "M30", "O20", "M99");
    assertThat(Runs.of(Event.CodeUnknown.class, events)).isEmpty();
    assertThat(Runs.of(Event.BecameUnknown.class, events)).isEmpty();
    Move behind = Runs.of(Move.class, events).get(1);
    assertThat(behind.to().knowsXyz()).isTrue();
  }

  @Test
  void carriesTheStateIntoASubprogramAndOut() {
    List<Event> events = run("M98 P20 L2", "X9.", "M30", "O20", "G91 X1. F50.", "G90", "M99");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves)
        .extracting(move -> move.to().xPm() / 1_000_000_000L)
        .containsExactly(1L, 2L, 3L, 9L);
    assertThat(moves.get(3).feedMmPerMin()).hasValue(50);
  }
}
