package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.parser.Span;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Depths by place along a move, cells of 1 mm; depths in pm. */
class DepthTrackTest {
  private static final double MM = 1e9;
  private final DepthTrack track = new DepthTrack(MM);

  private static Path line(double x0, double y0, double x1, double y1) {
    return path(x0, y0, x1, y1, Optional.empty());
  }

  private static Path path(double x0, double y0, double x1, double y1, Optional<Arc> arc) {
    Position from = new Position(pm(x0), pm(y0), 0, 0, 0, 0, 0);
    Position to = new Position(pm(x1), pm(y1), 0, 0, 0, 0, 0);
    Modes modes = Bench.start();
    return Path.of(
        new Move(
            new Place(0, 1, new Span(1, 2)),
            arc.isPresent() ? Move.Kind.ARC_CCW : Move.Kind.LINE,
            Move.Source.BLOCK,
            modes,
            from,
            to,
            from,
            to,
            arc,
            0,
            OptionalDouble.of(300),
            false));
  }

  private static long pm(double mm) {
    return Math.round(mm * MM);
  }

  private void cell(double x, double y, long depth) {
    track.cell(x * MM, y * MM, depth, true);
  }

  private static List<org.assertj.core.groups.Tuple> told(List<DepthStretch> stretches) {
    return stretches.stream()
        .map(s -> tuple(s.fromMm(), s.toMm(), s.depthPm().orElse(-1)))
        .toList();
  }

  /** 4 mm along X: 20 pm deep on the first two, nothing on the third, 30 on the last. */
  @Test
  void aLineHasItsDepthsPlaceByPlace() {
    track.begin(line(1, 2, 5, 2));
    assertThat(track.stretches(4)).isEmpty();
    assertThat(track.largest(4)).isEmpty();
    cell(1.5, 2.4, 20);
    cell(1.6, 1.6, 10);
    cell(2.5, 2, 20);
    cell(4.5, 2, 30);
    // Behind the start and beyond the end it is not of this move.
    cell(0.5, 2, 99);
    cell(5.5, 2, 98);
    assertThat(told(track.stretches(4)))
        .containsExactly(tuple(0.0, 2.0, 20L), tuple(2.0, 3.0, 0L), tuple(3.0, 4.0, 30L));
    assertThat(told(track.largest(4))).containsExactly(tuple(0.0, 4.0, 30L));
  }

  /** 5 mm in the direction (3, 4), from (1, 2): its middle is 2.5 mm from the start. */
  @Test
  void aLineAcrossBothAxes() {
    track.begin(line(1, 2, 4, 6));
    cell(1 + 1.5 - 0.4, 2 + 2 + 0.3, 20);
    cell(1 + 2.7 + 0.4, 2 + 3.6 - 0.3, 40);
    cell(1 - 0.6, 2 - 0.8, 99);
    cell(1 + 3.6, 2 + 4.8, 98);
    assertThat(told(track.stretches(5)))
        .containsExactly(
            tuple(0.0, 2.0, 0L), tuple(2.0, 3.0, 20L), tuple(3.0, 4.0, 0L), tuple(4.0, 5.0, 40L));
  }

  /** What the front of the tool took beyond the end belongs to the move that goes on from there. */
  @Test
  void whatIsTakenAheadBelongsToTheNextMove() {
    track.begin(line(0, 0, 4, 0));
    cell(4.5, 0, 50);
    cell(6.5, 0, 60);
    track.begin(line(4, 0, 6, 0));
    assertThat(told(track.stretches(2))).containsExactly(tuple(0.0, 1.0, 50L), tuple(1.0, 2.0, 0L));
    // And farther ahead to the one after it.
    track.begin(line(6, 0, 8, 0));
    assertThat(told(track.stretches(2))).containsExactly(tuple(0.0, 1.0, 60L), tuple(1.0, 2.0, 0L));
    track.begin(line(8, 0, 10, 0));
    assertThat(track.stretches(2)).isEmpty();
  }

  @Test
  void aMoveFromElsewhereBeginsWithNothing() {
    track.begin(line(0, 0, 4, 0));
    cell(4.5, 0, 50);
    track.begin(line(4, 1, 6, 1));
    assertThat(track.stretches(2)).isEmpty();
    track.begin(line(0, 0, 4, 0));
    cell(4.5, 0, 50);
    track.begin(line(4, 0, 2, 0));
    assertThat(track.stretches(2)).isEmpty();
  }

  /** A plunge has no length: its depth is that with which the next move begins. */
  @Test
  void aPlungeBeginsTheNextMove() {
    track.begin(line(0, 0, 0, 0));
    cell(0.2, 0, 70);
    cell(-0.2, 0, 80);
    track.begin(line(0, 0, 3, 0));
    assertThat(told(track.stretches(3))).containsExactly(tuple(0.0, 1.0, 70L), tuple(1.0, 3.0, 0L));
  }

  @Test
  void whatIsNotKnownIsTold() {
    track.begin(line(0, 0, 2, 0));
    track.cell(0.5 * MM, 0, 10, false);
    cell(1.5, 0, 10);
    assertThat(told(track.stretches(2)))
        .containsExactly(tuple(0.0, 1.0, -1L), tuple(1.0, 2.0, 10L));
    assertThat(told(track.largest(2))).containsExactly(tuple(0.0, 2.0, -1L));
  }

  /** Many cells ahead: all of them are kept. */
  @Test
  void allThatIsAheadIsKept() {
    track.begin(line(0, 0, 1, 0));
    for (int k = 0; k < 300; k++) {
      cell(1.5 + k, 0, k + 1);
    }
    track.begin(line(1, 0, 301, 0));
    List<DepthStretch> stretches = track.stretches(300);
    assertThat(stretches).hasSize(300);
    for (int k = 0; k < 300; k++) {
      assertThat(stretches.get(k).depthPm()).hasValue(k + 1);
    }
  }

  /** A quarter of 10 mm of radius about (3, 4), in both directions: at 30° a third is done. */
  @Test
  void anArcHasItsDepthsAlongIt() {
    double length = 10 * Math.PI / 2;
    double third = length / 15 * 5;
    Arc counterClockwise = new Arc(3, 4, 10, 10, Math.PI / 2, false);
    track.begin(path(13, 4, 3, 14, Optional.of(counterClockwise)));
    at(20, 40);
    at(-10, 99);
    at(100, 98);
    List<DepthStretch> there = track.stretches(length);
    assertThat(told(there).stream().map(t -> t.toList().get(2))).containsExactly(0L, 40L, 0L);
    assertThat(there.get(1).fromMm()).isCloseTo(third - length / 15 * 2, within(1e-9));
    assertThat(there.get(1).toMm()).isCloseTo(third - length / 15, within(1e-9));
    Arc clockwise = new Arc(3, 4, 10, 10, -Math.PI / 2, false);
    track.begin(path(3, 14, 13, 4, Optional.of(clockwise)));
    at(20, 40);
    at(-10, 99);
    at(100, 98);
    List<DepthStretch> back = track.stretches(length);
    assertThat(told(back).stream().map(t -> t.toList().get(2))).containsExactly(0L, 40L, 0L);
    assertThat(back.get(1).fromMm()).isCloseTo(length - length / 15 * 4, within(1e-9));
  }

  /** Three quarters of a turn from −45°: 180° lies on it, 250° is beyond, −60° is before. */
  @Test
  void aLongArcKnowsWhatIsBeforeItAndBeyond() {
    double r = 10 / StrictMath.sqrt(2);
    double length = 10 * Math.PI * 1.5;
    Arc arc = new Arc(3, 4, 10, 10, 1.5 * Math.PI, false);
    track.begin(path(3 + r, 4 - r, 3 - r, 4 - r, Optional.of(arc)));
    at(180, 40);
    at(250, 50);
    at(-60, 60);
    List<DepthStretch> told = track.stretches(length);
    assertThat(told(told).stream().map(t -> t.toList().get(2))).containsExactly(0L, 40L, 0L);
    // 225° of 270° are done there.
    assertThat(told.get(1).toMm()).isCloseTo(length * 225 / 270, within(1.01));
    // What lies beyond it belongs to the line that goes on; what lies before it to none.
    track.begin(line(3 - r, 4 - r, 3 + r, 4 - r));
    assertThat(told(track.largest(2 * r))).containsExactly(tuple(0.0, 2 * r, 50L));
  }

  private void at(double degrees, long depth) {
    double angle = Math.toRadians(degrees);
    cell(3 + 10 * StrictMath.cos(angle), 4 + 10 * StrictMath.sin(angle), depth);
  }
}
