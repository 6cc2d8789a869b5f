package hairline.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.stock.SectionLine;
import hairline.viewer.model.MeasuredTrace;
import hairline.viewer.model.Programs;
import hairline.viewer.model.Trace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Pictures of the demo, to be looked at; they stand in {@code target/screens}. */
class ScreensTest extends Screen {
  @Test
  void theDemoWithPlantedFaults() throws IOException {
    open(Programs.FAULTY);
    assertThat(onScreen(() -> window.panes().findings().shown().size())).isPositive();
    keep("faulty-light", 1);
    onScreen(
        () -> {
          window.nextFinding(1);
          window.nextFinding(1);
          window.panes().setTrace(Trace.CHIP);
          window.setDark(true);
          return true;
        });
    frames();
    shown();
    keep("faulty-dark", 2);
  }

  @Test
  void theDemoWithASectionAndAMeasuredTrace() throws Exception {
    open(Programs.DEMO);
    SectionLine line = new SectionLine(-2_500_000_000L, 100_000_000L, 5_800_000_000L, 100_000_000L);
    onScreen(
        () -> {
          window.panes().shared().section().set(Optional.of(line));
          return true;
        });
    MeasuredTrace trace = made(onScreen(() -> window.panes().section().section().orElseThrow()));
    onScreen(
        () -> {
          window.panes().section().setTrace(Optional.of(trace));
          window.panes().setByLevels(false);
          window.panes().setTrace(Trace.GROWTH);
          return true;
        });
    frames();
    keep("section-light", 2);
    onScreen(
        () -> {
          window.panes().setByLevels(true);
          window.goToLine(100);
          window.setDark(true);
          return true;
        });
    frames();
    shown();
    keep("section-dark", 1);
  }

  /** A trace as an instrument might give it: tilted, lifted, with noise. */
  static MeasuredTrace made(hairline.checks.stock.Section section) {
    List<MeasuredTrace.Point> points = new ArrayList<>();
    Random random = new Random(7);
    List<hairline.checks.stock.Section.Point> all = section.points();
    int k = 0;
    for (double mm = 0.01; mm < section.line().lengthPm() / 1e9; mm += 0.004) {
      while (k + 1 < all.size() && all.get(k + 1).distancePm() / 1e9 < mm) {
        k++;
      }
      if (all.get(k).heightPm().isPresent()) {
        double um = all.get(k).heightPm().getAsLong() / 1e6;
        points.add(new MeasuredTrace.Point(mm, um + 3 + 1.7 * mm + 0.25 * random.nextGaussian()));
      }
    }
    return new MeasuredTrace("trace.csv", points);
  }
}
