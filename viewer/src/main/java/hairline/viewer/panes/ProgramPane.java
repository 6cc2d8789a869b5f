package hairline.viewer.panes;

import hairline.checks.finding.Level;
import hairline.viewer.draw.CanvasPen;
import hairline.viewer.draw.Marks;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import hairline.viewer.model.FindingMark;
import hairline.viewer.model.Lines;
import hairline.viewer.model.Moves;
import hairline.viewer.model.Program;
import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javafx.application.Platform;
import javafx.collections.ObservableListBase;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.BorderPane;
import javafx.scene.paint.Color;

/** The lines of the program; only those in sight are read. */
public final class ProgramPane extends BorderPane implements Exported, AutoCloseable {
  private static final double ROW = 20;
  private static final double MARGIN = 18;

  private final Shared shared;
  private final ListView<Integer> list = new ListView<>();
  private final Numbers numbers = new Numbers();
  private final ExecutorService reader =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "hairline-text");
            thread.setDaemon(true);
            return thread;
          });
  private final Set<Integer> asked = new HashSet<>();
  private Map<Integer, FindingMark> marks = Map.of();
  private boolean following;
  private boolean refreshDue;

  /** The numbers of the lines, as many as are found by now. */
  private static final class Numbers extends ObservableListBase<Integer> {
    private int count;

    @Override
    public Integer get(int index) {
      return index + 1;
    }

    @Override
    public int size() {
      return count;
    }

    void clearAll() {
      if (count > 0) {
        beginChange();
        // Nobody asks which numbers went: they are their own places.
        nextRemove(0, java.util.Collections.nCopies(count, 0));
        count = 0;
        endChange();
      }
    }

    void grow(int to) {
      if (to > count) {
        beginChange();
        int from = count;
        count = to;
        nextAdd(from, to);
        endChange();
      }
    }
  }

  /** The lines of what is shared. */
  public ProgramPane(Shared shared) {
    this.shared = shared;
    setId("program");
    list.setId("lines");
    list.setFixedCellSize(ROW);
    list.setItems(numbers);
    list.setCellFactory(view -> new LineCell());
    list.setAccessibleText("Program lines");
    list.getStyleClass().add("code");
    setCenter(list);
    setMinWidth(120);
    list.getSelectionModel().selectedIndexProperty().addListener(o -> selected());
    shared.cursor().addListener(o -> follow());
    shared.program().addListener(o -> reset());
    shared.palette().addListener(o -> list.refresh());
  }

  /** The list, to be focused. */
  public ListView<Integer> list() {
    return list;
  }

  private Optional<Program> program() {
    return shared.program().get();
  }

  private void reset() {
    marks = Map.of();
    asked.clear();
    following = true;
    list.getSelectionModel().clearSelection();
    numbers.clearAll();
    following = false;
    grown();
    list.refresh();
  }

  /** The program has grown. */
  public void grown() {
    program().ifPresent(p -> numbers.grow(p.lines().count()));
    if (marks.isEmpty()) {
      program().filter(p -> !p.findings().isEmpty()).ifPresent(this::mark);
    }
  }

  private void mark(Program program) {
    Map<Integer, FindingMark> worst = new HashMap<>();
    for (FindingMark mark : program.findings()) {
      if (mark.finding().at().file() == 0) {
        worst.merge(mark.finding().at().line(), mark, ProgramPane::graver);
      }
    }
    marks = worst;
    list.refresh();
  }

  private static FindingMark graver(FindingMark a, FindingMark b) {
    boolean aStands = a.finding().acceptedBecause().isEmpty();
    boolean bStands = b.finding().acceptedBecause().isEmpty();
    if (aStands != bStands) {
      return aStands ? a : b;
    }
    return a.finding().level().compareTo(b.finding().level()) >= 0 ? a : b;
  }

  // The cursor.

  private void selected() {
    int index = list.getSelectionModel().getSelectedIndex();
    Optional<Program> program = program();
    if (following || index < 0 || program.isEmpty()) {
      return;
    }
    Moves moves = program.get().moves();
    long cursor = shared.cursor().get();
    boolean there =
        cursor >= 0
            && cursor < moves.count()
            && moves.file(cursor) == 0
            && moves.line(cursor) == index + 1;
    if (!there) {
      following = true;
      shared.moveTo(moves.firstOf(0, index + 1));
      following = false;
    }
  }

  private void follow() {
    Optional<Program> program = program();
    long cursor = shared.cursor().get();
    if (following
        || program.isEmpty()
        || cursor < 0
        || cursor >= program.get().moves().count()
        || program.get().moves().file(cursor) != 0) {
      return;
    }
    go(program.get().moves().line(cursor));
  }

  /** Shows a line, and selects it without moving the cursor. */
  public void go(int line) {
    if (line < 1 || line > numbers.size()) {
      return;
    }
    following = true;
    list.getSelectionModel().clearAndSelect(line - 1);
    list.getFocusModel().focus(line - 1);
    following = false;
    int rows = (int) (list.getHeight() / ROW);
    int first = firstShown();
    if (line - 1 < first + 1 || line - 1 > first + rows - 3) {
      list.scrollTo(Math.max(0, line - 1 - rows / 3));
    }
  }

  private int firstShown() {
    return list.lookupAll(".list-cell").stream()
        .filter(node -> node instanceof LineCell cell && !cell.isEmpty() && cell.isVisible())
        .mapToInt(node -> ((LineCell) node).getIndex())
        .min()
        .orElse(0);
  }

  // Lines.

  private String text(int line) {
    Optional<Program> program = program();
    if (program.isEmpty()) {
      return "";
    }
    Lines lines = program.get().lines();
    Optional<String> known = lines.ifRead(line);
    if (known.isEmpty() && asked.add(line)) {
      reader.execute(
          () -> {
            try {
              lines.read(line);
            } catch (IOException e) {
              // The line stays blank; reading the program anew tells why.
              return;
            }
            Platform.runLater(this::refreshSoon);
          });
    }
    return known.orElse("…");
  }

  private void refreshSoon() {
    asked.clear();
    if (!refreshDue) {
      refreshDue = true;
      Platform.runLater(
          () -> {
            refreshDue = false;
            list.refresh();
          });
    }
  }

  private final class LineCell extends ListCell<Integer> {
    private final Canvas margin = new Canvas(46 + MARGIN, ROW - 4);

    @Override
    protected void updateItem(Integer line, boolean empty) {
      super.updateItem(line, empty);
      if (empty || line == null) {
        setGraphic(null);
        setText("");
        return;
      }
      String words = text(line);
      setText(words);
      setGraphic(margin);
      var out = margin.getGraphicsContext2D();
      out.clearRect(0, 0, margin.getWidth(), margin.getHeight());
      Palette palette = shared.palette().get();
      out.setFill(Color.TRANSPARENT);
      double scale = getScene() == null ? 1 : getScene().getWindow().getOutputScaleX();
      Pen pen = new CanvasPen(out, scale);
      pen.text(
          Integer.toString(line),
          46,
          12,
          new Pen.Font(11, false, true),
          palette.quiet(),
          Pen.Anchor.END);
      FindingMark mark = marks.get(line);
      if (mark != null) {
        Marks.draw(
            pen,
            palette,
            mark.finding().level(),
            mark.finding().acceptedBecause().isPresent(),
            48 + MARGIN / 2,
            8,
            10);
      }
      setAccessibleText(
          "line "
              + line
              + ", "
              + words
              + (mark == null
                  ? ""
                  : ", " + mark.finding().level().word() + " " + mark.finding().rule()));
    }
  }

  // Export.

  @Override
  public String exportName() {
    return "program";
  }

  @Override
  public double exportWidth() {
    return Math.max(320, getWidth());
  }

  @Override
  public double exportHeight() {
    return Math.max(200, getHeight());
  }

  @Override
  public void drawTo(Pen pen, Palette palette) {
    int first = firstShown();
    int rows = (int) (exportHeight() / ROW);
    int selected = list.getSelectionModel().getSelectedIndex();
    for (int k = 0; k < rows && first + k < numbers.size(); k++) {
      int line = first + k + 1;
      double y = k * ROW;
      if (line - 1 == selected) {
        pen.rectangle(0, y, exportWidth(), ROW, (palette.cursor() & 0xFFFFFF) | 0x33000000);
      }
      pen.text(
          Integer.toString(line),
          60,
          y + 14,
          new Pen.Font(11, false, true),
          palette.quiet(),
          Pen.Anchor.END);
      FindingMark mark = marks.get(line);
      if (mark != null) {
        Level level = mark.finding().level();
        boolean accepted = mark.finding().acceptedBecause().isPresent();
        Marks.draw(pen, palette, level, accepted, 69, y + 10, 10);
      }
      pen.text(now(line), 84, y + 14, Pen.Font.CODE, palette.ink(), Pen.Anchor.START);
    }
  }

  private String now(int line) {
    try {
      Optional<Program> program = program();
      return program.isEmpty() ? "" : program.get().lines().read(line);
    } catch (IOException e) {
      return "";
    }
  }

  @Override
  public void writeCsv(Appendable out) throws IOException {
    Csv.line(out, "line", "text", "level", "rule");
    Optional<Program> program = program();
    if (program.isEmpty()) {
      return;
    }
    for (int line = 1; line <= program.get().lines().count(); line++) {
      FindingMark mark = marks.get(line);
      Csv.line(
          out,
          line,
          program.get().lines().read(line),
          mark == null ? "" : mark.finding().level().word(),
          mark == null ? "" : mark.finding().rule());
    }
  }

  @Override
  public void close() {
    reader.shutdownNow();
  }
}
