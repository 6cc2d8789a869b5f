package hairline.viewer.model;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Programs for tests. */
public final class Programs {
  private static final Path ROOT = Path.of(System.getProperty("hairline.programs", "../programs"));

  private Programs() {}

  /** The demo with planted faults. */
  public static final Path FAULTY = ROOT.resolve("mixer-insert/mixer-insert-faulty.nc");

  /** The demo. */
  public static final Path DEMO = ROOT.resolve("mixer-insert/mixer-insert.nc");

  /** Reads a program to its end. */
  public static Program read(Path file) throws InterruptedException {
    Loading loading = Loading.start(file, Optional.empty());
    loading.await();
    return loading.program();
  }

  /** Writes a program of these lines. */
  public static Path write(Path folder, String name, String... lines) throws IOException {
    Path file = folder.resolve(name);
    Files.write(file, (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
    return file;
  }
}
