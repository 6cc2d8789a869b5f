package hairline.checks.cli;

import java.nio.charset.StandardCharsets;

/** Text of our own on standard output. */
final class Printed {
  private Printed() {}

  static ExitStatus text(Streams streams, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    streams.out().write(bytes, 0, bytes.length);
    return ExitStatus.CLEAN;
  }
}
