package hairline.viewer;

import hairline.viewer.draw.CanvasPen;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Png;
import hairline.viewer.draw.SvgPen;
import hairline.viewer.panes.Exported;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.transform.Scale;

/** Writes panes to files. */
public final class Saving {
  private static final double SHARP = 2;

  private Saving() {}

  /** As what a pane is written. */
  public enum Format {
    PNG,
    SVG,
    CSV;

    /** The ending of a file's name. */
    public String ending() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * Writes a pane.
   *
   * @throws IOException if the file can't be written
   */
  public static void save(Exported pane, Format format, Palette palette, Path file)
      throws IOException {
    switch (format) {
      case PNG -> Files.write(file, png(pane, palette));
      case SVG -> {
        SvgPen pen =
            new SvgPen(
                pane.exportWidth(), pane.exportHeight(), pane.exportName(), palette.ground());
        pane.drawTo(pen, palette);
        Files.writeString(file, pen.document(), StandardCharsets.UTF_8);
      }
      case CSV -> {
        try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
          pane.writeCsv(out);
        }
      }
    }
  }

  /** The picture of a pane, two pixels to a logical one. */
  private static byte[] png(Exported pane, Palette palette) {
    Canvas canvas = new Canvas(pane.exportWidth(), pane.exportHeight());
    int ground = palette.ground();
    canvas
        .getGraphicsContext2D()
        .setFill(Color.rgb((ground >> 16) & 0xFF, (ground >> 8) & 0xFF, ground & 0xFF));
    canvas.getGraphicsContext2D().fillRect(0, 0, canvas.getWidth(), canvas.getHeight());
    pane.drawTo(new CanvasPen(canvas.getGraphicsContext2D(), SHARP), palette);
    SnapshotParameters parameters = new SnapshotParameters();
    parameters.setTransform(new Scale(SHARP, SHARP));
    WritableImage image =
        canvas.snapshot(
            parameters,
            new WritableImage(
                (int) Math.ceil(canvas.getWidth() * SHARP),
                (int) Math.ceil(canvas.getHeight() * SHARP)));
    return bytes(image);
  }

  /** A picture as a file. */
  public static byte[] bytes(WritableImage image) {
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    int[] pixels = new int[width * height];
    image
        .getPixelReader()
        .getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), pixels, 0, width);
    return Png.of(pixels, width, height);
  }
}
