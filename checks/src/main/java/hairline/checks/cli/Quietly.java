package hairline.checks.cli;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.function.Supplier;

/** Runs what would print failures of its own on standard error, where we tell them better. */
public final class Quietly {
  private Quietly() {}

  /** Runs it, and standard error is silent meanwhile. */
  public static <T> T run(Supplier<T> noisy) {
    PrintStream error = System.err;
    System.setErr(new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8));
    try {
      return noisy.get();
    } finally {
      System.setErr(error);
    }
  }
}
