package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Event;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every table has an end, and says so when it is reached. */
class CapsTest {
  private static final StockModel.Limits ROOMY = StockModel.Limits.DEFAULT;

  private static List<String> caps(Bench bench) {
    return bench.all(Event.CapReached.class).stream().map(c -> c.what() + " " + c.cap()).toList();
  }

  private static Bench crosses(Bench bench, int count) {
    bench.g0(0, 0, 50);
    for (int k = 0; k < count; k++) {
      bench.g0(2000 * k, 0, 50).g1(2000 * k, 0, -4).g1(2000 * k + 900, 0, -4);
    }
    return bench;
  }

  @Test
  void beyondTheTilesHeightsAreUnknown() {
    // Each cut lies on tiles of its own; four across X0 and Y0 hold the first.
    Bench bench = Bench.flat().limits(new StockModel.Limits(4, 1000, 1000, 1000));
    crosses(bench.stock(-100, 60000, -4000, 4000, 0, -3000), 6);
    bench.end();
    assertThat(caps(bench)).containsExactly("tiles of the height grid 4");
    Cut first = bench.cuts().get(3);
    assertThat(Bench.um(first)).containsExactly(4.0);
    Cut last = bench.cuts().get(bench.cuts().size() - 1);
    assertThat(last.contact()).isEqualTo(Contact.YES);
    assertThat(last.surfacePartlyUnknown()).isTrue();
    assertThat(last.stepDowns()).isEmpty();
    assertThat(last.levelId()).isPositive();
  }

  @Test
  void tilesThatHaveBecomeEvenGiveTheirPlaceUp() {
    // A tool of 6.4 mm over tiles of 1.6 mm: each pass leaves whole tiles even behind it.
    Bench bench =
        new Bench()
            .tool(1, hairline.checks.setup.ToolShape.FLAT, 6400, 0, 1.5)
            .limits(new StockModel.Limits(60, 1000, 1000, 1000))
            .stock(0, 64000, 0, 64000, 0, -3000)
            .change(1)
            .g0(0, 0, 50)
            .g1(-4000, 0, -4);
    double x = 68000;
    for (double y = 0; y <= 64000; y += 3200) {
      bench.g1(x, y, -4).g1(x, y + 3200, -4);
      x = 64000 - x;
    }
    bench.end();
    assertThat(caps(bench)).isEmpty();
    assertThat(bench.cuts()).noneMatch(Cut::surfacePartlyUnknown);
  }

  @Test
  void manyTilesAtAllAreCappedToo() {
    // 32 even tiles for each uneven one.
    Bench bench =
        new Bench()
            .tool(1, hairline.checks.setup.ToolShape.FLAT, 6400, 0, 1.5)
            .limits(new StockModel.Limits(40, 1000, 1000, 1000))
            .stock(0, 64000, 0, 64000, 0, -3000)
            .change(1)
            .g0(0, 0, 50)
            .g1(-4000, 0, -4);
    double x = 68000;
    for (double y = 0; y <= 64000; y += 3200) {
      bench.g1(x, y, -4).g1(x, y + 3200, -4);
      x = 64000 - x;
    }
    bench.end();
    assertThat(caps(bench)).containsExactly("tiles of the height grid 40");
  }

  @Test
  void beyondTheLevelsNoneIsMade() {
    Bench bench = Bench.flat().stock().limits(new StockModel.Limits(2048, 1000, 2, 1000));
    bench.g0(0, 0, 50);
    for (int k = 1; k <= 4; k++) {
      bench.g0(0, 0, 50).g1(0, 0, -4 * k).g1(900, 0, -4 * k);
    }
    bench.end();
    assertThat(caps(bench)).containsExactly("levels 2");
    assertThat(bench.levels()).extracting(LevelReached::levelId).containsExactly(1, 2);
    List<Cut> level = bench.cuts().stream().filter(Cut::runsAtLevel).toList();
    assertThat(level).extracting(Cut::levelId).containsExactly(1, 2, -1, -1);
    assertThat(Bench.um(level.get(2))).containsExactly(4.0);
    // Over what is no level any more, the height is no exact difference.
    assertThat(level.get(3).stepDowns().get(0).exact()).isFalse();
    assertThat(bench.steps()).isEmpty();
  }

  @Test
  void beyondTheStepsNoneIsTold() {
    Bench bench = Bench.flat().stock().limits(new StockModel.Limits(2048, 1000, 1000, 2));
    bench.g0(0, 0, 50);
    for (int k = 1; k <= 4; k++) {
      bench.g0(0, -3000 + 1000 * k, 50).g1(0, -3000 + 1000 * k, -4 * k);
      bench.g1(900, -3000 + 1000 * k, -4 * k);
    }
    bench.end();
    assertThat(caps(bench)).containsExactly("steps 2");
    assertThat(bench.steps()).hasSize(2);
    assertThat(bench.events.get(bench.events.size() - 1)).isInstanceOf(Event.Ended.class);
  }

  @Test
  void pathsLongPastAreForgotten() {
    Bench bench = Bench.flat().stock().limits(new StockModel.Limits(2048, 100, 1000, 1000));
    bench.g0(0, 0, 50).g1(0, 0, -4).g1(3000, 0, -4);
    for (int k = 0; k < 98; k++) {
      bench.g0(-3000, 0, 50).g1(-3000, 0, -4 - 0.01 * k).g1(-2950, 0, -4 - 0.01 * k);
    }
    // The neighbour is just still known: 100 moves are kept.
    bench.g0(0, 50, 50).g1(0, 50, -4).g1(3000, 50, -4);
    assertThat(bench.last().radialMm()).hasValue(0.05);
    // One later it is not, and the side is all that can be told.
    bench.g0(0, -50, 50).g1(0, -50, -4).g1(3000, -50, -4);
    assertThat(bench.last().radialMm()).isEmpty();
    assertThat(bench.last().materialSide()).contains(Side.RIGHT);
    assertThat(caps(bench)).isEmpty();
  }

  @Test
  void aMoveTooLongToFollowLosesTheSurface() {
    // Four times as long as all tiles in a row.
    Bench bench = Bench.flat().limits(new StockModel.Limits(4, 1000, 1000, 1000));
    bench.g0(0, 0, 50).g1(0, 0, -4).g1(4 * 4 * 64 * 25, 0, -4);
    assertThat(bench.all(Event.BecameUnknown.class)).isEmpty();
    bench.g1(-1, 0, -4);
    assertThat(bench.all(Event.BecameUnknown.class))
        .extracting(Event.BecameUnknown::what)
        .containsExactly("the surface of G54: a move is too long to follow");
    assertThat(caps(bench)).contains("tiles of the height grid 4");
    assertThat(bench.last().contact()).isEqualTo(Contact.YES);
    assertThat(bench.end().steps()).isEmpty();
  }

  @Test
  void moreSurfacesUnderOneMoveThanAreToldApartAreTold() {
    int many = Removed.MOST_SURFACES + 10;
    Bench bench = Bench.flat().stock(0, 200_000, -4000, 4000, 0, -3000).limits(ROOMY).g0(0, 0, 50);
    for (int k = 0; k < many; k++) {
      double z = -1 - 0.01 * k;
      bench.g0(500 * k + 300, -100, 50).g1(500 * k + 300, -100, z).g1(500 * k + 300, 100, z);
    }
    assertThat(caps(bench)).isEmpty();
    bench.g0(0, 0, 50).g1(0, 0, -10).g1(500 * many, 0, -10);
    assertThat(caps(bench)).containsExactly("surfaces under one move 256");
    assertThat(bench.last().stepDownPm()).hasValue(Bench.pm(10));
  }
}
