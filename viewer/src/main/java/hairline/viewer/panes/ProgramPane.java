package hairline.viewer.panes;

import hairline.checks.motion.Place;
import hairline.checks.report.Visible;
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
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.util.StringConverter;

/**
 * The lines of the file that the move under the cursor stands in, and from where it is called; only
 * those in sight are read.
 */
public final class ProgramPane extends BorderPane implements Exported, AutoCloseable {
  private static final double NUMBER = 52;
  private static final double MARK = 63;
  private static final double TEXT = 74;
  private static final double BASE = 14;
  private static final Pen.Font NUMBERS = new Pen.Font(11, false, true);

  private final Shared shared;
  private final LineList list;
  private final ExecutorService reader =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "hairline-text");
            thread.setDaemon(true);
            return thread;
          });
  private final Set<Integer> asked = new HashSet<>();
  private final ComboBox<Integer> files = new ComboBox<>();
  private final Label callers = new Label();
  private final HBox head = new HBox(files, callers);
  private int file;
  private Map<Integer, FindingMark> marks = Map.of();
  private long markedAt = -1;

  /** The line to be shown once it is found; 0 for none. */
  private int goLater;

  private boolean following;

  /** The lines of what is shared. */
  public ProgramPane(Shared shared) {
    this.shared = shared;
    this.list =
        new LineList(
            shared,
            new LineList.Rows() {
              @Override
              public void draw(
                  Pen pen, Palette palette, int row, double y, double shift, double width) {
                Row shown =
                    new Row(row + 1, text(row + 1), Optional.ofNullable(marks.get(row + 1)));
                shown.draw(pen, palette, y, shift, width);
              }

              @Override
              public String words(int row) {
                return told(row + 1);
              }
            });
    setId("program");
    setCenter(list);
    head();
    setMinWidth(120);
    list.selected().addListener(o -> selected());
    shared.cursor().addListener(o -> follow());
    shared.program().addListener(o -> reset());
  }

  private void head() {
    files.setId("program-file");
    files.setAccessibleText("File of the program or of a subprogram");
    files.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(Integer index) {
            return index == null ? "" : shortName(index);
          }

          @Override
          public Integer fromString(String text) {
            return 0;
          }
        });
    files.setOnAction(
        e -> {
          if (!following && files.getValue() != null) {
            showFile(files.getValue());
            list.selected().set(-1);
            follow(false);
          }
        });
    callers.setId("program-callers");
    callers.setMinWidth(0);
    Tooltip whole = new Tooltip();
    whole.textProperty().bind(callers.textProperty());
    callers.setTooltip(whole);
    head.getStyleClass().add("pane-head");
    HBox.setHgrow(callers, Priority.ALWAYS);
    setTop(head);
    refreshHead();
  }

  /** The name of a file without its folder. */
  private String shortName(int index) {
    return program()
        .map(program -> String.valueOf(program.path(index).getFileName()))
        .map(Visible::of)
        .orElse("");
  }

  private void refreshHead() {
    int count = program().map(Program::fileCount).orElse(1);
    following = true;
    if (files.getItems().size() != count) {
      files.getItems().setAll(IntStream.range(0, count).boxed().toList());
    }
    files.setValue(file);
    following = false;
    long cursor = shared.cursor().get();
    List<Place> calls = program().map(program -> program.callsTo(cursor)).orElse(List.of());
    StringBuilder words = new StringBuilder();
    for (int k = calls.size() - 1; k >= 0; k--) {
      Place call = calls.get(k);
      words
          .append(words.length() == 0 ? "called from " : ", that from ")
          .append(call.file() == file ? "" : shortName(call.file()) + " ")
          .append("line ")
          .append(call.line());
    }
    callers.setText(words.toString());
    boolean needed = count > 1 || !calls.isEmpty();
    head.setVisible(needed);
    head.setManaged(needed);
  }

  private void showFile(int index) {
    if (index != file) {
      file = index;
      marks = Map.of();
      markedAt = -1;
      asked.clear();
      following = true;
      list.selected().set(-1);
      list.setCount(0);
      following = false;
    }
    grown();
    list.redraw();
  }

  /** The file whose lines are shown: 0 is the program itself. */
  public int file() {
    return file;
  }

  /** The calls that led to the cursor, in words; empty where it stands in no subprogram. */
  public String callers() {
    return callers.getText();
  }

  /** Shows the line that called the subprogram which the move under the cursor stands in. */
  public void showCaller() {
    long cursor = shared.cursor().get();
    List<Place> calls = program().map(program -> program.callsTo(cursor)).orElse(List.of());
    if (!calls.isEmpty()) {
      Place call = calls.get(calls.size() - 1);
      showFile(call.file());
      go(call.line());
      refreshHead();
    }
  }

  /** The list, to be focused. */
  public Node list() {
    return list;
  }

  /** The line selected; 0 for none. */
  public int selectedLine() {
    return list.selected().get() + 1;
  }

  /** Selects a line and moves the cursor to it. */
  public void select(int line) {
    list.selected().set(line - 1);
    list.show(line - 1);
  }

  /** Brings a line to the top. */
  public void scrollTo(int line) {
    list.scrollTo(line - 1);
  }

  private Optional<Program> program() {
    return shared.program().get();
  }

  private void reset() {
    file = 0;
    marks = Map.of();
    markedAt = -1;
    asked.clear();
    following = true;
    list.selected().set(-1);
    list.setCount(0);
    following = false;
    grown();
    list.redraw();
  }

  /** The program has grown. */
  public void grown() {
    program().ifPresent(p -> list.setCount(p.lines(file).count()));
    program().filter(p -> p.findingsChanges() != markedAt).ifPresent(this::mark);
    refreshHead();
    if (goLater > 0 && goLater <= list.count()) {
      go(goLater);
    }
  }

  private void mark(Program program) {
    markedAt = program.findingsChanges();
    Map<Integer, FindingMark> worst = new HashMap<>();
    for (FindingMark mark : program.findings()) {
      if (mark.finding().at().file() == file) {
        worst.merge(mark.finding().at().line(), mark, ProgramPane::graver);
      }
    }
    marks = worst;
    list.redraw();
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
    int line = selectedLine();
    Optional<Program> program = program();
    if (following || line < 1 || program.isEmpty()) {
      return;
    }
    Moves moves = program.get().moves();
    long cursor = shared.cursor().get();
    boolean there =
        cursor >= 0
            && cursor < moves.count()
            && moves.file(cursor) == file
            && moves.line(cursor) == line;
    if (!there) {
      following = true;
      shared.moveTo(moveOf(program.get(), line));
      following = false;
      refreshHead();
    }
  }

  /** The move of a line of the file shown: of the call that the cursor is in, if it makes one. */
  private long moveOf(Program program, int line) {
    return program
        .moves()
        .firstOf(file, line, program.callAround(Math.max(0, shared.cursor().get())));
  }

  /** Moves the cursor to a line of the file shown. */
  public void moveCursorTo(int line) {
    program().ifPresent(program -> shared.moveTo(moveOf(program, line)));
    go(line);
  }

  private void follow() {
    follow(true);
  }

  /**
   * Shows the line of the cursor.
   *
   * @param anyFile whether its file is shown too, where it is another one
   */
  private void follow(boolean anyFile) {
    Optional<Program> program = program();
    long cursor = shared.cursor().get();
    if (following || program.isEmpty() || cursor < 0 || cursor >= program.get().moves().count()) {
      return;
    }
    int its = program.get().moves().file(cursor);
    if (its != file && anyFile) {
      showFile(its);
    }
    if (its == file) {
      go(program.get().moves().line(cursor));
    }
    refreshHead();
  }

  /** Shows a line, and selects it without moving the cursor; where it is not found yet, soon. */
  public void go(int line) {
    goLater = line > list.count() ? line : 0;
    if (line < 1 || line > list.count()) {
      return;
    }
    following = true;
    list.selected().set(line - 1);
    following = false;
    list.show(line - 1);
  }

  // Lines.

  /** The text of a line if it is in memory; else it is read, and drawn when it is there. */
  private String text(int line) {
    Optional<Program> program = program();
    if (program.isEmpty()) {
      return "";
    }
    Lines lines = program.get().lines(file);
    Optional<String> known = lines.ifRead(line);
    if (known.isPresent()) {
      return known.get();
    }
    if (asked.add(line)) {
      reader.execute(
          () -> {
            read(lines, line);
            Platform.runLater(
                () -> {
                  asked.clear();
                  list.redraw();
                });
          });
    }
    return "…";
  }

  /** A line of a file that can't be read any more is blank; reading the program anew tells why. */
  private static String read(Lines lines, int line) {
    try {
      return lines.read(line);
    } catch (IOException e) {
      return "";
    }
  }

  /** A line as it is drawn. */
  private record Row(int line, String text, Optional<FindingMark> mark) {
    void draw(Pen pen, Palette palette, double y, double shift, double width) {
      pen.text(Integer.toString(line), NUMBER, y + BASE, NUMBERS, palette.quiet(), Pen.Anchor.END);
      mark.ifPresent(
          m ->
              Marks.draw(
                  pen,
                  palette,
                  m.finding().level(),
                  m.finding().acceptedBecause().isPresent(),
                  MARK,
                  y + LineList.ROW / 2,
                  10));
      pen.clip(TEXT - 1, y, Math.max(1, width - TEXT), LineList.ROW);
      pen.text(text, TEXT - shift, y + BASE, Pen.Font.CODE, palette.ink(), Pen.Anchor.START);
      pen.unclip();
    }
  }

  private String told(int line) {
    FindingMark mark = marks.get(line);
    String finding =
        mark == null ? "" : ", " + mark.finding().level().word() + " " + mark.finding().rule();
    return "line " + line + ", " + text(line) + finding;
  }

  // Export.

  @Override
  public String exportName() {
    return "program";
  }

  @Override
  public Taken taken(Palette palette) {
    Optional<Lines> lines = program().map(program -> program.lines(file));
    int count = list.count();
    Map<Integer, FindingMark> margin = Map.copyOf(marks);
    LineList.Sight sight = list.sight();
    double width = Math.max(320, getWidth());
    LineList.RowDrawing rows =
        (pen, row, y, shift) ->
            new Row(
                    row + 1,
                    lines.map(l -> read(l, row + 1)).orElse(""),
                    Optional.ofNullable(margin.get(row + 1)))
                .draw(pen, palette, y, shift, width);
    return new TakenPlot(
        width,
        Math.max(200, list.getHeight()),
        pen -> sight.draw(pen, palette, width, rows),
        (out, progress) -> {
          Csv.line(out, "line", "text", "level", "rule");
          for (int line = 1; line <= count; line++) {
            progress.at(line / (double) count);
            FindingMark mark = margin.get(line);
            Csv.line(
                out,
                line,
                lines.orElseThrow().read(line),
                mark == null ? "" : mark.finding().level().word(),
                mark == null ? "" : mark.finding().rule());
          }
        });
  }

  @Override
  public void close() {
    reader.shutdownNow();
  }
}
