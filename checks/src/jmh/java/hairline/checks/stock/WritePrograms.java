package hairline.checks.stock;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.Paths;

/**
 * Writes the programs on which the whole command is timed, for the stock and the tools of the demo:
 * a million blocks of terraces, five millions of them in five passes, a million of finishing with a
 * ball, and 200,000 plain ones.
 */
public final class WritePrograms {
  private static final double SIDE_UM = 8000;
  private static final int FLAT_TOOL = 3;
  private static final int BALL_TOOL = 5;
  private static final int MILLION = 1_000_000;
  private static final int PASSES = 5;

  private WritePrograms() {}

  /**
   * Writes them.
   *
   * @param arguments the folder that takes them
   */
  public static void main(String[] arguments) throws IOException {
    Path folder = Paths.get(arguments[0]);
    Files.createDirectories(folder);
    RasterProgram terraces = raster(RasterProgram.Kind.TERRACES, 8);
    write(folder.resolve("terraces.nc"), terraces, FLAT_TOOL, MILLION, 1);
    write(folder.resolve("passes.nc"), terraces, FLAT_TOOL, PASSES * MILLION, PASSES);
    RasterProgram relief = raster(RasterProgram.Kind.RELIEF, 8);
    write(folder.resolve("finishing.nc"), relief, BALL_TOOL, MILLION, 1);
    RasterProgram plain = raster(RasterProgram.Kind.RELIEF, 40);
    write(folder.resolve("plain.nc"), plain, FLAT_TOOL, MILLION / 5, 1);
  }

  private static RasterProgram raster(RasterProgram.Kind kind, double moveUm) {
    return new RasterProgram(kind, SIDE_UM, moveUm, 8, 7);
  }

  private static void write(Path file, RasterProgram program, int tool, int blocks, int passes)
      throws IOException {
    try (Writer out = Files.newBufferedWriter(file, StandardCharsets.US_ASCII)) {
      program.write(out, tool, blocks, passes);
    }
  }
}
