package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/** The schema is kept fresh, and agrees with the reader as far as a schema can. */
class SheetSchemaTest {
  private static final Path KEPT =
      Path.of("src/main/resources/hairline/checks/setup/setup-sheet.schema.json");

  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(
              SchemaLocation.of("urn:hairline:setup-sheet:1"),
              SheetSchema.write(),
              InputFormat.JSON);

  @Test
  void theKeptSchemaIsFresh() throws IOException {
    if (System.getProperty("bless") != null) {
      Files.writeString(KEPT, SheetSchema.write(), StandardCharsets.UTF_8);
    }
    assertThat(Files.readString(KEPT, StandardCharsets.UTF_8))
        .as("rewritten by -Dbless")
        .isEqualTo(SheetSchema.write());
  }

  @Test
  void theSchemaIsOneOfItsDraft() {
    Schema draft =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(SchemaLocation.of(SpecificationVersion.DRAFT_2020_12.getDialectId()));
    assertThat(draft.validate(SheetSchema.write(), InputFormat.JSON)).isEmpty();
  }

  @Test
  void aWholeSheetIsValid() {
    assertThat(problems(Sheets.resource("whole-sheet.yaml"))).isEmpty();
  }

  @Test
  void theEmbeddedSheetIsValid() {
    assertThat(problems(Sheets.resource("default-setup.yaml"))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "machine: {resolution: 0.1 µm}",
        "machine: {resolution: 0.1 μm}",
        "machine: {resolution: 0.1um}",
        "machine: mill.yaml",
        "machine:",
        "tools: tools.yaml",
        "machine: {acceleration: {X: 8 m/s², Z: 6 m/s^2}}",
        "machine: {spindle: {growth: {amount: [8 um, 9 um, 11 um]}}}",
        "tools: [{number: 1, material: {youngs_modulus: 560 GPa, rupture_strength: 3 GPa}}]",
        "tools: [{number: 1, max_ramp_angle: 3°}]",
        "material: {expansion: 11.5 µm/(m·K)}",
        "material: {specific_force: 2800 N/mm²}",
        "environment: {temperature: 20 °C}",
        "job: {tolerance: +-1 um}",
        "job: {tolerance: +/-1 um}",
        "job: {tolerance: [-0.5 um, 1 um]}",
        "job: {features: [{name: a, levels: [-1 um]}]}",
        "offsets: {G59.1: {X: 1 mm}}",
        "rules: {skip: [inch-rounding], level: {cusp-above-limit: error}}",
        "limits: {step_margin: 3}"
      })
  void whatTheReaderTakesIsValid(String sheet) throws SheetException {
    if (!sheet.contains(".yaml")) {
      new SheetReader().parse(sheet, "sheet");
    }
    assertThat(problems(sheet)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "machin: {}",
        "machine: {resolution: 0.1}",
        "machine: {resolution: 3 s}",
        "machine: {resolution: [0.1 um, 0.1 um]}",
        "machine: {spindle: {waits: 1}}",
        "machine: {spindle: {growth: {amount: [8 um, 9 um]}}}",
        "machine: {control: {look_ahead: -1}}",
        "machine: {rounding: up}",
        "machine: {acceleration: {A: 8 m/s^2}}",
        "machine: {codes: {warm_up: [X71]}}",
        "tools: [{name: no number}]",
        "job: {features: [{step: 4 um}]}",
        "job: {tolerance: 1 um}",
        "offsets: {G53: {X: 1 mm}}",
        "material: {group: Q}",
        "material: {force_exponent: -0.1}",
        "limits: {air_share: 1.5}",
        "limits: {flex_share: 0}",
        "rules: {level: {cusp-above-limit: fatal}}"
      })
  void whatTheReaderRefusesIsInvalid(String sheet) {
    assertThat(Sheets.problems(sheet)).isNotEmpty();
    assertThat(problems(sheet)).isNotEmpty();
  }

  private static List<String> problems(String yaml) {
    Object loaded = new Yaml(new SafeConstructor(new LoaderOptions())).load(yaml);
    JsonNode json = new ObjectMapper().valueToTree(loaded);
    return SCHEMA.validate(json).stream().map(Object::toString).toList();
  }
}
