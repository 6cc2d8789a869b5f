package hairline.viewer.panes;

import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import hairline.viewer.draw.StripDrawing;
import hairline.viewer.draw.StripView;
import hairline.viewer.draw.Texts;
import hairline.viewer.model.Along;
import hairline.viewer.model.Moves;
import hairline.viewer.model.Program;
import hairline.viewer.model.Trace;
import java.io.IOException;
import java.util.Optional;
import java.util.SortedSet;
import java.util.function.LongToIntFunction;

/** The height strip. */
public final class StripPane extends PlotPane {
  private final History<StripView> history = new History<>();
  private StripView view = new StripView(Along.PATH, Trace.DEPTH, true, 0, 1, -1, 1);
  private boolean fitted = true;
  private LongToIntFunction heightColour = height -> 0;

  /** A strip of what is shared. */
  public StripPane(Shared shared) {
    super(shared, "strip");
    shared.program().addListener(o -> reset());
    shared.cursor().addListener(o -> follow());
    reset();
  }

  private void reset() {
    if (shared.reloading()) {
      return;
    }
    fitted = true;
    history.clear();
    refit();
  }

  /** Tells the colour of a height in the plan, 0 for none. */
  public void setHeightColour(LongToIntFunction colour) {
    heightColour = colour;
    redraw();
  }

  /** The program has grown. */
  public void grown() {
    if (fitted) {
      refit();
    }
    redraw();
  }

  private Optional<Program> program() {
    return shared.program().get();
  }

  private void refit() {
    view = program().map(p -> StripDrawing.fitted(p, view)).orElse(view);
    redraw();
  }

  /** What is looked at. */
  public StripView view() {
    return view;
  }

  /** Looks at something else. */
  public void setView(StripView next) {
    if (!next.equals(view)) {
      history.leave(view, System.nanoTime() / 1_000_000);
      view = next;
      fitted = false;
      redraw();
    }
  }

  /** Draws heights along the path or along the time. */
  public void setAlong(Along along) {
    if (along != view.along()) {
      StripView next =
          new StripView(along, view.trace(), view.byLevels(), 0, 1, view.low(), view.high());
      boolean wasFitted = fitted;
      setView(
          program()
              .map(
                  p -> {
                    StripView all = StripDrawing.fitted(p, next);
                    return wasFitted
                        ? all
                        : next.between(same(p, view.from(), along), same(p, view.to(), along));
                  })
              .orElse(next));
      fitted = wasFitted;
    }
  }

  /** The place along the other axis of what stands at a place along this one. */
  private double same(Program program, double at, Along along) {
    Moves moves = program.moves();
    long move = view.along().moveAt(moves, moves.count(), at);
    return move >= moves.count() ? along.at(moves, moves.count() - 1) : along.start(moves, move);
  }

  /** Draws each step alike, or true to scale. */
  public void setByLevels(boolean byLevels) {
    if (byLevels != view.byLevels()) {
      StripView next =
          new StripView(view.along(), view.trace(), byLevels, view.from(), view.to(), 0, 1);
      boolean wasFitted = fitted;
      setView(
          program()
              .map(p -> StripDrawing.fitted(p, next).between(view.from(), view.to()))
              .orElse(next));
      fitted = wasFitted;
    }
  }

  /** Draws another trace below. */
  public void setTrace(Trace trace) {
    view = view.with(trace);
    redraw();
  }

  private Optional<StripDrawing> drawing(Pen pen, Palette palette, double width, double height) {
    return program().map(p -> new StripDrawing(pen, palette, p, view, width, height));
  }

  private Optional<StripDrawing> here() {
    return drawing(NoPen.INSTANCE, shared.palette().get(), getWidth(), getHeight());
  }

  @Override
  void draw(Pen pen, Palette palette, double width, double height) {
    Optional<StripDrawing> drawing = drawing(pen, palette, width, height);
    if (drawing.isEmpty()) {
      pen.text(
          "no program is open",
          width / 2,
          height / 2,
          Pen.Font.LABEL,
          palette.quiet(),
          Pen.Anchor.MIDDLE);
      return;
    }
    drawing.get().draw(heightColour);
    drawing.get().cursor(shared.cursor().get());
  }

  @Override
  public Taken taken(Palette palette) {
    Optional<Program> program = program();
    StripView taken = view;
    LongToIntFunction colour = heightColour;
    long cursor = shared.cursor().get();
    double width = exportWidth();
    double height = exportHeight();
    return new TakenPlot(
        width,
        height,
        pen ->
            program.ifPresent(
                p -> {
                  StripDrawing drawing = new StripDrawing(pen, palette, p, taken, width, height);
                  drawing.draw(colour);
                  drawing.cursor(cursor);
                }),
        (out, progress) -> writeCsv(program, taken, out, progress));
  }

  @Override
  Way wheel(double x, double y, boolean shift, boolean control) {
    boolean onHeights = x < StripDrawing.LEFT || x > getWidth() - StripDrawing.RIGHT;
    return onHeights ? Way.HEIGHT : super.wheel(x, y, shift, control);
  }

  @Override
  void zoom(double factor, double x, double y, Way way) {
    here()
        .ifPresent(
            drawing -> {
              StripView next = view;
              if (way != Way.HEIGHT) {
                next = next.zoomedAlong(factor, drawing.along(x));
              }
              if (way != Way.ALONG) {
                next = next.zoomedHeight(factor, drawing.place(y));
              }
              setView(next);
            });
  }

  @Override
  void pan(double dx, double dy) {
    here()
        .ifPresent(
            drawing ->
                setView(
                    view.panned(
                        -dx / drawing.plotWidth() * (view.to() - view.from()),
                        dy / drawing.plotHeight() * (view.high() - view.low()))));
  }

  @Override
  void fit() {
    program().ifPresent(p -> setView(StripDrawing.fitted(p, view)));
    fitted = true;
  }

  @Override
  boolean back() {
    return go(history.back(view));
  }

  @Override
  boolean forward() {
    return go(history.forward(view));
  }

  private boolean go(Optional<StripView> to) {
    to.ifPresent(
        v -> {
          view = v.with(view.trace());
          fitted = false;
          redraw();
        });
    return to.isPresent();
  }

  /** Brings the cursor into view. */
  private void follow() {
    long move = shared.cursor().get();
    program()
        .filter(p -> move >= 0 && move < p.moves().count())
        .ifPresent(
            p -> {
              double at = view.along().at(p.moves(), move);
              if (at < view.from() || at > view.to()) {
                double half = (view.to() - view.from()) / 2;
                view = view.between(at - half, at + half);
                fitted = false;
              }
            });
    redraw();
  }

  @Override
  void clicked(double x, double y) {
    Optional<StripDrawing> drawing = here();
    if (drawing.isEmpty()) {
      return;
    }
    for (StripDrawing.Placed placed : drawing.get().placed()) {
      if (Math.abs(placed.x() - x) <= 6 && Math.abs(placed.y() - y) <= 8) {
        shared.select(placed.mark());
        return;
      }
    }
    if (x > getWidth() - StripDrawing.RIGHT) {
      shared.moveTo(drawing.get().levelMoveNear(y));
      return;
    }
    if (x >= StripDrawing.LEFT) {
      Moves moves = program().orElseThrow().moves();
      long move = view.along().moveAt(moves, moves.count(), drawing.get().along(x));
      shared.moveTo(Math.min(move, moves.count() - 1));
    }
  }

  @Override
  String describe() {
    Optional<Program> program = program();
    if (program.isEmpty()) {
      return "Height strip: no program is open.";
    }
    Moves moves = program.get().moves();
    SortedSet<Long> heights = program.get().heights();
    StringBuilder text = new StringBuilder("Height strip. ");
    text.append(moves.count()).append(moves.count() == 1 ? " move, " : " moves, ");
    text.append(heights.size()).append(" levels");
    if (!heights.isEmpty()) {
      text.append(" from ")
          .append(Texts.um(heights.first()))
          .append(" to ")
          .append(Texts.um(heights.last()));
      Optional<long[]> least = leastStep(heights);
      least.ifPresent(step -> text.append(", smallest step ").append(Texts.um(step[1] - step[0])));
    }
    text.append(". ").append(program.get().findings().size()).append(" findings");
    text.append(
        program.get().result().isPresent()
            ? ". "
            : program.get().finished() ? ", not checked to its end. " : " so far. ");
    long cursor = shared.cursor().get();
    if (cursor >= 0 && cursor < moves.count()) {
      text.append("Cursor at line ").append(moves.line(cursor));
      if (moves.z(cursor) != Moves.UNKNOWN) {
        text.append(", Z ").append(Texts.um(moves.z(cursor)));
      }
      long value = moves.value(view.trace(), cursor);
      if (value != Moves.UNKNOWN) {
        text.append(", ")
            .append(view.trace().words())
            .append(' ')
            .append(Texts.stored(value, view.trace().scale()))
            .append(' ')
            .append(view.trace().unit());
      }
      text.append('.');
    }
    return text.toString();
  }

  private static Optional<long[]> leastStep(SortedSet<Long> heights) {
    Optional<long[]> least = Optional.empty();
    long below = Long.MIN_VALUE;
    for (long height : heights) {
      if (below != Long.MIN_VALUE
          && (least.isEmpty() || height - below < least.get()[1] - least.get()[0])) {
        least = Optional.of(new long[] {below, height});
      }
      below = height;
    }
    return least;
  }

  private static void writeCsv(
      Optional<Program> program, StripView view, Appendable out, Progress progress)
      throws IOException {
    Csv.line(
        out,
        "move",
        "file",
        "line",
        "kind",
        "path mm",
        "time s",
        "X mm",
        "Y mm",
        "Z mm",
        "depth µm",
        "chip µm",
        "least chip µm",
        "planned feed mm/min",
        "spindle growth µm");
    if (program.isEmpty()) {
      return;
    }
    Moves moves = program.get().moves();
    long count = moves.count();
    long first = view.along().moveAt(moves, count, view.from());
    long last = Math.min(count, view.along().moveAt(moves, count, view.to()) + 1);
    for (long i = first; i < last; i++) {
      progress.at((i - first) / (double) (last - first));
      Csv.line(
          out,
          i + 1,
          moves.file(i),
          moves.line(i),
          moves.kind(i) == Moves.Kind.RAPID ? "rapid" : "feed",
          Texts.decimal(moves.pathMm(i), 6),
          Texts.decimal(moves.seconds(i), 6),
          cell(moves.x(i), 9),
          cell(moves.y(i), 9),
          cell(moves.z(i), 9),
          cell(moves.value(Trace.DEPTH, i), 6),
          cell(moves.value(Trace.CHIP, i), 6),
          cell(moves.minimumChip(i), 6),
          cell(moves.value(Trace.FEED, i), 3),
          cell(moves.value(Trace.GROWTH, i), 6));
    }
  }

  private static String cell(long value, int scale) {
    return value == Moves.UNKNOWN ? "" : Texts.stored(value, scale).replace('−', '-');
  }
}
