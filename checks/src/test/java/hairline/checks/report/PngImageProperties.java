package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Random;
import javax.imageio.ImageIO;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Pictures are read back by the Java runtime's own reader. */
class PngImageProperties {

  @Property(tries = 200)
  void readBackAsTheyWere(
      @ForAll @IntRange(min = 1, max = 70) int width,
      @ForAll @IntRange(min = 1, max = 40) int height,
      @ForAll @IntRange(min = 1, max = 400) int longestRun,
      @ForAll long seed)
      throws IOException {
    Random random = new Random(seed);
    int[] colours = random.ints(256, 0, 1 << 24).toArray();
    byte[] pixels = new byte[width * height];
    int at = 0;
    while (at < pixels.length) {
      byte colour = (byte) random.nextInt();
      for (int run = random.nextInt(longestRun) + 1; run > 0 && at < pixels.length; run--) {
        pixels[at++] = colour;
      }
    }
    byte[] file = PngImage.of(width, height, pixels, colours);
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(file));
    assertThat(image.getWidth()).isEqualTo(width);
    assertThat(image.getHeight()).isEqualTo(height);
    for (int k = 0; k < pixels.length; k++) {
      assertThat(image.getRGB(k % width, k / width) & 0xFFFFFF)
          .isEqualTo(colours[pixels[k] & 0xFF]);
    }
  }

  @Property(tries = 1)
  void anEvenPictureIsSmall() {
    assertThat(PngImage.of(1000, 500, new byte[500_000], new int[] {0x123456}))
        .hasSizeLessThan(8000);
  }
}
