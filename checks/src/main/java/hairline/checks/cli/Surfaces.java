package hairline.checks.cli;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.rules.DepthWatcher;
import hairline.checks.rules.ProgramCheck;
import hairline.checks.rules.Stages;
import hairline.checks.rules.StagesWatcher;
import hairline.checks.setup.LengthText;
import hairline.checks.setup.Setup;
import hairline.checks.stock.DepthsShown;
import hairline.checks.stock.DepthsTaken;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.SectionLine;
import hairline.checks.stock.StockModel;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.stock.SurfaceWanted;
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
 * @param cellPm edge of a cell, where it was changed
 */
record Surfaces(SurfaceWanted wanted, boolean depths, boolean timeline, OptionalLong cellPm) {
  private static final int COORDINATES = 4;
  private static final int MOST_SECTIONS = 100;

  /** Waits for the end of a program. */
  static class Watcher implements StagesWatcher {
    private final SurfaceWanted wanted;
    private final boolean timed;
    private final long cellPm;
    private final long tolerancePm;
    private Optional<SurfaceShown> shown = Optional.empty();
    private Optional<TimelineGatherer> times = Optional.empty();

    private Watcher(Surfaces asked, long cellPm, long tolerancePm) {
      this.wanted = asked.wanted;
      this.timed = asked.timeline;
      this.cellPm = cellPm;
      this.tolerancePm = tolerancePm;
    }

    @Override
    public void begin(Stages stages) {
      if (timed) {
        times = Optional.of(new TimelineGatherer(stages.warmth(), stages.time()));
      }
    }

    @Override
    public void accept(Event event) {
      times.ifPresent(gatherer -> gatherer.accept(event));
      if (event instanceof PartLeft part && wanted.anything()) {
        shown = Optional.of(SurfaceShown.of(part, wanted, cellPm, tolerancePm));
      }
    }

    /** The timeline, where it was asked for. */
    Optional<ProgramTimeline> timeline() {
      return times.map(TimelineGatherer::timeline);
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

    private DeepWatcher(Surfaces asked, long cellPm, long tolerancePm) {
      super(asked, cellPm, tolerancePm);
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
    return depths ? new DeepWatcher(this, cell, tolerance) : new Watcher(this, cell, tolerance);
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
