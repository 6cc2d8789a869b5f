package hairline.viewer.panes;

import hairline.checks.finding.Quantities;
import hairline.checks.stock.Section;
import hairline.checks.stock.SectionLine;
import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import hairline.viewer.draw.ProfileDrawing;
import hairline.viewer.draw.ProfileView;
import hairline.viewer.draw.Texts;
import hairline.viewer.model.MeasuredTrace;
import hairline.viewer.model.PartPicture;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** The section as a profile. */
public final class SectionPane extends PlotPane {
  private final History<ProfileView> history = new History<>();
  private ProfileView view = ProfileView.FIT;
  private Optional<Section> section = Optional.empty();
  private Optional<MeasuredTrace> trace = Optional.empty();
  private Optional<MeasuredTrace.Levelled> levelled = Optional.empty();
  private double shiftMm;

  /** A section of what is shared. */
  public SectionPane(Shared shared) {
    super(shared, "section");
    shared.part().addListener(o -> compute());
    shared
        .section()
        .addListener(
            (o, before, after) -> {
              if (!before.map(SectionLine::lengthPm).equals(after.map(SectionLine::lengthPm))) {
                view = ProfileView.FIT;
                history.clear();
              }
              compute();
            });
    shared
        .program()
        .addListener(
            o -> {
              compute();
              redraw();
            });
  }

  private void compute() {
    Optional<PartPicture> part = shared.part().get();
    section = shared.section().get().flatMap(line -> part.map(p -> p.section(line)));
    level();
  }

  private void level() {
    levelled = trace.flatMap(t -> section.map(s -> t.levelledOn(s, shiftMm)));
    redraw();
  }

  /** The section that is drawn. */
  public Optional<Section> section() {
    return section;
  }

  /** The measured trace as it is laid over, levelled. */
  public Optional<MeasuredTrace.Levelled> levelled() {
    return levelled;
  }

  /** Lays a measured trace over it. */
  public void setTrace(Optional<MeasuredTrace> measured) {
    trace = measured;
    shiftMm = 0;
    level();
  }

  /** Moves the measured trace along by so many pixels. */
  public void shiftTrace(double pixels) {
    here()
        .ifPresent(
            drawing -> {
              shiftMm += drawing.mm(pixels) - drawing.mm(0);
              level();
            });
  }

  /** Draws heights so many times larger than distances. */
  public void setExaggeration(double times) {
    here().ifPresent(drawing -> setView(drawing.exaggerated(times)));
  }

  /** How many times larger heights are drawn than distances. */
  public double exaggeration() {
    return here().map(ProfileDrawing::exaggeration).orElse(0.0);
  }

  private Optional<ProfileDrawing> drawing(Pen pen, Palette palette, double width, double height) {
    return section.map(s -> new ProfileDrawing(pen, palette, s, levelled, view, width, height));
  }

  private Optional<ProfileDrawing> here() {
    return drawing(NoPen.INSTANCE, shared.palette().get(), getWidth(), getHeight());
  }

  @Override
  void draw(Pen pen, Palette palette, double width, double height) {
    Optional<ProfileDrawing> drawing = drawing(pen, palette, width, height);
    if (drawing.isPresent()) {
      drawing.get().draw(trace.map(MeasuredTrace::name).orElse(""));
    } else {
      pen.text(
          "drag a line across the plan, or take one through the cursor (menu Section)",
          width / 2,
          height / 2,
          Pen.Font.LABEL,
          palette.quiet(),
          Pen.Anchor.MIDDLE);
    }
  }

  @Override
  public Taken taken(Palette palette) {
    Optional<Section> line = section;
    Optional<MeasuredTrace.Levelled> laid = levelled;
    String name = trace.map(MeasuredTrace::name).orElse("");
    ProfileView taken = view;
    double width = exportWidth();
    double height = exportHeight();
    return new TakenPlot(
        width,
        height,
        pen ->
            line.ifPresent(
                s -> new ProfileDrawing(pen, palette, s, laid, taken, width, height).draw(name)),
        (out, progress) -> writeCsv(line, laid, out, progress));
  }

  private void setView(ProfileView next) {
    here()
        .ifPresent(
            drawing -> {
              if (!next.equals(drawing.view())) {
                history.leave(drawing.view(), System.nanoTime() / 1_000_000);
                view = next;
                redraw();
              }
            });
  }

  @Override
  void zoom(double factor, double x, double y, Way way) {
    here()
        .ifPresent(
            drawing ->
                setView(
                    drawing
                        .view()
                        .zoomed(
                            way == Way.HEIGHT ? 1 : factor,
                            way == Way.ALONG ? 1 : factor,
                            drawing.mm(x),
                            drawing.um(y))));
  }

  @Override
  void pan(double dx, double dy) {
    here()
        .ifPresent(
            drawing ->
                setView(
                    drawing
                        .view()
                        .panned(drawing.mm(0) - drawing.mm(dx), drawing.um(0) - drawing.um(dy))));
  }

  @Override
  void fit() {
    here().ifPresent(d -> history.leave(d.view(), System.nanoTime() / 1_000_000));
    view = ProfileView.FIT;
    redraw();
  }

  @Override
  boolean back() {
    return go(here().flatMap(d -> history.back(d.view())));
  }

  @Override
  boolean forward() {
    return go(here().flatMap(d -> history.forward(d.view())));
  }

  private boolean go(Optional<ProfileView> to) {
    to.ifPresent(
        v -> {
          view = v;
          redraw();
        });
    return to.isPresent();
  }

  @Override
  void clicked(double x, double y) {
    redraw();
  }

  @Override
  String describe() {
    if (section.isEmpty()) {
      return "Section: none is drawn.";
    }
    List<ProfileDrawing.Step> steps = ProfileDrawing.steps(section.get());
    StringBuilder text = new StringBuilder("Section of ");
    text.append(Texts.mmRounded(section.get().line().lengthPm() / 1e9));
    text.append(", heights ")
        .append(Quantities.significant(exaggeration(), 3))
        .append(" times distances. ")
        .append(steps.size())
        .append(" steps");
    int told = 0;
    for (ProfileDrawing.Step step : steps) {
      if (told++ == 12) {
        text.append(", and more");
        break;
      }
      text.append(told == 1 ? ": " : ", ")
          .append(Quantities.um(step.heightPm()))
          .append(" at ")
          .append(Texts.mmRounded(step.mm()));
    }
    text.append('.');
    levelled.ifPresent(
        m ->
            text.append(" Measured trace levelled, remains ")
                .append(Quantities.significant(m.rmsUm(), 3))
                .append(" µm rms."));
    return text.toString();
  }

  private static void writeCsv(
      Optional<Section> section,
      Optional<MeasuredTrace.Levelled> levelled,
      Appendable out,
      Progress progress)
      throws IOException {
    double all =
        section.map(s -> s.points().size()).orElse(0)
            + levelled.map(l -> l.points().size()).orElse(0);
    long written = 0;
    Csv.line(out, "profile", "distance mm", "height µm");
    if (section.isPresent()) {
      for (Section.Point point : section.get().points()) {
        progress.at(written++ / all);
        Csv.line(
            out,
            "part",
            Texts.decimal(point.distancePm() / 1e9, 9),
            point.heightPm().isPresent()
                ? Texts.stored(point.heightPm().getAsLong(), 6).replace('−', '-')
                : "");
      }
    }
    if (levelled.isPresent()) {
      for (MeasuredTrace.Point point : levelled.get().points()) {
        progress.at(written++ / all);
        Csv.line(
            out,
            "measured, levelled",
            Texts.decimal(point.distanceMm(), 9),
            Texts.decimal(point.heightUm(), 6));
      }
    }
  }
}
