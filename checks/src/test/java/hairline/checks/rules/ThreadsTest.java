package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Place;
import hairline.checks.rules.ProgramCheck.Threads;
import hairline.checks.setup.Setup;
import hairline.parser.Span;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** A program checked on several threads gives what it gives on one. */
class ThreadsTest {
  @TestFactory
  Stream<DynamicTest> programs() throws IOException {
    return AnnotatedProgramsTest.programs().stream()
        .map(
            program ->
                DynamicTest.dynamicTest(
                    Programs.ROOT.relativize(program).toString(),
                    () -> {
                      Setup setup = Programs.sheetFor(program);
                      ProgramCheck check = ProgramCheck.of(Selection.ALL);
                      assertThat(check.on(Threads.SEVERAL).check(program, setup))
                          .isEqualTo(check.on(Threads.ONE).check(program, setup));
                    }));
  }

  @Test
  void whatGoesWrongOverThereGoesWrongHere() throws Exception {
    Path program = AnnotatedProgramsTest.programs().get(0);
    Setup setup = Programs.sheetFor(program);
    for (Threads threads : List.of(Threads.ONE, Threads.SEVERAL)) {
      assertThatThrownBy(
              () ->
                  ProgramCheck.of(Selection.ALL)
                      .on(threads)
                      .check(
                          program,
                          setup,
                          event -> {
                            throw new UnsupportedOperationException("watcher");
                          }))
          .hasMessage("watcher");
    }
  }

  /** More events than are ever under way, some of them direct. */
  @Test
  void eventsComeInTheirOrder() throws IOException {
    List<Integer> taken = new ArrayList<>();
    Handover handover =
        new Handover(Handover.EVENTS_A_BATCH, event -> taken.add(event.at().line()))
            .to(sink(taken));
    handover.part("judge");
    for (int line = 1; line <= 100_000; line++) {
      Event event = new Event.OffsetAssumed(new Place(0, line, new Span(1, 1)));
      if (line % 7 == 0) {
        handover.acceptDirectly(event);
      } else {
        handover.accept(event);
      }
    }
    handover.join();
    assertThat(taken).hasSize(100_000).isSorted();
  }

  private static EventSink sink(List<Integer> taken) {
    return event -> taken.add(event.at().line());
  }
}
