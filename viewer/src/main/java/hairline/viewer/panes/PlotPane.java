package hairline.viewer.panes;

import hairline.viewer.draw.CanvasPen;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import javafx.geometry.Point2D;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;

/**
 * A plot that is zoomed by the wheel at the pointer, moved by dragging and fitted by a double
 * click. Drawn once a frame at most.
 */
abstract class PlotPane extends Region implements Exported {
  private static final double STEP = 1.2;
  private static final double CLICK = 4;

  /** Which way a zoom goes. */
  enum Way {
    ALONG,
    HEIGHT,
    BOTH
  }

  protected final Shared shared;
  private final Canvas canvas = new Canvas();
  private boolean due;
  private Point2D pressed = Point2D.ZERO;
  private Point2D dragged = Point2D.ZERO;
  private boolean dragging;

  PlotPane(Shared shared, String id) {
    this.shared = shared;
    setId(id);
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    getStyleClass().add("plot");
    getChildren().add(canvas);
    setMinSize(80, 60);
    widthProperty().addListener(o -> redraw());
    heightProperty().addListener(o -> redraw());
    shared.palette().addListener(o -> redraw());
    focusedProperty().addListener(o -> redraw());
    sceneProperty().addListener(o -> redraw());
    addEventHandler(ScrollEvent.SCROLL, this::scrolled);
    addEventHandler(KeyEvent.KEY_PRESSED, this::typed);
    addEventHandler(MouseEvent.MOUSE_PRESSED, this::pressed);
    addEventHandler(MouseEvent.MOUSE_DRAGGED, this::dragged);
    addEventHandler(MouseEvent.MOUSE_RELEASED, this::released);
  }

  // What a plot does.

  /** Draws the pane. */
  abstract void draw(Pen pen, Palette palette, double width, double height);

  /** Zooms about a point; below 1 it goes nearer. */
  abstract void zoom(double factor, double x, double y, Way way);

  /** Moves by so many pixels. */
  abstract void pan(double dx, double dy);

  /** Shows all. */
  abstract void fit();

  /** Goes back to an earlier view; false where there is none. */
  abstract boolean back();

  /** Goes forward again. */
  abstract boolean forward();

  /** A click without dragging. */
  abstract void clicked(double x, double y);

  /** What it shows, in words and figures. */
  abstract String describe();

  /** Which way the wheel zooms here. */
  Way wheel(double x, double y, boolean shift, boolean control) {
    return control ? Way.HEIGHT : shift ? Way.BOTH : Way.ALONG;
  }

  /** Whether dragging with the first button draws something, rather than moves the plot. */
  boolean draws(MouseEvent event) {
    return false;
  }

  /** Draws by dragging. */
  void drawn(double fromX, double fromY, double toX, double toY, boolean ended) {}

  // Gestures.

  private void scrolled(ScrollEvent event) {
    double turned = event.getDeltaY() == 0 ? event.getDeltaX() : event.getDeltaY();
    if (turned != 0 && !event.isInertia()) {
      double factor = StrictMath.pow(STEP, -turned / Math.max(1, Math.abs(unit(event, turned))));
      zoom(
          factor,
          event.getX(),
          event.getY(),
          wheel(event.getX(), event.getY(), event.isShiftDown(), event.isControlDown()));
    }
    event.consume();
  }

  /** The arrows go from move to move. */
  private void typed(KeyEvent event) {
    boolean plain =
        !event.isAltDown() && !event.isControlDown() && !event.isMetaDown() && !event.isShiftDown();
    if (plain && (event.getCode() == KeyCode.LEFT || event.getCode() == KeyCode.RIGHT)) {
      shared.moveTo(shared.cursor().get() + (event.getCode() == KeyCode.RIGHT ? 1 : -1));
      event.consume();
    }
  }

  /** What counts as one step of the wheel. */
  private static double unit(ScrollEvent event, double turned) {
    double multiplier =
        event.getMultiplierY() == 0 ? event.getMultiplierX() : event.getMultiplierY();
    return multiplier == 0 ? turned : multiplier;
  }

  private void pressed(MouseEvent event) {
    requestFocus();
    pressed = new Point2D(event.getX(), event.getY());
    dragged = pressed;
    dragging = false;
    event.consume();
  }

  private void dragged(MouseEvent event) {
    Point2D at = new Point2D(event.getX(), event.getY());
    if (!dragging && at.distance(pressed) < CLICK) {
      return;
    }
    dragging = true;
    if (draws(event)) {
      drawn(pressed.getX(), pressed.getY(), at.getX(), at.getY(), false);
    } else {
      pan(at.getX() - dragged.getX(), at.getY() - dragged.getY());
    }
    dragged = at;
    event.consume();
  }

  private void released(MouseEvent event) {
    if (dragging) {
      if (draws(event)) {
        drawn(pressed.getX(), pressed.getY(), event.getX(), event.getY(), true);
      }
    } else if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2) {
      fit();
    } else if (event.getButton() == MouseButton.PRIMARY) {
      clicked(event.getX(), event.getY());
    }
    dragging = false;
    event.consume();
  }

  /** Zooms about the middle. */
  void zoomMiddle(double factor, Way way) {
    zoom(factor, getWidth() / 2, getHeight() / 2, way);
  }

  // Drawing.

  /** Asks for a drawing in the next frame. */
  final void redraw() {
    due = true;
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    if (canvas.getWidth() != getWidth() || canvas.getHeight() != getHeight()) {
      canvas.setWidth(getWidth());
      canvas.setHeight(getHeight());
      due = true;
    }
    if (due && getScene() != null && getWidth() > 0 && getHeight() > 0) {
      due = false;
      paint();
    }
  }

  /** Draws now; for measuring. */
  final void paint() {
    GraphicsContext out = canvas.getGraphicsContext2D();
    Palette palette = shared.palette().get();
    int ground = palette.ground();
    out.setFill(Color.rgb((ground >> 16) & 0xFF, (ground >> 8) & 0xFF, ground & 0xFF));
    out.fillRect(0, 0, getWidth(), getHeight());
    CanvasPen pen = new CanvasPen(out, scale());
    draw(pen, palette, getWidth(), getHeight());
    if (isFocused()) {
      out.setLineDashes();
      out.setStroke(color(palette.cursor()));
      out.setLineWidth(2);
      out.strokeRect(1, 1, getWidth() - 2, getHeight() - 2);
    }
    setAccessibleText(describe());
  }

  private static Color color(int argb) {
    return Color.rgb((argb >> 16) & 0xFF, (argb >> 8) & 0xFF, argb & 0xFF);
  }

  /** Device pixels a logical one. */
  final double scale() {
    return getScene() == null || getScene().getWindow() == null
        ? 1
        : getScene().getWindow().getOutputScaleX();
  }

  @Override
  public String exportName() {
    return getId();
  }

  /** How wide its picture is, in logical pixels. */
  final double exportWidth() {
    return Math.max(320, getWidth());
  }

  /** How high its picture is. */
  final double exportHeight() {
    return Math.max(200, getHeight());
  }
}
