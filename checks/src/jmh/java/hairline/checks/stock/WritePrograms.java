package hairline.checks.stock;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.Paths;

/**
 * Writes the programs on which the whole command is timed, for the stock and the tools of the demo:
 * a million blocks of terraces, a million of finishing with a ball, and 200,000 plain ones.
 */
public final class WritePrograms {
  private static final double SIDE_UM = 8000;
  private static final int FLAT_TOOL = 3;
  private static final int BALL_TOOL = 5;
  private static final int MILLION = 1_000_000;

  private WritePrograms() {}

  /**
   * Writes them.
   *
   * @param arguments the folder that takes them
   */
  public static void main(String[] arguments) throws IOException {
    Path folder = Paths.get(arguments[0]);
    Files.createDirectories(folder);
    write(folder.resolve("terraces.nc"), RasterProgram.Kind.TERRACES, 8, FLAT_TOOL, MILLION);
    write(folder.resolve("finishing.nc"), RasterProgram.Kind.RELIEF, 8, BALL_TOOL, MILLION);
    write(folder.resolve("plain.nc"), RasterProgram.Kind.RELIEF, 40, FLAT_TOOL, MILLION / 5);
  }

  private static void write(Path file, RasterProgram.Kind kind, double moveUm, int tool, int blocks)
      throws IOException {
    try (Writer out = Files.newBufferedWriter(file, StandardCharsets.US_ASCII)) {
      new RasterProgram(kind, SIDE_UM, moveUm, 8, 7).write(out, tool, blocks);
    }
  }
}
