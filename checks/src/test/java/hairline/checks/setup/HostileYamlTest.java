package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** YAML that is broken, or built to break its reader. */
class HostileYamlTest {

  private static String only(String text) {
    List<String> problems = Sheets.problems(text);
    assertThat(problems).hasSize(1);
    return problems.get(0);
  }

  @Test
  void brokenYamlIsNamedAtItsPlace() {
    assertThat(only("machine: {resolution: 1 um\nlimits: 3"))
        .startsWith("setup.yaml:2:7: not readable as YAML: ");
    assertThat(only("machine:\n\tresolution: 1 um"))
        .startsWith("setup.yaml:2:1: not readable as YAML: ")
        .contains("indent with blanks, not tabs");
    assertThat(only("a: 1\n---\nb: 2")).startsWith("setup.yaml:2:1: not readable as YAML: ");
  }

  @Test
  void charactersThatNoTextHas() {
    assertThat(only("machine:\r\n  name: a\u0000b"))
        .isEqualTo(
            "setup.yaml:2:10: the character U+0000 is not allowed in YAML; a sheet is plain UTF-8"
                + " text");
    assertThat(only("a\rb\n\u0007")).startsWith("setup.yaml:3:1: the character U+0007 ");
    assertThat(only("\uD83D\uDE00\u001B")).startsWith("setup.yaml:1:2: the character U+001B ");
  }

  @Test
  void aByteOrderMarkIsNoText() {
    assertThat(Sheets.read("\uFEFFgauge: {uncertainty: 1 um}").get(ShopKeys.GAUGE_UNCERTAINTY))
        .contains(Length.ofUm("1"));
  }

  @Test
  void tagsDoNothing() {
    assertThat(only("machine: !!java.io.File [a]"))
        .isEqualTo(
            "setup.yaml:1:10: the tag `tag:yaml.org,2002:java.io.File` stands here; a sheet has no"
                + " tags");
    assertThat(only("machine: {name: !include secret}"))
        .isEqualTo("setup.yaml:1:17: the tag `!include` stands here; a sheet has no tags");
    assertThat(only("!a {}")).startsWith("setup.yaml:1:1: the tag");
    assertThat(Sheets.read("machine: {name: !!str mill}").get(MachineKeys.NAME)).contains("mill");
  }

  @Test
  void aPartInsideItself() {
    String sentence = "the sheet refers to itself: an alias stands inside its own anchor";
    assertThat(only("machine: &m {spindle: *m}")).startsWith("setup.yaml:1:10: " + sentence);
    assertThat(only("&all\nmachine:\n  spindle: {growth: *all}\n")).contains(sentence);
    assertThat(only("tools: &t [{number: 1}, *t]")).startsWith("setup.yaml:1:8: " + sentence);
  }

  @Test
  void aliasesThatRepeatAPart() {
    Setup setup =
        Sheets.read(
            """
            tools:
            - {number: 1, shank: &s {diameter: 3 mm, length: 20 mm}, runout: &r 1 um}
            - {number: 2, shank: *s, runout: *r}
            """);
    assertThat(setup.tool(2).orElseThrow().get(ToolKeys.SHANK_DIAMETER)).contains(Length.ofMm("3"));
    assertThat(setup.tool(2).orElseThrow().get(ToolKeys.RUNOUT))
        .contains(LengthBand.of(Length.ofUm("1")));
  }

  @Test
  void aBombOfAliases() {
    StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
    for (int i = 1; i < 30; i++) {
      bomb.append("a").append(i).append(": &a").append(i).append(" [");
      bomb.append(("*a" + (i - 1) + ", ").repeat(8)).append("*a").append(i - 1).append("]\n");
    }
    assertThat(only(bomb.toString()))
        .startsWith("setup.yaml:1:1: not readable as YAML: Number of aliases");
  }

  @Test
  void aBombBelowTheLimitOfAliasesIsReadInNoTime() {
    StringBuilder bomb = new StringBuilder("machine:\n  a0: &a0 [x, x]\n");
    for (int i = 1; i < 22; i++) {
      bomb.append("  a" + i + ": &a" + i + " [*a" + (i - 1) + ", *a" + (i - 1) + "]\n");
    }
    assertThat(Sheets.problems(bomb.toString())).hasSize(22);
  }

  @Test
  void nestedTenThousandDeep() {
    for (String open : List.of("[", "{a: ", "- ", "? ")) {
      assertThat(
              only(
                  "machine: "
                      + (open.equals("- ") || open.equals("? ") ? "\n  " : "")
                      + open.repeat(10_000)))
          .contains("not readable as YAML: Nesting Depth exceeded max 32");
    }
  }

  @Test
  void manyAnchorsAndKeys() {
    StringBuilder many = new StringBuilder("machine:\n");
    for (int i = 0; i < 50_000; i++) {
      many.append("  key").append(i).append(": &k").append(i).append(" v\n");
    }
    assertThat(Sheets.problems(many.toString())).hasSize(101);
  }

  @Test
  void moreToolsThanAShopHas() {
    String one = "- {number: 1}\n";
    assertThat(only("tools:\n" + one.repeat(1001)))
        .isEqualTo("setup.yaml:2:1: `tools`: 1001 items; at most 1000 are read");
    StringBuilder thousand = new StringBuilder("tools:\n");
    for (int i = 0; i < 1000; i++) {
      thousand.append("- {number: ").append(i).append("}\n");
    }
    assertThat(Sheets.read(thousand.toString()).tools()).hasSize(1000);
  }

  @Test
  void booleansAndOctalsKeepTheirText() {
    // YAML 1.1 would make 8 of 010 and true of y; the sheet's own reading takes the text.
    Setup setup =
        Sheets.read("tools: [{number: 010, name: yes}]\nmachine: {control: {dwell: {P: s}}}");
    assertThat(setup.tool(10).orElseThrow().get(ToolKeys.NAME)).contains("yes");
    assertThat(setup.get(ControlKeys.DWELL_P)).contains(DwellUnit.S);
  }
}
