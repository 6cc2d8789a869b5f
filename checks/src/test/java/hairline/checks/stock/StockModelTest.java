package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.CompensationShift;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthBand;
import hairline.checks.setup.LengthRange;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.StockKeys;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.setup.ToolShape;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/** What the stage takes from a setup sheet. */
class StockModelTest {

  private static Setup.Builder stock() {
    return Setup.builder()
        .with(StockKeys.X, new LengthRange(Length.ofMm("-6"), Length.ofMm("6")))
        .with(StockKeys.Y, new LengthRange(Length.ofMm("-4"), Length.ofMm("4")))
        .with(StockKeys.TOP, Length.ofMm("0.5"));
  }

  private static Tool tool(int number, String diameterMm) {
    return Tool.builder(number)
        .with(ToolKeys.SHAPE, ToolShape.FLAT)
        .with(ToolKeys.DIAMETER, Length.ofMm(diameterMm))
        .build();
  }

  @Test
  void takesTheSheetsValues() {
    StockModel model =
        StockModel.of(
            stock()
                .with(StockKeys.BOTTOM, Length.ofMm("-3"))
                .with(StockKeys.OFFSET, "G55")
                .with(JobKeys.FINE_STEP, Length.ofUm("12"))
                .with(JobKeys.FINE_TOOL, Length.ofUm("600"))
                .with(ControlKeys.COMPENSATION, CompensationShift.WEAR)
                .tool(tool(3, "0.4"))
                .tool(tool(5, "0.3"))
                .build());
    assertThat(model.box())
        .contains(
            new StockModel.Box(
                -6_000_000_000L,
                6_000_000_000L,
                -4_000_000_000L,
                4_000_000_000L,
                500_000_000L,
                OptionalLong.of(-3_000_000_000L),
                "G55"));
    assertThat(model.fineStepPm()).isEqualTo(12_000_000);
    assertThat(model.fineToolPm()).isEqualTo(600_000_000);
    assertThat(model.compensation()).contains(CompensationShift.WEAR);
    assertThat(model.tools()).containsOnlyKeys(3, 5);
    // A hundredth of 0.3 mm.
    assertThat(model.cellPm()).isEqualTo(3_000_000);
    assertThat(model.chordErrorPm()).isEqualTo(3_000_000 / 64.0);
    assertThat(model.limits()).isEqualTo(StockModel.Limits.DEFAULT);
  }

  @Test
  void whatIsMissingStaysMissing() {
    StockModel model = StockModel.of(Setup.builder().build());
    assertThat(model.box()).isEmpty();
    assertThat(model.compensation()).isEmpty();
    assertThat(model.fineStepPm()).isEqualTo(20_000_000);
    assertThat(model.fineToolPm()).isEqualTo(1_000_000_000);
    assertThat(model.cellPm()).isEqualTo(25_000_000);
    assertThat(StockModel.of(stock().build()).box().orElseThrow().bottomPm()).isEmpty();
    assertThat(StockModel.of(stock().build()).box().orElseThrow().offset()).isEqualTo("G54");
    assertThat(
            StockModel.of(
                    Setup.builder()
                        .with(StockKeys.X, new LengthRange(Length.ofMm("0"), Length.ofMm("6")))
                        .with(StockKeys.TOP, Length.ofMm("0"))
                        .build())
                .box())
        .isEmpty();
  }

  @Test
  void cellsAreEvenAndNotTooSmall() {
    assertThat(StockModel.of(Setup.builder().tool(tool(1, "0.000401")).build()).cellPm())
        .isEqualTo(100_000);
    assertThat(StockModel.of(Setup.builder().tool(tool(1, "0.1000002")).build()).cellPm())
        .isEqualTo(1_000_002);
    assertThat(StockModel.of(Setup.builder().tool(tool(1, "0.1000001")).build()).cellPm())
        .isEqualTo(1_000_000);
    for (long cell : new long[] {99_998, 100_001}) {
      assertThatThrownBy(
              () ->
                  new StockModel(
                      Optional.empty(),
                      Map.of(),
                      List.of(),
                      1,
                      1,
                      Optional.empty(),
                      cell,
                      1000,
                      StockModel.Limits.DEFAULT))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining(Long.toString(cell));
    }
  }

  @Test
  void largeStockHasCoarserCells() {
    Setup.Builder sheet =
        Setup.builder()
            .with(StockKeys.X, new LengthRange(Length.ofMm("0"), Length.ofMm("40")))
            .with(StockKeys.Y, new LengthRange(Length.ofMm("0"), Length.ofMm("20")))
            .with(StockKeys.TOP, Length.ofMm("0"))
            .tool(tool(1, "0.2"));
    double cell = StockModel.of(sheet.build()).cellPm();
    double tiles = (40e9 / (64 * cell) + 2) * (20e9 / (64 * cell) + 2);
    assertThat(tiles).isCloseTo(StockModel.Limits.DEFAULT.tiles(), within(1.0));
    sheet.with(StockKeys.X, new LengthRange(Length.ofMm("0"), Length.ofMm("4000")));
    assertThat(StockModel.of(sheet.build()).cellPm()).isEqualTo(12_500_000);
  }

  @Test
  void chordsKeepToATenthOfTheResolution() {
    StockModel model =
        StockModel.of(
            stock().with(MachineKeys.RESOLUTION, Length.ofUm("0.1")).tool(tool(3, "0.4")).build());
    assertThat(model.chordErrorPm()).isEqualTo(10_000);
  }

  @Test
  void otherCapsKeepTheRest() {
    StockModel model = StockModel.of(stock().tool(tool(1, "0.4")).build());
    StockModel.Limits few = new StockModel.Limits(1, 2, 3, 4);
    assertThat(model.withLimits(few).limits()).isEqualTo(few);
    assertThat(model.withLimits(few).withLimits(model.limits())).isEqualTo(model);
  }

  private static Tool.Builder cutter(ToolShape shape) {
    return Tool.builder(1)
        .with(ToolKeys.SHAPE, shape)
        .with(ToolKeys.DIAMETER, Length.ofMm("0.4"))
        .with(ToolKeys.CORNER_RADIUS, Length.ofUm("50"));
  }

  @Test
  void cuttersFollowTheirShape() {
    Cutter flat = Cutter.of(cutter(ToolShape.FLAT).build()).orElseThrow();
    assertThat(flat).isEqualTo(new Cutter(ToolShape.FLAT, 2e8, 0, 0));
    assertThat(flat.flat()).isTrue();
    assertThat(flat.leavesFloor()).isTrue();
    assertThat(flat.profilePm(2e8)).isZero();
    Cutter ball = Cutter.of(cutter(ToolShape.BALL).build()).orElseThrow();
    assertThat(ball).isEqualTo(new Cutter(ToolShape.BALL, 2e8, 2e8, 0));
    assertThat(ball.flat()).isFalse();
    assertThat(ball.leavesFloor()).isFalse();
    assertThat(ball.flatRadiusPm()).isZero();
    // 3-4-5: 120 from the axis of a ball of 200 it is 200 - 160 high.
    assertThat(ball.profilePm(1.2e8)).isEqualTo(4e7);
    assertThat(ball.profilePm(0)).isZero();
    assertThat(ball.profilePm(2e8)).isEqualTo(2e8);
    assertThat(ball.profilePm(2.1e8)).isEqualTo(2e8);
    Cutter bull =
        Cutter.of(
                cutter(ToolShape.BULL)
                    .with(ToolKeys.EDGE_RADIUS, LengthBand.of(Length.ofUm("1.5")))
                    .build())
            .orElseThrow();
    assertThat(bull).isEqualTo(new Cutter(ToolShape.BULL, 2e8, 5e7, 1_500_000));
    assertThat(bull.leavesFloor()).isTrue();
    assertThat(bull.profilePm(1.5e8)).isZero();
    // 30 out of 50: 10 high.
    assertThat(bull.profilePm(1.8e8)).isEqualTo(1e7);
    assertThat(Cutter.of(cutter(ToolShape.BULL).with(ToolKeys.CORNER_RADIUS, Length.ZERO).build()))
        .contains(new Cutter(ToolShape.FLAT, 2e8, 0, 0));
    assertThat(
            Cutter.of(
                cutter(ToolShape.BULL).with(ToolKeys.CORNER_RADIUS, Length.ofMm("0.3")).build()))
        .contains(new Cutter(ToolShape.BULL, 2e8, 2e8, 0));
  }

  @Test
  void withoutDiameterOrShapeThereIsNoCutter() {
    assertThat(Cutter.of(Tool.builder(1).with(ToolKeys.SHAPE, ToolShape.FLAT).build())).isEmpty();
    assertThat(Cutter.of(Tool.builder(1).with(ToolKeys.DIAMETER, Length.ofMm("0.4")).build()))
        .isEmpty();
    assertThat(Cutter.of(cutter(ToolShape.FLAT).with(ToolKeys.DIAMETER, Length.ZERO).build()))
        .isEmpty();
  }
}
