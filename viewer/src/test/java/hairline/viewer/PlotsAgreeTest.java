package hairline.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hairline.checks.finding.Quantities;
import hairline.viewer.model.FindingMark;
import hairline.viewer.model.Programs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** What plots and tables show, held against what {@code check --format json} writes. */
class PlotsAgreeTest extends Screen {

  private JsonNode report() throws IOException {
    Path file = folder.resolve("report.json");
    Process command =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "hairline.checks.cli.Main",
                "check",
                "--format=json",
                "--terraces",
                "--section=-2.5,0.1,5.8,0.1",
                Programs.FAULTY.toString())
            .redirectOutput(file.toFile())
            .redirectError(folder.resolve("err.txt").toFile())
            .start();
    try {
      assertThat(command.waitFor()).isEqualTo(1);
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
    return new ObjectMapper().readTree(Files.readString(file)).at("/programs/0");
  }

  private String svg(hairline.viewer.panes.Exported pane) throws IOException {
    Path file = folder.resolve("plot.svg");
    onScreen(
        () -> {
          window.save(pane, Saving.Format.SVG, file);
          return true;
        });
    until("it is written", () -> !window.isWriting());
    return Files.readString(file);
  }

  private static String um(double um) {
    return ">" + Quantities.um(Math.round(um * 1e6)).replace('-', '−') + "<";
  }

  @Test
  void plotsAndTablesShowTheFiguresOfTheReport() throws IOException {
    open(Programs.FAULTY);
    JsonNode report = report();
    onScreen(
        () -> {
          window.panes().takeSection(new double[] {-2.5, 0.1, 5.8, 0.1});
          return true;
        });
    frames();
    // The plan: each terrace of the report has its height in the legend, and no other stands there.
    TreeSet<Double> heights = new TreeSet<>();
    report.get("terraces").forEach(terrace -> heights.add(terrace.get("heightUm").asDouble()));
    assertThat(heights).hasSize(8);
    List<Double> legend = new ArrayList<>();
    onScreen(
        () -> {
          for (long named : window.panes().shared().part().get().orElseThrow().colours().named()) {
            legend.add(named / 1e6);
          }
          return true;
        });
    assertThat(new TreeSet<>(legend)).isEqualTo(heights);
    // The heights: all of them as levels, with the step between neighbours written out.
    String strip = svg(window.panes().strip());
    for (double height : heights) {
      assertThat(strip).contains(um(height));
    }
    Double above = heights.last();
    for (double height : heights.headSet(above, false).descendingSet()) {
      // A level may lie between them that is cut away later on.
      if (above - height < 150) {
        assertThat(strip).contains(um(above - height));
      }
      above = height;
    }
    // The section: point by point, and the steps written above their walls.
    JsonNode points = report.at("/sections/0/points");
    onScreen(
        () -> {
          var shown = window.panes().section().section().orElseThrow().points();
          assertThat(shown).hasSize(points.size());
          for (int k = 0; k < points.size(); k++) {
            assertThat(shown.get(k).distancePm() / 1e9)
                .isCloseTo(points.get(k).get(0).asDouble(), within(1e-6));
            assertThat(shown.get(k).heightPm().orElseThrow() / 1e6)
                .isCloseTo(points.get(k).get(1).asDouble(), within(1e-6));
          }
          return true;
        });
    String section = svg(window.panes().section());
    for (int k = 1; k < points.size(); k++) {
      double step = points.get(k).get(1).asDouble() - points.get(k - 1).get(1).asDouble();
      if (step != 0) {
        assertThat(section).contains(um(Math.abs(step)));
      }
    }
    // The table of findings, and that of what is not checked.
    List<FindingMark> shown = onScreen(() -> List.copyOf(window.panes().findings().shown()));
    List<String> told = new ArrayList<>();
    report
        .get("findings")
        .forEach(
            f ->
                told.add(
                    f.get("rule").asText() + f.at("/at/line").asInt() + f.get("count").asLong()));
    assertThat(
            shown.stream()
                .map(m -> m.finding().rule() + m.finding().at().line() + m.finding().count()))
        .containsExactlyInAnyOrderElementsOf(told);
    List<String> undecided = new ArrayList<>();
    report
        .get("notChecked")
        .forEach(n -> undecided.add(n.get("rule").asText() + n.get("reason").asText()));
    assertThat(
            onScreen(
                () ->
                    window.panes().notChecked().table().getItems().stream()
                        .map(n -> n.rule() + n.reason())
                        .toList()))
        .containsExactlyInAnyOrderElementsOf(undecided);
    // Each finding is marked in the strip at a move of its line, and nothing else is.
    Optional<FindingMark> astray =
        shown.stream()
            .filter(
                m ->
                    m.move() < 0
                        || window.program().orElseThrow().moves().line(m.move())
                            < m.finding().at().line())
            .findFirst();
    assertThat(astray).isEmpty();
  }
}
