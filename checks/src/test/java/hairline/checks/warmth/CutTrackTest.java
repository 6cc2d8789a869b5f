package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Stretches of cuts: what is put together, and what is left out when there are too many. */
class CutTrackTest {
  private static void take(CutTrack track, int line, double from, double to, int tool) {
    track.take(
        new Place(0, line, new Span(1, 2)),
        from,
        to,
        OptionalInt.of(tool),
        Optional.of(30_000.0),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  @Test
  void cutsWithoutABreakAreOneStretch() {
    CutTrack track = new CutTrack();
    take(track, 1, 0, 1, 3);
    take(track, 2, 1, 2, 3);
    take(track, 3, 2.5, 3, 3);
    take(track, 4, 3, 4, 5);
    assertThat(track.cuttings())
        .extracting(c -> c.first().line() + "-" + c.last().line() + " T" + c.tool().getAsInt())
        .containsExactly("1-2 T3", "3-3 T3", "4-4 T5");
    assertThat(track.cuttings().get(0).toSeconds()).isEqualTo(2);
    assertThat(track.isComplete()).isTrue();
    assertThat(track.brokenForSeconds()).isEmpty();
  }

  @Test
  void asManyAsFitAreKeptAsTheyAre() {
    CutTrack track = new CutTrack();
    for (int k = 0; k < ProgramTimeline.MOST_CUTS; k++) {
      take(track, k + 1, k, k + 0.5, 3);
    }
    assertThat(track.cuttings()).hasSize(ProgramTimeline.MOST_CUTS);
    assertThat(track.brokenForSeconds()).isEmpty();
    // One more, and breaks of half a second give way.
    take(track, 99_999, 9000, 9001, 3);
    assertThat(track.isComplete()).isTrue();
    assertThat(track.brokenForSeconds()).isPresent();
    assertThat(track.cuttings().size()).isLessThanOrEqualTo(ProgramTimeline.MOST_CUTS / 2 + 1);
    assertThat(track.cuttings().get(track.cuttings().size() - 1).last().line())
        .as("the one that was too many is there")
        .isEqualTo(99_999);
    assertThat(track.cuttings().get(0).fromSeconds()).isZero();
  }

  /** Of two tools in turn nothing can be put together, however long a break may be. */
  @Test
  void whatCannotBePutTogetherIsLeftOutAndSaid() {
    CutTrack track = new CutTrack();
    for (int k = 0; k <= ProgramTimeline.MOST_CUTS; k++) {
      assertThat(track.isComplete()).isTrue();
      take(track, k + 1, k, k + 0.5, k % 2);
    }
    assertThat(track.isComplete()).isFalse();
    assertThat(track.cuttings()).hasSize(ProgramTimeline.MOST_CUTS);
  }
}
