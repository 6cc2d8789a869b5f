package hairline.viewer.panes;

import hairline.checks.report.Visible;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import hairline.viewer.draw.Texts;
import hairline.viewer.model.LevelMark;
import hairline.viewer.model.Program;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.scene.control.Label;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.layout.BorderPane;

/** The levels that the heights show, as a table: what is drawn there can be read here. */
public final class LevelsPane extends BorderPane implements Exported {
  private static final double ROW = 22;
  private static final int MOST_DRAWN = 500;

  /**
   * A level.
   *
   * @param zPm its height
   * @param stepPm how far the next level lies below; empty for the lowest
   * @param first where it was cut first; empty for the uncut top
   */
  public record Row(long zPm, OptionalLong stepPm, Optional<LevelMark> first) {}

  private final Shared shared;
  private final ObservableList<Row> all = FXCollections.observableArrayList();
  private final TableView<Row> table = new TableView<>(all);
  private int filledWith = -1;
  private boolean filling;

  /** The levels of what is shared. */
  public LevelsPane(Shared shared) {
    this.shared = shared;
    setId("levels");
    table.setId("levels-table");
    table.setAccessibleText("Levels");
    table.setPlaceholder(new Label("no level is known"));
    table.setFixedCellSize(ROW);
    table.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_LAST_COLUMN);
    TableColumn<Row, String> height = column("height", 110, row -> Texts.um(row.zPm()));
    TableColumn<Row, String> step = column("down to the next", 140, LevelsPane::step);
    TableColumn<Row, String> line = column("cut first at line", 130, this::place);
    for (TableColumn<Row, String> right : List.of(height, step, line)) {
      right.getStyleClass().add("right");
    }
    table.getColumns().addAll(List.of(height, step, line, column("by", 120, LevelsPane::tool)));
    table
        .getSelectionModel()
        .selectedItemProperty()
        .addListener((o, before, row) -> Optional.ofNullable(row).ifPresent(this::selected));
    setCenter(table);
    shared.program().addListener(o -> reset());
  }

  private static TableColumn<Row, String> column(
      String name, double width, Function<Row, String> value) {
    TableColumn<Row, String> column = new TableColumn<>(name);
    column.setPrefWidth(width);
    // From the top down, as they stand.
    column.setSortable(false);
    column.setCellValueFactory(
        features -> new ReadOnlyObjectWrapper<>(value.apply(features.getValue())));
    return column;
  }

  private static String step(Row row) {
    return row.stepPm().isPresent() ? Texts.um(row.stepPm().getAsLong()) : "";
  }

  private String place(Row row) {
    return row.first()
        .map(
            level ->
                (level.at().file() == 0
                        ? ""
                        : shared
                                .program()
                                .get()
                                .map(program -> program.path(level.at().file()).getFileName())
                                .map(name -> Visible.of(name.toString()))
                                .orElse("")
                            + ":")
                    + level.at().line())
        .orElse("uncut");
  }

  private static String tool(Row row) {
    return row.first()
        .filter(level -> level.tool().isPresent())
        .map(level -> "tool " + level.tool().getAsInt())
        .orElse("");
  }

  private void reset() {
    filledWith = -1;
    grown();
  }

  /** The program has grown. */
  public void grown() {
    Optional<Program> program = shared.program().get();
    int count = program.map(Program::levelCount).orElse(0);
    if (count != filledWith) {
      filledWith = count;
      filling = true;
      Optional<Row> before = Optional.ofNullable(table.getSelectionModel().getSelectedItem());
      List<Row> rows = program.map(LevelsPane::rows).orElse(List.of());
      all.setAll(rows);
      before
          .flatMap(b -> rows.stream().filter(row -> row.zPm() == b.zPm()).findFirst())
          .ifPresent(row -> table.getSelectionModel().select(row));
      filling = false;
    }
  }

  private static List<Row> rows(Program program) {
    Map<Long, LevelMark> firsts = new HashMap<>();
    program.levels().forEach(level -> firsts.putIfAbsent(level.zPm(), level));
    List<Long> heights = new ArrayList<>(program.heights());
    List<Row> rows = new ArrayList<>();
    for (int k = heights.size() - 1; k >= 0; k--) {
      long z = heights.get(k);
      rows.add(
          new Row(
              z,
              k == 0 ? OptionalLong.empty() : OptionalLong.of(z - heights.get(k - 1)),
              Optional.ofNullable(firsts.get(z))));
    }
    return rows;
  }

  /** The table, to be focused. */
  public TableView<Row> table() {
    return table;
  }

  private void selected(Row row) {
    if (!filling) {
      row.first().ifPresent(level -> shared.moveTo(level.move()));
    }
  }

  @Override
  public String exportName() {
    return "levels";
  }

  @Override
  public Taken taken(Palette palette) {
    List<Row> rows = List.copyOf(all);
    List<String> places = rows.stream().map(this::place).toList();
    return new TakenPlot(
        Math.max(520, getWidth()),
        Math.max(80, (Math.min(rows.size(), MOST_DRAWN) + 2) * ROW),
        pen -> draw(pen, palette, rows, places),
        (out, progress) -> writeCsv(rows, places, out, progress));
  }

  private static void draw(Pen pen, Palette palette, List<Row> rows, List<String> places) {
    double[] at = {110, 260, 400, 420};
    cells(
        pen,
        palette,
        at,
        15,
        Pen.Font.STRONG,
        List.of("height", "down to the next", "cut first at line", "by"));
    for (int k = 0; k < Math.min(rows.size(), MOST_DRAWN); k++) {
      Row row = rows.get(k);
      cells(
          pen,
          palette,
          at,
          15 + (k + 1) * ROW,
          Pen.Font.LABEL,
          List.of(Texts.um(row.zPm()), step(row), places.get(k), tool(row)));
    }
    if (rows.size() > MOST_DRAWN) {
      String more = rows.size() - MOST_DRAWN + " more: all of them stand in the table (CSV)";
      double y = 15 + (MOST_DRAWN + 1) * ROW;
      pen.text(more, 12, y, Pen.Font.SMALL, palette.quiet(), Pen.Anchor.START);
    }
  }

  private static void cells(
      Pen pen, Palette palette, double[] at, double y, Pen.Font font, List<String> texts) {
    for (int k = 0; k < at.length; k++) {
      Pen.Anchor anchor = k < 3 ? Pen.Anchor.END : Pen.Anchor.START;
      pen.text(texts.get(k), at[k], y, font, palette.ink(), anchor);
    }
  }

  private static void writeCsv(
      List<Row> rows, List<String> places, Appendable out, Progress progress) throws IOException {
    Csv.line(out, "height µm", "down to the next µm", "cut first at line", "tool");
    for (int k = 0; k < rows.size(); k++) {
      progress.at(k / (double) rows.size());
      Row row = rows.get(k);
      Csv.line(
          out,
          Texts.stored(row.zPm(), 6).replace('−', '-'),
          row.stepPm().isPresent() ? Texts.stored(row.stepPm().getAsLong(), 6) : "",
          places.get(k),
          row.first()
              .filter(level -> level.tool().isPresent())
              .map(level -> Integer.toString(level.tool().getAsInt()))
              .orElse(""));
    }
  }
}
