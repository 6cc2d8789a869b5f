package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Event;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.setup.CompensationShift;
import hairline.checks.setup.ToolShape;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** When a move is in contact, by what that is decided, and what makes it unknown. */
class ContactTest {
  private static final double UNKNOWN = Double.NaN;

  private static void is(Bench bench, Contact contact, ContactBasis basis) {
    assertThat(bench.last().contact()).isEqualTo(contact);
    assertThat(bench.last().contactBy()).isEqualTo(basis);
    assertThat(bench.last().inContact()).isEqualTo(contact == Contact.YES);
  }

  private static List<String> unknown(Bench bench) {
    return bench.all(Event.BecameUnknown.class).stream().map(Event.BecameUnknown::what).toList();
  }

  @Test
  void rapidsAreNotAsked() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g0(0, 0, -500);
    is(bench, Contact.NO, ContactBasis.RAPID);
    assertThat(bench.last().passId()).isZero();
    // And they cut nothing.
    bench.g1(1000, 0, -500);
    assertThat(bench.last().stepDownPm()).hasValue(Bench.pm(500));
  }

  @Test
  void withStockContactBeginsBelowItsTop() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, 0).g1(1000, 0, 0);
    is(bench, Contact.NO, ContactBasis.STOCK_BOX);
    assertThat(bench.last().runsAtLevel()).isTrue();
    bench.g1(1000, 0, -0.000001).g1(0, 0, -0.000001);
    assertThat(bench.cut(bench.line() - 1).contact()).isEqualTo(Contact.YES);
    is(bench, Contact.YES, ContactBasis.STOCK_BOX);
    assertThat(bench.last().stepDownPm()).hasValue(1);
  }

  @Test
  void besideTheStockThereIsNone() {
    Bench bench = Bench.flat().stock().g0(-7000, 0, 50).g1(-7000, 0, -10);
    is(bench, Contact.NO, ContactBasis.STOCK_BOX);
    bench.g1(-6210, 0, -10);
    is(bench, Contact.NO, ContactBasis.STOCK_BOX);
    bench.g1(-6150, 0, -10);
    is(bench, Contact.YES, ContactBasis.STOCK_BOX);
    bench.g1(-6150, 5000, -10);
    is(bench, Contact.YES, ContactBasis.STOCK_BOX);
    bench.g1(0, 5000, -10);
    is(bench, Contact.NO, ContactBasis.STOCK_BOX);
  }

  @Test
  void belowItsBottomNothingMoreIsTaken() {
    Bench bench =
        Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -3500).g1(1000, 0, -3500).g0(0, 0, 50).speed();
    bench.g0(0, 0, 100);
    bench.events.removeIf(e -> e instanceof Cut cut && !cut.move().isFeed());
    assertThat(bench.last().stepDownPm()).hasValue(Bench.pm(3000));
    assertThat(bench.last().writtenStepDownPm()).hasValue(Bench.pm(3000));
    assertThat(bench.last().levelId()).isEqualTo(Cut.NO_LEVEL);
    assertThat(bench.last().runsAtLevel()).isTrue();
    bench.end();
    assertThat(bench.steps()).isEmpty();
  }

  @Test
  void withoutStockContactBeginsBelowTheLowestRapidOfTheTool() {
    Bench bench = Bench.flat().g0(0, 0, 500).g0(0, 0, 50).g0(0, 0, 200).g1(0, 0, 50);
    is(bench, Contact.NO, ContactBasis.LOWEST_RAPID_Z);
    bench.g1(500, 0, 50);
    is(bench, Contact.NO, ContactBasis.LOWEST_RAPID_Z);
    bench.g1(500, 0, 49).g1(900, 0, 49);
    assertThat(bench.cut(bench.line() - 1).contact()).isEqualTo(Contact.YES);
    is(bench, Contact.YES, ContactBasis.LOWEST_RAPID_Z);
  }

  @Test
  void eachToolHasItsOwnLowestRapid() {
    Bench bench = Bench.flat().tool(2, ToolShape.FLAT, 400, 0, 1).g0(0, 0, 50).change(2);
    bench.g0(0, 0, 500).g1(0, 0, 100).g1(900, 0, 100);
    is(bench, Contact.YES, ContactBasis.LOWEST_RAPID_Z);
  }

  @Test
  void cyclesDoNotPosition() {
    Bench bench = Bench.flat().g0(0, 0, 500);
    bench.move(Move.Kind.RAPID, Move.Source.CYCLE, 0, 0, 20, Optional.empty()).g1(0, 0, 100);
    bench.g1(500, 0, 100);
    is(bench, Contact.YES, ContactBasis.LOWEST_RAPID_Z);
  }

  @Test
  void aToolNeverPositionedIsNotTold() {
    Bench bench = Bench.flat();
    bench.move(Move.Kind.RAPID, Move.Source.CYCLE, 0, 0, 5, Optional.empty());
    bench.g1(0, 0, -5).g1(900, 0, -5);
    is(bench, Contact.UNKNOWN, ContactBasis.NEVER_POSITIONED);
    assertThat(bench.last().fineUndecided()).isTrue();
    assertThat(bench.last().stepDowns()).isEmpty();
    // What it may have cut stays unknown, what lies apart doesn't.
    bench.g0(0, 0, 50).g1(0, 0, -9).g1(900, 0, -9);
    is(bench, Contact.YES, ContactBasis.LOWEST_RAPID_Z);
    assertThat(bench.last().stepDowns()).isEmpty();
    assertThat(bench.last().surfacePartlyUnknown()).isTrue();
    bench.g0(0, 2000, 50).g1(0, 2000, -4).g1(900, 2000, -4);
    bench.g0(0, 2000, 50).g1(0, 2000, -9).g1(900, 2000, -9);
    assertThat(bench.last().stepDownPm()).hasValue(Bench.pm(5));
  }

  @Test
  void aToolTheSheetDoesNotListIsBlind() {
    Bench bench = Bench.flat().stock().change(7).g0(0, 0, 50).g1(0, 0, 10);
    is(bench, Contact.NO, ContactBasis.STOCK_BOX);
    assertThat(unknown(bench)).isEmpty();
    bench.g1(0, 0, -10);
    is(bench, Contact.UNKNOWN, ContactBasis.TOOL_UNKNOWN);
    assertThat(bench.last().tool()).isEmpty();
    bench.g1(900, 0, -10);
    assertThat(unknown(bench))
        .containsExactly("the surface of G54: tool 7 has no diameter and shape on the sheet");
    bench.change(1).g0(0, 0, 50).g1(0, 0, -20).g1(900, 0, -20);
    is(bench, Contact.YES, ContactBasis.STOCK_BOX);
    assertThat(bench.last().stepDowns()).isEmpty();
    assertThat(bench.last().surfacePartlyUnknown()).isTrue();
    assertThat(bench.last().levelId()).isPositive();
    bench.g0(-9000, 0, 50).g1(-9000, 0, -20);
    is(bench, Contact.NO, ContactBasis.STOCK_BOX);
    assertThat(bench.end().steps()).isEmpty();
  }

  @Test
  void withoutStockAnUnlistedToolStillCutsLevels() {
    Bench bench = Bench.flat().change(7).g0(0, 0, 50).g1(0, 0, -10).g1(900, 0, -10);
    is(bench, Contact.YES, ContactBasis.LOWEST_RAPID_Z);
    bench.g0(0, 0, 50).g1(0, 0, -10).g1(900, 0, -10).g0(0, 0, 50).end();
    assertThat(bench.levels()).extracting(LevelReached::again).containsExactly(false, true);
    assertThat(bench.levels()).extracting(LevelReached::levelId).containsOnly(1);
    assertThat(bench.levels().get(0).stepDownPm()).isEmpty();
    assertThat(bench.all(PassEnded.class)).hasSize(4);
  }

  @Test
  void anUnknownHeightIsLostWhereItWentAndNowhereElse() {
    Bench bench = Bench.flat().stock().g0(0, 0, UNKNOWN).g1(900, 0, UNKNOWN);
    is(bench, Contact.UNKNOWN, ContactBasis.POSITION_UNKNOWN);
    assertThat(bench.last().surfacePartlyUnknown()).isTrue();
    assertThat(unknown(bench)).isEmpty();
    bench.g0(0, 0, 50).g1(0, 0, -10).g1(900, 0, -10);
    is(bench, Contact.YES, ContactBasis.STOCK_BOX);
    assertThat(bench.last().stepDowns()).isEmpty();
    bench.g0(0, 2000, 50).g1(0, 2000, -10).g1(900, 2000, -10);
    assertThat(bench.last().stepDownPm()).hasValue(Bench.pm(10));
    assertThat(bench.last().surfacePartlyUnknown()).isFalse();
    // The pass that crosses the lost place tells what it takes beside it.
    bench.g0(300, -2000, 50).g1(300, -2000, -10).g1(300, 1000, -10);
    assertThat(Bench.um(bench.last())).containsExactly(10.0);
    assertThat(bench.last().surfacePartlyUnknown()).isTrue();
  }

  @Test
  void anUnknownPlaceLosesThePart() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(UNKNOWN, 0, -10);
    is(bench, Contact.UNKNOWN, ContactBasis.POSITION_UNKNOWN);
    assertThat(unknown(bench))
        .containsExactly("the surface of G54: a coordinate of a feed move is not known (X)");
    bench.g0(0, 0, 50).g1(0, 0, -10).g1(900, 0, -10);
    is(bench, Contact.YES, ContactBasis.STOCK_BOX);
    assertThat(bench.last().surfacePartlyUnknown()).isTrue();
    bench.g1(UNKNOWN, 0, -10);
    assertThat(unknown(bench)).hasSize(1);
    assertThat(bench.end().steps()).isEmpty();
  }

  @Test
  void anUnknownPlaceAboveEverythingIsHarmless() {
    Bench bench = Bench.flat().stock().g0(UNKNOWN, 0, 50).g1(UNKNOWN, 0, 0);
    is(bench, Contact.NO, ContactBasis.STOCK_BOX);
    assertThat(unknown(bench)).isEmpty();
    Bench open = Bench.flat().g0(UNKNOWN, 0, 50).g1(UNKNOWN, 0, 50);
    is(open, Contact.NO, ContactBasis.LOWEST_RAPID_Z);
    assertThat(unknown(open)).isEmpty();
    open.g1(UNKNOWN, 0, 49);
    is(open, Contact.UNKNOWN, ContactBasis.POSITION_UNKNOWN);
  }

  @Test
  void aPlaceBeyondAllMachinesIsNotMeasured() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(2e8, 0, -10);
    is(bench, Contact.UNKNOWN, ContactBasis.POSITION_UNKNOWN);
    assertThat(unknown(bench)).hasSize(1);
  }

  @Test
  void anUnknownOffsetLosesAllParts() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(900, 0, -4);
    Modes known = bench.modes();
    bench.modes(Bench.with(known, Modal.unknown(5))).g1(0, 0, -4);
    is(bench, Contact.UNKNOWN, ContactBasis.POSITION_UNKNOWN);
    assertThat(unknown(bench))
        .containsExactly("the surface of the part: the work offset is not known");
    bench.modes(known).offset("G55").g0(0, 0, 50).g1(0, 0, -4).g1(900, 0, -4);
    assertThat(bench.last().surfacePartlyUnknown()).isTrue();
    assertThat(bench.end().steps()).isEmpty();
  }

  @Test
  void theStockIsThereUnderItsOffsetOnly() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).offset("G55").g0(0, 0, 50).g1(0, 0, 20);
    bench.g1(900, 0, 20);
    is(bench, Contact.YES, ContactBasis.LOWEST_RAPID_Z);
    bench.offset("G54").g0(0, 0, 50).g1(0, 0, 20);
    is(bench, Contact.NO, ContactBasis.STOCK_BOX);
    bench.g1(0, 0, -4).g1(900, 0, -4).end();
    assertThat(bench.levels()).extracting(LevelReached::offset).containsExactly("G55", "G54");
    assertThat(bench.steps()).hasSize(1).allMatch(s -> s.offset().equals("G54"));
  }

  @Test
  void whatIsLeftOutLosesThePart() {
    Modes modes = Bench.start();
    List<Event> left =
        List.of(
            new Event.SubprogramMissing(Bench.flat().place(), "O77", List.of()),
            new Event.SubprogramEndless(Bench.flat().place(), List.of("O1"), 10),
            new Event.ArcImpossible(
                Bench.flat().place(),
                "no centre",
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                modes),
            new Event.StepBudgetReached(Bench.flat().place(), 5));
    for (Event event : left) {
      Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(900, 0, -4);
      assertThat(bench.last().stepDowns()).hasSize(1);
      bench.send(event).g1(900, 100, -4).g1(0, 100, -4);
      is(bench, Contact.YES, ContactBasis.STOCK_BOX);
      assertThat(bench.last().stepDowns()).isEmpty();
      assertThat(bench.last().surfacePartlyUnknown()).isTrue();
      assertThat(bench.events).contains(event);
      assertThat(unknown(bench))
          .hasSize(1)
          .allMatch(w -> w.startsWith("the surface of the part: "));
      assertThat(bench.end().steps()).isEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Modes.Compensation.class,
      names = {"LEFT", "RIGHT"})
  void underRadiusCompensationContactIsToldAndHeightsAreNot(Modes.Compensation side) {
    Bench bench = Bench.flat().stock().compensation(CompensationShift.RADIUS).g0(0, 0, 50);
    Modes off = bench.modes();
    bench.modes(Bench.compensation(off, Modal.stated(side, 3)));
    bench.g1(0, 0, -4).g1(3000, 0, -4);
    is(bench, Contact.YES, ContactBasis.STOCK_BOX);
    assertThat(bench.last().stepDowns()).isEmpty();
    assertThat(bench.last().surfacePartlyUnknown()).isTrue();
    assertThat(unknown(bench)).hasSize(1).allMatch(w -> w.contains("under radius compensation"));
    bench.g1(-9000, 0, -4).g1(-9000, 100, -4);
    is(bench, Contact.NO, ContactBasis.STOCK_BOX);
    // Up to a diameter beside the path is lost; farther out the stock stands.
    bench.modes(off).g0(0, 500, 50).g1(0, 500, -9).g1(1000, 500, -9);
    assertThat(bench.last().surfacePartlyUnknown()).isTrue();
    assertThat(Bench.um(bench.last())).containsExactly(9.0);
    bench.g0(0, 700, 50).g1(0, 700, -9).g1(1000, 700, -9);
    assertThat(bench.last().surfacePartlyUnknown()).isFalse();
  }

  @Test
  void underWearCompensationThePathIsTheToolsOwn() {
    Bench bench = Bench.flat().stock().compensation(CompensationShift.WEAR).g0(0, 0, 50);
    bench.modes(Bench.compensation(bench.modes(), Modal.stated(Modes.Compensation.LEFT, 3)));
    bench.g1(0, 0, -4).g1(3000, 0, -4);
    assertThat(Bench.um(bench.last())).containsExactly(4.0);
    assertThat(unknown(bench)).isEmpty();
  }

  @Test
  void compensationOfUnknownStateOrShiftCountsAsShifted() {
    Bench shiftUnknown = Bench.flat().stock().g0(0, 0, 50);
    shiftUnknown.modes(
        Bench.compensation(shiftUnknown.modes(), Modal.stated(Modes.Compensation.LEFT, 3)));
    shiftUnknown.g1(0, 0, -4).g1(3000, 0, -4);
    assertThat(shiftUnknown.last().surfacePartlyUnknown()).isTrue();
    Bench stateUnknown = Bench.flat().stock().compensation(CompensationShift.RADIUS).g0(0, 0, 50);
    stateUnknown.modes(Bench.compensation(stateUnknown.modes(), Modal.unknown(3)));
    stateUnknown.g1(0, 0, -4).g1(3000, 0, -4);
    assertThat(stateUnknown.last().surfacePartlyUnknown()).isTrue();
    Bench unset = Bench.flat().stock().compensation(CompensationShift.RADIUS).g0(0, 0, 50);
    unset.modes(Bench.compensation(unset.modes(), Modal.unset()));
    unset.g1(0, 0, -4).g1(3000, 0, -4);
    assertThat(unset.last().surfacePartlyUnknown()).isFalse();
  }

  @Test
  void otherEventsPassThroughInOrder() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    Event dwell = new Event.Dwelled(bench.place(), OptionalDouble.of(1), bench.modes());
    bench.send(dwell).g1(0, 0, -4).send(dwell).g1(900, 0, -4).send(dwell).end();
    assertThat(bench.events.stream().map(e -> e.getClass().getSimpleName()))
        .containsExactly(
            "Cut",
            "DwelledAt",
            "Dwelled",
            "Cut",
            "DwelledAt",
            "Dwelled",
            "PassEnded",
            "LevelReached",
            "Cut",
            "DwelledAt",
            "Dwelled",
            "PassEnded",
            "StepFound",
            "PartLeft",
            "Ended");
  }

  @Test
  void aToolChangeEndsThePassAndForgetsTheApproach() {
    Bench bench = Bench.flat().tool(2, ToolShape.FLAT, 400, 0, 1).stock().g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(900, 0, -4).change(2);
    int changed = bench.line();
    assertThat(bench.all(PassEnded.class)).hasSize(2);
    assertThat(bench.all(PassEnded.class).get(1).at().line()).isEqualTo(changed);
    assertThat(bench.events.get(bench.events.size() - 1)).isInstanceOf(Event.ToolChanged.class);
    bench.g0(2000, 0, -9).g1(2900, 0, -9);
    assertThat(bench.levels().get(0).approach()).isEqualTo(ApproachDirection.FROM_ABOVE);
    assertThat(bench.levels().get(1).approach()).isEqualTo(ApproachDirection.UNKNOWN);
  }
}
