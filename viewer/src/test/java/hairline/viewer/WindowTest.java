package hairline.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hairline.checks.cli.Opened;
import hairline.checks.finding.Collector;
import hairline.checks.finding.Figure;
import hairline.checks.finding.NotChecked;
import hairline.checks.rules.Rule;
import hairline.checks.rules.Rules;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.PlanDrawing;
import hairline.viewer.draw.PlanView;
import hairline.viewer.draw.StripDrawing;
import hairline.viewer.draw.StripView;
import hairline.viewer.draw.SvgPen;
import hairline.viewer.model.Along;
import hairline.viewer.model.FindingMark;
import hairline.viewer.model.Moves;
import hairline.viewer.model.Program;
import hairline.viewer.model.Programs;
import hairline.viewer.panes.Exported;
import hairline.viewer.panes.FindingsPane;
import hairline.viewer.panes.PlanPane;
import hairline.viewer.panes.StripPane;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.geometry.Bounds;
import javafx.geometry.VerticalDirection;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.text.Text;
import org.junit.jupiter.api.Test;

/** The window, clicked and typed at. */
class WindowTest extends Screen {

  private Node node(String id) {
    return onScreen(
        () -> {
          Node found = stage.getScene().lookup("#" + id);
          assertThat(found).as(id).isNotNull();
          return found;
        });
  }

  private Bounds onScreenBounds(String id) {
    Node node = node(id);
    return onScreen(() -> node.localToScreen(node.getBoundsInLocal()));
  }

  private void type(KeyCode... keys) {
    robot.push(keys);
    frames();
  }

  private long cursor() {
    return onScreen(() -> window.panes().shared().cursor().get());
  }

  private String label(String id) {
    return onScreen(() -> ((Label) stage.getScene().lookup("#" + id)).getText());
  }

  // Opening.

  @Test
  void aFindingTakesTheCursorEverywhereAndBack() {
    Program program = open(Programs.FAULTY);
    FindingMark second = onScreen(() -> window.panes().findings().shown().get(1));
    Node row =
        onScreen(
            () ->
                stage.getScene().lookup("#findings-table").lookupAll(".table-row-cell").stream()
                    .filter(
                        n -> n instanceof javafx.scene.control.TableRow<?> r && r.getIndex() == 1)
                    .findFirst()
                    .orElseThrow());
    robot.clickOn(row);
    frames();
    assertThat(cursor()).isEqualTo(second.move());
    assertThat(program.moves().line(cursor())).isEqualTo(second.finding().at().line());
    assertThat(onScreen(() -> window.panes().program().selectedLine()))
        .isEqualTo(second.finding().at().line());
    assertThat(label("readout-line")).isEqualTo("" + second.finding().at().line());
    until(
        "the plan shows the part at the line",
        () ->
            window
                .panes()
                .remark()
                .get()
                .equals("the part at line " + second.finding().at().line()));
    // And back: from a line to the cursor.
    onScreen(
        () -> {
          window.panes().program().select(100);
          return true;
        });
    assertThat(program.moves().line(cursor())).isEqualTo(100);
  }

  @Test
  void findingsStepsAndMovesAreReachedByKeys() {
    Program program = open(Programs.FAULTY);
    type(KeyCode.F8);
    List<FindingMark> shown = onScreen(() -> window.panes().findings().shown());
    assertThat(cursor()).isEqualTo(shown.get(0).move());
    type(KeyCode.F8);
    assertThat(cursor()).isEqualTo(shown.get(1).move());
    type(KeyCode.SHIFT, KeyCode.F8);
    assertThat(cursor()).isEqualTo(shown.get(0).move());
    type(KeyCode.F9);
    assertThat(cursor()).isEqualTo(shown.get(0).move() + 1);
    long before = cursor();
    type(KeyCode.F7);
    assertThat(cursor()).isGreaterThan(before);
    assertThat(program.levels().stream().map(level -> level.move())).contains(cursor());
    long step = cursor();
    type(KeyCode.F7);
    assertThat(cursor()).isGreaterThan(step);
    type(KeyCode.SHIFT, KeyCode.F7);
    assertThat(cursor()).isEqualTo(step);
  }

  @Test
  void theWheelKeepsThePointUnderThePointer() {
    open(Programs.DEMO);
    Bounds bounds = onScreenBounds("strip");
    double x = bounds.getMinX() + bounds.getWidth() * 0.37;
    double y = bounds.getMinY() + bounds.getHeight() * 0.3;
    StripPane strip = window.panes().strip();
    double before = onScreen(() -> along(strip, x - bounds.getMinX()));
    robot.moveTo(x, y);
    List<Double> widths = new ArrayList<>();
    for (VerticalDirection way : VerticalDirection.values()) {
      for (int turn = 0; turn < 4; turn++) {
        robot.scroll(1, way);
        frames();
        StripView view = onScreen(strip::view);
        widths.add(view.to() - view.from());
        assertThat(onScreen(() -> along(strip, x - bounds.getMinX())))
            .isCloseTo(before, within((view.to() - view.from()) / 1000 * 1.5));
      }
    }
    // Four turns one way, four back: nearest or farthest in the middle.
    assertThat(widths.get(3) / widths.get(7))
        .satisfiesAnyOf(
            factor -> assertThat(factor).isCloseTo(StrictMath.pow(1.2, 4), within(0.01)),
            factor -> assertThat(factor).isCloseTo(StrictMath.pow(1.2, -4), within(0.01)));
    double width = widths.get(7);
    type(KeyCode.CONTROL, KeyCode.PLUS);
    // The view before comes back by its key, and all of it by a double click.
    type(KeyCode.ALT, KeyCode.LEFT);
    assertThat(onScreen(strip::view).to() - onScreen(strip::view).from())
        .isCloseTo(width, within(1.0));
    robot.moveTo(x, y).doubleClickOn(MouseButton.PRIMARY);
    frames();
    assertThat(onScreen(strip::view).from()).isZero();
  }

  private static double along(StripPane strip, double x) {
    StripView view = strip.view();
    double left = StripDrawing.LEFT;
    double right = strip.getWidth() - StripDrawing.RIGHT;
    return view.from() + (x - left) / (right - left) * (view.to() - view.from());
  }

  /** The wheel keeps the point in the height axis, in the plan and in the section too. */
  @Test
  void everyPlotZoomsAtThePointer() {
    open(Programs.DEMO);
    onScreen(
        () -> {
          window.panes().setByLevels(false);
          window.panes().takeSection(new double[] {-2.5, 0.1, 5.8, 0.1});
          return true;
        });
    frames();
    Bounds strip = onScreenBounds("strip");
    double y = strip.getMinY() + strip.getHeight() * 0.4;
    robot.moveTo(strip.getMinX() + 20, y);
    double place = onScreen(() -> stripDrawing().place(y - strip.getMinY()));
    double tall = onScreen(() -> window.panes().strip().view().high());
    robot.scroll(3, VerticalDirection.UP);
    frames();
    assertThat(onScreen(() -> stripDrawing().place(y - strip.getMinY())))
        .isCloseTo(place, within(0.5));
    assertThat(onScreen(() -> window.panes().strip().view().high())).isNotEqualTo(tall);

    Bounds plan = onScreenBounds("plan");
    double px = plan.getWidth() * 0.3;
    double py = plan.getHeight() * 0.35;
    robot.moveTo(plan.getMinX() + px, plan.getMinY() + py);
    PlanView planBefore = onScreen(() -> window.panes().plan().view());
    double[] under = onScreen(() -> planPoint(px, py));
    robot.scroll(3, VerticalDirection.UP);
    frames();
    PlanView planAfter = onScreen(() -> window.panes().plan().view());
    assertThat(planAfter.perMm()).isNotEqualTo(planBefore.perMm());
    double[] underAfter = onScreen(() -> planPoint(px, py));
    assertThat(underAfter[0]).isCloseTo(under[0], within(0.05));
    assertThat(underAfter[1]).isCloseTo(under[1], within(0.05));
    // Back by its key and forward again.
    type(KeyCode.CONTROL, KeyCode.DIGIT3);
    type(KeyCode.ALT, KeyCode.LEFT);
    assertThat(onScreen(() -> window.panes().plan().view())).isEqualTo(planBefore);
    type(KeyCode.ALT, KeyCode.RIGHT);
    assertThat(onScreen(() -> window.panes().plan().view())).isEqualTo(planAfter);
  }

  private StripDrawing stripDrawing() {
    StripPane strip = window.panes().strip();
    return new StripDrawing(
        new SvgPen(1, 1, "", 0),
        Palette.LIGHT,
        window.program().orElseThrow(),
        strip.view(),
        strip.getWidth(),
        strip.getHeight());
  }

  /** The point of the part under a point of the plan. */
  private double[] planPoint(double x, double y) {
    PlanPane plan = window.panes().plan();
    PlanDrawing drawing =
        new PlanDrawing(
            new SvgPen(1, 1, "", 0),
            Palette.LIGHT,
            Optional.empty(),
            new double[] {0, 0, 1, 1},
            plan.view(),
            plan.getWidth(),
            plan.getHeight());
    return new double[] {drawing.xMm(x), drawing.yMm(y)};
  }

  @Test
  void aDragMovesTheHeightsAndAClickSetsTheCursor() {
    Program program = open(Programs.DEMO);
    Bounds bounds = onScreenBounds("strip");
    double x = bounds.getMinX() + bounds.getWidth() * 0.4;
    double y = bounds.getMinY() + bounds.getHeight() * 0.3;
    double expected = onScreen(() -> along(window.panes().strip(), x - bounds.getMinX()));
    robot.clickOn(x, y);
    frames();
    Moves moves = program.moves();
    assertThat(moves.pathMm(cursor())).isGreaterThanOrEqualTo(expected - 0.5);
    assertThat(moves.pathMm(cursor() - 1)).isLessThanOrEqualTo(expected + 0.5);
    StripView before = onScreen(() -> window.panes().strip().view());
    robot.moveTo(x, y).press(MouseButton.PRIMARY).moveBy(60, 0).release(MouseButton.PRIMARY);
    frames();
    assertThat(onScreen(() -> window.panes().strip().view()).from()).isLessThan(before.from());
  }

  @Test
  void aLineDraggedAcrossThePlanMakesASection() {
    open(Programs.DEMO);
    Bounds bounds = onScreenBounds("plan");
    double y = bounds.getMinY() + bounds.getHeight() * 0.42;
    robot
        .moveTo(bounds.getMinX() + bounds.getWidth() * 0.3, y)
        .press(MouseButton.PRIMARY)
        .moveBy(60, 0)
        .moveBy(60, 0)
        .release(MouseButton.PRIMARY);
    frames();
    assertThat(onScreen(() -> window.panes().section().section())).isPresent();
    assertThat(onScreen(() -> window.panes().section().getAccessibleText()))
        .startsWith("Section of ")
        .contains("4 µm at");
  }

  // Figures.

  @Test
  void figuresAgreeWithTheReportForPrograms() throws IOException {
    open(Programs.FAULTY);
    JsonNode report = report(Programs.FAULTY);
    List<FindingMark> shown = onScreen(() -> List.copyOf(window.panes().findings().shown()));
    List<JsonNode> told = new ArrayList<>();
    report.at("/programs/0/findings").forEach(told::add);
    assertThat(shown).hasSameSizeAs(told);
    for (FindingMark mark : shown) {
      JsonNode same =
          told.stream()
              .filter(
                  f ->
                      f.get("rule").asText().equals(mark.finding().rule())
                          && f.at("/at/line").asInt() == mark.finding().at().line())
              .findFirst()
              .orElseThrow();
      assertThat(same.get("level").asText()).isEqualTo(mark.finding().level().word());
      for (Optional<Figure> figure : List.of(mark.found(), mark.allowed())) {
        figure.ifPresent(
            f -> {
              List<JsonNode> figures = new ArrayList<>();
              same.get("figures").forEach(figures::add);
              JsonNode sameFigure =
                  figures.stream()
                      .filter(other -> other.get("name").asText().equals(f.name()))
                      .findFirst()
                      .orElseThrow();
              assertThat(sameFigure.get("value").asDouble())
                  .isCloseTo(f.value(), within(Math.abs(f.value()) * 1e-9));
              assertThat(sameFigure.get("unit").asText()).isEqualTo(f.unit());
            });
      }
    }
  }

  /** What the command writes, run as users run it. */
  private JsonNode report(Path program) throws IOException {
    Path file = folder.resolve("report.json");
    Process command =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "hairline.checks.cli.Main",
                "check",
                "--format=json",
                program.toString())
            .redirectOutput(file.toFile())
            .redirectError(folder.resolve("err.txt").toFile())
            .start();
    try {
      assertThat(command.waitFor()).isEqualTo(1);
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
    return new ObjectMapper().readTree(Files.readString(file));
  }

  @Test
  void whatIsWrittenIsWhatIsShown() throws IOException {
    Program program = open(Programs.FAULTY);
    Path csv = folder.resolve("strip.csv");
    Path svg = folder.resolve("plan.svg");
    Path png = folder.resolve("strip.png");
    save(window.panes().strip(), Saving.Format.CSV, csv);
    save(window.panes().plan(), Saving.Format.SVG, svg);
    save(window.panes().strip(), Saving.Format.PNG, png);
    List<String> lines = Files.readAllLines(csv);
    Moves moves = program.moves();
    assertThat(lines).hasSize((int) moves.count() + 1);
    for (long move : new long[] {0, 1, 100, moves.count() - 1}) {
      String[] cells = lines.get((int) move + 1).split(",", -1);
      assertThat(cells[2]).isEqualTo("" + moves.line(move));
      if (moves.z(move) != Moves.UNKNOWN) {
        assertThat(new java.math.BigDecimal(cells[8]))
            .isEqualByComparingTo(java.math.BigDecimal.valueOf(moves.z(move), 9));
      }
    }
    assertThat(Files.readString(svg))
        .startsWith("<svg")
        .contains("data:image/png;base64", "height µm")
        .endsWith("</svg>\n");
    assertThat(Files.readAllBytes(png)).startsWith(0x89, 'P', 'N', 'G');
    Path findings = folder.resolve("findings.csv");
    save(window.panes().findings(), Saving.Format.CSV, findings);
    assertThat(Files.readAllLines(findings))
        .hasSize(onScreen(() -> window.panes().findings().shown().size()) + 1);
  }

  @Test
  void theFilterLeavesWhatIsAskedFor() {
    open(Programs.FAULTY);
    type(KeyCode.CONTROL, KeyCode.F);
    robot.write("chip");
    frames();
    List<FindingMark> shown = onScreen(() -> List.copyOf(window.panes().findings().shown()));
    assertThat(shown).isNotEmpty();
    assertThat(shown)
        .allMatch(
            mark ->
                mark.finding().rule().contains("chip")
                    || mark.finding().first().message().contains("chip"));
  }

  /** Writes a pane and waits until that is through. */
  private void save(Exported pane, Saving.Format format, Path file) {
    onScreen(
        () -> {
          window.save(pane, format, file);
          return true;
        });
    until("it is written", () -> !window.isWriting());
  }

  @Test
  void aFileIsWrittenBesideTheWindowAndStopsByAKeyWithoutATrace() throws IOException {
    open(longProgram());
    Path csv = Programs.write(folder, "strip.csv", "an older table");
    onScreen(
        () -> {
          window.save(window.panes().strip(), Saving.Format.CSV, csv);
          // The window goes on at once: nothing of so many moves is there yet.
          assertThat(window.isWriting()).isTrue();
          return true;
        });
    until(
        "it is told", () -> ((Label) stage.getScene().lookup("#writing")).getText().endsWith("%"));
    assertThat(label("writing")).startsWith("writing strip.csv: ");
    assertThat(node("stop-writing").isVisible()).isTrue();
    type(KeyCode.ESCAPE);
    until("it has ended", () -> !window.isWriting());
    frames();
    assertThat(label("status-words")).startsWith("writing was cancelled; not written: ");
    assertThat(Files.readAllLines(csv)).isEqualTo(List.of("an older table"));
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(file -> String.valueOf(file.getFileName())))
          .noneMatch(name -> name.endsWith(".part"));
    }
    assertThat(node("stop-writing").isVisible()).isFalse();
  }

  @Test
  void noPaneIsWrittenOverTheProgram() throws IOException {
    Path file = Programs.write(folder, "part.nc", "G21 G90 G54", "G0 Z5.", "M30");
    open(file);
    save(window.panes().strip(), Saving.Format.CSV, file);
    frames();
    assertThat(Files.readAllLines(file)).hasSize(3);
    assertThat(onScreen(() -> javafx.stage.Window.getWindows().size())).isEqualTo(2);
    type(KeyCode.ENTER);
  }

  // Odd programs.

  @Test
  void anEmptyProgramIsTold() throws IOException {
    Path file = folder.resolve("empty.nc");
    Files.write(file, new byte[0]);
    open(file);
    assertThat(label("trouble")).contains("is empty");
  }

  @Test
  void aProgramOfOneBlockOpens() throws IOException {
    Program program = open(Programs.write(folder, "one.nc", "G21 G90 G0 Z5."));
    assertThat(program.moves().count()).isEqualTo(1);
    assertThat(cursor()).isZero();
    type(KeyCode.F8);
    type(KeyCode.F7);
    type(KeyCode.CONTROL, KeyCode.DIGIT0);
    assertThat(onScreen(() -> window.panes().strip().getAccessibleText())).contains("1 move, ");
  }

  /** Ten thousand speeds, each too high and each an operation of its own. */
  @Test
  void tenThousandFindingsAreListed() throws IOException {
    List<String> lines = new ArrayList<>(List.of("G21 G90 G17 G94 G54", "G0 Z1."));
    int speeds = Collector.MOST_GROUPS + 50;
    for (int k = 0; k < speeds; k++) {
      lines.add("S" + (61_000 + k) + " M3");
      lines.add("G1 X" + k % 10 + ". F100.");
    }
    Programs.write(folder, "many.setup.yaml", "machine: {spindle: {max_speed: 60000 rpm}}");
    Program program = open(Programs.write(folder, "many.nc", lines.toArray(new String[0])));
    TableView<FindingMark> table = onScreen(() -> window.panes().findings().table());
    assertThat(program.findings()).hasSize(Collector.MOST_GROUPS);
    assertThat(onScreen(() -> table.getItems().size())).isEqualTo(Collector.MOST_GROUPS);
    // What is beyond is told.
    assertThat(program.notChecked().stream().map(NotChecked::reason))
        .anyMatch(reason -> reason.startsWith("more than 10000 different findings"));
    // Rows are made for what is in sight only, and marks for what can be told apart.
    assertThat(onScreen(() -> table.lookupAll(".table-row-cell").size())).isLessThan(60);
    onScreen(
        () -> {
          StripPane strip = window.panes().strip();
          assertThat(
                  new StripDrawing(
                          new SvgPen(800, 300, "strip", 0),
                          Palette.LIGHT,
                          program,
                          strip.view(),
                          800,
                          300)
                      .placed())
              .hasSizeBetween(20, 800);
          table.requestFocus();
          table.getSelectionModel().select(0);
          return true;
        });
    type(KeyCode.END);
    FindingMark last = onScreen(() -> window.panes().shared().finding().get().orElseThrow());
    assertThat(last).isEqualTo(onScreen(() -> table.getItems().get(Collector.MOST_GROUPS - 1)));
    assertThat(cursor()).isEqualTo(last.move());
    type(KeyCode.SHIFT, KeyCode.F8);
    assertThat(onScreen(() -> table.getSelectionModel().getSelectedIndex()))
        .isEqualTo(Collector.MOST_GROUPS - 2);
    // By figure, the highest first: the last speed that is kept.
    onScreen(
        () -> {
          TableColumn<FindingMark, ?> figure = table.getColumns().get(3);
          figure.setSortType(TableColumn.SortType.DESCENDING);
          table.getSortOrder().setAll(List.of(figure));
          return true;
        });
    frames();
    assertThat(onScreen(() -> table.getItems().get(0).found().orElseThrow().value()))
        .isGreaterThan(70_990);
    type(KeyCode.CONTROL, KeyCode.F);
    robot.write("s65432 ");
    frames();
    assertThat(onScreen(() -> table.getItems().size())).isEqualTo(1);
    assertThat(label("findings-count")).isEqualTo("1 of 10000");
  }

  @Test
  void aProgramChangedOnDiskIsReadAnewWithThePositionKept() throws IOException {
    Path file =
        Programs.write(folder, "part.nc", "G21 G90 G54", "G0 Z5.", "X1.", "X2.", "X3.", "M30");
    open(file);
    onScreen(
        () -> {
          window.goToLine(4);
          window.panes().strip().setView(window.panes().strip().view().between(0.5, 2.5));
          return true;
        });
    assertThat(cursor()).isEqualTo(2);
    Programs.write(folder, "part.nc", "G21 G90 G54", "G0 Z5.", "X1.", "X2.5", "X3.", "X4.", "M30");
    type(KeyCode.F5);
    Program again = shown();
    assertThat(again.moves().count()).isEqualTo(5);
    assertThat(again.moves().line(cursor())).isEqualTo(4);
    assertThat(again.moves().x(cursor())).isEqualTo(2_500_000_000L);
    assertThat(onScreen(() -> window.panes().strip().view()).from()).isEqualTo(0.5);
  }

  /** So many blocks that no machine is through with them before a key is struck. */
  private static final int LONG = 3_000_000;

  /** A program that takes a while, with a fault at its beginning. */
  private Path longProgram() throws IOException {
    Path file = folder.resolve("long.nc");
    try (BufferedWriter writer = Files.newBufferedWriter(file)) {
      writer.write("G21 G90 G54 S20000 M3\nX1..2\nG1 X0 Y0 Z-0.1 F100.\n");
      for (int line = 0; line < LONG; line++) {
        writer.write("X" + line % 100 + ". Y" + line % 77 + ".\n");
      }
    }
    return file;
  }

  @Test
  void findingsAreShownWhileTheCheckGoesOnAndStayWhereItIsCancelled() throws IOException {
    Path file = longProgram();
    assertThat(label("found")).isEmpty();
    onScreen(
        () -> {
          window.open(file, Optional.empty());
          return true;
        });
    until("something is found", () -> !window.panes().findings().shown().isEmpty());
    // Known long before the end, and told as such, everywhere.
    assertThat(onScreen(() -> window.program().orElseThrow().finished())).isFalse();
    frames();
    assertThat(label("found")).startsWith("so far ").contains("1 error");
    assertThat(label("findings-count")).endsWith(" so far; the check goes on");
    assertThat(onScreen(() -> window.panes().strip().getAccessibleText()))
        .contains(" findings so far");
    assertThat(onScreen(() -> window.panes().plan().getAccessibleText()))
        .startsWith("Plan: no part yet: it is there when all is read");
    // One that is selected stays so while its count grows.
    type(KeyCode.F8);
    FindingMark selected = onScreen(() -> window.panes().shared().finding().get().orElseThrow());
    long changes = window.program().orElseThrow().findingsChanges();
    until("more is known", () -> window.program().orElseThrow().findingsChanges() > changes + 1);
    frames();
    FindingMark now = onScreen(() -> window.panes().shared().finding().get().orElseThrow());
    assertThat(now.isSame(selected)).isTrue();
    assertThat(
            onScreen(() -> window.panes().findings().table().getSelectionModel().getSelectedItem()))
        .isEqualTo(now);
    type(KeyCode.ESCAPE);
    until("the reading has ended", () -> window.program().orElseThrow().finished());
    Program program = onScreen(() -> window.program().orElseThrow());
    assertThat(program.cancelled()).isTrue();
    assertThat(program.moves().count()).isBetween(100L, LONG - 1L);
    until("it is told", () -> window.settled());
    frames();
    assertThat(label("status-words")).startsWith("reading was cancelled");
    assertThat(label("found")).startsWith("not checked to its end: ");
    assertThat(label("findings-count")).endsWith(", not checked to its end");
    assertThat(onScreen(() -> window.panes().plan().getAccessibleText()))
        .isNotEqualTo("Plan: no part yet: it is there when all is read.");
  }

  @Test
  void arrowsMoveTheCursorInThePlotInUse() {
    open(Programs.DEMO);
    onScreen(
        () -> {
          window.goToLine(100);
          window.panes().focus(0);
          return true;
        });
    long before = cursor();
    type(KeyCode.RIGHT);
    assertThat(cursor()).isEqualTo(before + 1);
    type(KeyCode.LEFT);
    type(KeyCode.LEFT);
    assertThat(cursor()).isEqualTo(before - 1);
  }

  @Test
  void linesAreWalkedByArrowsAndLongOnesShifted() throws IOException {
    Program program = open(Programs.FAULTY);
    onScreen(
        () -> {
          window.goToLine(50);
          window.panes().focus(1);
          return true;
        });
    type(KeyCode.DOWN);
    assertThat(program.moves().line(cursor())).isEqualTo(51);
    type(KeyCode.RIGHT);
    type(KeyCode.RIGHT);
    Path svg = folder.resolve("program.svg");
    save(window.panes().program(), Saving.Format.SVG, svg);
    // Text begins at 74 and was shifted twice by 60.
    assertThat(Files.readString(svg)).contains("<text x=\"-46\"");
  }

  // Subprograms.

  /** A program with a subprogram beside it that is called twice and calls another one. */
  private Path withSubprograms() throws IOException {
    Programs.write(folder, "O8001.nc", "O8001", "G91 Z-0.001", "G90", "M99");
    Programs.write(
        folder, "O8000.nc", "O8000", "G1 X1. F100.", "M98 P8001", "Y1.", "X1..2", "X0", "M99");
    return Programs.write(
        folder,
        "main.nc",
        "G21 G90 G17 G94 G54",
        "S20000 M3",
        "G0 X0 Y0 Z0.",
        "M98 P8000",
        "G0 Y0",
        "M98 P8000",
        "G0 X5.",
        "M30");
  }

  @Test
  void theLinesOfTheFileOfTheCursorAreShownWithItsCallers() throws IOException {
    Program program = open(withSubprograms());
    Moves moves = program.moves();
    assertThat(onScreen(() -> window.panes().program().file())).isZero();
    assertThat(label("program-callers")).isEmpty();
    // The first cut of the second call: line 2 of the subprogram.
    long second = -1;
    for (long i = 0; i < moves.count(); i++) {
      if (moves.file(i) == 1 && moves.line(i) == 2) {
        second = i;
      }
    }
    long in = second;
    onScreen(
        () -> {
          window.panes().shared().moveTo(in);
          return true;
        });
    until("its line is found", () -> window.panes().program().selectedLine() == 2);
    frames();
    assertThat(onScreen(() -> window.panes().program().file())).isEqualTo(1);
    assertThat(label("program-callers")).isEqualTo("called from main.nc line 6");
    assertThat(label("readout-line")).isEqualTo("2 of O8000.nc");
    assertThat(label("readout-block")).isEqualTo("G1 X1. F100.");
    Path svg = folder.resolve("program.svg");
    save(window.panes().program(), Saving.Format.SVG, svg);
    assertThat(Files.readString(svg)).contains("M98 P8001").doesNotContain("S20000 M3");
    // A click on its fourth line moves the cursor, within this call and not to the first one.
    Bounds lines = onScreenBounds("lines");
    robot.clickOn(lines.getMinX() + 120, lines.getMinY() + 3.5 * 20);
    frames();
    assertThat(moves.line(cursor())).isEqualTo(4);
    assertThat(moves.file(cursor())).isEqualTo(1);
    assertThat(cursor()).isGreaterThan(in);
    // One move back is the subprogram below.
    type(KeyCode.SHIFT, KeyCode.F9);
    until("its line is found", () -> window.panes().program().selectedLine() == 2);
    assertThat(onScreen(() -> window.panes().program().file())).isEqualTo(2);
    assertThat(label("program-callers"))
        .isEqualTo("called from O8000.nc line 3, that from main.nc line 6");
    // By a key to the line that called it.
    type(KeyCode.CONTROL, KeyCode.U);
    assertThat(onScreen(() -> window.panes().program().file())).isEqualTo(1);
    assertThat(onScreen(() -> window.panes().program().selectedLine())).isEqualTo(3);
  }

  @Test
  void aFindingInASubprogramIsShownThere() throws IOException {
    Program program = open(withSubprograms());
    FindingMark syntax =
        onScreen(
            () ->
                window.panes().findings().shown().stream()
                    .filter(mark -> mark.finding().at().file() == 1)
                    .findFirst()
                    .orElseThrow());
    onScreen(
        () -> {
          window.panes().shared().select(syntax);
          return true;
        });
    until("its file is shown", () -> window.panes().program().file() == 1);
    assertThat(program.path(1)).isEqualTo(folder.resolve("O8000.nc"));
    Path csv = folder.resolve("findings.csv");
    save(window.panes().findings(), Saving.Format.CSV, csv);
    assertThat(Files.readString(csv)).contains(",O8000.nc:5,");
  }

  // Looks.

  @Test
  void nothingIsCutOffOnTheSmallestScreen() {
    open(Programs.FAULTY);
    type(KeyCode.F8);
    for (int tab = 3; tab <= 5; tab++) {
      int pane = tab;
      onScreen(
          () -> {
            window.panes().focus(pane);
            return true;
          });
      frames();
      onScreen(
          () -> {
            assertThat(stage.getWidth()).isLessThanOrEqualTo(Window.LEAST_WIDTH);
            assertThat(stage.getHeight()).isLessThanOrEqualTo(Window.LEAST_HEIGHT);
            int texts = 0;
            for (Node node : stage.getScene().getRoot().lookupAll(".text")) {
              if (node instanceof Text text
                  && text.getParent() instanceof Labeled labeled
                  && isShown(labeled)
                  && labeled.getText() != null
                  && !"readout-block".equals(labeled.getId())) {
                assertThat(text.getText().endsWith("..."))
                    .as(labeled.getText())
                    .isEqualTo(labeled.getText().endsWith("..."));
                texts++;
              }
            }
            assertThat(texts).isGreaterThan(25);
            return true;
          });
    }
    onScreen(
        () -> {
          for (String id : new String[] {"strip", "plan", "lines", "tabs", "status"}) {
            Node node = stage.getScene().lookup("#" + id);
            Bounds bounds = node.localToScene(node.getBoundsInLocal());
            assertThat(bounds.getMinX()).as(id).isNotNegative();
            assertThat(bounds.getMaxX()).as(id).isLessThanOrEqualTo(stage.getWidth() + 1);
            assertThat(bounds.getMaxY()).as(id).isLessThanOrEqualTo(stage.getHeight() + 1);
            assertThat(bounds.getWidth()).as(id).isGreaterThan(200);
          }
          return true;
        });
  }

  private static boolean isShown(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (!at.isVisible()) {
        return false;
      }
    }
    return true;
  }

  @Test
  void theNameOfEveryRuleHasRoomInTheTable() {
    onScreen(
        () -> {
          double room = window.panes().findings().table().getColumns().get(1).getWidth() - 12;
          for (Rule rule : Rules.all()) {
            Text name = new Text(rule.info().name());
            name.setFont(javafx.scene.text.Font.font(12));
            assertThat(name.getLayoutBounds().getWidth())
                .as(rule.info().name())
                .isLessThanOrEqualTo(room);
          }
          return true;
        });
  }

  @Test
  void thePageOfTheRuleStandsBesideTheTableAndBelowWhereThereIsNoRoom() {
    open(Programs.FAULTY);
    type(KeyCode.F8);
    Bounds table = onScreenBounds("findings-table");
    Bounds page = onScreenBounds("page");
    assertThat(page.getMinX()).isGreaterThanOrEqualTo(table.getMaxX());
    assertThat(page.getMinY()).isLessThanOrEqualTo(table.getMinY());
    assertThat(page.getWidth()).isGreaterThan(350);
    onScreen(
        () -> {
          ((SplitPane) stage.getScene().lookup("#lower")).setDividerPositions(0.6);
          return true;
        });
    frames();
    table = onScreenBounds("findings-table");
    page = onScreenBounds("page");
    assertThat(page.getMinY()).isGreaterThanOrEqualTo(table.getMaxY());
    assertThat(page.getMinX()).isLessThanOrEqualTo(table.getMinX() + 1);
  }

  @Test
  void theWindowRemembersHowItStood() {
    onScreen(
        () -> {
          window.setDark(true);
          window.panes().setAlong(Along.TIME);
          window.panes().setDividerPositions(0.35);
          window.close();
          stage.hide();
          return true;
        });
    settings = new Settings(folder.resolve("viewer.properties"));
    stage = onScreen(javafx.stage.Stage::new);
    window = onScreen(() -> new Window(stage, settings));
    onScreen(
        () -> {
          stage.show();
          return true;
        });
    frames();
    assertThat(onScreen(window::isDark)).isTrue();
    assertThat(onScreen(() -> window.panes().strip().view()).along()).isEqualTo(Along.TIME);
    assertThat(onScreen(() -> window.panes().getDividerPositions()[0]))
        .isCloseTo(0.35, within(0.01));
  }

  @Test
  void figuresOfATableAreThoseOfTheFinding() {
    open(Programs.FAULTY);
    FindingMark chip =
        onScreen(
            () ->
                window.panes().findings().shown().stream()
                    .filter(mark -> mark.finding().rule().equals("chip-below-minimum"))
                    .findFirst()
                    .orElseThrow());
    assertThat(chip.finding().first().message())
        .contains(FindingsPane.text(chip.found(), chip.allowed()))
        .contains(FindingsPane.text(chip.allowed(), chip.found()));
  }

  /** The sheet that is named is the one that counts. */
  @Test
  void aSheetThatCannotBeUsedIsTold() throws IOException {
    Path sheet = Programs.write(folder, "odd.yaml", "stock: {x: nonsense}");
    Path file = Programs.write(folder, "part.nc", "G21 G90 G0 Z5.");
    assertThat(Opened.of(file, Optional.of(sheet)).trouble()).isPresent();
    onScreen(
        () -> {
          window.open(file, Optional.of(sheet));
          return true;
        });
    until("the trouble is told", () -> window.settled());
    frames();
    assertThat(label("trouble")).contains("the setup sheet can't be used");
  }
}
