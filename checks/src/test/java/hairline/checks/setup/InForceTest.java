package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** All values of a sheet by their names, as they would be typed. */
class InForceTest {
  private static final String SHEET =
      """
      machine: {resolution: 0.1 um, travel: {X: [-200 mm, 10 mm]}}
      tools:
        - {number: 3, shape: flat, diameter: 0.4 mm, flutes: 2, neck: {diameter: 0.36 mm, length: 2 mm}}
        - {number: 12, diameter: 1 mm}
      offsets: {G54: {X: -100 mm, Z: -61.5 mm}, G55: {Y: -50 mm}}
      stock: {x: [-2 mm, 2 mm], top: 0 mm}
      job:
        tolerance: ±1 um
        features:
          - {name: channel, x: [-2.5 mm, 2.5 mm], y: [-1 mm, 1 mm], levels: [-8 um, -12 um]}
          - {name: stairs, step: 4 um, tolerance: ±0.5 um}
      """;

  @Test
  void eachValueOfTheSheetStandsByItsName() throws SheetException {
    Map<String, String> all = new SheetReader().parse(SHEET, "sheet").valuesInForce();
    assertThat(all)
        .containsEntry("machine.resolution", "0.1 um")
        .containsEntry("machine.travel.X", "[-200 mm, 10 mm]")
        .containsEntry("tools.3.shape", "flat")
        .containsEntry("tools.3.diameter", "0.4 mm")
        .containsEntry("tools.3.neck.length", "2 mm")
        .containsEntry("tools.12.diameter", "1 mm")
        .containsEntry("offsets.G54.X", "-100 mm")
        .containsEntry("offsets.G54.Z", "-61.5 mm")
        .containsEntry("offsets.G55.Y", "-50 mm")
        .containsEntry("stock.top", "0 mm")
        .containsEntry("job.features.channel.x", "[-2.5 mm, 2.5 mm]")
        .containsEntry("job.features.channel.y", "[-1 mm, 1 mm]")
        .containsEntry("job.features.channel.levels", "[-8 um, -12 um]")
        .containsEntry("job.features.stairs.step", "4 um")
        .containsEntry("job.features.stairs.tolerance", "±0.5 um");
  }

  @Test
  void whatTheSheetLacksHasNoValueAndWhatIsAssumedHasOne() throws SheetException {
    Map<String, String> all = new SheetReader().parse(SHEET, "sheet").valuesInForce();
    assertThat(all)
        .doesNotContainKeys(
            "tools.12.shape",
            "offsets.G54.Y",
            "stock.bottom",
            "job.features.stairs.x",
            "job.features.stairs.levels",
            "job.features.channel.step")
        .as("what holds unless the sheet says otherwise")
        .containsEntry("stock.offset", "G54");
  }

  @Test
  void typingAValueBackChangesNothing() throws SheetException {
    Setup sheet = Sheets.read(Sheets.resource("whole-sheet.yaml"));
    Map<String, String> all = sheet.valuesInForce();
    assertThat(all).hasSizeGreaterThan(100);
    List<String> otherwise = new ArrayList<>();
    for (Map.Entry<String, String> value : all.entrySet()) {
      if (value.getKey().endsWith(".number")) {
        continue; // A tool keeps its number.
      }
      try {
        Map<String, String> again =
            sheet.withOverride(value.getKey(), value.getValue()).valuesInForce();
        if (!again.equals(all)) {
          otherwise.add(value + " becomes " + again.get(value.getKey()));
        }
      } catch (SheetException e) {
        otherwise.add(value + ": " + e.getMessage());
      }
    }
    assertThat(otherwise).isEmpty();
  }
}
