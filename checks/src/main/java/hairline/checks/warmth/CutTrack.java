package hairline.checks.warmth;

import hairline.checks.cutting.Band;
import hairline.checks.motion.Place;
import hairline.checks.warmth.ProgramTimeline.Cutting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Keeps when something is cut. Of too many stretches those with the shortest breaks between them
 * become one.
 */
final class CutTrack {
  /** Shorter breaks are rounding. */
  private static final double NO_BREAK_SECONDS = 1e-6;

  private static final double FIRST_BREAK_SECONDS = 1e-3;

  private final List<Stretch> stretches = new ArrayList<>();
  private double breakSeconds = NO_BREAK_SECONDS;
  private boolean complete = true;

  /** A cut or several, while they are gathered. */
  private static final class Stretch {
    private final Place first;
    private final double fromSeconds;
    private final OptionalInt tool;
    private final Optional<Double> rpm;
    private final Optional<Measuring> measuring;
    private final Optional<GrowthPoint> atStart;
    private Place last;
    private double toSeconds;
    private Optional<GrowthPoint> atEnd;

    Stretch(
        Place at,
        double fromSeconds,
        double toSeconds,
        OptionalInt tool,
        Optional<Double> rpm,
        Optional<Measuring> measuring,
        Optional<GrowthPoint> atStart,
        Optional<GrowthPoint> atEnd) {
      this.first = at;
      this.rpm = rpm;
      this.last = at;
      this.fromSeconds = fromSeconds;
      this.toSeconds = toSeconds;
      this.tool = tool;
      this.measuring = measuring;
      this.atStart = atStart;
      this.atEnd = atEnd;
    }

    /** Whether this one goes on with the other, the break between them being no longer. */
    boolean goesOn(Stretch next, double breakSeconds) {
      return tool.equals(next.tool)
          && rpm.equals(next.rpm)
          && measuring.map(Measuring::at).equals(next.measuring.map(Measuring::at))
          && measuring.map(Measuring::end).equals(next.measuring.map(Measuring::end))
          && next.fromSeconds - toSeconds <= breakSeconds;
    }

    void take(Stretch next) {
      last = next.last;
      toSeconds = next.toSeconds;
      atEnd = next.atEnd;
    }

    Cutting cutting() {
      return new Cutting(first, last, fromSeconds, toSeconds, tool, drift(atStart), drift(atEnd));
    }

    private Optional<Band> drift(Optional<GrowthPoint> now) {
      Optional<GrowthPoint> then = measuring.flatMap(Measuring::growth);
      return then.isPresent() && now.isPresent()
          ? Drift.between(then.get(), now.get()).rangeUm()
          : Optional.empty();
    }
  }

  /** Takes a cut. */
  void take(
      Place at,
      double fromSeconds,
      double toSeconds,
      OptionalInt tool,
      Optional<Double> rpm,
      Optional<Measuring> measuring,
      Optional<GrowthPoint> atStart,
      Optional<GrowthPoint> atEnd) {
    Stretch next = new Stretch(at, fromSeconds, toSeconds, tool, rpm, measuring, atStart, atEnd);
    int size = stretches.size();
    if (size > 0 && stretches.get(size - 1).goesOn(next, breakSeconds)) {
      stretches.get(size - 1).take(next);
    } else if (size < ProgramTimeline.MOST_CUTS) {
      stretches.add(next);
    } else if (complete) {
      coarsen();
      if (stretches.size() < ProgramTimeline.MOST_CUTS) {
        take(at, fromSeconds, toSeconds, tool, rpm, measuring, atStart, atEnd);
      } else {
        complete = false;
      }
    }
  }

  /** Lets longer breaks pass until half of the stretches are left, or no break is left. */
  private void coarsen() {
    double longest = stretches.get(stretches.size() - 1).toSeconds;
    while (stretches.size() > ProgramTimeline.MOST_CUTS / 2 && breakSeconds <= longest) {
      breakSeconds = Math.max(FIRST_BREAK_SECONDS, 2 * breakSeconds);
      List<Stretch> merged = new ArrayList<>();
      for (Stretch stretch : stretches) {
        int size = merged.size();
        if (size > 0 && merged.get(size - 1).goesOn(stretch, breakSeconds)) {
          merged.get(size - 1).take(stretch);
        } else {
          merged.add(stretch);
        }
      }
      stretches.clear();
      stretches.addAll(merged);
    }
  }

  /** The stretches so far. */
  List<Cutting> cuttings() {
    return stretches.stream().map(Stretch::cutting).toList();
  }

  /** The longest break that was passed over, where any was. */
  Optional<Double> brokenForSeconds() {
    return breakSeconds > NO_BREAK_SECONDS ? Optional.of(breakSeconds) : Optional.empty();
  }

  /** Whether all of them are there. */
  boolean isComplete() {
    return complete;
  }
}
