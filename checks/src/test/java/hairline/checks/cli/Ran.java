package hairline.checks.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** A command line that was run in this process. */
record Ran(int status, String out, String err) {

  static Ran of(String... args) {
    return withInput("", args);
  }

  static Ran withInput(String input, String... args) {
    return with(Map.of(), false, input.getBytes(StandardCharsets.UTF_8), args);
  }

  static Ran with(Map<String, String> environment, boolean terminal, byte[] input, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Ran ran = to(out, environment, terminal, input, args);
    return new Ran(ran.status(), out.toString(StandardCharsets.UTF_8), ran.err());
  }

  static Ran to(OutputStream out, String... args) {
    return to(out, Map.of(), false, new byte[0], args);
  }

  private static Ran to(
      OutputStream out,
      Map<String, String> environment,
      boolean terminal,
      byte[] input,
      String... args) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Streams streams =
        new Streams(
            new ByteArrayInputStream(input),
            new WatchedOutput(out, false),
            Streams.utf8(err),
            terminal,
            terminal,
            false,
            environment);
    int status = Main.run(streams, args);
    return new Ran(status, "", err.toString(StandardCharsets.UTF_8));
  }

  /** A stream that fails like a full disk, or like a pipe whose reader went away. */
  static OutputStream failing(String message) {
    return new OutputStream() {
      @Override
      public void write(int b) throws IOException {
        throw new IOException(message);
      }
    };
  }
}
