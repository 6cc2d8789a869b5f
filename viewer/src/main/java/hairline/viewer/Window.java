package hairline.viewer;

import hairline.checks.report.Ticks;
import hairline.checks.report.Visible;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Texts;
import hairline.viewer.model.Along;
import hairline.viewer.model.FindingMark;
import hairline.viewer.model.LevelMark;
import hairline.viewer.model.Loading;
import hairline.viewer.model.MeasuredTrace;
import hairline.viewer.model.Moves;
import hairline.viewer.model.Operation;
import hairline.viewer.model.Program;
import hairline.viewer.model.Trace;
import hairline.viewer.panes.Exported;
import hairline.viewer.panes.Panes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.scene.control.Alert;
import javafx.scene.control.ButtonType;
import javafx.scene.control.Dialog;
import javafx.scene.control.TextInputDialog;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javafx.stage.WindowEvent;
import javafx.util.Duration;

/** The window: opens programs, and links its panes by one cursor. */
public final class Window implements AutoCloseable {
  /** The smallest screen it is made for. */
  static final double LEAST_WIDTH = 1280;

  static final double LEAST_HEIGHT = 720;

  private static final long MM = 1_000_000_000L;
  private static final double TICK_MS = 100;
  private static final int TICKS_BETWEEN_LOOKS = 20;
  private static final String TITLE = "Hairline";

  private final Stage stage;
  private final Settings settings;
  private final Panes panes = new Panes();
  private final Readout readout = new Readout();
  private final Status status;
  private final Saver saver = new Saver(this::written);
  private final BorderPane root = new BorderPane();
  private final Timeline ticker;
  private final Actions actions;
  private Optional<Loading> loading = Optional.empty();
  private Optional<Path> sheet = Optional.empty();
  private Optional<FileTime> readAt = Optional.empty();
  private Optional<int[]> returnTo = Optional.empty();
  private boolean settled = true;
  private boolean blockDue;
  private int ticks;

  /**
   * A window without a program.
   *
   * @param stage where it is put
   * @param settings what it remembers
   */
  public Window(Stage stage, Settings settings) {
    this.stage = stage;
    this.settings = settings;
    this.status = new Status(this::cancelReading, saver::cancel);
    this.actions = new Actions(this, panes);
    root.getStyleClass().add("window");
    root.setTop(new VBox(actions.menuBar(), readout));
    root.setCenter(panes);
    root.setBottom(status);
    Scene scene = new Scene(root);
    scene
        .getStylesheets()
        .add(Objects.requireNonNull(Window.class.getResource("viewer.css")).toExternalForm());
    stage.setScene(scene);
    stage.setTitle(TITLE);
    place();
    panes.shared().cursor().addListener(o -> tell());
    panes.remark().addListener(o -> tell());
    setDark(settings.text("theme", "light").equals("dark"));
    panes.restoreDividers(settings::number);
    // Before it is shown it has another size, from which panes grow each in its way.
    stage.addEventHandler(
        WindowEvent.WINDOW_SHOWN,
        e -> {
          root.layout();
          panes.restoreDividers(settings::number);
        });
    panes.setAlong(settings.text("along", "PATH").equals("TIME") ? Along.TIME : Along.PATH);
    panes.setByLevels(!settings.text("steps-alike", "true").equals("false"));
    for (Trace trace : Trace.values()) {
      if (trace.name().equals(settings.text("trace", Trace.DEPTH.name()))) {
        panes.setTrace(trace);
      }
    }
    ticker = new Timeline(new KeyFrame(Duration.millis(TICK_MS), e -> tick()));
    ticker.setCycleCount(Timeline.INDEFINITE);
    ticker.play();
    tell();
  }

  private void place() {
    Rectangle2D screen = Screen.getPrimary().getVisualBounds();
    double width = Math.min(screen.getWidth(), Math.max(settings.number("width", 1440), 640));
    double height = Math.min(screen.getHeight(), Math.max(settings.number("height", 900), 480));
    stage.setWidth(width);
    stage.setHeight(height);
    double x = settings.number("x", screen.getMinX() + (screen.getWidth() - width) / 2);
    double y = settings.number("y", screen.getMinY() + (screen.getHeight() - height) / 2);
    boolean seen =
        Screen.getScreensForRectangle(x + width / 2 - 50, y, 100, 40).stream()
            .findAny()
            .isPresent();
    stage.setX(seen ? x : screen.getMinX());
    stage.setY(seen ? y : screen.getMinY());
    stage.setMaximized(settings.text("maximized", "false").equals("true"));
  }

  /** Its panes. */
  public Panes panes() {
    return panes;
  }

  /** The program shown. */
  public Optional<Program> program() {
    return panes.shared().program().get();
  }

  /** Whether the program shown is read and all panes know it. */
  public boolean settled() {
    return settled;
  }

  // Opening.

  /** Opens a program. */
  public void open(Path file, Optional<Path> sheetNamed) {
    returnTo = Optional.empty();
    open(file, sheetNamed, false);
  }

  private void open(Path file, Optional<Path> sheetNamed, boolean again) {
    loading.ifPresent(Loading::cancel);
    sheet = sheetNamed;
    readAt = changedAt(file);
    Optional<Program> old = program();
    Loading next = Loading.start(file, sheetNamed);
    loading = Optional.of(next);
    settled = false;
    panes.shared().show(Optional.of(next.program()), again);
    old.ifPresent(Window::letGo);
    stage.setTitle(Visible.of(next.program().name()) + " – " + TITLE);
    tick();
  }

  private static void letGo(Program program) {
    try {
      program.close();
    } catch (IOException e) {
      // A temporary file that can't be closed goes with the process.
      return;
    }
  }

  /** Reads the program anew; cursor and views stay where they are. */
  public void reload() {
    Optional<Program> program = program();
    if (program.isEmpty()) {
      return;
    }
    long cursor = panes.shared().cursor().get();
    Moves moves = program.get().moves();
    Optional<int[]> place =
        cursor >= 0 && cursor < moves.count()
            ? Optional.of(new int[] {moves.file(cursor), moves.line(cursor)})
            : Optional.empty();
    returnTo = place;
    open(program.get().file(), sheet, true);
  }

  /** Ends the writing of a file; where none is written, the reading: what was read stays. */
  public void cancel() {
    if (saver.isBusy()) {
      saver.cancel();
    } else {
      cancelReading();
    }
  }

  private void cancelReading() {
    loading.ifPresent(Loading::cancel);
  }

  private static Optional<FileTime> changedAt(Path file) {
    try {
      return Optional.of(Files.getLastModifiedTime(file));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private void tick() {
    status.writing(saver.name(), saver.share(), saver.isBusy());
    Optional<Program> program = program();
    if (program.isEmpty()) {
      return;
    }
    if (!settled) {
      boolean finished = program.get().finished() && program.get().lines().complete();
      boolean failed = program.get().finished() && program.get().trouble().isPresent();
      panes.grown();
      if (finished || failed) {
        settled = true;
        panes.grown();
        settle(program.get());
      }
      tell();
    }
    if (blockDue) {
      // Its line has been read meanwhile, for the program's own pane.
      tell();
    }
    // The lines of a subprogram's file may be found later than all else.
    panes.program().grown();
    if (++ticks % TICKS_BETWEEN_LOOKS == 0) {
      status.setChanged(!changedAt(program.get().file()).equals(readAt));
    }
  }

  private void settle(Program program) {
    Moves moves = program.moves();
    if (returnTo.isPresent()) {
      panes.shared().moveTo(moves.firstOf(returnTo.get()[0], returnTo.get()[1]));
      returnTo = Optional.empty();
    } else if (panes.shared().cursor().get() < 0) {
      panes.shared().moveTo(moves.count() - 1);
    }
  }

  // Telling.

  private void tell() {
    Optional<Program> program = program();
    status.tell(program);
    if (program.isEmpty()) {
      readout.clear();
      return;
    }
    long cursor = panes.shared().cursor().get();
    Moves moves = program.get().moves();
    if (cursor < 0 || cursor >= moves.count()) {
      readout.clear();
      return;
    }
    int line = moves.line(cursor);
    Optional<String> text = program.get().lines(moves.file(cursor)).ifRead(line);
    String block = text.orElse("");
    blockDue = text.isEmpty();
    Optional<Operation> operation = program.get().operationOf(cursor);
    long depth = moves.value(Trace.DEPTH, cursor);
    readout.tell(
        line
            + (moves.file(cursor) == 0 ? "" : " of " + fileName(program.get(), moves.file(cursor))),
        block,
        "X "
            + axis(moves.x(cursor))
            + "   Y "
            + axis(moves.y(cursor))
            + "   Z "
            + height(moves.z(cursor)),
        (moves.kind(cursor) == Moves.Kind.RAPID ? "rapid" : "feed")
            + (depth == Moves.UNKNOWN || depth == 0 ? "" : ", takes " + Texts.um(depth)),
        Ticks.minus(Texts.decimal(moves.pathMm(cursor), 3)) + " mm",
        Texts.clock(moves.seconds(cursor)),
        operation.flatMap(Operation::tool).map(t -> "tool " + t).orElse("tool unknown"));
  }

  private static String fileName(Program program, int file) {
    return Visible.of(String.valueOf(program.path(file).getFileName()));
  }

  private static String height(long pm) {
    return pm == Moves.UNKNOWN ? "unknown" : Math.abs(pm) < MM ? Texts.um(pm) : Texts.mm(pm);
  }

  private static String axis(long pm) {
    return pm == Moves.UNKNOWN ? "unknown" : Texts.mm(pm).replace(" mm", "");
  }

  // Going about.

  /** The next finding behind the cursor, or the one before it; goes round. */
  public void nextFinding(int step) {
    List<FindingMark> shown = panes.findings().shown();
    if (shown.isEmpty()) {
      return;
    }
    Optional<FindingMark> now = panes.shared().finding().get();
    int at = now.map(shown::indexOf).orElse(-1);
    int next = at < 0 ? step > 0 ? 0 : shown.size() - 1 : Math.floorMod(at + step, shown.size());
    panes.shared().select(shown.get(next));
    panes.showFindings();
  }

  /** The next level cut behind the cursor, or the one before it; goes round. */
  public void nextStep(int step) {
    Optional<Program> program = program();
    if (program.isEmpty()) {
      return;
    }
    long cursor = panes.shared().cursor().get();
    List<Long> at =
        program.get().levels().stream().map(LevelMark::move).distinct().sorted().toList();
    Stream<Long> beyond = at.stream().filter(move -> step > 0 ? move > cursor : move < cursor);
    Optional<Long> next = step > 0 ? beyond.findFirst() : beyond.reduce((before, after) -> after);
    next.or(
            () ->
                at.isEmpty() ? Optional.empty() : Optional.of(at.get(step > 0 ? 0 : at.size() - 1)))
        .ifPresent(panes.shared()::moveTo);
  }

  /** The next move, or the one before. */
  public void nextMove(int step) {
    panes.shared().moveTo(panes.shared().cursor().get() + step);
  }

  /** Asks for a line and goes there. */
  public void askLine() {
    TextInputDialog dialog = new TextInputDialog();
    dialog.setTitle("Go to line");
    dialog.setHeaderText("Number of the line");
    dressed(dialog);
    dialog
        .showAndWait()
        .map(String::strip)
        .filter(text -> text.matches("[0-9]{1,9}"))
        .ifPresent(text -> goToLine(Integer.parseInt(text)));
  }

  /** Asks for the ends of a section. */
  void askSection() {
    TextInputDialog dialog = new TextInputDialog();
    dialog.setTitle("Section from point to point");
    dialog.setHeaderText("X and Y of the one end, X and Y of the other, in mm: 0 0.1 5.8 0.1");
    dressed(dialog);
    dialog
        .showAndWait()
        .ifPresent(
            text -> {
              if (!section(text)) {
                complain(
                    "No section",
                    "`"
                        + text
                        + "` is not four numbers of two different points – write X and Y of both,"
                        + " in mm, with spaces between");
              }
            });
  }

  private boolean section(String text) {
    String[] words = text.strip().split("[\\s;]+", -1);
    double[] mm = new double[4];
    if (words.length != mm.length) {
      return false;
    }
    try {
      for (int k = 0; k < mm.length; k++) {
        mm[k] = Double.parseDouble(words[k].replace('−', '-'));
      }
    } catch (NumberFormatException e) {
      return false;
    }
    return panes.takeSection(mm);
  }

  /** Moves the cursor to a line of the file shown. */
  public void goToLine(int line) {
    panes.program().moveCursorTo(line);
  }

  // Looks.

  /** Light on dark, or dark on light. */
  public void setDark(boolean dark) {
    stage.getScene().getRoot().getStyleClass().remove("dark");
    if (dark) {
      stage.getScene().getRoot().getStyleClass().add("dark");
    }
    panes.shared().palette().set(dark ? Palette.DARK : Palette.LIGHT);
    settings.put("theme", dark ? "dark" : "light");
  }

  /** Whether it is light on dark. */
  public boolean isDark() {
    return panes.shared().palette().get().equals(Palette.DARK);
  }

  // Files.

  void askOpen() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle("Open a part program");
    inFolder(chooser, settings.text("folder", ""));
    Optional.ofNullable(chooser.showOpenDialog(stage))
        .ifPresent(
            file -> {
              settings.put("folder", String.valueOf(file.getParent()));
              open(file.toPath(), Optional.empty());
            });
  }

  void askTrace() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle("Lay a measured trace over the section (CSV: distance, height)");
    inFolder(chooser, settings.text("folder", ""));
    Optional.ofNullable(chooser.showOpenDialog(stage)).ifPresent(file -> layTrace(file.toPath()));
  }

  /** Lays a measured trace over the section. */
  public void layTrace(Path file) {
    try {
      panes.section().setTrace(Optional.of(MeasuredTrace.read(file)));
      panes.showSection();
    } catch (MeasuredTrace.NoTrace e) {
      complain("This is no trace", String.valueOf(e.getMessage()));
    }
  }

  void askSave(Saving.Format format) {
    Exported pane = panes.chosen();
    FileChooser chooser = new FileChooser();
    chooser.setTitle("Write the pane " + pane.exportName() + " as " + format);
    String base = program().map(Program::name).orElse("hairline").replaceFirst("\\.[^.]*$", "");
    chooser.setInitialFileName(base + "-" + pane.exportName() + "." + format.ending());
    inFolder(chooser, settings.text("exports", ""));
    Optional.ofNullable(chooser.showSaveDialog(stage))
        .ifPresent(
            file -> {
              settings.put("exports", String.valueOf(file.getParent()));
              save(pane, format, file.toPath());
            });
  }

  /** Begins to write a pane, as it stands now, to a file. */
  public void save(Exported pane, Saving.Format format, Path file) {
    List<Path> inputs = new ArrayList<>();
    program()
        .ifPresent(
            p -> {
              for (int k = 0; k < p.fileCount(); k++) {
                inputs.add(p.path(k));
              }
            });
    sheet.ifPresent(inputs::add);
    saver.save(pane, format, panes.shared().palette().get(), file, inputs);
    status.writing(saver.name(), saver.share(), true);
  }

  /** Whether a file is being written. */
  public boolean isWriting() {
    return saver.isBusy();
  }

  private void written(Saver.Told told) {
    status.writing(saver.name(), saver.share(), saver.isBusy());
    switch (told.ended()) {
      case WRITTEN -> status.note("written: " + told.file());
      case CANCELLED -> status.note("writing was cancelled; not written: " + told.file());
      case FAILED ->
          told.trouble().ifPresent(t -> complain("Not written", t.sentence() + " – " + t.cure()));
    }
  }

  private static void inFolder(FileChooser chooser, String folder) {
    Path path = Path.of(folder.isEmpty() ? "." : folder).toAbsolutePath();
    if (Files.isDirectory(path)) {
      chooser.setInitialDirectory(path.toFile());
    }
  }

  private void complain(String head, String sentence) {
    Alert alert = new Alert(Alert.AlertType.WARNING, Visible.of(sentence), ButtonType.OK);
    alert.setHeaderText(head);
    dressed(alert);
    alert.show();
  }

  /** Shows a text in a window of its own. */
  void inform(String head, String text) {
    Alert alert = new Alert(Alert.AlertType.INFORMATION, text, ButtonType.CLOSE);
    alert.setHeaderText(head);
    alert.getDialogPane().setMinWidth(560);
    dressed(alert);
    alert.show();
  }

  private void dressed(Dialog<?> dialog) {
    dialog.initOwner(stage);
    dialog.getDialogPane().getStylesheets().addAll(stage.getScene().getStylesheets());
    if (isDark()) {
      dialog.getDialogPane().getStyleClass().add("dark");
    }
  }

  /** All keys, as the menus have them. */
  String keys() {
    return actions.keys();
  }

  void quit() {
    stage.close();
  }

  /** Remembers how it stands, and ends all that goes on behind it. */
  @Override
  public void close() {
    ticker.stop();
    cancelReading();
    saver.close();
    if (!stage.isMaximized()) {
      settings.put("x", stage.getX());
      settings.put("y", stage.getY());
      settings.put("width", stage.getWidth());
      settings.put("height", stage.getHeight());
    }
    settings.put("maximized", stage.isMaximized());
    panes.remember(settings::put);
    settings.save();
    panes.close();
    program().ifPresent(Window::letGo);
    panes.shared().show(Optional.empty(), false);
  }
}
