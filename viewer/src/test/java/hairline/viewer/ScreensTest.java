package hairline.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.stock.SectionLine;
import hairline.viewer.draw.StripView;
import hairline.viewer.model.Along;
import hairline.viewer.model.MeasuredTrace;
import hairline.viewer.model.Programs;
import hairline.viewer.model.Trace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javafx.scene.control.SplitPane;
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

  @Test
  void heightsToTheNanometreLevelsAndWhatIsNotChecked() throws IOException {
    open(Programs.FAULTY);
    onScreen(
        () -> {
          window.goToLine(57);
          StripView view = window.panes().strip().view();
          window.panes().setByLevels(false);
          window
              .panes()
              .strip()
              .setView(new StripView(view.along(), Trace.FEED, false, 160, 190, -8.11, -7.99));
          window.panes().setTrace(Trace.FEED);
          window.panes().focus(6);
          return true;
        });
    until("the part follows", () -> window.panes().remark().get().equals("the part at line 57"));
    frames();
    keep("nanometres-levels-light", 1);
    onScreen(
        () -> {
          window.panes().setAlong(Along.TIME);
          window.panes().focus(5);
          window.setDark(true);
          return true;
        });
    frames();
    keep("nanometres-not-checked-dark", 1);
  }

  @Test
  void aSubprogramInANarrowPane() throws IOException {
    Programs.write(folder, "O8000.nc", "O8000", "G1 X1. F100.", "Y1.", "X1..2", "X0", "M99");
    open(
        Programs.write(
            folder,
            "main.nc",
            "G21 G90 G17 G94 G54",
            "S20000 M3",
            "G0 X0 Y0 Z0.",
            "M98 P8000",
            "G0 Z5.",
            "M30"));
    onScreen(
        () -> {
          window.nextFinding(1);
          window.panes().shared().moveTo(2);
          ((SplitPane) stage.getScene().lookup("#lower")).setDividerPositions(0.55);
          return true;
        });
    until("its line is found", () -> window.panes().program().file() == 1);
    frames();
    keep("subprogram-light", 1);
    onScreen(
        () -> {
          window.setDark(true);
          return true;
        });
    frames();
    keep("subprogram-dark", 2);
  }

  @Test
  void whileAProgramIsReadAndWithoutOne() throws IOException {
    keep("empty-light", 1);
    List<String> lines =
        new ArrayList<>(List.of("G21 G90 G54 S20000 M3", "X1..2", "G1 X0 Y0 Z-0.1 F100."));
    for (int line = 0; line < 200_000; line++) {
      lines.add("X" + line % 100 + ". Y" + line % 77 + ".");
    }
    Path file = Programs.write(folder, "long.nc", lines.toArray(new String[0]));
    onScreen(
        () -> {
          window.open(file, Optional.empty());
          window.setDark(true);
          return true;
        });
    until("something is found", () -> !window.panes().findings().shown().isEmpty());
    frames();
    keep("reading-dark", 1);
    onScreen(
        () -> {
          window.setDark(false);
          window.nextFinding(1);
          window.save(
              window.panes().strip(), Saving.Format.CSV, folder.resolve("heights-of-moves.csv"));
          return true;
        });
    frames();
    keep("reading-and-writing-light", 1);
    onScreen(
        () -> {
          window.cancel();
          return true;
        });
    until("nothing is written", () -> !window.isWriting());
    onScreen(
        () -> {
          window.cancel();
          return true;
        });
    until("it has ended", () -> window.settled());
    frames();
    keep("cancelled-light", 1);
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
