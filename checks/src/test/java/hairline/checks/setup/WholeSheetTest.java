package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.MaterialGroup;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Every key of a sheet that gives them all but the ones of the modulus, by its exact value. */
class WholeSheetTest {
  private final Setup setup = read();

  private static Setup read() {
    try {
      return new SheetReader().parse(Sheets.resource("whole-sheet.yaml"), "setup.yaml");
    } catch (SheetException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void machine() {
    assertThat(setup.get(MachineKeys.NAME)).contains("bench mill 2");
    assertThat(setup.get(MachineKeys.RESOLUTION)).contains(new Length(100_000));
    // 0.00001 in = 0.000254 mm exactly (1 in = 25.4 mm by definition).
    assertThat(setup.get(MachineKeys.INCH_RESOLUTION)).contains(new Length(254_000));
    assertThat(setup.get(MachineKeys.ROUNDING)).contains(Rounding.NEAREST);
    assertThat(setup.get(MachineKeys.SMALLEST_STEP)).contains(new Length(300_000));
    assertThat(setup.get(MachineKeys.REPEATABILITY)).contains(new Length(400_000));
    assertThat(setup.get(MachineKeys.REVERSAL)).contains(new Length(500_000));
    assertThat(setup.get(MachineKeys.TRAVEL_X)).contains(range("-150", "150"));
    assertThat(setup.get(MachineKeys.TRAVEL_Y)).contains(range("-110", "110"));
    assertThat(setup.get(MachineKeys.TRAVEL_Z)).contains(range("-120", "5"));
    assertThat(setup.get(MachineKeys.RAPID_MM_PER_MIN)).contains(AxisValues.alongPath(15_000));
    assertThat(setup.get(MachineKeys.ACCELERATION_MM_PER_S2)).contains(AxisValues.alongPath(8_000));
    assertThat(setup.get(MachineKeys.JERK_MM_PER_S3)).contains(AxisValues.alongPath(400_000));
  }

  @Test
  void spindle() {
    assertThat(setup.get(SpindleKeys.MIN_SPEED_RPM)).contains(4_000.0);
    assertThat(setup.get(SpindleKeys.MAX_SPEED_RPM)).contains(60_000.0);
    assertThat(setup.get(SpindleKeys.RUN_UP_S)).contains(1.5);
    assertThat(setup.get(SpindleKeys.WAITS)).contains(true);
    assertThat(setup.get(SpindleKeys.GROWTH_AT_RPM)).contains(50_000.0);
    assertThat(setup.get(SpindleKeys.GROWTH_AMOUNT)).contains(LengthBand.of(new Length(9_000_000)));
    assertThat(setup.get(SpindleKeys.GROWTH_TIME_CONSTANT_S)).contains(Band.ofExact(360));
    assertThat(setup.get(SpindleKeys.GROWTH_EXPONENT)).contains(Band.ofExact(1.5));
    assertThat(setup.resolve(SpindleKeys.GROWTH_EXPONENT).origin()).isEqualTo(Origin.GIVEN);
    assertThat(setup.get(SpindleKeys.GROWTH_INSTANT)).contains(Length.ZERO);
    assertThat(setup.get(SpindleKeys.WARM_UP_TIME_S)).contains(720.0);
    assertThat(setup.get(SpindleKeys.WARM_UP_MIN_SPEED_RPM)).contains(20_000.0);
    assertThat(setup.get(SpindleKeys.WARM_UP_SPEED_RPM)).isEmpty();
    assertThat(setup.get(SpindleKeys.WARM_UP_VALID_FOR_S)).contains(1200.0);
    assertThat(setup.get(SpindleKeys.WARM_UP_WHERE)).contains(WarmUpPlace.PROGRAM);
  }

  @Test
  void control() {
    assertThat(setup.get(ControlKeys.START_UNITS)).contains(StartUnits.MM);
    assertThat(setup.get(ControlKeys.START_PLANE)).contains(StartPlane.XY);
    assertThat(setup.get(ControlKeys.START_DISTANCE)).contains(StartDistance.ABSOLUTE);
    assertThat(setup.get(ControlKeys.START_FEED)).contains(StartFeed.PER_MINUTE);
    assertThat(setup.get(ControlKeys.DECIMAL_POINT)).contains(DecimalPoint.REQUIRED);
    assertThat(setup.get(ControlKeys.BLOCK_TIME_S)).contains(0.0004);
    assertThat(setup.get(ControlKeys.LOOK_AHEAD_BLOCKS)).contains(200);
    assertThat(setup.get(ControlKeys.DWELL_P)).contains(DwellUnit.S);
    assertThat(setup.get(ControlKeys.DWELL_X)).contains(DwellUnit.S);
    assertThat(setup.get(ControlKeys.INCREMENTAL)).contains(IncrementalRounding.EACH_WORD);
    assertThat(setup.get(ControlKeys.COMPENSATION)).contains(CompensationShift.RADIUS);
    assertThat(setup.get(ControlKeys.ARC_TOLERANCE)).contains(new Length(2_000_000));
    assertThat(setup.get(ControlKeys.PATH_TOLERANCE)).contains(new Length(1_000_000));
    assertThat(setup.get(ControlKeys.FEED_RESOLUTION_MM_PER_MIN)).contains(0.1);
    assertThat(setup.get(ControlKeys.PECK_GAP)).contains(new Length(250_000_000));
    assertThat(setup.get(ControlKeys.CALL_DEPTH)).contains(10);
    assertThat(setup.get(ControlKeys.STEP_BUDGET_BLOCKS)).contains(50_000_000L);
    assertThat(setup.get(ControlKeys.LENGTH_OFFSET)).contains(LengthOffsetUse.PROGRAM);
  }

  @Test
  void codes() {
    Codes codes = setup.codes();
    assertThat(codes.words(CodeMeaning.WARM_UP))
        .containsExactly(CodeWord.of('M', 71), CodeWord.of('P', 9001));
    assertThat(codes.meaningOf('M', 72)).contains(CodeMeaning.MEASURE_TOOL);
    assertThat(codes.meaningOf('P', 9002)).contains(CodeMeaning.MEASURE_TOOL);
    assertThat(codes.meaningOf('M', 7)).contains(CodeMeaning.COOLANT_ON);
    assertThat(codes.meaningOf('M', 8)).contains(CodeMeaning.COOLANT_ON);
    assertThat(codes.meaningOf('M', 9)).contains(CodeMeaning.COOLANT_OFF);
    assertThat(codes.meaningOf('M', 90)).contains(CodeMeaning.IGNORE);
    assertThat(codes.meaningOf('M', 3)).isEmpty();
  }

  @Test
  void tools() {
    assertThat(setup.tools()).hasSize(1);
    Tool tool = setup.tool(3).orElseThrow();
    assertThat(tool.number()).isEqualTo(3);
    assertThat(tool.get(ToolKeys.NAME)).contains("flat end mill 0.4");
    assertThat(tool.get(ToolKeys.SHAPE)).contains(ToolShape.FLAT);
    assertThat(tool.get(ToolKeys.DIAMETER)).contains(Length.ofMm("0.4"));
    assertThat(tool.resolve(ToolKeys.CORNER_RADIUS).origin()).isEqualTo(Origin.GIVEN);
    assertThat(tool.get(ToolKeys.CORNER_RADIUS)).contains(Length.ZERO);
    assertThat(tool.get(ToolKeys.FLUTES)).contains(2);
    assertThat(tool.get(ToolKeys.EDGE_RADIUS)).contains(LengthBand.of(Length.ofUm("1.5")));
    assertThat(tool.get(ToolKeys.CUTTING_LENGTH)).contains(Length.ofMm("0.6"));
    assertThat(tool.get(ToolKeys.NECK_DIAMETER)).contains(Length.ofMm("0.37"));
    assertThat(tool.get(ToolKeys.NECK_LENGTH)).contains(Length.ofMm("2"));
    assertThat(tool.get(ToolKeys.TAPER_LENGTH)).contains(Length.ofMm("6"));
    assertThat(tool.get(ToolKeys.SHANK_DIAMETER)).contains(Length.ofMm("4"));
    assertThat(tool.get(ToolKeys.SHANK_LENGTH)).contains(Length.ofMm("12"));
    assertThat(tool.get(ToolKeys.LENGTH)).contains(Length.ofMm("20"));
    assertThat(tool.get(ToolKeys.MATERIAL)).contains(ToolMaterial.CARBIDE);
    assertThat(tool.resolve(ToolKeys.YOUNGS_MODULUS_GPA).origin()).isEqualTo(Origin.PUBLISHED);
    assertThat(tool.get(ToolKeys.RUNOUT)).contains(LengthBand.of(Length.ofUm("0.8")));
    assertThat(tool.resolve(ToolKeys.LENGTH_OFFSET).origin()).isEqualTo(Origin.GIVEN);
    assertThat(tool.get(ToolKeys.LENGTH_OFFSET)).contains(3);
    assertThat(tool.get(ToolKeys.MAX_FEED_PER_TOOTH)).contains(Length.ofUm("12"));
    assertThat(tool.get(ToolKeys.MAX_RAMP_ANGLE_DEG)).contains(3.0);
    assertThat(tool.get(ToolKeys.LIFE)).contains(Length.ofMm("20000"));
    assertThat(tool.get(ToolKeys.SURFACE_SPEED_M_PER_MIN)).contains(new NumberRange(40, 160));
    assertThat(tool.positionOf(ToolKeys.DIAMETER))
        .contains(new SourcePosition("setup.yaml", 46, 15));
  }

  @Test
  void material() {
    assertThat(setup.get(MaterialKeys.NAME)).contains("hardened tool steel, 54 HRC");
    assertThat(setup.get(MaterialKeys.GROUP)).contains(MaterialGroup.H);
    assertThat(setup.get(MaterialKeys.SPECIFIC_FORCE_MPA)).contains(Band.ofExact(2800));
    assertThat(setup.get(MaterialKeys.FORCE_EXPONENT)).contains(Band.ofExact(0.25));
    assertThat(setup.get(MaterialKeys.MINIMUM_CHIP_RATIO)).contains(Band.ofExact(0.30));
    assertThat(setup.get(MaterialKeys.EXPANSION_UM_PER_M_K)).contains(11.5);
  }

  @Test
  void placeAndSurroundings() {
    assertThat(setup.offset("G54"))
        .contains(
            new Offset(
                "G54",
                Optional.of(Length.ofMm("-20")),
                Optional.of(Length.ofMm("5")),
                Optional.of(Length.ofMm("-60"))));
    assertThat(setup.offset("G55")).isEmpty();
    assertThat(setup.get(StockKeys.X)).contains(range("-6", "6"));
    assertThat(setup.get(StockKeys.Y)).contains(range("-4", "4"));
    assertThat(setup.get(StockKeys.TOP)).contains(Length.ZERO);
    assertThat(setup.get(StockKeys.BOTTOM)).contains(Length.ofMm("-3"));
    assertThat(setup.resolve(StockKeys.OFFSET).origin()).isEqualTo(Origin.DEFAULT);
    assertThat(setup.get(StockKeys.OFFSET)).contains("G54");
    assertThat(setup.get(ShopKeys.TEMPERATURE_DEG_C)).contains(20.0);
    assertThat(setup.get(ShopKeys.SWING_K)).contains(0.5);
    assertThat(setup.get(ShopKeys.LOOP)).contains(Length.ofMm("60"));
    assertThat(setup.get(ShopKeys.LOOP_EXPANSION_UM_PER_M_K)).contains(11.5);
    assertThat(setup.get(ShopKeys.GAUGE_UNCERTAINTY)).contains(Length.ofUm("0.3"));
    assertThat(setup.get(ShopKeys.SETTING_UNCERTAINTY)).contains(Length.ofUm("0.4"));
    assertThat(setup.get(ShopKeys.TOOL_CHANGE_S)).contains(4.0);
    assertThat(setup.get(ShopKeys.MEASURING_S)).contains(12.0);
  }

  @Test
  void job() {
    assertThat(setup.get(JobKeys.TOLERANCE)).contains(Tolerance.plusMinus(Length.ofUm("1")));
    assertThat(setup.get(JobKeys.WALL_TOLERANCE)).contains(Tolerance.plusMinus(Length.ofUm("2")));
    assertThat(setup.get(JobKeys.CUSP)).contains(Length.ofUm("0.2"));
    assertThat(setup.get(JobKeys.FINE_STEP)).contains(Length.ofUm("20"));
    assertThat(setup.get(JobKeys.FINE_TOOL)).contains(Length.ofMm("1"));
    assertThat(setup.features())
        .containsExactly(
            new Feature(
                "mixer cascade",
                Optional.of(range("-2", "2")),
                Optional.of(range("-1", "1")),
                Optional.of(Length.ofUm("4")),
                List.of(),
                Optional.of(Tolerance.plusMinus(Length.ofUm("0.5")))),
            new Feature(
                "inlet ladder",
                Optional.of(range("2.5", "5")),
                Optional.of(range("-1", "1")),
                Optional.empty(),
                List.of(Length.ofUm("-4"), Length.ofUm("-8"), Length.ofUm("-14")),
                Optional.empty()));
    assertThat(setup.toleranceOf(setup.features().get(0)))
        .isEqualTo(
            new Resolved<>(
                "job.features.mixer cascade.tolerance",
                Optional.of(Tolerance.plusMinus(Length.ofUm("0.5"))),
                Origin.GIVEN,
                ""));
    assertThat(setup.toleranceOf(setup.features().get(1)).path()).isEqualTo("job.tolerance");
  }

  @Test
  void limitsAndRules() {
    assertThat(setup.get(LimitKeys.FLEX_SHARE)).contains(0.33);
    assertThat(setup.get(LimitKeys.GROWTH_SHARE)).contains(0.33);
    assertThat(setup.get(LimitKeys.STEP_MARGIN)).contains(2.0);
    assertThat(setup.get(LimitKeys.IDLE_TIME_S)).contains(60.0);
    assertThat(setup.get(LimitKeys.MEASURE_EVERY_S)).contains(2700.0);
    assertThat(setup.get(LimitKeys.AIR_SHARE)).contains(0.5);
    assertThat(setup.get(RuleKeys.SKIP)).contains(List.of());
    assertThat(setup.get(RuleKeys.LEVEL)).contains(Map.of());
  }

  private static LengthRange range(String loMm, String hiMm) {
    return new LengthRange(Length.ofMm(loMm), Length.ofMm(hiMm));
  }
}
