package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class StarterSheetTest {
  private static final Usage USAGE =
      new Usage(
          "insert.nc",
          List.of(
              new Usage.ToolUse(3, List.of(30_000.0, 20_000.0, 30_000.0), OptionalInt.of(13)),
              new Usage.ToolUse(12, List.of(), OptionalInt.empty())),
          List.of(
              CodeWord.of('M', 71),
              CodeWord.of('M', 8),
              CodeWord.of('P', 9002),
              CodeWord.of('M', 71),
              CodeWord.of('M', 9)),
          List.of("G55", "G56"));

  @Test
  void readsAsItIs() {
    Setup setup = Sheets.read(StarterSheet.write(USAGE));
    assertThat(setup.tools()).extracting(Tool::number).containsExactly(3, 12);
    assertThat(setup.codes().words(CodeMeaning.COOLANT_ON)).containsExactly(CodeWord.of('M', 8));
    assertThat(setup.codes().words(CodeMeaning.COOLANT_OFF)).containsExactly(CodeWord.of('M', 9));
    assertThat(setup.codes().names(CodeMeaning.WARM_UP)).isFalse();
    assertThat(setup.resolve(MachineKeys.REPEATABILITY).origin()).isEqualTo(Origin.MISSING);
    assertThat(setup.resolve(JobKeys.FINE_STEP).origin()).isEqualTo(Origin.DEFAULT);
  }

  @Test
  void saysWhatTheProgramUses() {
    assertThat(StarterSheet.write(USAGE).lines().map(String::strip))
        .contains(
            "# Setup sheet for insert.nc",
            "# The program commands 20000 rpm, 30000 rpm.",
            "# The program uses M71, P9002, whose meaning only this machine knows.")
        .anyMatch(
            line -> line.matches("- number: 3 +# the program runs it at 20000 rpm, 30000 rpm"))
        .anyMatch(line -> line.matches("- number: 12 +# the program sets no speed for it"))
        .anyMatch(line -> line.matches("# length_offset: 13 +# .*; the program uses H13"))
        .anyMatch(line -> line.matches("# length_offset: 12 +# .*"))
        .anyMatch(line -> line.matches("# G55: .*"))
        .anyMatch(line -> line.matches("# G56: .*"))
        .noneMatch(line -> line.matches("# G54: .*"))
        .anyMatch(line -> line.matches("coolant_on: \\[M8] +# .*"))
        .anyMatch(
            line ->
                line.matches("resolution: 1 um +# assumed until yours stands here; least input.*"))
        .anyMatch(line -> line.matches("# smallest_step: 0\\.3 um +# the smallest move .*"))
        .anyMatch(line -> line.matches("# fine_step: 20 um +# default; a cut this shallow.*"));
  }

  /** Whoever begins a sheet loses nothing that a check finds without one. */
  @Test
  void whatIsAssumedWithoutASheetStandsOnItToo() throws SheetException {
    Setup embedded = new SheetReader().embedded();
    Setup setup = Sheets.read(StarterSheet.write(USAGE));
    assertThat(setup.givenValues()).containsAll(embedded.givenValues());
    assertThat(embedded.get(MachineKeys.NAME)).hasValue(Setup.UNKNOWN_MACHINE);
    assertThat(setup.valuesOfUnknownMachine())
        .containsOnlyKeys(
            "machine.resolution",
            "machine.inch_resolution",
            "machine.rounding",
            "machine.control.arc_tolerance")
        .containsEntry("machine.resolution", "1 um");
    assertThat(setup.withOverride("machine.resolution", "0.1 um").valuesOfUnknownMachine())
        .hasSize(3)
        .doesNotContainKey("machine.resolution");
    assertThat(setup.withOverride("machine.name", "mill").valuesOfUnknownMachine()).isEmpty();
    assertThat(embedded.valuesOfUnknownMachine()).isEmpty();
  }

  @Test
  void readsWithEveryLineFilledInAndHasEveryKey() {
    String filled =
        Pattern.compile("(?m)^( +)# ((- )?[\\w.{]+: )")
            .matcher(StarterSheet.write(USAGE))
            .replaceAll("$1$2");
    Setup setup = Sheets.read(filled);
    List<String> missing = new ArrayList<>();
    for (List<Key<?>> keys :
        List.of(
            MachineKeys.ALL,
            SpindleKeys.ALL,
            ControlKeys.ALL,
            CodeKeys.ALL,
            MaterialKeys.ALL,
            StockKeys.ALL,
            ShopKeys.ALL,
            JobKeys.ALL,
            LimitKeys.ALL,
            RuleKeys.ALL)) {
      keys.stream()
          .filter(key -> setup.resolve(key).origin() != Origin.GIVEN)
          .forEach(key -> missing.add(key.path()));
    }
    Tool tool = setup.tool(12).orElseThrow();
    ToolKeys.ALL.stream()
        .filter(key -> !key.path().startsWith("material."))
        .filter(key -> tool.resolve(key).origin() != Origin.GIVEN)
        .forEach(key -> missing.add(tool.path(key)));
    assertThat(missing).isEmpty();
    assertThat(setup.features()).hasSize(1);
    assertThat(setup.offset("G56")).isPresent();
  }

  @Test
  void readsWithNothingUsed() {
    Setup setup = Sheets.read(StarterSheet.write(new Usage("-", List.of(), List.of(), List.of())));
    assertThat(setup.tools()).isEmpty();
    assertThat(setup.codes().names(CodeMeaning.COOLANT_ON)).isFalse();
  }

  @Test
  void aHostileNameStaysInItsComment() {
    String name = "a\nmachine: evil\u202E\u001B[31m" + "x".repeat(500) + ".nc";
    String sheet = StarterSheet.write(new Usage(name, List.of(), List.of(), List.of()));
    assertThat(sheet.lines().findFirst().orElseThrow())
        .startsWith("# Setup sheet for a?machine: evil??[31mxxx")
        .hasSizeLessThan(160);
    assertThat(Sheets.read(sheet).tools()).isEmpty();
  }

  @Test
  void noLineIsWiderThanAWideScreen() {
    assertThat(
            StarterSheet.write(USAGE)
                .lines()
                .filter(line -> line.length() > 200)
                .collect(Collectors.toList()))
        .isEmpty();
  }
}
