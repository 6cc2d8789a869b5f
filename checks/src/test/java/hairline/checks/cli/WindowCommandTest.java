package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;

/** {@code hairline window} on the terraces of the demo. */
class WindowCommandTest {
  private static final Path DEMO = Path.of("../programs/mixer-insert");
  private static final String SHEET = "--setup=" + DEMO.resolve("setup.yaml");

  @TempDir private Path folder;

  /** The demo without its basin, which takes long and has no levels. */
  private static String terraces() throws IOException {
    String text = Files.readString(DEMO.resolve("mixer-insert.nc"));
    return text.substring(0, text.indexOf("(tool 5: basin)"))
        + text.substring(text.indexOf("M9\nM5\n"));
  }

  private String program(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  @Test
  void theDemoHasRoomAndTheCheckSaysTheSame() throws IOException {
    Ran ran = Ran.of("window", SHEET, program("part.nc", terraces()));
    assertThat(ran.status()).isZero();
    // By hand: 1.5 µm of edge radius and 12 µm of largest feed, × 2 teeth × 50000 rpm.
    assertThat(ran.out())
        .contains("operation 2: tool 3 at 50000 rpm, from line 44")
        .contains("feed  150 to 1200 mm/min; programmed 400 mm/min, 4 µm a tooth")
        .contains("≥ 150 mm/min = 1.5 µm  feed-below-edge-radius")
        .contains("≤ 1200 mm/min = 12 µm  chip-above-limit")
        .contains("≥ 0.45 µm  depth-below-minimum")
        .contains("≥ 23870 rpm  surface-speed-off")
        .contains("replaces no prove-out");
    String[][] feeds = {
      {"F150.", "F149.9", "feed-below-edge-radius"}, {"F1200.", "F1200.1", "chip-above-limit"}
    };
    for (String[] feed : feeds) {
      String only = "--only=" + feed[2];
      String inside = program("inside.nc", terraces().replace("F400.", feed[0]));
      String outside = program("outside.nc", terraces().replace("F400.", feed[1]));
      assertThat(Ran.of("check", SHEET, only, inside).status()).isZero();
      assertThat(Ran.of("check", SHEET, only, outside).status()).isEqualTo(1);
    }
  }

  @Test
  void aClosedWindowNamesWhatWouldOpenIt() throws IOException {
    String program = program("part.nc", terraces());
    Ran ran = Ran.of("window", SHEET, "--set=tools.3.max_feed_per_tooth=1.2 um", program);
    assertThat(ran.out().replaceAll("\\s+", " "))
        .contains("no feed will do: feed-below-edge-radius wants 150 mm/min or more,")
        .contains("chip-above-limit 120 mm/min or less")
        .contains("opens at tools.3.edge_radius 1.2 µm instead of 1.5 µm");
  }

  @Test
  void theDrawingIsWellFormedAndNamesItsLimits() throws Exception {
    Path svg = folder.resolve("window.svg");
    String hostile = program("<b>&\u202e\"'.nc", terraces());
    Ran ran = Ran.of("window", SHEET, "--svg=" + svg, hostile);
    assertThat(ran.status()).isZero();
    Document drawing =
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(svg.toFile());
    assertThat(drawing.getElementsByTagName("b").getLength()).isZero();
    assertThat(drawing.getElementsByTagName("path").getLength()).isGreaterThan(10);
    assertThat(drawing.getDocumentElement().getTextContent())
        .contains("chip-below-minimum: feed above", "flex-exceeds-wall: feed below")
        .contains("programmed: 400 mm/min");
    assertThat(Files.readString(svg)).doesNotContain("\u202e", "http://www.w3.org/1999/xlink");
  }

  @Test
  void aProgramThatCutsNothingHasNoWindow() throws IOException {
    Ran ran = Ran.of("window", program("part.nc", "G21 G90\nG54\nG0 X1.\nM30\n"));
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("no operation cuts with a tool of the sheet");
    assertThat(Ran.of("window", "gone.nc").status()).isEqualTo(3);
    assertThat(Ran.of("window", folder.toString()).status()).isEqualTo(2);
  }
}
