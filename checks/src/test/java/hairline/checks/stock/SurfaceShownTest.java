package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/** The picture of a surface, the floors in features and the depths kept, by plane geometry. */
class SurfaceShownTest {

  private static SurfaceLeft left(Bench bench) {
    return bench.end().all(PartLeft.class).get(0).surfaces().get(0);
  }

  private static Bench lane(Bench bench, double x, double z) {
    return bench
        .g0(x, -3000, 1000)
        .g0(x, -3000, 5)
        .g1(x, -3000, z)
        .g1(x, 3000, z)
        .g0(x, 3000, 1000);
  }

  private static SurfacePicture picture(SurfaceLeft surface) {
    return SurfacePicture.of(surface, new TerraceFinder(surface, 10_000).find().at());
  }

  @Test
  void aPictureOfAStockShowsAllOfIt() {
    SurfacePicture picture = picture(left(lane(Bench.flat().stock(), 2000, -5)));
    // 12 by 8 mm in cells of 25 µm: 480 by 320, a pixel each.
    assertThat(picture.width()).isEqualTo(480);
    assertThat(picture.height()).isEqualTo(320);
    assertThat(picture.widthPm()).isEqualTo(12e9);
    assertThat(picture.heightPm()).isEqualTo(8e9);
    assertThat(picture.x0Pm()).isEqualTo(-6e9);
    assertThat(picture.y0Pm()).isEqualTo(-4e9);
    int lane = (int) ((2000 + 6000) / 25.0);
    assertThat(picture.heightPm(lane, 160)).isEqualTo(-5_000_000);
    assertThat(picture.stands(lane, 160)).isEqualTo(Stands.SURFACE);
    assertThat(picture.heightPm(lane - 9, 160)).isZero();
    assertThat(picture.heightPm(lane - 7, 160)).isEqualTo(-5_000_000);
    assertThat(picture.terrace(lane, 160)).isNotZero().isNotEqualTo(picture.terrace(0, 0));
    // Beyond the ends of the lane.
    assertThat(picture.heightPm(lane, (int) ((-3250 + 4000) / 25.0))).isZero();
    assertThat(picture.heightPm(lane, (int) ((-3150 + 4000) / 25.0))).isEqualTo(-5_000_000);
  }

  @Test
  void aPictureWithoutAStockHasAMargin() {
    SurfacePicture picture = picture(left(lane(Bench.flat(), 0, -5)));
    // 16 by 256 cells; a sixteenth of the longer side and two cells more around.
    assertThat(picture.width()).isEqualTo(16 + 2 * (2 + 16));
    assertThat(picture.height()).isEqualTo(256 + 2 * (2 + 16));
    assertThat(picture.stands(0, 0)).isNotEqualTo(Stands.SURFACE);
    assertThat(picture.heightPm(picture.width() / 2, picture.height() / 2)).isEqualTo(-5_000_000);
  }

  @Test
  void aLargePictureIsReducedInProportion() {
    SurfacePicture picture =
        picture(
            left(lane(Bench.flat().cell(10).stock(-20_000, 20_000, -5000, 5000, 0, -100), 0, -5)));
    // 4000 by 1000 cells: at most 2000 along, and half a million in all.
    assertThat((long) picture.width() * picture.height())
        .isLessThanOrEqualTo(SurfacePicture.MOST_PIXELS)
        .isGreaterThan(450_000);
    assertThat(picture.width()).isLessThanOrEqualTo(2000);
    assertThat(picture.width() / (double) picture.height()).isCloseTo(4, within(0.02));
    assertThat(picture.heightPm(picture.width() / 2, picture.height() / 2)).isEqualTo(-5_000_000);
  }

  @Test
  void nothingCutAndNoStockIsNoSurface() {
    assertThat(new Bench().end().all(PartLeft.class).get(0).surfaces()).isEmpty();
  }

  @Test
  void aFloorInAFeatureHasThePartOfTheTerraceThatLiesInIt() {
    // A lane of 0.4 by 6 mm, of which 0.4 by 2 mm lie in the feature.
    Bench bench = Bench.flat().stock().feature("channel", -1000, 1000, -1000, 1000, 2);
    lane(bench, 0, -5);
    SurfaceLeft surface = left(bench);
    List<FeatureFloors> all = surface.floors(bench.model().features());
    assertThat(all).hasSize(1);
    FeatureFloors channel = all.get(0);
    assertThat(channel.feature().name()).isEqualTo("channel");
    assertThat(channel.known()).isTrue();
    assertThat(channel.left()).isEmpty();
    FeatureFloors.Floor floor =
        channel.floors().stream()
            .filter(f -> f.terrace().heightPm() != 0)
            .findFirst()
            .orElseThrow();
    assertThat(floor.terrace().heightPm()).isEqualTo(-5_000_000);
    assertThat(floor.areaMm2()).isCloseTo(0.4 * 2, within(0.03));
    assertThat(floor.lengthPm() / 1e6).isCloseTo(2000, within(26.0));
    assertThat(floor.terrace().areaMm2()).isGreaterThan(0.4 * 6);
    // What is left of the top on both sides of the lane is one or two terraces of 4 − 0.8 mm².
    double top =
        channel.floors().stream()
            .filter(f -> f.terrace().heightPm() == 0)
            .mapToDouble(FeatureFloors.Floor::areaMm2)
            .sum();
    assertThat(top).isCloseTo(4 - 0.8, within(0.1));
  }

  @Test
  void aCellBelongsToTheSmallestFeature() {
    Bench bench =
        Bench.flat()
            .stock()
            .feature("field", -2000, 2000, -2000, 2000, 2)
            .feature("channel", -300, 300, -1000, 1000, 2);
    lane(bench, 0, -5);
    SurfaceLeft surface = left(bench);
    double inChannel = 0;
    double inField = 0;
    for (FeatureFloors floors : surface.floors(bench.model().features())) {
      for (FeatureFloors.Floor floor : floors.floors()) {
        if (floor.terrace().heightPm() == -5_000_000) {
          if (floors.feature().name().equals("channel")) {
            inChannel += floor.areaMm2();
          } else {
            inField += floor.areaMm2();
          }
        }
      }
    }
    assertThat(inChannel).isCloseTo(0.8, within(0.03));
    assertThat(inField)
        .as("4 mm of the lane, less the 2 in the channel")
        .isCloseTo(0.8, within(0.03));
  }

  @Test
  void depthsAreKeptUpToTheirBound() {
    DepthStretch stretch = new DepthStretch(0, 1, OptionalLong.of(1));
    List<DepthStretch> many =
        java.util.Collections.nCopies(DepthsShown.MOST_STRETCHES / 2, stretch);
    Place at = new Place(0, 1, new Span(1, 2));
    DepthsShown.Gatherer gatherer = new DepthsShown.Gatherer();
    gatherer.take(new DepthsTaken(at, many));
    gatherer.take(new DepthsTaken(at, many));
    assertThat(gatherer.shown().complete()).isTrue();
    assertThat(gatherer.shown().moves()).hasSize(2);
    gatherer.take(new DepthsTaken(at, List.of(stretch)));
    assertThat(gatherer.shown().complete()).isFalse();
    assertThat(gatherer.shown().moves()).hasSize(2);
  }
}
