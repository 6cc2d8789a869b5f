package hairline.viewer.panes;

import hairline.checks.setup.LengthRange;
import hairline.checks.setup.Setup;
import hairline.checks.setup.StockKeys;
import hairline.checks.stock.SectionLine;
import hairline.checks.stock.Stands;
import hairline.checks.stock.SurfacePicture;
import hairline.checks.stock.TerraceArea;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import hairline.viewer.draw.PlanDrawing;
import hairline.viewer.draw.PlanView;
import hairline.viewer.draw.Texts;
import hairline.viewer.model.Moves;
import hairline.viewer.model.Operation;
import hairline.viewer.model.PartPicture;
import hairline.viewer.model.Program;
import hairline.viewer.model.Range;
import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import javafx.application.Platform;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;

/** The part from above. */
public final class PlanPane extends PlotPane implements AutoCloseable {
  private static final double NEAR = 12;
  private static final long PM_PER_MM = 1_000_000_000L;

  /** A raster as it was computed, or is to be. */
  private static final class Raster {
    private final PartPicture part;
    private final PlanView view;
    private final int columns;
    private final int rows;
    private final double[] place;
    private int[] pixels = {};

    Raster(PartPicture part, PlanView view, int[] size, double[] place) {
      this.part = part;
      this.view = view;
      this.columns = size[0];
      this.rows = size[1];
      this.place = place;
    }

    Raster computed() {
      pixels = part.pixels(place[0], place[1], place[2], columns, rows);
      return this;
    }

    boolean isOf(PartPicture otherPart, PlanView otherView, int[] size) {
      return part.equals(otherPart)
          && view.equals(otherView)
          && columns == size[0]
          && rows == size[1];
    }
  }

  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "hairline-plan");
            thread.setDaemon(true);
            return thread;
          });
  private final AtomicLong wanted = new AtomicLong();
  private final History<PlanView> history = new History<>();
  private PlanView view = PlanView.FIT;
  private Optional<Raster> raster = Optional.empty();
  private Optional<Raster> asked = Optional.empty();
  private double[] boundsMm = boundsWithoutPart(Optional.empty());
  private String remark = "";
  private String toldAbsent = "";
  private int movesEnd;

  /** A plan of what is shared. */
  public PlanPane(Shared shared) {
    super(shared, "plan");
    shared.part().addListener(o -> partChanged());
    shared.cursor().addListener(o -> redraw());
    shared.section().addListener(o -> redraw());
    shared
        .program()
        .addListener(
            o -> {
              if (!shared.reloading()) {
                view = PlanView.FIT;
                history.clear();
                shared.section().set(Optional.empty());
                boundsMm = boundsWithoutPart(shared.program().get());
              }
              raster = Optional.empty();
              redraw();
            });
  }

  /** What the part shown is, in words. */
  public void setRemark(String words) {
    remark = words;
    redraw();
  }

  /** The stock as the sheet has it, else where moves have ended by now, until there is a part. */
  private static double[] boundsWithoutPart(Optional<Program> program) {
    Optional<Setup> sheet = program.flatMap(Program::setup);
    Optional<LengthRange> x = sheet.flatMap(s -> s.get(StockKeys.X));
    Optional<LengthRange> y = sheet.flatMap(s -> s.get(StockKeys.Y));
    return x.isPresent() && y.isPresent()
        ? new double[] {x.get().lo().mm(), y.get().lo().mm(), x.get().hi().mm(), y.get().hi().mm()}
        : program.flatMap(Program::extentMm).orElse(new double[] {-1, -1, 1, 1});
  }

  private void partChanged() {
    shared.part().get().ifPresent(part -> boundsMm = part.boundsMm());
    redraw();
  }

  /** What is looked at. */
  public PlanView view() {
    return here().view();
  }

  private PlanDrawing drawing(Pen pen, Palette palette, double width, double height) {
    return new PlanDrawing(pen, palette, shared.part().get(), boundsMm, view, width, height);
  }

  private PlanDrawing here() {
    return drawing(NoPen.INSTANCE, shared.palette().get(), getWidth(), getHeight());
  }

  @Override
  void draw(Pen pen, Palette palette, double width, double height) {
    Optional<Program> program = shared.program().get();
    PlanDrawing drawing = drawing(pen, palette, width, height);
    Optional<PartPicture> part = shared.part().get();
    if (part.isPresent()) {
      int[] size = drawing.rasterSize(pen.scale());
      double[] place = drawing.rasterPlace(pen.scale());
      boolean fits = raster.isPresent() && raster.get().isOf(part.get(), drawing.view(), size);
      if (fits) {
        drawing.raster(raster.get().pixels, size[0], size[1]);
      } else {
        raster.ifPresent(old -> drawing.oldRaster(old.pixels, old.columns, old.rows, old.place));
        ask(part.get(), drawing.view(), size, place);
      }
    }
    String words = program.isEmpty() ? "" : absent(part, program);
    program.ifPresent(p -> drawing.draw(p, shared.cursor().get(), shared.section().get(), words));
    if (program.isEmpty()) {
      pen.text(
          "no program is open",
          width / 2,
          height / 2,
          Pen.Font.LABEL,
          palette.quiet(),
          Pen.Anchor.MIDDLE);
    }
  }

  /** Why there is no part, in words; nothing where there is one. */
  private String absent(Optional<PartPicture> part, Optional<Program> program) {
    if (part.isPresent()) {
      return "";
    }
    if (!remark.isEmpty()) {
      return remark;
    }
    if (program.isEmpty()) {
      return "no program is open";
    }
    if (program.get().result().isPresent()) {
      return "no part is known";
    }
    return program.get().finished()
        ? "no part: the program is not read to its end"
        : "no part yet: it is there when all is read"
            + (program.get().progress() > 0
                ? ", " + (int) (100 * program.get().progress()) + " % so far"
                : "");
  }

  /** The program has grown. */
  public void grown() {
    String now = absent(shared.part().get(), shared.program().get());
    boolean toldAnew = !now.equals(toldAbsent);
    toldAbsent = now;
    if (shared.part().get().isEmpty()) {
      double[] bounds = boundsWithoutPart(shared.program().get());
      toldAnew |= !Arrays.equals(bounds, boundsMm);
      boundsMm = bounds;
    }
    if (toldAnew) {
      redraw();
    }
  }

  @Override
  public Taken taken(Palette palette) {
    Optional<Program> program = shared.program().get();
    Optional<PartPicture> part = shared.part().get();
    Optional<SectionLine> line = shared.section().get();
    long cursor = shared.cursor().get();
    double[] bounds = boundsMm;
    PlanView taken = view;
    double width = exportWidth();
    double height = exportHeight();
    String words = program.isEmpty() ? "" : part.isPresent() ? remark : absent(part, program);
    return new TakenPlot(
        width,
        height,
        pen -> {
          PlanDrawing drawing = new PlanDrawing(pen, palette, part, bounds, taken, width, height);
          part.ifPresent(
              p -> {
                int[] size = drawing.rasterSize(pen.scale());
                double[] place = drawing.rasterPlace(pen.scale());
                drawing.raster(
                    p.pixels(place[0], place[1], place[2], size[0], size[1]), size[0], size[1]);
              });
          program.ifPresent(p -> drawing.draw(p, cursor, line, words));
        },
        (out, progress) -> writeCsv(part, out, progress));
  }

  private void ask(PartPicture part, PlanView shown, int[] size, double[] place) {
    if (asked.isPresent() && asked.get().isOf(part, shown, size)) {
      return;
    }
    Raster request = new Raster(part, shown, size, place);
    asked = Optional.of(request);
    long number = wanted.incrementAndGet();
    worker.execute(
        () -> {
          if (number != wanted.get()) {
            return;
          }
          Raster done = request.computed();
          Platform.runLater(
              () -> {
                raster = Optional.of(done);
                asked = asked.filter(newer -> !newer.equals(done));
                redraw();
              });
        });
  }

  private void setView(PlanView next) {
    PlanView before = here().view();
    if (!next.equals(before)) {
      history.leave(before, System.nanoTime() / 1_000_000);
      view = next;
      redraw();
    }
  }

  @Override
  Way wheel(double x, double y, boolean shift, boolean control) {
    return Way.BOTH;
  }

  @Override
  void zoom(double factor, double x, double y, Way way) {
    PlanDrawing drawing = here();
    setView(drawing.view().zoomed(factor, drawing.xMm(x), drawing.yMm(y)));
  }

  @Override
  void pan(double dx, double dy) {
    PlanView now = here().view();
    setView(now.panned(-dx / now.perMm(), dy / now.perMm()));
  }

  @Override
  void fit() {
    history.leave(here().view(), System.nanoTime() / 1_000_000);
    view = PlanView.FIT;
    redraw();
  }

  @Override
  boolean back() {
    return go(history.back(here().view()));
  }

  @Override
  boolean forward() {
    return go(history.forward(here().view()));
  }

  private boolean go(Optional<PlanView> to) {
    to.ifPresent(
        v -> {
          view = v;
          redraw();
        });
    return to.isPresent();
  }

  // Sections.

  @Override
  boolean draws(MouseEvent event) {
    return event.isPrimaryButtonDown()
        ? !event.isControlDown()
        : event.getEventType() == MouseEvent.MOUSE_RELEASED
            && event.getButton() == MouseButton.PRIMARY
            && !event.isControlDown();
  }

  @Override
  void drawn(double fromX, double fromY, double toX, double toY, boolean ended) {
    PlanDrawing drawing = here();
    if (movesEnd == 0) {
      movesEnd = endNear(drawing, fromX, fromY);
    }
    Optional<SectionLine> old = shared.section().get();
    long ax = pm(drawing.xMm(fromX));
    long ay = pm(drawing.yMm(fromY));
    long bx = pm(drawing.xMm(toX));
    long by = pm(drawing.yMm(toY));
    if (movesEnd == 1 && old.isPresent()) {
      ax = bx;
      ay = by;
      bx = old.get().x1Pm();
      by = old.get().y1Pm();
    } else if (movesEnd == 2 && old.isPresent()) {
      ax = old.get().x0Pm();
      ay = old.get().y0Pm();
    }
    section(ax, ay, bx, by);
    if (ended) {
      movesEnd = 0;
    }
  }

  /** A micrometre is as near as a hand comes. */
  private static long pm(double mm) {
    return Math.round(mm * 1000) * 1_000_000L;
  }

  private int endNear(PlanDrawing drawing, double x, double y) {
    Optional<SectionLine> line = shared.section().get();
    if (line.isEmpty()) {
      return 3;
    }
    double a =
        StrictMath.hypot(
            drawing.x(line.get().x0Pm() / 1e9) - x, drawing.y(line.get().y0Pm() / 1e9) - y);
    double b =
        StrictMath.hypot(
            drawing.x(line.get().x1Pm() / 1e9) - x, drawing.y(line.get().y1Pm() / 1e9) - y);
    return a <= NEAR ? 1 : b <= NEAR ? 2 : 3;
  }

  private void section(long ax, long ay, long bx, long by) {
    boolean far =
        Math.max(Math.max(Math.abs(ax), Math.abs(ay)), Math.max(Math.abs(bx), Math.abs(by)))
            > SectionLine.FARTHEST_PM;
    if ((ax != bx || ay != by) && !far) {
      shared.section().set(Optional.of(new SectionLine(ax, ay, bx, by)));
    }
  }

  /**
   * A section from point to point.
   *
   * @param mm X and Y of the one, X and Y of the other
   * @return false where both are one, or farther away than sections are taken
   */
  boolean sectionBetween(double[] mm) {
    double farthest = SectionLine.FARTHEST_PM / (double) PM_PER_MM;
    for (double at : mm) {
      if (!(Math.abs(at) <= farthest)) {
        return false;
      }
    }
    Optional<SectionLine> before = shared.section().get();
    section(pm(mm[0]), pm(mm[1]), pm(mm[2]), pm(mm[3]));
    return shared.section().get().isPresent()
        && (pm(mm[0]) != pm(mm[2]) || pm(mm[1]) != pm(mm[3]) || before.isEmpty());
  }

  /** A section through the cursor along an axis, across the whole part. */
  public void sectionThroughCursor(boolean alongX) {
    Optional<Program> program = shared.program().get();
    long cursor = shared.cursor().get();
    double x = (boundsMm[0] + boundsMm[2]) / 2;
    double y = (boundsMm[1] + boundsMm[3]) / 2;
    if (program.isPresent() && cursor >= 0 && cursor < program.get().moves().count()) {
      long mx = program.get().moves().x(cursor);
      long my = program.get().moves().y(cursor);
      x = mx == Moves.UNKNOWN ? x : mx / 1e9;
      y = my == Moves.UNKNOWN ? y : my / 1e9;
    }
    if (alongX) {
      section(pm(boundsMm[0]), pm(y), pm(boundsMm[2]), pm(y));
    } else {
      section(pm(x), pm(boundsMm[1]), pm(x), pm(boundsMm[3]));
    }
  }

  /** A click goes to the last move so far that ends near. */
  @Override
  void clicked(double x, double y) {
    Optional<Program> program = shared.program().get();
    if (program.isEmpty() || !here().inPlot(x, y)) {
      return;
    }
    PlanDrawing drawing = here();
    Moves moves = program.get().moves();
    long cursor = shared.cursor().get();
    Optional<Operation> operation = program.get().operationOf(cursor);
    if (operation.isEmpty()) {
      return;
    }
    Range range = program.get().movesOf(operation.get());
    long found = -1;
    double best = NEAR;
    for (long i = Math.max(range.low(), range.high() - 200_000); i < range.high(); i++) {
      if (moves.x(i) == Moves.UNKNOWN || moves.y(i) == Moves.UNKNOWN) {
        continue;
      }
      double distance =
          StrictMath.hypot(drawing.x(moves.x(i) / 1e9) - x, drawing.y(moves.y(i) / 1e9) - y);
      if (distance < best || (distance <= best && i <= cursor)) {
        best = distance;
        found = i;
      }
    }
    shared.moveTo(found);
  }

  @Override
  String describe() {
    Optional<PartPicture> part = shared.part().get();
    if (part.isEmpty()) {
      return "Plan: " + absent(part, shared.program().get()) + ".";
    }
    StringBuilder text = new StringBuilder("Plan, ").append(remark).append(". ");
    text.append(part.get().terraces().areas().size()).append(" terraces");
    int told = 0;
    for (TerraceArea area : part.get().terraces().areas()) {
      if (told++ == 12) {
        text.append(", and more");
        break;
      }
      text.append(told == 1 ? ": " : ", ").append(Texts.um(area.heightPm()));
    }
    return text.append('.').toString();
  }

  private static void writeCsv(Optional<PartPicture> part, Appendable out, Progress progress)
      throws IOException {
    Csv.line(out, "X mm", "Y mm", "height µm", "terrace", "what stands there");
    if (part.isEmpty()) {
      return;
    }
    SurfacePicture picture = part.get().raster();
    double perX = picture.widthPm() / picture.width();
    double perY = picture.heightPm() / picture.height();
    for (int j = 0; j < picture.height(); j++) {
      progress.at(j / (double) picture.height());
      for (int i = 0; i < picture.width(); i++) {
        Stands stands = picture.stands(i, j);
        Csv.line(
            out,
            Texts.decimal((picture.x0Pm() + (i + 0.5) * perX) / PM_PER_MM, 6),
            Texts.decimal((picture.y0Pm() + (j + 0.5) * perY) / PM_PER_MM, 6),
            stands == Stands.SURFACE
                ? Texts.stored(picture.heightPm(i, j), 6).replace('−', '-')
                : "",
            picture.terrace(i, j) == 0 ? "" : Integer.toString(picture.terrace(i, j)),
            stands.words());
      }
    }
  }

  @Override
  public void close() {
    wanted.incrementAndGet();
    worker.shutdownNow();
  }
}
