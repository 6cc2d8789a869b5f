package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.MaterialGroup;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ResolvingTest {
  @Test
  void aGivenValueHoldsBeforeADefault() {
    Setup setup = Setup.builder().with(LimitKeys.STEP_MARGIN, 3.0).build();
    assertThat(setup.resolve(LimitKeys.STEP_MARGIN))
        .isEqualTo(new Resolved<>("limits.step_margin", Optional.of(3.0), Origin.GIVEN, ""));
    assertThat(setup.resolve(LimitKeys.FLEX_SHARE))
        .isEqualTo(
            new Resolved<>(
                "limits.flex_share", Optional.of(0.33), Origin.DEFAULT, "default of the sheet"));
    assertThat(setup.resolve(MachineKeys.SMALLEST_STEP))
        .isEqualTo(new Resolved<>("machine.smallest_step", Optional.empty(), Origin.MISSING, ""));
  }

  @Test
  void aToolNamesItsKeysByItsNumber() {
    Tool tool = Tool.builder(3).with(ToolKeys.DIAMETER, Length.ofMm("0.4")).build();
    Setup setup = Setup.builder().tool(tool).build();
    assertThat(setup.tool(3)).contains(tool);
    assertThat(setup.tool(4)).isEmpty();
    assertThat(tool.get(ToolKeys.DIAMETER)).contains(new Length(400_000_000));
    assertThat(tool.resolve(ToolKeys.EDGE_RADIUS))
        .isEqualTo(new Resolved<>("tools.3.edge_radius", Optional.empty(), Origin.MISSING, ""));
    assertThat(tool.resolve(ToolKeys.LENGTH_OFFSET))
        .isEqualTo(
            new Resolved<>(
                "tools.3.length_offset",
                Optional.of(3),
                Origin.DEFAULT,
                "convention: the tool's own number"));
  }

  @Test
  void theShapeGivesTheCornerRadiusOfFlatAndBall() {
    Length diameter = Length.ofMm("0.5");
    assertThat(
            Tool.builder(1)
                .with(ToolKeys.SHAPE, ToolShape.FLAT)
                .build()
                .get(ToolKeys.CORNER_RADIUS))
        .contains(Length.ZERO);
    assertThat(
            Tool.builder(1)
                .with(ToolKeys.SHAPE, ToolShape.BALL)
                .with(ToolKeys.DIAMETER, diameter)
                .build()
                .get(ToolKeys.CORNER_RADIUS))
        .contains(Length.ofMm("0.25"));
    assertThat(
            Tool.builder(1)
                .with(ToolKeys.SHAPE, ToolShape.BULL)
                .with(ToolKeys.DIAMETER, diameter)
                .build()
                .get(ToolKeys.CORNER_RADIUS))
        .isEmpty();
  }

  @Test
  void materialsBringPublishedValues() {
    Tool carbide = Tool.builder(1).with(ToolKeys.MATERIAL, ToolMaterial.CARBIDE).build();
    Resolved<Band> modulus = carbide.resolve(ToolKeys.YOUNGS_MODULUS_GPA);
    assertThat(modulus.origin()).isEqualTo(Origin.PUBLISHED);
    assertThat(modulus.value()).contains(Band.ofExact(580));
    assertThat(modulus.path()).isEqualTo("tools.1.material.youngs_modulus");
    assertThat(modulus.source()).contains("from memory");

    Setup hard = Setup.builder().with(MaterialKeys.GROUP, MaterialGroup.H).build();
    assertThat(hard.resolve(MaterialKeys.SPECIFIC_FORCE_MPA).origin()).isEqualTo(Origin.MISSING);
    assertThat(hard.get(MaterialKeys.MINIMUM_CHIP_RATIO)).contains(new Band(0.08, 0.30, 0.63));
    Setup steel = Setup.builder().with(MaterialKeys.GROUP, MaterialGroup.P).build();
    assertThat(steel.get(MaterialKeys.SPECIFIC_FORCE_MPA)).contains(new Band(1700, 1800, 2500));
    assertThat(steel.get(MaterialKeys.FORCE_EXPONENT)).contains(new Band(0.14, 0.26, 0.26));
    assertThat(hard.get(MaterialKeys.EXPANSION_UM_PER_M_K)).contains(11.5);
    Setup brass = Setup.builder().with(MaterialKeys.GROUP, MaterialGroup.N).build();
    assertThat(brass.get(MaterialKeys.EXPANSION_UM_PER_M_K)).isEmpty();
  }

  @Test
  void aToolMaterialBringsOnlyWhatIsPublished() {
    // Handbook values from memory: HSS 220 GPa, diamond 1050 GPa; none for cubic boron nitride.
    assertThat(modulus(ToolMaterial.HSS)).contains(Band.ofExact(220));
    assertThat(modulus(ToolMaterial.DIAMOND)).contains(Band.ofExact(1050));
    assertThat(modulus(ToolMaterial.CBN)).isEmpty();
    Tool carbide = Tool.builder(1).with(ToolKeys.MATERIAL, ToolMaterial.CARBIDE).build();
    assertThat(carbide.get(ToolKeys.RUPTURE_STRENGTH_MPA)).contains(new Band(3000, 3500, 4000));
    assertThat(Tool.builder(1).build().resolve(ToolKeys.YOUNGS_MODULUS_GPA).origin())
        .isEqualTo(Origin.MISSING);
  }

  private static Optional<Band> modulus(ToolMaterial material) {
    return Tool.builder(1)
        .with(ToolKeys.MATERIAL, material)
        .build()
        .get(ToolKeys.YOUNGS_MODULUS_GPA);
  }

  @Test
  void aGivenForceTakesNoPublishedExponent() {
    Setup setup =
        Setup.builder()
            .with(MaterialKeys.GROUP, MaterialGroup.P)
            .with(MaterialKeys.SPECIFIC_FORCE_MPA, Band.ofExact(1900))
            .build();
    Resolved<Band> exponent = setup.resolve(MaterialKeys.FORCE_EXPONENT);
    assertThat(exponent.origin()).isEqualTo(Origin.MISSING);
    assertThat(exponent.source()).contains("material.specific_force is given");
    assertThat(setup.resolve(MaterialKeys.MINIMUM_CHIP_RATIO).origin()).isEqualTo(Origin.PUBLISHED);
    Setup other =
        Setup.builder()
            .with(MaterialKeys.GROUP, MaterialGroup.P)
            .with(MaterialKeys.FORCE_EXPONENT, Band.ofExact(0.2))
            .build();
    assertThat(other.resolve(MaterialKeys.SPECIFIC_FORCE_MPA).source())
        .contains("material.force_exponent is given");
  }

  @Test
  void codesHaveTheMeaningThatTheSheetGivesThem() {
    Setup setup =
        Setup.builder()
            .with(CodeKeys.WARM_UP, List.of(CodeWord.of('M', 71), CodeWord.of('P', 9001)))
            .build();
    assertThat(setup.codes().meaningOf('P', 9001)).contains(CodeMeaning.WARM_UP);
    assertThat(setup.codes().meaningOf('M', 9001)).isEmpty();
    assertThat(setup.codes().names(CodeMeaning.WARM_UP)).isTrue();
    assertThat(setup.codes().names(CodeMeaning.MEASURE_TOOL)).isFalse();
  }
}
