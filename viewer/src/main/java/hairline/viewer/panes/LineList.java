package hairline.viewer.panes;

import hairline.viewer.draw.CanvasPen;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.geometry.Orientation;
import javafx.scene.AccessibleAttribute;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.ScrollBar;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;

/**
 * Rows of one height, any number of them, of which those in sight are drawn. The toolkit's own list
 * adds up the heights of all rows above at each turn of the wheel, which takes seconds in a list of
 * ten million.
 */
final class LineList extends Region {
  /** Height of a row. */
  static final double ROW = 20;

  private static final int ROWS_A_TURN = 3;
  private static final double SHIFT = 60;
  private static final double LONGEST = 20_000;

  /** Draws a row and tells it. */
  interface Rows {
    /**
     * Draws a row, its upper edge at Y.
     *
     * @param shift how far its text is moved to the left
     */
    void draw(Pen pen, Palette palette, int row, double y, double shift, double width);

    /** A row in words. */
    String words(int row);
  }

  private final Shared shared;
  private final Rows rows;
  private final Canvas canvas = new Canvas();
  private final ScrollBar bar = new ScrollBar();
  private final IntegerProperty selected = new SimpleIntegerProperty(-1);
  private int count;
  private double shift;
  private boolean due;

  LineList(Shared shared, Rows rows) {
    this.shared = shared;
    this.rows = rows;
    setId("lines");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.TEXT);
    setMinSize(100, 60);
    bar.setOrientation(Orientation.VERTICAL);
    bar.setFocusTraversable(false);
    bar.setUnitIncrement(1);
    bar.valueProperty().addListener(o -> redraw());
    selected.addListener(o -> redraw());
    focusedProperty().addListener(o -> redraw());
    shared.palette().addListener(o -> redraw());
    Rectangle clip = new Rectangle();
    clip.widthProperty().bind(widthProperty());
    clip.heightProperty().bind(heightProperty());
    setClip(clip);
    getChildren().addAll(canvas, bar);
    addEventHandler(ScrollEvent.SCROLL, this::scrolled);
    addEventHandler(MouseEvent.MOUSE_PRESSED, this::pressed);
    addEventHandler(KeyEvent.KEY_PRESSED, this::typed);
    widthProperty().addListener(o -> redraw());
    heightProperty().addListener(o -> redraw());
  }

  /** The row selected, from 0; -1 for none. */
  IntegerProperty selected() {
    return selected;
  }

  /** How many rows there are. */
  int count() {
    return count;
  }

  void setCount(int rowsNow) {
    if (rowsNow != count) {
      count = rowsNow;
      shift = rowsNow == 0 ? 0 : shift;
      redraw();
    }
  }

  /** The first row in sight. */
  int first() {
    return (int) bar.getValue();
  }

  /** How many rows are in sight as a whole. */
  int inSight() {
    return (int) Math.max(1, getHeight() / ROW);
  }

  /** Brings a row to the top, as far as there are rows below. */
  void scrollTo(int row) {
    bar.setMax(Math.max(0, count - inSight()));
    bar.setValue(Math.max(0, Math.min(row, bar.getMax())));
  }

  /** Brings a row into sight. */
  void show(int row) {
    if (row < first() + 1 || row > first() + inSight() - 2) {
      scrollTo(row - inSight() / 3);
    }
  }

  void redraw() {
    due = true;
    requestLayout();
  }

  private void scrolled(ScrollEvent event) {
    if (event.getDeltaX() != 0) {
      shiftBy(-event.getDeltaX());
      event.consume();
      return;
    }
    double turns = event.getMultiplierY() == 0 ? 1 : event.getDeltaY() / event.getMultiplierY();
    scrollTo((int) Math.round(bar.getValue() - turns * ROWS_A_TURN));
    event.consume();
  }

  private void shiftBy(double pixels) {
    shift = Math.max(0, Math.min(LONGEST, shift + pixels));
    redraw();
  }

  private void pressed(MouseEvent event) {
    requestFocus();
    select(first() + (int) (event.getY() / ROW));
    event.consume();
  }

  private void typed(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown() || event.isShiftDown()) {
      return;
    }
    int now = selected.get();
    switch (event.getCode()) {
      case UP -> select(now - 1);
      case DOWN -> select(now + 1);
      case PAGE_UP -> select(Math.max(0, now - inSight()));
      case PAGE_DOWN -> select(Math.min(count - 1, now + inSight()));
      case LEFT -> shiftBy(-SHIFT);
      case RIGHT -> shiftBy(SHIFT);
      case HOME -> select(0);
      case END -> select(count - 1);
      default -> {
        return;
      }
    }
    event.consume();
  }

  private void select(int row) {
    if (row >= 0 && row < count) {
      selected.set(row);
      show(row);
    }
  }

  @Override
  protected void layoutChildren() {
    double wide = bar.prefWidth(-1);
    bar.resizeRelocate(getWidth() - wide, 0, wide, getHeight());
    bar.setMax(Math.max(0, count - inSight()));
    bar.setVisibleAmount(Math.max(1e-9, bar.getMax() * inSight() / Math.max(1.0, count)));
    bar.setBlockIncrement(Math.max(1, inSight() - 1.0));
    bar.setVisible(count > inSight());
    if (canvas.getWidth() != getWidth() || canvas.getHeight() != getHeight()) {
      canvas.setWidth(getWidth());
      canvas.setHeight(getHeight());
      due = true;
    }
    if (due && getScene() != null && getScene().getWindow() != null) {
      due = false;
      paint();
    }
  }

  private void paint() {
    Palette palette = shared.palette().get();
    var out = canvas.getGraphicsContext2D();
    out.setFill(color(palette.ground()));
    out.fillRect(0, 0, getWidth(), getHeight());
    draw(new CanvasPen(out, getScene().getWindow().getOutputScaleX()), palette, getWidth());
    if (isFocused()) {
      out.setLineDashes();
      out.setStroke(color(palette.cursor()));
      out.setLineWidth(2);
      out.strokeRect(1, 1, getWidth() - 2, getHeight() - 2);
    }
    int row = selected.get();
    setAccessibleText(row >= 0 && row < count ? rows.words(row) : "Program, " + count + " lines");
    notifyAccessibleAttributeChanged(AccessibleAttribute.TEXT);
  }

  private void draw(Pen pen, Palette palette, double width) {
    sight()
        .draw(
            pen,
            palette,
            width,
            (to, row, y, moved) -> rows.draw(to, palette, row, y, moved, width));
  }

  /** Draws a row, its upper edge at Y. */
  interface RowDrawing {
    void draw(Pen pen, int row, double y, double shift);
  }

  /**
   * What is in sight.
   *
   * @param first the first row
   * @param end one past the last row
   * @param selected the row selected, -1 for none
   * @param shift how far texts are moved to the left
   */
  record Sight(int first, int end, int selected, double shift) {
    void draw(Pen pen, Palette palette, double width, RowDrawing rows) {
      for (int row = first; row < end; row++) {
        double y = (row - first) * ROW;
        if (row == selected) {
          pen.rectangle(0, y, width, ROW, (palette.cursor() & 0xFFFFFF) | 0x2B000000);
        }
        rows.draw(pen, row, y, shift);
      }
    }
  }

  /** What is in sight now. */
  Sight sight() {
    return new Sight(first(), Math.min(count, first() + inSight() + 1), selected.get(), shift);
  }

  private static Color color(int argb) {
    return Color.rgb((argb >> 16) & 0xFF, (argb >> 8) & 0xFF, argb & 0xFF);
  }
}
