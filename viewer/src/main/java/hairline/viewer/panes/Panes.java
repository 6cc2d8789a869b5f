package hairline.viewer.panes;

import hairline.viewer.draw.StripView;
import hairline.viewer.model.Along;
import hairline.viewer.model.PartPicture;
import hairline.viewer.model.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.ToDoubleBiFunction;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.SplitPane;
import javafx.scene.control.Tab;
import javafx.scene.control.TabPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.util.StringConverter;

/**
 * All panes in their places: above what is looked at, the heights and beside them the part; below
 * what is read, the lines and beside them what is said of them.
 */
public final class Panes extends SplitPane implements AutoCloseable {
  /** Where rows, heights and plan, lines and findings part, as shares of the window. */
  private static final double[] DIVIDERS = {0.5, 0.655, 0.235};

  private final Shared shared = new Shared();
  private final StripPane strip = new StripPane(shared);
  private final PlanPane plan = new PlanPane(shared);
  private final SectionPane section = new SectionPane(shared);
  private final ProgramPane program = new ProgramPane(shared);
  private final FindingsPane findings = new FindingsPane(shared);
  private final NotCheckedPane notChecked = new NotCheckedPane(shared);
  private final LevelsPane levels = new LevelsPane(shared);
  private final PartFollower follower = new PartFollower(shared);
  private final SplitPane upper = new SplitPane();
  private final SplitPane lower = new SplitPane();
  private final TabPane tabs = new TabPane();
  private final Tab findingsTab = new Tab("Findings", findings);
  private final Tab sectionTab = new Tab("Section", section);
  private final Tab levelsTab = new Tab("Levels", levels);
  private final Tab notCheckedTab = new Tab("Not checked", notChecked);
  private final List<Consumer<Along>> alongTold = new ArrayList<>();
  private final List<Consumer<Boolean>> byLevelsTold = new ArrayList<>();
  private final List<Consumer<Trace>> traceTold = new ArrayList<>();
  private final List<Consumer<Boolean>> atCursorTold = new ArrayList<>();
  private boolean atCursor = true;
  private PlotPane plotInUse = strip;
  private Exported paneInUse = strip;

  /** The panes, empty. */
  public Panes() {
    setOrientation(Orientation.VERTICAL);
    setId("panes");
    tabs.setTabClosingPolicy(TabPane.TabClosingPolicy.UNAVAILABLE);
    tabs.setId("tabs");
    tabs.setAccessibleText("Findings, section, levels and what is not checked");
    tabs.getTabs().addAll(findingsTab, sectionTab, levelsTab, notCheckedTab);
    upper
        .getItems()
        .addAll(
            titled("Heights", strip, stripHead()),
            titled("Plan", plan, remarkLabel(), gap(), fitButton(plan)));
    upper.setId("upper");
    lower.setId("lower");
    lower.getItems().addAll(titled("Program", program), tabs);
    getItems().addAll(upper, lower);
    setDividerPositions(DIVIDERS[0]);
    upper.setDividerPositions(DIVIDERS[1]);
    lower.setDividerPositions(DIVIDERS[2]);
    SplitPane.setResizableWithParent(tabs, true);
    follower.remark().addListener((o, before, words) -> plan.setRemark(words));
    shared.part().addListener((o, before, part) -> strip.setHeightColour(h -> colour(part, h)));
    shared
        .section()
        .addListener(
            (o, before, line) -> {
              if (before.isEmpty() && line.isPresent()) {
                showSection();
              }
            });
    for (PlotPane plot : List.of(strip, plan, section)) {
      plot.focusedProperty()
          .addListener(
              (o, before, focused) -> {
                if (focused) {
                  plotInUse = plot;
                  paneInUse = plot;
                }
              });
    }
    inUse(program.list(), program);
    inUse(findings.table(), findings);
    inUse(notChecked.table(), notChecked);
    inUse(levels.table(), levels);
  }

  private void inUse(Node node, Exported pane) {
    node.focusedProperty()
        .addListener(
            (o, before, focused) -> {
              if (focused) {
                paneInUse = pane;
              }
            });
  }

  private static int colour(java.util.Optional<PartPicture> part, long height) {
    if (part.isEmpty()) {
      return 0;
    }
    for (long named : part.get().colours().named()) {
      if (named == height) {
        return 0xFF000000 | part.get().colours().colour(height);
      }
    }
    return 0;
  }

  // The heads of panes.

  private static Region gap() {
    Region region = new Region();
    HBox.setHgrow(region, Priority.ALWAYS);
    return region;
  }

  private static BorderPane titled(String name, Node content, Node... more) {
    Label label = new Label(name);
    label.getStyleClass().add("pane-name");
    label.setMinWidth(Region.USE_PREF_SIZE);
    HBox head = new HBox(label);
    head.getStyleClass().add("pane-head");
    head.getChildren().addAll(more);
    BorderPane pane = new BorderPane(content);
    pane.setTop(head);
    return pane;
  }

  private Label remarkLabel() {
    Label label = new Label();
    label.textProperty().bind(follower.remark());
    label.setMinWidth(0);
    return label;
  }

  private static Button fitButton(PlotPane plot) {
    Button button = new Button("Show all");
    button.setAccessibleText("Show all of the " + plot.getId());
    button.setOnAction(e -> plot.fit());
    button.setMinWidth(Region.USE_PREF_SIZE);
    return button;
  }

  private Node[] stripHead() {
    ToggleButton path = new ToggleButton("path");
    ToggleButton time = new ToggleButton("time");
    pair(path, time);
    path.setAccessibleText("heights along the path");
    time.setAccessibleText("heights along the time");
    path.setSelected(true);
    path.setOnAction(e -> setAlong(Along.PATH));
    time.setOnAction(e -> setAlong(Along.TIME));
    onAlong(a -> (a == Along.PATH ? path : time).setSelected(true));
    ToggleButton alike = new ToggleButton("steps alike");
    ToggleButton scale = new ToggleButton("true to scale");
    pair(alike, scale);
    alike.setAccessibleText("each step drawn alike");
    scale.setAccessibleText("heights true to scale");
    alike.setSelected(true);
    alike.setOnAction(e -> setByLevels(true));
    scale.setOnAction(e -> setByLevels(false));
    onByLevels(b -> (b ? alike : scale).setSelected(true));
    ComboBox<Trace> traces = new ComboBox<>();
    traces.getItems().addAll(Trace.values());
    traces.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(Trace trace) {
            return trace == null ? "" : trace.words();
          }

          @Override
          public Trace fromString(String text) {
            return Trace.NONE;
          }
        });
    traces.setValue(Trace.DEPTH);
    traces.setId("second-trace");
    traces.setAccessibleText("Second trace");
    traces.setOnAction(e -> setTrace(traces.getValue()));
    onTrace(traces::setValue);
    return new Node[] {
      new Label("along"),
      new HBox(path, time),
      new Label("heights"),
      new HBox(alike, scale),
      new Label("below"),
      traces,
      gap(),
      fitButton(strip)
    };
  }

  /** Of two toggles one stays selected. */
  private static void pair(ToggleButton a, ToggleButton b) {
    ToggleGroup group = new ToggleGroup();
    a.setToggleGroup(group);
    b.setToggleGroup(group);
    a.setMinWidth(Region.USE_PREF_SIZE);
    b.setMinWidth(Region.USE_PREF_SIZE);
    group
        .selectedToggleProperty()
        .addListener(
            (o, before, after) -> {
              if (after == null && before != null) {
                before.setSelected(true);
              }
            });
  }

  // What they look at.

  /** What all panes look at. */
  public Shared shared() {
    return shared;
  }

  /** The height strip. */
  public StripPane strip() {
    return strip;
  }

  /** The plan. */
  public PlanPane plan() {
    return plan;
  }

  /** The section. */
  public SectionPane section() {
    return section;
  }

  /** The program. */
  public ProgramPane program() {
    return program;
  }

  /** The findings. */
  public FindingsPane findings() {
    return findings;
  }

  /** What could not be checked. */
  public NotCheckedPane notChecked() {
    return notChecked;
  }

  /** The levels. */
  public LevelsPane levels() {
    return levels;
  }

  /** What the plan shows, in words. */
  public ReadOnlyStringProperty remark() {
    return follower.remark();
  }

  /** The program has grown. */
  public void grown() {
    strip.grown();
    program.grown();
    findings.grown();
    notChecked.grown();
    levels.grown();
    follower.grown();
    plan.grown();
    int unsure = notChecked.count();
    notCheckedTab.setText("Not checked" + (unsure == 0 ? "" : " (" + unsure + ")"));
    int found = findings.shown().size();
    findingsTab.setText("Findings" + (found == 0 ? "" : " (" + found + ")"));
  }

  // Choices.

  /** Heights along the path or the time. */
  public void setAlong(Along along) {
    strip.setAlong(along);
    alongTold.forEach(told -> told.accept(along));
  }

  /** Tells of that choice, at once and whenever it changes. */
  public void onAlong(Consumer<Along> told) {
    alongTold.add(told);
    told.accept(strip.view().along());
  }

  /** Each step drawn alike, or true to scale. */
  public void setByLevels(boolean byLevels) {
    strip.setByLevels(byLevels);
    byLevelsTold.forEach(told -> told.accept(byLevels));
  }

  /** Tells of that choice. */
  public void onByLevels(Consumer<Boolean> told) {
    byLevelsTold.add(told);
    told.accept(strip.view().byLevels());
  }

  /** What is drawn below the heights. */
  public void setTrace(Trace trace) {
    strip.setTrace(trace);
    traceTold.forEach(told -> told.accept(trace));
  }

  /** Tells of that choice. */
  public void onTrace(Consumer<Trace> told) {
    traceTold.add(told);
    told.accept(strip.view().trace());
  }

  /** The part as it stands at the cursor, or at the end. */
  public void setAtCursor(boolean at) {
    atCursor = at;
    follower.setAtCursor(at);
    atCursorTold.forEach(told -> told.accept(at));
  }

  /** Tells of that choice. */
  public void onAtCursor(Consumer<Boolean> told) {
    atCursorTold.add(told);
    told.accept(atCursor);
  }

  // Actions on the plot in use.

  /** Zooms the plot in use about its middle. */
  public void zoom(double factor, boolean heights) {
    plotInUse.zoomMiddle(
        factor,
        heights ? PlotPane.Way.HEIGHT : plotInUse == plan ? PlotPane.Way.BOTH : PlotPane.Way.ALONG);
  }

  /** Moves the plot in use. */
  public void pan(double dx, double dy) {
    plotInUse.pan(dx, dy);
  }

  /** Shows all of the plot in use. */
  public void fit() {
    plotInUse.fit();
  }

  /** The view before, of the plot in use. */
  public void back() {
    plotInUse.back();
  }

  /** The view gone back from, of the plot in use. */
  public void forward() {
    plotInUse.forward();
  }

  /** The pane in use, to be written. */
  public Exported chosen() {
    return paneInUse;
  }

  /** Goes to a pane: heights, program, plan, findings, section, not checked, levels. */
  public void focus(int pane) {
    switch (pane) {
      case 0 -> strip.requestFocus();
      case 1 -> program.list().requestFocus();
      case 2 -> plan.requestFocus();
      case 3 -> {
        showFindings();
        findings.table().requestFocus();
      }
      case 4 -> {
        showSection();
        section.requestFocus();
      }
      case 5 -> {
        tabs.getSelectionModel().select(notCheckedTab);
        notChecked.table().requestFocus();
      }
      default -> {
        tabs.getSelectionModel().select(levelsTab);
        levels.table().requestFocus();
      }
    }
  }

  /** Goes to the filter of findings. */
  public void focusFilter() {
    showFindings();
    findings.filter().requestFocus();
  }

  /**
   * Puts the findings in order of a column, 0 the first; again the other way round; -1 by place.
   */
  public void sortFindings(int column) {
    showFindings();
    findings.sort(column);
  }

  /** Brings the findings to the front. */
  public void showFindings() {
    tabs.getSelectionModel().select(findingsTab);
  }

  /** Brings the section to the front. */
  public void showSection() {
    tabs.getSelectionModel().select(sectionTab);
  }

  /** Takes a section from point to point, in mm: X and Y of the one, X and Y of the other. */
  public boolean takeSection(double[] mm) {
    boolean taken = plan.sectionBetween(mm);
    if (taken) {
      showSection();
    }
    return taken;
  }

  /** Takes a section through the cursor. */
  public void takeSection(boolean alongX) {
    plan.sectionThroughCursor(alongX);
    showSection();
  }

  // Remembering.

  /** Tells how the panes stand. */
  public void remember(BiConsumer<String, Object> to) {
    to.accept("divider.rows", getDividerPositions()[0]);
    to.accept("divider.plan", upper.getDividerPositions()[0]);
    to.accept("divider.program", lower.getDividerPositions()[0]);
    findings.remember(to);
    StripView view = strip.view();
    to.accept("along", view.along());
    to.accept("trace", view.trace());
    to.accept("steps-alike", view.byLevels());
  }

  /**
   * Lets the panes stand as they did.
   *
   * @param number tells what was remembered under a key, and a usual value
   */
  public void restoreDividers(ToDoubleBiFunction<String, Double> number) {
    setDividerPositions(number.applyAsDouble("divider.rows", DIVIDERS[0]));
    upper.setDividerPositions(number.applyAsDouble("divider.plan", DIVIDERS[1]));
    lower.setDividerPositions(number.applyAsDouble("divider.program", DIVIDERS[2]));
    findings.restoreDivider(number);
  }

  @Override
  public void close() {
    follower.close();
    plan.close();
    program.close();
  }
}
