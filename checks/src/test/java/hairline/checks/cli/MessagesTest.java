package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** How a failure looks on standard error. */
class MessagesTest {
  private final StringWriter text = new StringWriter();

  /** What stands on standard error although nobody else flushes. */
  private String told(boolean verbose, Failed failed) {
    Messages messages = new Messages(new PrintWriter(new BufferedWriter(text), false));
    messages.verbose(verbose);
    messages.tell(failed);
    return text.toString().replace(System.lineSeparator(), "\n");
  }

  @Test
  void aFailureSaysWhatAndBelowItWhatToDo() {
    Failed failed = Failed.of(Failure.INPUT_MISSING, "a.nc");
    assertThat(told(false, failed))
        .isEqualTo(
            "hairline: "
                + failed.trouble().sentence()
                + "\n          "
                + failed.trouble().cure()
                + "\n");
    assertThat(failed.trouble().sentence()).contains("a.nc");
  }

  @Test
  void onRequestTheTraceOfItsCauseFollows() {
    Failed failed =
        Failed.because(
            new IOException("disk gone"), Failure.OUTPUT_FAILED, "standard output", "disk gone");
    assertThat(told(false, failed)).doesNotContain("IOException");
    assertThat(told(true, failed))
        .contains("\n          [" + Failure.OUTPUT_FAILED.code() + "]\n")
        .contains("\n          java.io.IOException: disk gone\n")
        .contains("\n            at hairline.checks.cli.MessagesTest.");
    assertThat(told(true, Failed.of(Failure.INPUT_MISSING, "b.nc")))
        .as("without a cause its own")
        .contains("\n          " + Failed.class.getName());
  }

  @Test
  void sentencesThatAreNoFailuresShowNoControlCharacters() {
    Messages messages = new Messages(new PrintWriter(new BufferedWriter(text), false));
    messages.note("written to a\u001b[31m.yaml");
    assertThat(text.toString()).as("nobody else flushes").isNotEmpty();
    messages.tell("2 programs");
    assertThat(text.toString().replace(System.lineSeparator(), "\n"))
        .startsWith("hairline: written to a")
        .doesNotContain("\u001b")
        .endsWith("hairline: 2 programs\n");
  }
}
