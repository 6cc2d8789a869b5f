package hairline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.util.List;
import org.junit.jupiter.api.Test;

class CallsTest {
  private static Place line(int file, int line) {
    return new Place(file, line, new Span(1, 1));
  }

  /** Moves 0 in the program, 1 to 3 and 4 to 6 in two calls, of which 2 and 5 are made below. */
  private static Calls twice() throws Exception {
    Calls calls = new Calls();
    calls.move(0);
    for (int call = 0; call < 2; call++) {
      calls.enter(line(0, 10 + call));
      calls.move(1 + 3 * call);
      calls.enter(line(1, 5));
      calls.move(2 + 3 * call);
      calls.leave();
      calls.move(3 + 3 * call);
      calls.leave();
    }
    calls.move(7);
    return calls;
  }

  @Test
  void theCallsThatLeadToAMove() throws Exception {
    try (Calls calls = twice()) {
      assertThat(calls.at(0)).isEmpty();
      assertThat(calls.at(1)).isEqualTo(List.of(line(0, 10)));
      assertThat(calls.at(5)).isEqualTo(List.of(line(0, 11), line(1, 5)));
      assertThat(calls.at(6)).isEqualTo(List.of(line(0, 11)));
      assertThat(calls.at(7)).isEmpty();
      assertThat(calls.at(1000)).isEmpty();
    }
  }

  @Test
  void theMovesOfACall() throws Exception {
    try (Calls calls = twice()) {
      assertThat(calls.around(0, 8)).isEqualTo(new Range(0, 8));
      assertThat(calls.around(1, 8)).isEqualTo(new Range(1, 4));
      assertThat(calls.around(3, 8)).isEqualTo(new Range(1, 4));
      assertThat(calls.around(2, 8)).isEqualTo(new Range(2, 3));
      assertThat(calls.around(4, 8)).isEqualTo(new Range(4, 7));
      assertThat(calls.around(5, 8)).isEqualTo(new Range(5, 6));
      assertThat(calls.around(7, 8)).isEqualTo(new Range(0, 8));
    }
  }

  /** Beyond the ways kept the callers are not known, and no wrong ones are told. */
  @Test
  void endlesslyManyWaysAreNotKept() throws Exception {
    try (Calls calls = new Calls()) {
      for (int k = 0; k < Calls.MOST_WAYS + 10; k++) {
        calls.enter(line(0, k + 1));
        calls.move(k);
        calls.leave();
      }
      assertThat(calls.at(Calls.MOST_WAYS - 2)).isEqualTo(List.of(line(0, Calls.MOST_WAYS - 1)));
      assertThat(calls.at(Calls.MOST_WAYS + 5)).isEmpty();
    }
  }
}
