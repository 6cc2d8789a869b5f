package hairline.checks.warmth;

import hairline.checks.cutting.Band;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.stock.Cut;
import hairline.checks.timing.ProgramTime;
import hairline.checks.timing.TimePoint;
import hairline.checks.warmth.ProgramTimeline.Kind;
import hairline.checks.warmth.ProgramTimeline.Mark;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Gathers the timeline of a program: takes the events that come out of the stage of {@link
 * SpindleWarmth}, and hands nothing on. Costs time with every cut, so it is there only when asked
 * for.
 */
public final class TimelineGatherer implements EventSink {
  private final SpindleWarmth warmth;
  private final ProgramTime time;
  private final SpindleTrace spindle = new SpindleTrace();
  private final CutTrack fineCuts = new CutTrack();
  private final CutTrack otherCuts = new CutTrack();
  private final List<Mark> marks = new ArrayList<>();
  private long marksLeft;

  /**
   * A gatherer.
   *
   * @param warmth the stage before; no other gatherer may stand behind it
   * @param time the time that it reads
   */
  public TimelineGatherer(SpindleWarmth warmth, ProgramTime time) {
    this.warmth = warmth;
    this.time = time;
    warmth.traceTo(spindle);
  }

  @Override
  public void accept(Event event) {
    if (event instanceof Cut cut) {
      if (cut.inContact()) {
        cut(cut);
      }
    } else if (event instanceof Event.ToolChanged change) {
      mark(Kind.TOOL_CHANGE, event, number(change.after()), Optional.empty());
    } else if (event instanceof Event.MachineCode code) {
      switch (code.meaning()) {
        case WARM_UP -> mark(Kind.WARM_UP, event, tool(code.modes()), Optional.empty());
        case MEASURE_TOOL ->
            mark(
                Kind.MEASURING,
                event,
                tool(code.modes()),
                warmth.growthAtEnd().flatMap(growth -> growth.sinceCold().rangeUm()));
        case COOLANT_ON, COOLANT_OFF, IGNORE -> {}
      }
    } else if (event instanceof Event.Stopped stop && !stop.code().equals("M1")) {
      mark(Kind.OPERATOR, event, tool(stop.modes()), Optional.empty());
    }
  }

  private void cut(Cut cut) {
    double from = time.secondsNow();
    double to = from + time.ofThisEvent().atLeastSeconds();
    Optional<GrowthPoint> growth = warmth.growth();
    (cut.fine() ? fineCuts : otherCuts)
        .take(
            cut.at(),
            from,
            to,
            tool(cut.move().modes()),
            cut.move().modes().turningRpm(),
            warmth.measuring(),
            growth,
            growth.map(point -> point.later(time.ofThisEvent())));
  }

  private void mark(Kind kind, Event event, OptionalInt tool, Optional<Band> growthUm) {
    if (marks.size() == ProgramTimeline.MOST_MARKS) {
      marksLeft++;
      return;
    }
    double from = time.secondsNow();
    marks.add(
        new Mark(
            kind,
            event.at(),
            from,
            from + time.ofThisEvent().atLeastSeconds(),
            time.ofThisEvent().isKnown(),
            tool,
            growthUm));
  }

  private static OptionalInt tool(Modes modes) {
    return number(modes.tool());
  }

  private static OptionalInt number(Modal<Integer> tool) {
    return tool.value().map(OptionalInt::of).orElse(OptionalInt.empty());
  }

  /** The timeline up to the event last taken. */
  public ProgramTimeline timeline() {
    boolean growthTold = warmth.growth().isPresent();
    List<ProgramTimeline.Point> points = spindle.points();
    List<String> notes = new ArrayList<>();
    if (spindle.isReduced()) {
      notes.add(
          "more than "
              + ProgramTimeline.MOST_POINTS
              + " points of the spindle: of equal parts of the time, first, last and extremes"
              + " stay");
    }
    if (marksLeft > 0) {
      notes.add(
          marksLeft
              + " tool changes, measurings and stops beyond the first "
              + ProgramTimeline.MOST_MARKS
              + " left out");
    }
    note(fineCuts, "fine cuts", notes);
    note(otherCuts, "other cuts", notes);
    return new ProgramTimeline(
        time.since(TimePoint.START),
        growthTold,
        points,
        marks,
        fineCuts.cuttings(),
        otherCuts.cuttings(),
        notes);
  }

  private static void note(CutTrack track, String what, List<String> notes) {
    track
        .brokenForSeconds()
        .ifPresent(
            seconds ->
                notes.add(
                    what
                        + " with breaks of up to "
                        + new BigDecimal(seconds, new MathContext(3)).toPlainString()
                        + " s between them count as one"));
    if (!track.isComplete()) {
      notes.add(what + " beyond the first " + ProgramTimeline.MOST_CUTS + " stretches left out");
    }
  }
}
