package hairline.checks.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hairline.checks.motion.Interpreter;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Differences of planned times and of sheets, and the acts of a program one by one. */
class DifferencesTest {

  @Test
  void timesOfOperationsThatAnswerEachOther() {
    Map<Integer, Double> before = Map.of(1, 10.0, 2, 20.0, 3, 0.0005);
    Map<Integer, Double> after = Map.of(1, 10.0005, 3, 25.0, 4, 3.0);
    assertThat(TimeDifference.of(before, after, Map.of(1, 1, 2, 3)))
        .as("a millisecond and more is told, of operations that answer none too")
        .containsExactlyInAnyOrder(
            new TimeDifference(2, 3, 20, 25), new TimeDifference(0, 4, 0, 3));
    assertThat(TimeDifference.of(Map.of(1, 0.0), Map.of(1, 0.001), Map.of(1, 1))).hasSize(1);
    assertThat(TimeDifference.of(Map.of(1, 0.0), Map.of(1, 0.00099), Map.of(1, 1))).isEmpty();
    assertThat(TimeDifference.of(Map.of(1, 1.0), Map.of(), Map.of()))
        .containsExactly(new TimeDifference(1, 0, 1, 0));
    assertThat(TimeDifference.of(Map.of(1, 2.0, 2, 3.0), Map.of(1, 5.0), Map.of(1, 1, 2, 1)))
        .as("of two that became one, the first is answered")
        .containsExactlyInAnyOrder(new TimeDifference(1, 1, 2, 5), new TimeDifference(2, 0, 3, 0));
  }

  private static Setup sheet(String text) throws Exception {
    return new SheetReader().parse(text, "sheet");
  }

  @Test
  void valuesThatOneSheetLacksDiffer() throws Exception {
    Setup one = sheet("machine: {resolution: 0.1 um}\ntools: [{number: 1, diameter: 1 mm}]\n");
    Setup other =
        sheet(
            "machine: {resolution: 0.1 um}\ntools: [{number: 1, diameter: 2 mm, runout: 1 um}]\n");
    List<SheetDifference> there = SheetDifference.of(one, other);
    assertThat(there)
        .extracting(d -> d.key() + " " + d.before().orElse("-") + " " + d.after().orElse("-"))
        .containsExactly("tools.1.diameter 1 mm 2 mm", "tools.1.runout - 1 um");
    assertThat(SheetDifference.of(other, one))
        .extracting(d -> d.key() + " " + d.before().orElse("-") + " " + d.after().orElse("-"))
        .containsExactlyInAnyOrder("tools.1.diameter 2 mm 1 mm", "tools.1.runout 1 um -");
    assertThat(SheetDifference.of(one, one)).isEmpty();
  }

  private static ActStream.Program program(String text) {
    return sink ->
        new Interpreter(
                SheetControl.of(new SheetReader().embedded()),
                ProgramFiles.alone(
                    PartPrograms.of("a.nc", text.getBytes(StandardCharsets.UTF_8)), e -> {}))
            .run(new ActReader(sink), false);
  }

  @Test
  void actsComeInTheirOrderHoweverMany() throws IOException {
    StringBuilder text = new StringBuilder("G21 G90 G94\n");
    int moves = 10_000;
    for (int k = 1; k <= moves; k++) {
      text.append("G0 X").append(k).append(".\n");
    }
    try (ActStream acts = new ActStream(program(text + "M30\n"))) {
      for (int k = 1; k <= moves; k++) {
        Act act = acts.next();
        assertThat(act.kind()).isEqualTo(Act.Kind.MOVE);
        assertThat(act.at().line()).isEqualTo(k + 1);
      }
      assertThat(acts.next().kind()).isEqualTo(Act.Kind.END);
      assertThatThrownBy(acts::next)
          .isInstanceOf(IOException.class)
          .hasMessageContaining("the program changed while it was compared");
    }
  }

  @Test
  void aFailureOfTheProgramIsThatOfTheStream() {
    IOException gone = new IOException("gone");
    try (ActStream acts =
        new ActStream(
            sink -> {
              throw gone;
            })) {
      assertThatThrownBy(acts::next).isSameAs(gone);
    }
    IllegalArgumentException wrong = new IllegalArgumentException("wrong");
    try (ActStream acts =
        new ActStream(
            sink -> {
              throw wrong;
            })) {
      assertThatThrownBy(acts::next).isInstanceOf(IllegalStateException.class).hasCause(wrong);
    }
  }

  /** Whoever stops early leaves no thread behind that waits for room for ever. */
  @Test
  void aStreamThatIsClosedEarlyEnds() throws Exception {
    List<Thread> seen = new ArrayList<>();
    ActStream acts =
        new ActStream(
            sink -> {
              seen.add(Thread.currentThread());
              program("G0 X1.\n".repeat(20_000)).run(sink);
            });
    assertThat(acts.next().kind()).isEqualTo(Act.Kind.MOVE);
    acts.close();
    seen.get(0).join(60_000);
    assertThat(seen.get(0).isAlive()).isFalse();
  }
}
