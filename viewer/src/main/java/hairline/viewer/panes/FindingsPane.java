package hairline.viewer.panes;

import hairline.checks.finding.Figure;
import hairline.checks.finding.Finding;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.report.Ticks;
import hairline.checks.report.Visible;
import hairline.checks.rules.RulePage;
import hairline.viewer.draw.CanvasPen;
import hairline.viewer.draw.Marks;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import hairline.viewer.model.FindingMark;
import hairline.viewer.model.Program;
import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.ToDoubleBiFunction;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.collections.transformation.FilteredList;
import javafx.collections.transformation.SortedList;
import javafx.geometry.Insets;
import javafx.geometry.Orientation;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The findings, and beside them what the selected one says and the page of its rule. */
public final class FindingsPane extends BorderPane implements Exported {
  private static final double ROW = 22;
  private static final int MOST_DRAWN = 500;

  /** So wide the pane must be for the page to stand beside the table; else it stands below. */
  static final double LEAST_BESIDE = 640;

  /** Room for the longest name of a rule. */
  private static final double RULE = 210;

  private static final double LEVEL = 84;
  private static final double LINE = 54;

  /** Room for a file's name too, where a program draws on subprograms beside it. */
  private static final double LINE_WITH_FILE = 104;

  private static final double BESIDE = 0.6;
  private static final double BELOW = 0.5;

  private final Shared shared;
  private final SplitPane split = new SplitPane();
  private double beside = BESIDE;
  private double below = BELOW;
  private final ObservableList<FindingMark> all = FXCollections.observableArrayList();
  private final FilteredList<FindingMark> filtered = new FilteredList<>(all);
  private final TableView<FindingMark> table = new TableView<>();
  private final TextField filter = new TextField();
  private final Label count = new Label();
  private TableColumn<FindingMark, String> line = new TableColumn<>();
  private final Label empty = new Label();
  private final VBox page = new VBox(6);
  private final ScrollPane scroll = new ScrollPane(page);
  private long filledAt = -1;
  private boolean following;

  /** The findings of what is shared. */
  public FindingsPane(Shared shared) {
    this.shared = shared;
    setId("findings");
    table.setId("findings-table");
    table.setAccessibleText("Findings");
    table.setPlaceholder(empty);
    filter.setId("filter");
    filter.setPromptText("filter: rule, level, text or line");
    filter.setAccessibleText("Filter of findings");
    filter.textProperty().addListener(o -> refilter());
    columns();
    SortedList<FindingMark> sorted = new SortedList<>(filtered);
    sorted.comparatorProperty().bind(table.comparatorProperty());
    table.setItems(sorted);
    table.setFixedCellSize(ROW);
    table.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_SUBSEQUENT_COLUMNS);
    table
        .getSelectionModel()
        .selectedItemProperty()
        .addListener((o, before, mark) -> selected(Optional.ofNullable(mark)));
    shared.finding().addListener((o, before, mark) -> mark.ifPresent(this::show));
    shared.program().addListener(o -> reset());
    shared.palette().addListener(o -> table.refresh());
    page.setPadding(new Insets(8, 12, 12, 12));
    page.getStyleClass().add("page");
    scroll.setFitToWidth(true);
    scroll.setId("page");
    scroll.setFocusTraversable(true);
    HBox.setHgrow(filter, Priority.ALWAYS);
    filter.setMinWidth(120);
    count.setId("findings-count");
    count.setMinWidth(Region.USE_PREF_SIZE);
    HBox top = new HBox(8, filter, count);
    top.getStyleClass().add("pane-head");
    BorderPane upper = new BorderPane(table);
    upper.setTop(top);
    split.getItems().addAll(upper, scroll);
    split.setDividerPositions(beside);
    split.setId("findings-split");
    widthProperty().addListener(o -> fold());
    setCenter(split);
    reset();
  }

  private boolean isBeside() {
    return split.getOrientation() == Orientation.HORIZONTAL;
  }

  /** Puts the page beside the table, or below it where the pane is narrow. */
  private void fold() {
    boolean wide = getWidth() >= LEAST_BESIDE;
    if (getWidth() > 0 && wide != isBeside()) {
      keepDivider();
      split.setOrientation(wide ? Orientation.HORIZONTAL : Orientation.VERTICAL);
      split.setDividerPositions(wide ? beside : below);
    }
  }

  private void keepDivider() {
    if (isBeside()) {
      beside = split.getDividerPositions()[0];
    } else {
      below = split.getDividerPositions()[0];
    }
  }

  /** Tells how table and page part. */
  void remember(BiConsumer<String, Object> to) {
    keepDivider();
    to.accept("divider.page-beside", beside);
    to.accept("divider.page-below", below);
  }

  /** Lets table and page part as they did. */
  void restoreDivider(ToDoubleBiFunction<String, Double> number) {
    beside = number.applyAsDouble("divider.page-beside", BESIDE);
    below = number.applyAsDouble("divider.page-below", BELOW);
    split.setDividerPositions(isBeside() ? beside : below);
  }

  private void columns() {
    TableColumn<FindingMark, FindingMark> level =
        column("level", LEVEL, mark -> mark, (a, b) -> byLevel(b, a));
    level.setCellFactory(c -> new LevelCell());
    TableColumn<FindingMark, String> rule =
        column("rule", RULE, mark -> mark.finding().rule(), String::compareTo);
    line = column("line", LINE, this::place, FindingsPane::byNumber);
    TableColumn<FindingMark, Shown> figure =
        column("figure", 92, mark -> Shown.of(mark.found(), mark.allowed()), Shown.ORDER);
    TableColumn<FindingMark, Shown> limit =
        column("limit", 88, mark -> Shown.of(mark.allowed(), mark.found()), Shown.ORDER);
    for (TableColumn<FindingMark, ?> right : List.of(line, figure, limit)) {
      right.getStyleClass().add("right");
    }
    table.getColumns().addAll(List.of(level, rule, line, figure, limit));
  }

  /** A figure in a cell: ordered by unit, then by value. */
  private record Shown(String text, String unit, double value) {
    private static final Comparator<Shown> ORDER =
        Comparator.comparing(Shown::unit).thenComparingDouble(Shown::value);

    private static Shown of(Optional<Figure> figure, Optional<Figure> other) {
      return new Shown(
          FindingsPane.text(figure, other),
          figure.map(Figure::unit).orElse(""),
          figure.map(Figure::value).orElse(0.0));
    }

    @Override
    public String toString() {
      return text;
    }
  }

  private static <T> TableColumn<FindingMark, T> column(
      String name, double width, Function<FindingMark, T> value, Comparator<T> order) {
    TableColumn<FindingMark, T> column = new TableColumn<>(name);
    column.setPrefWidth(width);
    column.setMinWidth(width);
    column.setComparator(order);
    column.setCellValueFactory(
        features -> new ReadOnlyObjectWrapper<>(value.apply(features.getValue())));
    return column;
  }

  private static int byLevel(FindingMark a, FindingMark b) {
    return a.finding().level().compareTo(b.finding().level());
  }

  private static int byNumber(String a, String b) {
    String[] left = a.split(":", -1);
    String[] right = b.split(":", -1);
    int byFile = Integer.compare(left.length, right.length);
    return byFile != 0
        ? byFile
        : Long.compare(
            Long.parseLong(left[left.length - 1]), Long.parseLong(right[right.length - 1]));
  }

  /**
   * A figure with its unit.
   *
   * @param other what it is held against: as many digits are printed as tell both apart
   */
  public static String text(Optional<Figure> figure, Optional<Figure> other) {
    return figure
        .map(
            f ->
                Ticks.minus(Quantities.apart(f.value(), other.map(Figure::value).orElse(f.value())))
                    + (f.unit().isEmpty() ? "" : " " + f.unit()))
        .orElse("");
  }

  private String place(FindingMark mark) {
    int file = mark.finding().at().file();
    String line = Integer.toString(mark.finding().at().line());
    return file == 0
        ? line
        : shared
                .program()
                .get()
                .map(program -> Visible.of(String.valueOf(program.path(file).getFileName())))
                .orElse("file " + file)
            + ":"
            + line;
  }

  private final class LevelCell extends TableCell<FindingMark, FindingMark> {
    private final Canvas mark = new Canvas(14, 14);

    @Override
    protected void updateItem(FindingMark item, boolean empty) {
      super.updateItem(item, empty);
      if (empty || item == null) {
        setGraphic(null);
        setText("");
        return;
      }
      var out = mark.getGraphicsContext2D();
      out.clearRect(0, 0, 14, 14);
      boolean accepted = item.finding().acceptedBecause().isPresent();
      Marks.draw(
          new CanvasPen(out, 1),
          shared.palette().get(),
          item.finding().level(),
          accepted,
          7,
          7,
          10);
      setGraphic(mark);
      setText(accepted ? "accepted" : item.finding().level().word());
    }
  }

  // Filling.

  private void reset() {
    following = true;
    all.clear();
    filledAt = -1;
    following = false;
    shared.finding().set(Optional.empty());
    tell(Optional.empty());
    grown();
  }

  /** The program has grown. */
  public void grown() {
    Optional<Program> program = shared.program().get();
    if (program.isPresent() && program.get().findingsChanges() != filledAt) {
      filledAt = program.get().findingsChanges();
      fill(program.get().findings());
    }
    recount();
  }

  /** Shows these findings; the one selected stays selected, as it is by now. */
  private void fill(List<FindingMark> found) {
    Optional<FindingMark> before = shared.finding().get();
    following = true;
    all.setAll(found);
    boolean named = found.stream().anyMatch(mark -> mark.finding().at().file() != 0);
    line.setMinWidth(named ? LINE_WITH_FILE : LINE);
    Optional<FindingMark> now =
        before.flatMap(mark -> found.stream().filter(mark::isSame).findFirst());
    now.ifPresent(mark -> table.getSelectionModel().select(mark));
    if (!now.equals(before)) {
      shared.finding().set(now);
    }
    following = false;
    if (now.isEmpty() || !now.equals(before)) {
      double scrolled = now.isPresent() ? scroll.getVvalue() : 0;
      tell(now);
      scroll.layout();
      scroll.setVvalue(scrolled);
    }
  }

  private boolean isChecked() {
    return shared.program().get().flatMap(Program::result).isPresent();
  }

  private boolean isReading() {
    return shared.program().get().map(program -> !program.finished()).orElse(false);
  }

  private void refilter() {
    String[] words = filter.getText().strip().toLowerCase(Locale.ROOT).split("\\s+", -1);
    filtered.setPredicate(
        mark -> {
          String text = searched(mark);
          for (String word : words) {
            if (!text.contains(word)) {
              return false;
            }
          }
          return true;
        });
    recount();
  }

  private String searched(FindingMark mark) {
    Finding finding = mark.finding();
    return (finding.rule()
            + " "
            + (finding.acceptedBecause().isPresent() ? "accepted " : "")
            + finding.level().word()
            + " "
            + finding.first().message()
            + " line "
            + place(mark))
        .toLowerCase(Locale.ROOT);
  }

  private void recount() {
    String nothing =
        isChecked()
            ? "no findings"
            : isReading()
                ? "none found so far; the check goes on"
                : shared.program().get().isEmpty()
                    ? "no program is open"
                    : "not checked to its end; none found up to there";
    empty.setText(all.isEmpty() ? nothing : "the filter leaves none");
    String number =
        filtered.size() == all.size()
            ? Integer.toString(all.size())
            : filtered.size() + " of " + all.size();
    count.setText(
        shared.program().get().isEmpty()
            ? ""
            : isChecked() || all.isEmpty()
                ? number
                : number
                    + (isReading() ? " so far; the check goes on" : ", not checked to its end"));
  }

  /** The findings in the order and selection of the table. */
  public List<FindingMark> shown() {
    return table.getItems();
  }

  /** Puts them in order of a column; again the other way round; -1 in order of their places. */
  void sort(int column) {
    if (column < 0) {
      table.getSortOrder().clear();
      return;
    }
    TableColumn<FindingMark, ?> by = table.getColumns().get(column);
    boolean again = table.getSortOrder().size() == 1 && table.getSortOrder().get(0).equals(by);
    by.setSortType(
        again && by.getSortType() == TableColumn.SortType.ASCENDING
            ? TableColumn.SortType.DESCENDING
            : TableColumn.SortType.ASCENDING);
    table.getSortOrder().setAll(List.of(by));
  }

  /** The table, to be focused. */
  public TableView<FindingMark> table() {
    return table;
  }

  /** The filter, to be focused. */
  public TextField filter() {
    return filter;
  }

  // Selecting.

  private void selected(Optional<FindingMark> mark) {
    if (!following && mark.isPresent()) {
      following = true;
      shared.select(mark.get());
      following = false;
    }
    mark.ifPresent(m -> tell(mark));
  }

  private void show(FindingMark mark) {
    if (following || Objects.equals(table.getSelectionModel().getSelectedItem(), mark)) {
      return;
    }
    following = true;
    table.getSelectionModel().select(mark);
    int index = table.getSelectionModel().getSelectedIndex();
    if (index >= 0) {
      table.scrollTo(Math.max(0, index - 3));
    }
    following = false;
    tell(Optional.of(mark));
  }

  private void tell(Optional<FindingMark> mark) {
    page.getChildren().clear();
    scroll.setVvalue(0);
    if (mark.isEmpty()) {
      page.getChildren()
          .add(
              Page.flow(
                  isChecked() && all.isEmpty()
                      ? "Nothing found. A clean preflight replaces no prove-out: the machine"
                          + " builder's manual, and what is clamped on the table, come first."
                      : shared.program().get().isEmpty()
                          ? "No program is open: Ctrl+O opens one."
                          : "Select a finding to read what it says and the page of its rule."));
      return;
    }
    Finding finding = mark.get().finding();
    Label head = new Label(finding.level().word() + ": " + finding.rule());
    head.getStyleClass().add("page-title");
    page.getChildren().add(head);
    StringBuilder spoken = new StringBuilder(head.getText()).append(". ");
    spoken.append(line(finding.first().message(), "page-message"));
    for (String fact : finding.first().facts()) {
      spoken.append(line(fact, "page-fact"));
    }
    finding.first().cure().ifPresent(cure -> spoken.append(line("→ " + cure, "page-cure")));
    if (finding.count() > 1) {
      spoken.append(
          line(finding.count() + " times, last at line " + finding.last().line(), "page-fact"));
    }
    if (!finding.worst().equals(finding.first())) {
      spoken.append(
          line(
              "worst at line " + finding.worst().at().line() + ": " + finding.worst().message(),
              "page-message"));
    }
    finding
        .acceptedBecause()
        .ifPresent(reason -> spoken.append(line("accepted: " + reason, "page-cure")));
    RulePage.of(finding.rule())
        .ifPresent(text -> Page.add(page, text.markdown().replaceFirst("^# [^\n]*\n", "")));
    scroll.setAccessibleText(spoken.toString());
  }

  private String line(String text, String style) {
    String safe = Visible.of(text);
    Label label = new Label(safe);
    label.setWrapText(true);
    label.getStyleClass().add(style);
    page.getChildren().add(label);
    return safe + ". ";
  }

  // Export.

  @Override
  public String exportName() {
    return "findings";
  }

  @Override
  public Taken taken(Palette palette) {
    List<FindingMark> marks = List.copyOf(shown());
    List<String> places = marks.stream().map(this::place).toList();
    double width = Math.max(720, getWidth());
    return new TakenPlot(
        width,
        Math.max(80, (Math.min(marks.size(), MOST_DRAWN) + 2) * ROW),
        pen -> draw(pen, palette, width, marks, places),
        (out, progress) -> writeCsv(marks, places, out, progress));
  }

  private static void draw(
      Pen pen, Palette palette, double width, List<FindingMark> marks, List<String> places) {
    double[] at = {12, 100, 330, 430, 530, width - 14};
    String[] heads = {"level", "rule", "line", "figure", "limit", "times"};
    for (int k = 0; k < heads.length; k++) {
      Pen.Anchor anchor = k < 2 ? Pen.Anchor.START : Pen.Anchor.END;
      pen.text(heads[k], at[k], 15, Pen.Font.STRONG, palette.ink(), anchor);
    }
    double y = ROW;
    for (int row = 0; row < Math.min(marks.size(), MOST_DRAWN); row++) {
      FindingMark mark = marks.get(row);
      pen.line(0, y, width, y, Pen.Stroke.solid(palette.grid(), 1));
      Level level = mark.finding().level();
      boolean accepted = mark.finding().acceptedBecause().isPresent();
      Marks.draw(pen, palette, level, accepted, at[0] + 5, y + 11, 10);
      String[] cells = {
        accepted ? "accepted" : level.word(),
        mark.finding().rule(),
        places.get(row),
        text(mark.found(), mark.allowed()),
        text(mark.allowed(), mark.found()),
        Long.toString(mark.finding().count())
      };
      for (int k = 0; k < cells.length; k++) {
        Pen.Anchor anchor = k < 2 ? Pen.Anchor.START : Pen.Anchor.END;
        double x = at[k] + (k == 0 ? 16 : 0);
        pen.text(cells[k], x, y + 15, Pen.Font.LABEL, palette.ink(), anchor);
      }
      y += ROW;
    }
    if (marks.size() > MOST_DRAWN) {
      String more = marks.size() - MOST_DRAWN + " more: all of them stand in the table (CSV)";
      pen.text(more, at[0], y + 15, Pen.Font.SMALL, palette.quiet(), Pen.Anchor.START);
    }
  }

  private static void writeCsv(
      List<FindingMark> marks, List<String> places, Appendable out, Progress progress)
      throws IOException {
    Csv.line(
        out,
        "level",
        "rule",
        "line",
        "figure",
        "unit",
        "limit",
        "unit",
        "times",
        "message",
        "accepted because");
    for (int row = 0; row < marks.size(); row++) {
      progress.at(row / (double) marks.size());
      FindingMark mark = marks.get(row);
      Finding finding = mark.finding();
      Csv.line(
          out,
          finding.level().word(),
          finding.rule(),
          places.get(row),
          mark.found().map(f -> Quantities.significant(f.value(), 12)).orElse(""),
          mark.found().map(Figure::unit).orElse(""),
          mark.allowed().map(f -> Quantities.significant(f.value(), 12)).orElse(""),
          mark.allowed().map(Figure::unit).orElse(""),
          finding.count(),
          Visible.of(finding.first().message()),
          finding.acceptedBecause().map(Visible::of).orElse(""));
    }
  }
}
