package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** Programs that call each other at will, against a plain recursive run of the same lists. */
class BlockFlowProperties {
  private static final int BUDGET = 300;
  private static final int DEPTH = 3;

  /** A block of a program: a move, a call, a return, an end. */
  private record Line(String text, int called, int repeats, boolean deletable) {
    String written() {
      return (deletable ? "/" : "") + text;
    }
  }

  @Property
  void runsAsAPlainRecursionDoes(
      @ForAll("programs") List<List<Line>> programs, @ForAll boolean blockDelete)
      throws IOException {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < programs.size(); i++) {
      text.append('O').append(i).append('\n');
      programs.get(i).forEach(line -> text.append(line.written()).append('\n'));
    }
    Recursion expected = new Recursion(programs, blockDelete);
    expected.main();

    List<String> executed = new ArrayList<>();
    byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
    ProgramFiles files = ProgramFiles.alone(PartPrograms.of("test", bytes), event -> {});
    ControlProfile profile =
        Profiles.with(
            ControlProfile.UNKNOWN,
            items -> {
              items.callDepth = DEPTH;
              items.stepBudget = BUDGET;
            });
    new Interpreter(profile, files)
        .run(
            event -> {
              if (event instanceof Event.BlockStarted started) {
                executed.add(started.block().text());
              }
            },
            blockDelete);
    assertThat(executed).isEqualTo(expected.executed);
  }

  @Provide
  Arbitrary<List<List<Line>>> programs() {
    Arbitrary<Line> moves =
        Combinators.combine(Arbitraries.of("G1 X1.", "G0 Y2.", "(text)", "N5", ""), marks())
            .as((text, mark) -> new Line(text, -1, 0, mark && !text.isEmpty()));
    Arbitrary<Line> calls =
        Combinators.combine(
                Arbitraries.integers().between(0, 5), Arbitraries.integers().between(0, 3), marks())
            .as(
                (program, repeats, mark) ->
                    new Line("M98 P" + program + " L" + repeats, program, repeats, mark));
    Arbitrary<Line> ends =
        Combinators.combine(Arbitraries.of("M99", "M99", "M30"), marks())
            .as((text, mark) -> new Line(text, -1, 0, mark));
    return Arbitraries.frequencyOf(Tuple.of(4, moves), Tuple.of(3, calls), Tuple.of(1, ends))
        .list()
        .ofMaxSize(6)
        .list()
        .ofMinSize(1)
        .ofMaxSize(5);
  }

  private static Arbitrary<Boolean> marks() {
    return Arbitraries.of(false, false, false, true);
  }

  /** The oracle: it recurses, and stops by exceptions. */
  private static final class Recursion {
    private final List<List<Line>> programs;
    private final boolean blockDelete;
    private final List<Integer> chain = new ArrayList<>();
    private final List<String> executed = new ArrayList<>();
    private int steps;

    private static final class Over extends RuntimeException {
      private static final long serialVersionUID = 1L;
    }

    Recursion(List<List<Line>> programs, boolean blockDelete) {
      this.programs = programs;
      this.blockDelete = blockDelete;
    }

    void main() {
      try {
        run(0);
      } catch (Over over) {
        assertThat(steps).isLessThanOrEqualTo(BUDGET);
      }
    }

    private void step() {
      if (steps == BUDGET) {
        throw new Over();
      }
      steps++;
    }

    private void run(int program) {
      chain.add(program);
      step();
      executed.add("O" + program);
      for (Line line : programs.get(program)) {
        step();
        if (blockDelete && line.deletable()) {
          continue;
        }
        executed.add(line.written());
        if (line.text().equals("M30") || (line.text().equals("M99") && chain.size() == 1)) {
          throw new Over();
        }
        if (line.text().equals("M99")) {
          break;
        }
        boolean callable =
            line.called() >= 0
                && line.called() < programs.size()
                && !chain.contains(line.called())
                && chain.size() <= DEPTH;
        for (int i = 0; callable && i < line.repeats(); i++) {
          run(line.called());
        }
      }
      chain.remove(chain.size() - 1);
    }
  }
}
