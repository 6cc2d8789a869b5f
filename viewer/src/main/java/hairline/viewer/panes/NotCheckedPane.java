package hairline.viewer.panes;

import hairline.checks.finding.NotChecked;
import hairline.checks.report.Visible;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import hairline.viewer.model.Program;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.scene.control.Label;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;

/** What could not be checked, and what would let it. */
public final class NotCheckedPane extends BorderPane implements Exported {
  private static final double ROW = 22;
  private static final int MOST_DRAWN = 500;

  private final Shared shared;
  private final ObservableList<NotChecked> all = FXCollections.observableArrayList();
  private final TableView<NotChecked> table = new TableView<>(all);
  private final Label empty = new Label();
  private long filledAt = -1;
  private boolean filling;

  /** The list for what is shared. */
  public NotCheckedPane(Shared shared) {
    this.shared = shared;
    setId("not-checked");
    table.setId("not-checked-table");
    table.setAccessibleText("Not checked");
    table.setPlaceholder(empty);
    table.setFixedCellSize(ROW);
    table.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_LAST_COLUMN);
    table
        .getColumns()
        .addAll(
            List.of(
                column("rule", 180, NotCheckedPane::rule),
                column("line", 54, this::line),
                column("times", 52, n -> Long.toString(n.count())),
                column("what is missing", 260, n -> Visible.of(n.reason()))));
    table.setRowFactory(
        view -> {
          javafx.scene.control.TableRow<NotChecked> row = new javafx.scene.control.TableRow<>();
          row.itemProperty()
              .addListener(
                  (o, before, item) ->
                      row.setTooltip(item == null ? null : new Tooltip(Visible.of(item.reason()))));
          return row;
        });
    table
        .getSelectionModel()
        .selectedItemProperty()
        .addListener((o, before, item) -> Optional.ofNullable(item).ifPresent(this::selected));
    setCenter(table);
    shared.program().addListener(o -> reset());
    grown();
  }

  private static String rule(NotChecked item) {
    return item.rule().isEmpty() ? "the program" : item.rule();
  }

  private String line(NotChecked item) {
    return item.first()
        .map(
            at ->
                (at.file() == 0
                        ? ""
                        : shared
                                .program()
                                .get()
                                .map(program -> program.path(at.file()).getFileName())
                                .map(name -> Visible.of(name.toString()))
                                .orElse("")
                            + ":")
                    + at.line())
        .orElse("");
  }

  private static TableColumn<NotChecked, String> column(
      String name, double width, Function<NotChecked, String> value) {
    TableColumn<NotChecked, String> column = new TableColumn<>(name);
    column.setPrefWidth(width);
    column.setCellValueFactory(
        features -> new ReadOnlyObjectWrapper<>(value.apply(features.getValue())));
    return column;
  }

  private void reset() {
    filledAt = -1;
    all.clear();
    grown();
  }

  /** The program has grown. */
  public void grown() {
    Optional<Program> program = shared.program().get();
    boolean checked = program.flatMap(Program::result).isPresent();
    empty.setText(
        checked
            ? "all rules could decide"
            : program.isEmpty()
                ? "no program is open"
                : program.get().finished()
                    ? "not checked to its end"
                    : "nothing so far; the check goes on");
    if (program.isPresent() && program.get().findingsChanges() != filledAt) {
      filledAt = program.get().findingsChanges();
      fill(program.get().notChecked());
    }
  }

  private void fill(List<NotChecked> undecided) {
    if (!all.equals(undecided)) {
      Optional<NotChecked> before =
          Optional.ofNullable(table.getSelectionModel().getSelectedItem());
      filling = true;
      all.setAll(undecided);
      before
          .flatMap(
              item ->
                  undecided.stream()
                      .filter(
                          now ->
                              now.rule().equals(item.rule()) && now.reason().equals(item.reason()))
                      .findFirst())
          .ifPresent(item -> table.getSelectionModel().select(item));
      filling = false;
    }
  }

  /** How many there are. */
  public int count() {
    return all.size();
  }

  /** The table, to be focused. */
  public TableView<NotChecked> table() {
    return table;
  }

  private void selected(NotChecked item) {
    Optional<Program> program = shared.program().get();
    if (!filling && program.isPresent() && item.first().isPresent()) {
      shared.moveTo(
          program.get().moves().firstOf(item.first().get().file(), item.first().get().line()));
    }
  }

  @Override
  public String exportName() {
    return "not-checked";
  }

  @Override
  public Taken taken(Palette palette) {
    List<NotChecked> items = List.copyOf(all);
    List<String> lines = items.stream().map(this::line).toList();
    int drawn = Math.min(items.size(), MOST_DRAWN);
    return new TakenPlot(
        Math.max(900, getWidth()),
        Math.max(80, (drawn + 2) * ROW),
        pen -> draw(pen, palette, items, lines),
        (out, progress) -> writeCsv(items, lines, out, progress));
  }

  private static void draw(Pen pen, Palette palette, List<NotChecked> items, List<String> lines) {
    double y = 15;
    pen.text("rule", 12, y, Pen.Font.STRONG, palette.ink(), Pen.Anchor.START);
    pen.text("line", 290, y, Pen.Font.STRONG, palette.ink(), Pen.Anchor.END);
    pen.text("times", 340, y, Pen.Font.STRONG, palette.ink(), Pen.Anchor.END);
    pen.text("what is missing", 356, y, Pen.Font.STRONG, palette.ink(), Pen.Anchor.START);
    for (int k = 0; k < Math.min(items.size(), MOST_DRAWN); k++) {
      NotChecked item = items.get(k);
      y += ROW;
      pen.text(rule(item), 12, y, Pen.Font.LABEL, palette.ink(), Pen.Anchor.START);
      pen.text(lines.get(k), 290, y, Pen.Font.LABEL, palette.ink(), Pen.Anchor.END);
      pen.text(Long.toString(item.count()), 340, y, Pen.Font.LABEL, palette.ink(), Pen.Anchor.END);
      pen.text(Visible.of(item.reason()), 356, y, Pen.Font.LABEL, palette.ink(), Pen.Anchor.START);
    }
    if (items.size() > MOST_DRAWN) {
      String more = items.size() - MOST_DRAWN + " more: all of them stand in the table (CSV)";
      pen.text(more, 12, y + ROW, Pen.Font.SMALL, palette.quiet(), Pen.Anchor.START);
    }
  }

  private static void writeCsv(
      List<NotChecked> items, List<String> lines, Appendable out, Progress progress)
      throws IOException {
    Csv.line(out, "rule", "line", "times", "what is missing");
    for (int k = 0; k < items.size(); k++) {
      progress.at(k / (double) items.size());
      NotChecked item = items.get(k);
      Csv.line(out, rule(item), lines.get(k), item.count(), Visible.of(item.reason()));
    }
  }
}
