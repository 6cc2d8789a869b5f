package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import hairline.checks.cutting.Band;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One value changed from outside. */
class WhatIfTest {
  private final Setup setup = Sheets.read(Sheets.resource("whole-sheet.yaml"));

  @Test
  void aValueOfTheSheet() throws SheetException {
    Setup changed = setup.withOverride("limits.step_margin", "3");
    assertThat(changed.get(LimitKeys.STEP_MARGIN)).contains(3.0);
    assertThat(changed.resolve(LimitKeys.STEP_MARGIN).source())
        .isEqualTo("--set limits.step_margin");
    assertThat(setup.get(LimitKeys.STEP_MARGIN)).contains(2.0);
    assertThat(changed.get(LimitKeys.FLEX_SHARE)).contains(0.33);
    assertThat(changed.tools()).isEqualTo(setup.tools());
    assertThat(changed.features()).isEqualTo(setup.features());
    assertThat(changed.offset("G54")).isEqualTo(setup.offset("G54"));
    assertThat(changed.name()).isEqualTo("setup.yaml");
    assertThat(changed.positionOf(JobKeys.CUSP)).isEqualTo(setup.positionOf(JobKeys.CUSP));
  }

  @Test
  void aValueOfATool() throws SheetException {
    Setup changed =
        setup
            .withOverride("tools.3.edge_radius", "[1 um, 2 um, 3 um]")
            .withOverride("tools.3.neck.length", "3 mm")
            .withOverride("tools.3.material", "{youngs_modulus: 600 GPa}");
    Tool tool = changed.tool(3).orElseThrow();
    assertThat(tool.get(ToolKeys.EDGE_RADIUS).map(LengthBand::um)).contains(new Band(1, 2, 3));
    assertThat(tool.get(ToolKeys.NECK_LENGTH)).contains(Length.ofMm("3"));
    assertThat(tool.get(ToolKeys.NECK_DIAMETER)).contains(Length.ofMm("0.37"));
    assertThat(tool.get(ToolKeys.YOUNGS_MODULUS_GPA)).contains(Band.ofExact(600));
    assertThat(tool.resolve(ToolKeys.RUPTURE_STRENGTH_MPA).origin()).isEqualTo(Origin.PUBLISHED);
    assertThat(
            changed
                .withOverride("tools.3.material", "hss")
                .tool(3)
                .orElseThrow()
                .resolve(ToolKeys.RUPTURE_STRENGTH_MPA)
                .origin())
        .isEqualTo(Origin.MISSING);
    assertThat(setup.tool(3).orElseThrow().get(ToolKeys.NECK_LENGTH)).contains(Length.ofMm("2"));
  }

  @Test
  void anAxisOfAnOffset() throws SheetException {
    Setup changed = setup.withOverride("offsets.g54.Z", "-61 mm");
    assertThat(changed.offset("G54"))
        .contains(
            new Offset(
                "G54",
                Optional.of(Length.ofMm("-20")),
                Optional.of(Length.ofMm("5")),
                Optional.of(Length.ofMm("-61"))));
    Setup fine = Sheets.read("offsets: {G59.1: {Z: 1 mm}}").withOverride("offsets.G59.1.X", "2 mm");
    assertThat(fine.offset("G59.1"))
        .contains(
            new Offset(
                "G59.1",
                Optional.of(Length.ofMm("2")),
                Optional.empty(),
                Optional.of(Length.ofMm("1"))));
  }

  @Test
  void aValueOfAFeature() throws SheetException {
    Setup changed = setup.withOverride("job.features.mixer cascade.step", "5 um");
    assertThat(changed.features().get(0).step()).contains(Length.ofUm("5"));
    assertThat(changed.features().get(0).x()).isEqualTo(setup.features().get(0).x());
    assertThat(changed.features().get(0).tolerance()).isPresent();
    assertThat(changed.features().get(1)).isEqualTo(setup.features().get(1));
    assertThat(
            setup
                .withOverride("job.features.inlet ladder.tolerance", "±0.25 um")
                .features()
                .get(1)
                .levels())
        .hasSize(3);
  }

  @Test
  void severalValuesOfOneMapping() throws SheetException {
    Setup changed = setup.withOverride("machine.spindle.growth", "{at: 40000 rpm, amount: 7 um}");
    assertThat(changed.get(SpindleKeys.GROWTH_AT_RPM)).contains(40_000.0);
    assertThat(changed.get(SpindleKeys.GROWTH_AMOUNT)).contains(LengthBand.of(Length.ofUm("7")));
    assertThat(changed.get(SpindleKeys.GROWTH_TIME_CONSTANT_S)).contains(Band.ofExact(360));
  }

  @Test
  void theEmbeddedSheetStaysEmbedded() throws SheetException {
    Setup changed = new SheetReader().embedded().withOverride("machine.resolution", "0.1 um");
    assertThat(changed.embedded()).isTrue();
    assertThat(changed.get(MachineKeys.RESOLUTION)).contains(Length.ofUm("0.1"));
  }

  @Test
  void rulesByTheirNames() throws SheetException {
    Setup known = new SheetReader(Set.of("inch-rounding")).parse("", "s");
    assertThat(known.withOverride("rules.skip", "[inch-rounding]").get(RuleKeys.SKIP))
        .contains(List.of("inch-rounding"));
    SheetException thrown =
        catchThrowableOfType(
            SheetException.class, () -> known.withOverride("rules.skip", "[inch-round]"));
    assertThat(thrown.problems().get(0).toString())
        .isEqualTo(
            "--set rules.skip: `rules.skip`: there is no rule `inch-round`; nearest is"
                + " `inch-rounding`");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      value = {
        "limits.step_margn ~ 3 ~ unknown key `limits.step_margn`; nearest is `limits.step_margin`",
        "step_margin ~ 3 ~ unknown key `step_margin`; nearest is `limits.step_margin`",
        "machine.zzzzzzzzzzzzzzz ~ 3 ~ unknown key `machine.zzzzzzzzzzzzzzz`; the keys here are name, resolution, inch_resolution, rounding, smallest_step, repeatability, reversal, travel, rapid, acceleration, jerk, spindle, control, codes",
        "limits.step_margin.x ~ 3 ~ unknown key `limits.step_margin.x`; nearest is `limits.step_margin`",
        "limits.step_margin ~ 2 mm ~ `limits.step_margin`: `2 mm` has a unit; the key takes a plain number: `2`",
        "limits.step_margin ~ '' ~ `limits.step_margin`: no value; key=value is due",
        "tools.4.edge_radius ~ 2 um ~ `tools.4.edge_radius` names no value of a listed tool; the sheet lists tools.3",
        "tools.3 ~ 2 um ~ `tools.3` names no value of a listed tool; the sheet lists tools.3",
        "tools.3.number ~ 4 ~ `tools.3.number`: a tool keeps its number; other keys can be set",
        "tools.3.edge ~ 2 um ~ unknown key `tools.3.edge`; the keys here are number, name, shape, diameter, corner_radius, flutes, edge_radius, cutting_length, neck, taper_length, shank, length, material, runout, length_offset, max_feed_per_tooth, max_ramp_angle, life, surface_speed",
        "tools ~ x.yaml ~ `tools` is a list; one value of one of its items can be set",
        "machine ~ x.yaml ~ `machine` names the file `x.yaml`, but this sheet is no file itself; write it out in its place",
        "offsets.G55.X ~ 1 mm ~ `offsets.G55.X` names no axis of a listed work offset; the sheet lists offsets.G54",
        "offsets.G54 ~ 1 mm ~ `offsets.G54` names no axis of a listed work offset; the sheet lists offsets.G54",
        "offsets.G54.A ~ 1 mm ~ unknown key `offsets.G54.A`; the keys here are X, Y, Z",
        "job.features.x.step ~ 1 um ~ `job.features.x.step` names no value of a listed feature; the sheet lists job.features.mixer cascade, job.features.inlet ladder",
        "job.features.inlet ladder.name ~ a ~ `job.features.inlet ladder.name`: a feature keeps its name; other keys can be set",
        "job.features.inlet ladder.step ~ 4 um ~ `job.features.inlet ladder.step` (4 um) differs from a step of its `levels` (6 um); one of the two is to go",
        "tools.3.neck.diameter ~ 0.4 mm ~ `tools.3.neck.diameter`: 0.4 mm with a cutting diameter of 0.4 mm; a neck is thinner than the cutting diameter, DN < DC; a tool without one has no neck",
        "stock.top ~ -3 mm ~ `stock.bottom` (-3 mm) is not below `stock.top` (-3 mm); Z points up, out of the part",
      })
  void whatCannotBeSet(String key, String value, String problem) {
    SheetException thrown =
        catchThrowableOfType(SheetException.class, () -> setup.withOverride(key, value));
    assertThat(thrown).isNotNull();
    assertThat(thrown.problems()).hasSize(1);
    SheetProblem only = thrown.problems().get(0);
    assertThat(only.sentence() + "; " + only.cure()).isEqualTo(problem);
  }

  @Test
  void aSheetThatListsNothing() {
    SheetException thrown =
        catchThrowableOfType(
            SheetException.class,
            () -> new SheetReader().embedded().withOverride("tools.1.runout", "1 um"));
    assertThat(thrown.problems())
        .extracting(SheetProblem::cure)
        .containsExactly("the sheet lists none");
  }

  @Test
  void aProblemStandsAtTheOption() {
    SheetException thrown =
        catchThrowableOfType(
            SheetException.class, () -> setup.withOverride("rules.level", "{inch-rounding: x}"));
    assertThat(thrown.problems().get(0).position())
        .isEqualTo(new SourcePosition("--set rules.level", 1, 17));
  }
}
