package hairline.checks.report;

import hairline.checks.cutting.Band;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.warmth.ProgramTimeline;
import hairline.checks.warmth.ProgramTimeline.Cutting;
import hairline.checks.warmth.ProgramTimeline.Mark;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** What text and drawing say of a timeline in the same words. */
final class TimelineWords {
  private static final int SECONDS_PER_MINUTE = 60;
  private static final int DIGITS = 3;

  private TimelineWords() {}

  /** How long the program takes. */
  static String whole(ProgramTimeline timeline) {
    return (timeline.time().isKnown() ? "" : "at least ")
        + Quantities.time(timeline.time().atLeastSeconds())
        + (timeline.growthTold()
            ? ""
            : "; growth of the spindle not known: machine.spindle.growth not given");
  }

  static String mark(ProgramResult result, Mark mark) {
    return mark.kind().words()
        + tool(mark.tool())
        + ", "
        + Words.line(result, mark.at())
        + (mark.known() ? "" : ", for a time that is not known");
  }

  /** "fine cuts T3, lines 44 to 132". */
  static String cuts(ProgramResult result, String what, Cutting first, Cutting last) {
    return what + tool(first.tool()) + ", " + Words.lines(result, first.first(), last.last());
  }

  /** The growth since measuring; empty where it is not known. */
  static String drift(Optional<Band> start, Optional<Band> end) {
    return start.isEmpty() && end.isEmpty()
        ? ""
        : "since measuring " + um(start) + " to " + um(end) + " µm";
  }

  private static String tool(OptionalInt tool) {
    return tool.isPresent() ? " T" + tool.getAsInt() : "";
  }

  /** Minutes and seconds. */
  static String clock(double seconds) {
    BigDecimal tenths = new BigDecimal(seconds).setScale(1, RoundingMode.HALF_UP);
    BigDecimal[] parts = tenths.divideAndRemainder(BigDecimal.valueOf(SECONDS_PER_MINUTE));
    return parts[0].toBigInteger()
        + ":"
        + String.format(Locale.ROOT, "%04.1f", parts[1].doubleValue());
  }

  /** A value in micrometres without the unit, or a band from end to end. */
  static String um(Optional<Band> band) {
    if (band.isEmpty()) {
      return "?";
    }
    String low = SurfaceText.fixed(band.get().low(), DIGITS);
    String high = SurfaceText.fixed(band.get().high(), DIGITS);
    return low.equals(high) ? low : low + "…" + high;
  }
}
