package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The brief as a real browser has it: on the screen, on paper, and as a screen reader hears it. */
class BriefInBrowserTest {
  private static final Path DEMO = Path.of("../programs/mixer-insert");

  /** Roles that say nothing without a name. */
  private static final Set<String> NAMED =
      Set.of("image", "checkbox", "region", "table", "heading", "columnheader", "rowheader");

  @TempDir private static Path folder;

  private static Path page(String program) throws Exception {
    Path page = folder.resolve(program + ".html");
    Ran ran =
        Ran.of("brief", DEMO.resolve(program + ".nc").toString(), "--format=html", "-o", page + "");
    assertThat(ran.err()).isEmpty();
    assertThat(ran.status()).isZero();
    return page;
  }

  @Test
  void itShowsAllItHoldsAndAsksNobody() throws Exception {
    Path page = page("mixer-insert-faulty");
    try (Browser browser = Browser.start(folder)) {
      browser.open(page);
      assertThat(browser.events("Network.requestWillBeSent"))
          .extracting(e -> e.path("params").path("request").path("url").asText())
          .allMatch(url -> url.startsWith("file:") || url.startsWith("data:"));
      // What the page's own policy had refused would stand here.
      assertThat(browser.events("Log.entryAdded")).isEmpty();
      assertThat(browser.events("Runtime.exceptionThrown")).isEmpty();
      assertThat(
              browser
                  .value("document.querySelectorAll('script,link,iframe,object').length")
                  .asInt())
          .isZero();
      assertThat(browser.value("document.querySelectorAll('.found.error').length").asInt())
          .isEqualTo(6);
      assertThat(browser.value("document.querySelectorAll('figure svg').length").asInt())
          .isEqualTo(4);
      // Nothing is cut off at the side of a small screen but what can be scrolled.
      browser.send(
          "Emulation.setDeviceMetricsOverride",
          "width",
          400,
          "height",
          800,
          "deviceScaleFactor",
          1,
          "mobile",
          false);
      assertThat(browser.value("document.documentElement.scrollWidth").asInt())
          .isLessThanOrEqualTo(400);
      accessible(browser);
      keyboard(browser);
      contrast(browser);
    }
  }

  @Test
  void aComparisonIsReadAlike() throws Exception {
    Path page = folder.resolve("comparison.html");
    Ran ran =
        Ran.of(
            "compare",
            "--format=html",
            DEMO.resolve("mixer-insert.nc").toString(),
            DEMO.resolve("mixer-insert-faulty.nc").toString());
    Files.writeString(page, ran.out());
    try (Browser browser = Browser.start(folder)) {
      browser.open(page);
      assertThat(browser.events("Network.requestWillBeSent"))
          .extracting(e -> e.path("params").path("request").path("url").asText())
          .allMatch(url -> url.startsWith("file:") || url.startsWith("data:"));
      assertThat(browser.events("Log.entryAdded")).isEmpty();
      assertThat(browser.value("document.querySelectorAll('.found').length").asInt()).isEqualTo(9);
      contrast(browser);
    }
  }

  /** Everything that needs a name has one, and tables have heads. */
  private static void accessible(Browser browser) throws Exception {
    JsonNode tree = browser.send("Accessibility.getFullAXTree").get("nodes");
    Map<String, Integer> roles = new TreeMap<>();
    for (JsonNode node : tree) {
      String role = node.path("role").path("value").asText();
      if (node.path("ignored").asBoolean() || !NAMED.contains(role)) {
        continue;
      }
      roles.merge(role, 1, Integer::sum);
      assertThat(node.path("name").path("value").asText()).as(node.toString()).isNotBlank();
    }
    assertThat(roles).containsKeys("image", "checkbox", "region", "table", "heading");
    assertThat(browser.value("document.documentElement.lang").asText()).isEqualTo("en");
    assertThat(browser.value("document.title").asText()).isNotBlank();
    assertThat(browser.value("document.querySelectorAll('main').length").asInt()).isEqualTo(1);
    assertThat(
            browser
                .value(
                    "[...document.querySelectorAll('table')].filter(t => !t.caption"
                        + " || !t.querySelector('th[scope=col]')).length")
                .asInt())
        .isZero();
  }

  /** A box is reached by the tabulator and ticked by the space bar. */
  private static void keyboard(Browser browser) throws Exception {
    browser.value("document.querySelector('input').focus()");
    for (String type : List.of("keyDown", "keyUp")) {
      browser.send(
          "Input.dispatchKeyEvent",
          "type",
          type,
          "key",
          " ",
          "code",
          "Space",
          "text",
          type.equals("keyDown") ? " " : "",
          "windowsVirtualKeyCode",
          32);
    }
    assertThat(browser.value("document.querySelector('input').checked").asBoolean()).isTrue();
    assertThat(
            browser
                .value("[...document.querySelectorAll('input')].every(i => i.tabIndex >= 0)")
                .asBoolean())
        .isTrue();
  }

  /** Light and dark: text stands out by 4.5 and more (WCAG 2.1, contrast of text, level AA). */
  private static void contrast(Browser browser) throws Exception {
    String luminance =
        "(c => { const [r,g,b] = c.match(/[0-9.]+/g).slice(0,3).map(v => { v /= 255;"
            + " return v <= 0.03928 ? v/12.92 : ((v+0.055)/1.055)**2.4; });"
            + " return 0.2126*r + 0.7152*g + 0.0722*b; })";
    String least =
        "(() => { const lum = "
            + luminance
            + "; const page = lum(getComputedStyle(document.body).backgroundColor);"
            + " return Math.min(...[...document.querySelectorAll("
            + "'p,li,dt,dd,td,h1,h2,caption,figcaption,.level')].map(e => { const own ="
            + " lum(getComputedStyle(e).color); return (Math.max(own, page)+0.05)"
            + " / (Math.min(own, page)+0.05); })); })()";
    double page = 0;
    for (String scheme : List.of("light", "dark")) {
      browser.send(
          "Emulation.setEmulatedMedia",
          "features",
          List.of(Map.of("name", "prefers-color-scheme", "value", scheme)));
      assertThat(browser.value(least).asDouble()).as(scheme).isGreaterThan(4.5);
      double own =
          browser.value(luminance + "(getComputedStyle(document.body).backgroundColor)").asDouble();
      assertThat(own).isNotEqualTo(page);
      page = own;
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"mixer-insert", "mixer-insert-faulty"})
  void theDemoPrintsOnTwoPagesOfEitherPaper(String program) throws Exception {
    Path page = page(program);
    try (Browser browser = Browser.start(folder)) {
      browser.open(page);
      readableOnPaper(browser);
      // ISO 216 A4 and the American letter, in inches.
      for (double[] paper : new double[][] {{8.268, 11.693}, {8.5, 11}}) {
        JsonNode pdf =
            browser.send(
                "Page.printToPDF",
                "paperWidth",
                paper[0],
                "paperHeight",
                paper[1],
                "printBackground",
                true,
                "marginTop",
                0.394,
                "marginBottom",
                0.394,
                "marginLeft",
                0.394,
                "marginRight",
                0.394);
        assertThat(pages(pdf)).isBetween(1, 2);
      }
    }
  }

  /** No letter on A4 is smaller than 7 points, and none of a drawing lies outside of it. */
  private static void readableOnPaper(Browser browser) throws Exception {
    browser.send("Emulation.setEmulatedMedia", "media", "print");
    browser.send("Emulation.setScrollbarsHidden", "hidden", true);
    // 190 mm between the margins, in pixels of which 96 are an inch.
    browser.send(
        "Emulation.setDeviceMetricsOverride",
        "width",
        718,
        "height",
        1000,
        "deviceScaleFactor",
        1,
        "mobile",
        false);
    String texts =
        "[...document.querySelectorAll('h1,h2,p,li,label,dt,dd,th,td,caption,figcaption,.level')]"
            + ".map(e => parseFloat(getComputedStyle(e).fontSize))";
    String drawn =
        "[...document.querySelectorAll('svg text')].map(e =>"
            + " parseFloat(getComputedStyle(e).fontSize) * e.ownerSVGElement.clientWidth"
            + " / e.ownerSVGElement.viewBox.baseVal.width)";
    double points = 0.75;
    assertThat(browser.value("Math.min(..." + texts + ")").asDouble() * points)
        .isGreaterThanOrEqualTo(6.99);
    assertThat(browser.value("Math.min(..." + drawn + ")").asDouble() * points)
        .isGreaterThanOrEqualTo(6.99);
    inside(browser);
  }

  /** Every label of a drawing lies within it. */
  private static void inside(Browser browser) throws Exception {
    assertThat(
            browser.value(
                "[...document.querySelectorAll('svg text')].filter(e => { const b = e.getBBox(),"
                    + " v = e.ownerSVGElement.viewBox.baseVal; return b.x < 0 || b.y < -1 ||"
                    + " b.x + b.width > v.width || b.y + b.height > v.height + 1; })"
                    + ".map(e => e.textContent)"))
        .isEmpty();
  }

  /** A tolerance beside which not all is known: the words at its end are the longest there are. */
  @Test
  void theLabelsOfUndecidedBudgetsAreWhole() throws Exception {
    for (String part : List.of("machine.yaml", "tools.yaml")) {
      Files.copy(DEMO.resolve(part), folder.resolve(part));
    }
    Path sheet = folder.resolve("undecided.yaml");
    Files.writeString(
        sheet,
        Files.readString(DEMO.resolve("setup.yaml"))
            .replaceAll("(?m)^setting:.*$", "")
            .replaceAll("name: inlet ladder", "name: a ladder with a name that is far too long"));
    Path page = folder.resolve("undecided.html");
    Ran.of(
        "brief",
        "--setup=" + sheet,
        DEMO.resolve("mixer-insert.nc").toString(),
        "--format=html",
        "-o",
        page.toString());
    assertThat(Files.readString(page)).contains(" µm: not decided</text>");
    try (Browser browser = Browser.start(folder)) {
      browser.open(page);
      inside(browser);
    }
  }

  private static int pages(JsonNode pdf) {
    String text =
        new String(
            Base64.getDecoder().decode(pdf.get("data").asText()), StandardCharsets.ISO_8859_1);
    Matcher count = Pattern.compile("/Type /Pages\\s*/Count ([0-9]+)").matcher(text);
    int pages = 0;
    while (count.find()) {
      pages = Math.max(pages, Integer.parseInt(count.group(1)));
    }
    assertThat(pages).as("pages of a PDF").isPositive();
    return pages;
  }

  @Test
  void hostileNamesAndCommentsStayText() throws Exception {
    String attack = "<img src=x onerror=alert(1)><script>alert(2)</script>\u202e\"'&";
    Path program = folder.resolve("hostile.nc");
    Files.writeString(
        program, "G21 G90 (" + attack + ")\nG54\nT1 M6\nG1 X[[1 (" + attack + ")\nM0\nM30\n");
    Path sheet = folder.resolve("hostile.yaml");
    Files.writeString(
        sheet,
        """
        machine: {name: '<b onclick=alert(3)>mill</b>'}
        tools: [{number: 1, name: '<svg onload=alert(4)>'}]
        job: {features: [{name: '</title><i>', x: [0 mm, 1 mm], y: [0 mm, 1 mm]}]}
        """);
    Path page = folder.resolve("hostile.html");
    Ran.of("brief", "--setup=" + sheet, program.toString(), "--format=html", "-o", page + "");
    String html = Files.readString(page);
    assertThat(html).doesNotContain("<img", "<script", "<b ", "<i>", "\u202e");
    try (Browser browser = Browser.start(folder)) {
      browser.open(page);
      assertThat(browser.value("document.querySelectorAll('img,script,b,i').length").asInt())
          .isZero();
      assertThat(browser.value("document.body.textContent").asText())
          .contains("<b onclick=alert(3)>mill</b>");
      assertThat(Optional.of(browser.events("Page.javascriptDialogOpening")).filter(List::isEmpty))
          .isPresent();
    }
  }
}
