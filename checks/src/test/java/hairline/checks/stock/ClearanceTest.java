package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.ToolShape;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/**
 * Stock beside a tool of 0.4 mm with a shank of 1 mm: a slot 1 mm deep along X, whose walls stand
 * from 0.2 mm off its middle, in a block of 4 mm with its top at 0.
 */
class ClearanceTest {
  private static final long MM = 1_000_000_000L;
  private static final long CELL = 25_000_000;
  private static final Cutter CUTTER = new Cutter(ToolShape.FLAT, 0.2 * MM, 0, 0);

  private static StockModel.Box box(OptionalLong bottom) {
    return new StockModel.Box(-2 * MM, 2 * MM, -2 * MM, 2 * MM, 0, bottom, "G54");
  }

  private static Surface block() {
    StockModel model =
        new StockModel(
            Optional.of(box(OptionalLong.empty())),
            Map.of(),
            List.of(),
            1,
            1,
            Optional.empty(),
            CELL,
            StockModel.chordError(CELL),
            StockModel.Limits.DEFAULT);
    return new Surface("G54", model, new HeightGrid.TileBudget(4096));
  }

  private static Path line(double x0, double z0, double x1, double z1) {
    return HeightGridProperties.path(
        new HeightGridProperties.Line(
            Math.round(x0 * MM),
            0,
            Math.round(z0 * MM),
            Math.round(x1 * MM),
            0,
            Math.round(z1 * MM)));
  }

  private static Surface slotted() {
    Surface surface = block();
    surface.cut(line(-3, -1, 3, -1), CUTTER, 1, 1, new Removed(CELL));
    return surface;
  }

  private static Optional<Clearance.Found> beside(
      Surface surface, Path path, Shoulder shoulder, OptionalLong bottom) {
    return new Clearance(surface.grid, Optional.of(box(bottom)), 1e6)
        .beside(path, CUTTER, shoulder);
  }

  private static Optional<Clearance.Found> inSlot(Shoulder shoulder) {
    return beside(slotted(), line(-1, -1, 1, -1), shoulder, OptionalLong.empty());
  }

  private static Shoulder plain(double reachMm) {
    return new Shoulder(Math.round(reachMm * MM), 0.5 * MM, 0, 0.5 * MM);
  }

  /** The wall is 1 mm high: a reach of less lets the shank into it, one of as much does not. */
  @Test
  void theShankComesIntoAWallThatIsHigherThanTheReach() {
    Clearance.Found found = inSlot(plain(0.9)).orElseThrow();
    assertThat(found.depthPm()).isEqualTo(MM);
    assertThat(Math.abs((double) found.yPm())).isBetween(0.2 * MM, 0.5 * MM);
    assertThat((double) found.xPm()).isBetween(-1.5 * MM, 1.5 * MM);
    assertThat(inSlot(plain(0.9999))).isPresent();
    assertThat(inSlot(plain(1))).isEmpty();
    assertThat(inSlot(plain(1.1))).isEmpty();
  }

  /** A shank that is no wider than the slot is clear of its walls whatever its reach. */
  @Test
  void aShankAsWideAsTheSlotIsClear() {
    assertThat(inSlot(new Shoulder(MM / 10, 0.21 * MM, 0, 0.21 * MM))).isEmpty();
    assertThat(inSlot(new Shoulder(MM / 10, 0.23 * MM, 0, 0.23 * MM))).isPresent();
  }

  /**
   * A cone from 0.4 mm of reach: at 0.2125 mm off the axis, the middle of the first cell of the
   * wall, it must not be lower than 1 mm: 0.4 + L · 0.0125/0.3, so from L = 14.4 mm on it is clear.
   */
  @Test
  void aConeIsClearWhereItRisesSlowlyEnough() {
    assertThat(inSlot(new Shoulder(4 * MM / 10, 0.2 * MM, 14 * MM, 0.5 * MM))).isPresent();
    assertThat(inSlot(new Shoulder(4 * MM / 10, 0.2 * MM, 15 * MM, 0.5 * MM))).isEmpty();
  }

  /** What the tool cuts itself is not beside it, and the walls of a slot cut wide are far. */
  @Test
  void whatTheToolCutsIsNotBesideIt() {
    Surface wide = block();
    for (double y : new double[] {-0.3, 0, 0.3}) {
      long side = Math.round(y * MM);
      wide.cut(
          HeightGridProperties.path(
              new HeightGridProperties.Line(-3 * MM, side, -MM, 3 * MM, side, -MM)),
          CUTTER,
          1,
          1,
          new Removed(CELL));
    }
    Path along = line(-1, -1, 1, -1);
    assertThat(beside(wide, along, plain(0.1), OptionalLong.empty())).isEmpty();
    // Down into the uncut block: its own way is free of the shank, the stock around is not.
    Path plunge = line(0, -0.5, 0, -0.5);
    assertThat(beside(block(), plunge, plain(0.4), OptionalLong.empty()))
        .hasValueSatisfying(found -> assertThat(found.depthPm()).isEqualTo(MM / 2));
    assertThat(beside(block(), plunge, plain(0.6), OptionalLong.empty())).isEmpty();
  }

  /** A ramp from the top to 1 mm of depth: at its end most of the stock stands above the tip. */
  @Test
  void aRampIsLookedAtAlongItsWay() {
    Path ramp = line(-1, 0, 1, -1);
    Clearance.Found found = beside(block(), ramp, plain(0.3), OptionalLong.empty()).orElseThrow();
    assertThat(found.depthPm()).isEqualTo(MM);
    assertThat((double) found.xPm()).isCloseTo(1.0 * MM, within(0.5 * MM));
    assertThat(beside(block(), ramp, plain(1), OptionalLong.empty())).isEmpty();
    Clearance.Found up =
        beside(block(), line(1, -1, -1, 0), plain(0.3), OptionalLong.empty()).orElseThrow();
    assertThat(up.depthPm()).isEqualTo(MM);
    assertThat((double) up.xPm()).isCloseTo(1.0 * MM, within(0.5 * MM));
  }

  /** Stock that is no higher than its own bottom is none. */
  @Test
  void belowTheBottomThereIsNothing() {
    Path along = line(-1, -1, 1, -1);
    assertThat(beside(slotted(), along, plain(0.5), OptionalLong.of(-2 * MM))).isPresent();
    assertThat(beside(slotted(), along, plain(0.5), OptionalLong.of(0))).isEmpty();
  }
}
