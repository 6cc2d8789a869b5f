package hairline.checks.warmth;

import hairline.checks.motion.Place;
import hairline.checks.timing.Gap;
import hairline.checks.timing.TimeTaken;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Follows growth through the stretches in which the spindle goes on as it does. */
final class GrowthFollower {
  private final GrowthFigures figures;
  private final Map<String, Doubt> doubts = new LinkedHashMap<>();
  private SpindleGrowth base;
  private Speeds speeds = Speeds.of(0);
  private TimeTaken taken = TimeTaken.NONE;
  private long unknowns;
  private long lastUnknown;
  private List<Doubt> doubtsNow = List.of();

  GrowthFollower(GrowthFigures figures, Place start) {
    this.figures = figures;
    this.base = SpindleGrowth.atStart(figures);
    if (!base.isKnown()) {
      doubt("the speed of the warm-up before the program is not known", start);
    }
  }

  /** The spindle is so for this time. */
  void pass(SpindleState spindle, TimeTaken time, Place at) {
    pass(Speeds.of(spindle, figures), time, at);
  }

  private void pass(Speeds now, TimeTaken time, Place at) {
    if (!now.equals(speeds)) {
      base = base.after(speeds, taken.atLeastSeconds(), taken.atMostSeconds());
      taken = TimeTaken.NONE;
      speeds = now;
      if (base.isKnown() && !doubts.isEmpty()) {
        doubts.clear();
        doubtsNow = List.of();
      }
    }
    taken = taken.plus(time);
    if (!time.isKnown() || !now.isKnown()) {
      unknowns = nextUnknown();
      for (Gap gap : time.gaps()) {
        doubt(new Doubt(gap.cause().reason(), gap.cause().key(), Optional.of(gap.at())));
      }
      if (!now.isKnown()) {
        doubt("the speed of the spindle is not known", at);
      }
    }
  }

  /** Something that is not known may have turned the spindle at any speed, for any time. */
  void mayHaveTurned(Doubt reason) {
    Speeds before = speeds;
    double fastest = figures.fastestRpm().orElse(Double.POSITIVE_INFINITY);
    base =
        base.after(speeds, taken.atLeastSeconds(), taken.atMostSeconds())
            .after(new Speeds(0, fastest), 0, Double.POSITIVE_INFINITY);
    taken = TimeTaken.NONE;
    speeds = before;
    unknowns = nextUnknown();
    doubt(reason);
  }

  /** The growth now. */
  GrowthPoint point(SpindleState spindle) {
    return new GrowthPoint(
        figures,
        base,
        speeds,
        taken,
        Speeds.of(spindle, figures),
        unknowns,
        doubtsNow,
        this::nextUnknown);
  }

  private long nextUnknown() {
    return ++lastUnknown;
  }

  private void doubt(String reason, Place at) {
    doubt(new Doubt(reason, Optional.empty(), Optional.of(at)));
  }

  private void doubt(Doubt doubt) {
    if (doubts.putIfAbsent(doubt.reason(), doubt) == null) {
      doubtsNow = List.copyOf(new ArrayList<>(doubts.values()));
    }
  }
}
