package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Event;
import hairline.checks.setup.Setup;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is told on the way, held against what the same check says at its end. */
class FindingsWatcherTest {

  /** Asks at every so many-th event. */
  private static final class Asking implements FindingsWatcher {
    private @Nullable SoFar soFar;
    private final List<Integer> counts = new ArrayList<>();
    private List<Finding> last = List.of();
    private final int every;
    private long events;

    Asking(int every) {
      this.every = every;
    }

    @Override
    public void begin(SoFar told) {
      soFar = told;
    }

    @Override
    public void accept(Event event) {
      if (events++ % every == 0) {
        last = Objects.requireNonNull(soFar).findings();
        counts.add(last.size());
      }
    }
  }

  @TestFactory
  Stream<DynamicTest> askingChangesNothing() throws IOException {
    return AnnotatedProgramsTest.programs().stream()
        .map(
            program ->
                DynamicTest.dynamicTest(
                    Programs.ROOT.relativize(program).toString(),
                    () -> {
                      Setup setup = Programs.sheetFor(program);
                      ProgramCheck check = ProgramCheck.of(Selection.ALL);
                      assertThat(check.check(program, setup, new Asking(29)))
                          .isEqualTo(check.check(program, setup));
                    }));
  }

  @ParameterizedTest
  @EnumSource(ProgramCheck.Threads.class)
  void findingsAreToldOnTheWay(ProgramCheck.Threads threads) throws Exception {
    Path program = Programs.ROOT.resolve("mixer-insert/mixer-insert-faulty.nc");
    Asking asking = new Asking(1);
    ProgramResult result =
        ProgramCheck.of(Selection.ALL)
            .on(threads)
            .check(program, Programs.sheetFor(program), asking);
    // At the last event each stands as at the end, but for budgets, which are drawn up there.
    List<Finding> judgedOnTheWay =
        result.findings().stream()
            .filter(finding -> !finding.rule().equals("budget-exceeds-tolerance"))
            .toList();
    assertThat(judgedOnTheWay).hasSize(result.findings().size() - 1);
    assertThat(asking.last.equals(judgedOnTheWay)).isTrue();
    // They came one after another: as many different counts as there are lines with findings.
    long lines = result.findings().stream().map(finding -> finding.at().line()).distinct().count();
    assertThat(asking.counts.get(0)).isZero();
    assertThat(asking.counts.stream().distinct().count()).isGreaterThan(lines);
  }
}
