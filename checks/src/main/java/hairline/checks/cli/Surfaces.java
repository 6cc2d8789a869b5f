package hairline.checks.cli;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.ProgramIndex;
import hairline.checks.report.Brief;
import hairline.checks.rules.DepthWatcher;
import hairline.checks.rules.OperationBook;
import hairline.checks.rules.ProgramCheck;
import hairline.checks.rules.Stages;
import hairline.checks.rules.StagesWatcher;
import hairline.checks.setup.Feature;
import hairline.checks.setup.LengthRange;
import hairline.checks.setup.LengthText;
import hairline.checks.setup.Setup;
import hairline.checks.stock.DepthsShown;
import hairline.checks.stock.DepthsTaken;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.SectionLine;
import hairline.checks.stock.StockModel;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.stock.SurfaceWanted;
import hairline.checks.timing.ProgramSummary;
import hairline.checks.warmth.ProgramTimeline;
import hairline.checks.warmth.TimelineGatherer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What a run shows of the part left and of the time on the way.
 *
 * @param wanted what was asked for of the part
 * @param depths whether the depths along each move are shown
 * @param timeline whether the timeline is shown
 * @param brief whether all is gathered that a brief tells
 * @param cellPm edge of a cell, where it was changed
 */
record Surfaces(
    SurfaceWanted wanted, boolean depths, boolean timeline, boolean brief, OptionalLong cellPm) {
  private static final int COORDINATES = 4;
  private static final int MOST_SECTIONS = 100;
  private static final int MOST_FEATURES = 12;
  private static final int BEYOND = 20;

  /** Waits for the end of a program. */
  static class Watcher implements StagesWatcher {
    private final SurfaceWanted wanted;
    private final boolean timed;
    private final long cellPm;
    private final long tolerancePm;
    private Optional<SurfaceShown> shown = Optional.empty();
    private final boolean timelineWanted;
    private final SurfaceWanted wantedForBrief;
    private SurfaceShown shownForBrief;
    private final Optional<OperationBook> book;
    private Optional<TimelineGatherer> times = Optional.empty();
    private Optional<ProgramIndex> index = Optional.empty();
    private boolean deletable;

    private Watcher(Surfaces asked, Setup setup, long cellPm, long tolerancePm) {
      this.wanted = asked.wanted;
      this.wantedForBrief = asked.brief ? forBrief(setup) : SurfaceWanted.NOTHING;
      this.shownForBrief = SurfaceShown.empty(wantedForBrief, cellPm, tolerancePm);
      this.timed = asked.timeline || asked.brief;
      this.timelineWanted = asked.timeline;
      this.book = asked.brief ? Optional.of(new OperationBook(setup)) : Optional.empty();
      this.cellPm = cellPm;
      this.tolerancePm = tolerancePm;
    }

    /** A picture, and a section along each declared feature. */
    private static SurfaceWanted forBrief(Setup setup) {
      List<SectionLine> lines = new ArrayList<>();
      for (Feature feature : setup.features()) {
        along(feature).ifPresent(lines::add);
      }
      return new SurfaceWanted(true, lines.subList(0, Math.min(lines.size(), MOST_FEATURES)), true);
    }

    /** Through the middle of a feature, along its longer side and a little beyond. */
    private static Optional<SectionLine> along(Feature feature) {
      if (feature.x().isEmpty() || feature.y().isEmpty()) {
        return Optional.empty();
      }
      LengthRange x = feature.x().get();
      LengthRange y = feature.y().get();
      long wide = x.hi().pm() - x.lo().pm();
      long high = y.hi().pm() - y.lo().pm();
      long middleX = x.lo().pm() + wide / 2;
      long middleY = y.lo().pm() + high / 2;
      long over = Math.max(wide, high) / BEYOND;
      return Optional.of(
          wide >= high
              ? new SectionLine(x.lo().pm() - over, middleY, x.hi().pm() + over, middleY)
              : new SectionLine(middleX, y.lo().pm() - over, middleX, y.hi().pm() + over));
    }

    @Override
    public void begin(Stages stages) {
      book.ifPresent(b -> b.begin(stages));
      if (timed) {
        times = Optional.of(new TimelineGatherer(stages.warmth(), stages.time()));
      }
    }

    @Override
    public void accept(Event event) {
      times.ifPresent(gatherer -> gatherer.accept(event));
      book.ifPresent(b -> b.accept(event));
      if (event instanceof Event.Indexed indexed) {
        deletable |= indexed.index().deletableBlocks();
        index = index.or(() -> Optional.of(indexed.index()));
      }
      if (event instanceof PartLeft part && wanted.anything()) {
        shown = Optional.of(SurfaceShown.of(part, wanted, cellPm, tolerancePm));
      }
      if (event instanceof PartLeft part && wantedForBrief.anything()) {
        shownForBrief = SurfaceShown.of(part, wantedForBrief, cellPm, tolerancePm);
      }
    }

    /** The timeline, where it was asked for. */
    Optional<ProgramTimeline> timeline() {
      return times.filter(t -> timelineWanted).map(TimelineGatherer::timeline);
    }

    /** What a brief tells beside, where one was asked for. */
    Optional<Brief> brief(Digest digest, ProgramSummary summary) {
      return book.map(
          b ->
              new Brief(
                  b,
                  index.map(i -> i.first().name()).orElse(""),
                  digest.sha256(),
                  digest.bytes(),
                  deletable,
                  shownForBrief,
                  times.orElseThrow().timeline(),
                  summary));
    }

    /** Who watches the run: nobody, where nothing is to be shown. */
    EventSink sink() {
      return wanted.anything() || timed || depths().isPresent() ? this : ProgramCheck.NOBODY;
    }

    /** The depths along each move, where they were asked for. */
    Optional<DepthsShown> depths() {
      return Optional.empty();
    }

    /** What is to be seen, where anything was asked for. */
    Optional<SurfaceShown> shown() {
      return wanted.anything()
          ? shown.or(() -> Optional.of(SurfaceShown.empty(wanted, cellPm, tolerancePm)))
          : Optional.empty();
    }
  }

  /** Gathers the depths as well. */
  private static final class DeepWatcher extends Watcher implements DepthWatcher {
    private final DepthsShown.Gatherer gatherer = new DepthsShown.Gatherer();

    private DeepWatcher(Surfaces asked, Setup setup, long cellPm, long tolerancePm) {
      super(asked, setup, cellPm, tolerancePm);
    }

    @Override
    public void accept(Event event) {
      super.accept(event);
      if (event instanceof DepthsTaken taken) {
        gatherer.take(taken);
      }
    }

    @Override
    Optional<DepthsShown> depths() {
      return Optional.of(gatherer.shown());
    }
  }

  /** One for a program; heights count as equal to a tenth of the resolution. */
  Watcher watcher(Setup setup) {
    long cell = StockModel.of(setup, cellPm).cellPm();
    long tolerance = SurfaceShown.tolerancePm(setup);
    return depths
        ? new DeepWatcher(this, setup, cell, tolerance)
        : new Watcher(this, setup, cell, tolerance);
  }

  /** The lines that {@code --section} names. */
  static List<SectionLine> lines(List<String> texts) throws Failed {
    if (texts.size() > MOST_SECTIONS) {
      throw Failed.of(
          Failure.WRONG_OPTION,
          "--section may stand " + MOST_SECTIONS + " times at most",
          "check ");
    }
    List<SectionLine> lines = new ArrayList<>();
    for (String text : texts) {
      lines.add(line(text));
    }
    return lines;
  }

  private static SectionLine line(String text) throws Failed {
    String[] parts = text.split(",", -1);
    if (parts.length != COORDINATES) {
      throw Failed.of(
          Failure.SECTION_WRONG, text, "four lengths are due, and there are " + parts.length);
    }
    long[] at = new long[COORDINATES];
    for (int k = 0; k < COORDINATES; k++) {
      try {
        at[k] = LengthText.inMm(parts[k]).pm();
      } catch (IllegalArgumentException e) {
        throw Failed.because(e, Failure.SECTION_WRONG, text, String.valueOf(e.getMessage()));
      }
      if (at[k] > SectionLine.FARTHEST_PM || at[k] < -SectionLine.FARTHEST_PM) {
        throw Failed.of(
            Failure.SECTION_WRONG, text, "`" + parts[k].strip() + "` lies beyond 100 m");
      }
    }
    if (at[0] == at[2] && at[1] == at[3]) {
      throw Failed.of(Failure.SECTION_WRONG, text, "both ends are one point");
    }
    return new SectionLine(at[0], at[1], at[2], at[3]);
  }

  /** The edge that {@code --cell} names. */
  static long cell(String text) throws Failed {
    long pm;
    try {
      pm = LengthText.withUnit(text).pm();
    } catch (IllegalArgumentException e) {
      throw Failed.because(e, Failure.CELL_WRONG, text, String.valueOf(e.getMessage()));
    }
    if (pm < StockModel.SMALLEST_CELL_PM || pm > StockModel.LARGEST_CELL_PM) {
      throw Failed.of(Failure.CELL_WRONG, text, "it is out of range");
    }
    if (pm % 2 != 0) {
      throw Failed.of(Failure.CELL_WRONG, text, "it is no even number of picometres");
    }
    return pm;
  }
}
