package hairline.viewer;

import hairline.checks.cli.WholeFile;
import hairline.checks.report.Trouble;
import hairline.viewer.draw.CanvasPen;
import hairline.viewer.draw.Png;
import hairline.viewer.draw.StoppablePen;
import hairline.viewer.draw.SvgPen;
import hairline.viewer.panes.Exported;
import hairline.viewer.panes.Progress;
import java.io.BufferedWriter;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.application.Platform;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.transform.Scale;

/** Writes panes to files. */
public final class Saving {
  private static final double SHARP = 2;
  private static final long LOOK_AGAIN_MS = 50;

  /** Of a drawing nobody knows how far it is. */
  static final double UNKNOWN_SHARE = -1;

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
   * Writes what was taken of a pane; not to be called on the window's thread.
   *
   * @param name what it shows
   * @param ground the colour behind it
   * @param inputs files that must stay as they are
   * @return why it could not be written; empty where it was
   * @throws CancellationException if the progress ends it; then the file is as it was before
   */
  static Optional<Trouble> write(
      Exported.Taken taken,
      String name,
      int ground,
      Format format,
      Path file,
      List<Path> inputs,
      Progress progress) {
    return WholeFile.write(
        file,
        inputs,
        out -> {
          switch (format) {
            case PNG -> out.write(png(taken, ground, progress));
            case SVG -> {
              SvgPen pen = new SvgPen(taken.width(), taken.height(), name, ground);
              taken.draw(new StoppablePen(pen, () -> progress.at(UNKNOWN_SHARE)));
              out.write(pen.document().getBytes(StandardCharsets.UTF_8));
            }
            case CSV -> {
              Writer table =
                  new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
              taken.writeCsv(table, progress);
              table.flush();
            }
          }
        });
  }

  /** The picture of a pane, two pixels to a logical one. */
  private static byte[] png(Exported.Taken taken, int ground, Progress progress) {
    // A canvas that stands in no window may be drawn on by any thread.
    Canvas canvas = new Canvas(taken.width(), taken.height());
    canvas
        .getGraphicsContext2D()
        .setFill(Color.rgb((ground >> 16) & 0xFF, (ground >> 8) & 0xFF, ground & 0xFF));
    canvas.getGraphicsContext2D().fillRect(0, 0, canvas.getWidth(), canvas.getHeight());
    CanvasPen pen = new CanvasPen(canvas.getGraphicsContext2D(), SHARP);
    taken.draw(new StoppablePen(pen, () -> progress.at(UNKNOWN_SHARE)));
    CompletableFuture<WritableImage> image = new CompletableFuture<>();
    Platform.runLater(
        () -> {
          try {
            image.complete(photographed(canvas));
          } catch (RuntimeException e) {
            image.completeExceptionally(e);
          }
        });
    return bytes(awaited(image, progress));
  }

  /** Waits, and gives up with the progress: the window's thread may be waiting in turn. */
  private static WritableImage awaited(CompletableFuture<WritableImage> image, Progress progress) {
    while (true) {
      try {
        return image.get(LOOK_AGAIN_MS, TimeUnit.MILLISECONDS);
      } catch (TimeoutException e) {
        progress.at(UNKNOWN_SHARE);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new CancellationException();
      } catch (ExecutionException e) {
        throw new IllegalStateException("the picture can't be drawn", e);
      }
    }
  }

  private static WritableImage photographed(Canvas canvas) {
    SnapshotParameters parameters = new SnapshotParameters();
    parameters.setTransform(new Scale(SHARP, SHARP));
    return canvas.snapshot(
        parameters,
        new WritableImage(
            (int) Math.ceil(canvas.getWidth() * SHARP),
            (int) Math.ceil(canvas.getHeight() * SHARP)));
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
