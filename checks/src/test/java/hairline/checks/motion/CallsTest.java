package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.parser.Span;
import java.util.List;
import org.junit.jupiter.api.Test;

class CallsTest {
  @Test
  void aSubprogramRunsAsOftenAsItSays() {
    List<Event> events =
        Runs.events(
            Runs.TENTH_UM,
            "G21 G90 G94 G54 G0 X0 Y0 Z0",
            "G91 G1 F10",
            "N3 M98 P1000 L3",
            "G90 Y5",
            "M30",
            "O1000",
            "X1",
            "M99");
    assertThat(Runs.of(Move.class, events))
        .extracting(Runs::text)
        .containsExactly(
            "RAPID X0 Y0 Z0", "LINE X1 Y0 Z0", "LINE X2 Y0 Z0", "LINE X3 Y0 Z0", "LINE X3 Y5 Z0");
    assertThat(Runs.of(Event.SubprogramEntered.class, events)).hasSize(3);
    assertThat(Runs.of(Event.SubprogramEntered.class, events).get(0).at())
        .isEqualTo(new Place(0, 3, new Span(4, 16)));
    assertThat(Runs.of(Event.SubprogramLeft.class, events)).hasSize(3);
    assertThat(Runs.only(Event.Ended.class, events).code()).hasValue("M30");
  }

  @Test
  void theMotionOfACallingBlockComesFirst() {
    assertThat(Runs.moves("G0 X0 Y0 Z0", "G1 X5 F10 M98 P1000", "M30", "O1000", "X6", "M99"))
        .containsExactly("RAPID X0 Y0 Z0", "LINE X5 Y0 Z0", "LINE X6 Y0 Z0");
  }

  @Test
  void settingsOfACallingBlockActBeforeTheSubprogram() {
    assertThat(Runs.moves("G0 X0", "#1=3 M98 P1000", "M30", "O1000", "X#1", "M99"))
        .containsExactly("RAPID X0", "RAPID X3");
  }

  @Test
  void g65WithoutArgumentsIsACall() {
    assertThat(Runs.moves("G0 X0", "G65 P1000", "M30", "O1000", "X3", "M99"))
        .containsExactly("RAPID X0", "RAPID X3");
  }

  @Test
  void g65WithArgumentsIsNotFollowed() {
    List<Event> events =
        Runs.events(
            Runs.TENTH_UM,
            "#1=1 S5 M3 F9 G43 H1",
            "G0 X0 Y0 Z0",
            "G65 P1000 A1. X2.",
            "G0 Y1",
            "M30",
            "O1000",
            "X3",
            "M99");
    assertThat(Runs.only(Event.CodeUnknown.class, events).code()).isEqualTo("G65 P1000");
    Move last = Runs.of(Move.class, events).get(1);
    assertThat(last.from()).isEqualTo(Position.UNKNOWN);
    assertThat(last.modes().spindle().isUnknown()).isTrue();
    assertThat(last.modes().coolant().isUnknown()).isTrue();
    assertThat(last.modes().feed().isUnknown()).isTrue();
    assertThat(last.modes().speedRpm().isUnknown()).isTrue();
    assertThat(last.modes().lengthOffset().isUnknown()).isTrue();
    assertThat(Runs.only(Event.BecameUnknown.class, events).what())
        .isEqualTo("parameters, motion, X, Y, Z, feed, speed, spindle, coolant, length offset");
  }

  @Test
  void callsThatCannotBeFollowedLoseTheState() {
    for (String call :
        List.of("M98 P1234", "M98 P#9", "M98 P1.5", "M98", "M98 P1000 L#9", "M98 P1000 L-1")) {
      List<Event> events =
          Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", call, "G0 Y1", "M30", "O1000", "X3", "M99");
      List<Move> moves = Runs.of(Move.class, events);
      assertThat(moves).as(call).hasSize(2);
      assertThat(moves.get(1).from()).as(call).isEqualTo(Position.UNKNOWN);
      assertThat(Runs.of(Event.BecameUnknown.class, events)).as(call).isNotEmpty();
    }
    assertThat(Runs.only(Event.SubprogramMissing.class, "M98 P1234").name()).isEqualTo("O1234");
    assertThat(Runs.only(Event.WordRefused.class, "M98").word()).isEqualTo("M98");
    assertThat(Runs.only(Event.WordRefused.class, "M98 P1.5").word()).isEqualTo("P1.5");
  }

  @Test
  void noRepeatsIsNoCall() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G0 X0", "M98 P1000 L0", "G0 X1", "M30", "O1000", "X3", "M99");
    assertThat(Runs.of(Move.class, events))
        .extracting(Runs::text)
        .containsExactly("RAPID X0", "RAPID X1");
    assertThat(Runs.of(Event.BecameUnknown.class, events)).isEmpty();
  }

  @Test
  void endlessCallsAreLeftOut() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G0 X0", "M98 P1000", "M30", "O1000", "X3", "M98 P1000", "M99");
    assertThat(Runs.of(Event.SubprogramEndless.class, events)).hasSize(1);
    assertThat(Runs.only(Event.Ended.class, events).code()).hasValue("M30");
  }

  @Test
  void aProgramMayEndInASubprogram() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G0 X0", "M98 P1000", "G0 X9", "M30", "O1000", "X3", "M2");
    assertThat(Runs.of(Move.class, events)).hasSize(2);
    assertThat(Runs.only(Event.Ended.class, events).code()).hasValue("M2");
  }

  @Test
  void theBudgetEndsARunWithoutAnEnd() {
    ControlProfile ten = Profiles.with(Runs.TENTH_UM, p -> p.stepBudget = 10);
    List<Event> events =
        Runs.events(ten, "G91 G0 X0", "M98 P1000 L1000000000", "M30", "O1000", "X1", "M99");
    assertThat(Runs.only(Event.StepBudgetReached.class, events).budget()).isEqualTo(10);
    assertThat(Runs.of(Event.Ended.class, events)).isEmpty();
  }

  @Test
  void placesOfASubprogramAreItsOwn() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "M98 P7", "M30", "O7", "", "G0 X3", "M99");
    assertThat(Runs.only(Move.class, events).at()).isEqualTo(new Place(0, 5, new Span(1, 6)));
  }
}
