package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sheets in files: what they refer to, what can't be read, which one goes with a program. */
class SheetFilesTest {
  @TempDir private Path folder;

  /** The folder by its own name, so that paths compare whatever links the system has. */
  private Path root = Path.of("");

  @BeforeEach
  void resolve() throws IOException {
    root = folder.toRealPath();
  }

  private Path write(String name, String text) throws IOException {
    Path file = root.resolve(name);
    Path parent = file.getParent();
    if (parent != null) {
      Files.createDirectories(parent);
    }
    return Files.writeString(file, text, StandardCharsets.UTF_8);
  }

  private List<String> problems(Path sheet) {
    SheetException thrown =
        catchThrowableOfType(SheetException.class, () -> new SheetReader().read(sheet));
    assertThat(thrown).isNotNull();
    return thrown.problems().stream()
        .map(problem -> problem.toString().replace(root + "/", ""))
        .toList();
  }

  @Test
  void machineAndToolsByReference() throws Exception {
    write("shop/mill.yaml", "resolution: 0.1 um\nspindle: {max_speed: 60000 rpm}\n");
    write("shop/tools.yaml", "- number: 3\n  diameter: 0.4 mm\n- number: 4\n");
    Path sheet =
        write("jobs/a/setup.yaml", "machine: ../../shop/mill.yaml\ntools: ../../shop/tools.yaml\n");
    Setup setup = new SheetReader().read(sheet);
    assertThat(setup.name()).isEqualTo(sheet.toString());
    assertThat(setup.get(MachineKeys.RESOLUTION)).contains(Length.ofUm("0.1"));
    assertThat(setup.get(SpindleKeys.MAX_SPEED_RPM)).contains(60_000.0);
    assertThat(setup.tools()).extracting(Tool::number).containsExactly(3, 4);
    assertThat(setup.positionOf(SpindleKeys.MAX_SPEED_RPM))
        .contains(new SourcePosition(root.resolve("shop/mill.yaml").toString(), 2, 22));
    assertThat(setup.tool(3).orElseThrow().positionOf(ToolKeys.DIAMETER))
        .contains(new SourcePosition(root.resolve("shop/tools.yaml").toString(), 2, 13));
  }

  @Test
  void problemsStandInTheFileThatHasThem() throws Exception {
    write("mill.yaml", "resolution: 1\n");
    write("tools.yaml", "- number: 3\n  diametre: 0.4 mm\n");
    Path sheet = write("setup.yaml", "machine: mill.yaml\ntools: tools.yaml\nlimit: 3\n");
    assertThat(problems(sheet))
        .containsExactly(
            "setup.yaml:3:1: unknown key `limit`; nearest is `limits`",
            "mill.yaml:1:13: `machine.resolution`: `1` has no unit; units that fit: mm, um, nm, cm,"
                + " m, in",
            "tools.yaml:2:3: unknown key `tools.3.diametre`; nearest is `diameter`");
  }

  @Test
  void whatAReferenceMayNotBe() throws Exception {
    assertThat(problems(write("setup.yaml", "machine: setup.yaml\n")))
        .containsExactly(
            "setup.yaml:1:10: `machine`: the sheet refers to itself; it refers to a file that holds"
                + " the machine alone");
    assertThat(problems(write("setup.yaml", "tools: ./x/../setup.yaml\n")))
        .containsExactly(
            "setup.yaml:1:8: `tools`: the sheet refers to itself; it refers to a file that holds"
                + " the tools alone");
    assertThat(problems(write("setup.yaml", "machine: bench mill 2\n")))
        .containsExactly(
            "setup.yaml:1:10: the file `bench mill 2` does not exist; the path is relative to the"
                + " sheet");
    assertThat(problems(write("setup.yaml", "machine: /etc/mill.yaml\n")))
        .containsExactly(
            "setup.yaml:1:10: `machine`: `/etc/mill.yaml` is absolute; the path is relative to the"
                + " sheet");
    Files.createDirectories(root.resolve("sub"));
    assertThat(problems(write("setup.yaml", "machine: sub\n")))
        .containsExactly("setup.yaml:1:10: `sub` is no file; a file with the sheet's text is due");
    write("other.yaml", "third.yaml\n");
    assertThat(problems(write("setup.yaml", "machine: other.yaml\n")))
        .containsExactly(
            "other.yaml:1:1: `machine`: a file that a sheet refers to holds a path itself; write it"
                + " out in its place");
    write("wrapped.yaml", "# mill\nmachine:\n  resolution: 1 um\n");
    assertThat(problems(write("setup.yaml", "machine: wrapped.yaml\n")))
        .containsExactly(
            "wrapped.yaml:2:1: `machine:` stands above the content; the file holds the content"
                + " itself: take this line away and indent less");
    assertThat(Sheets.problems("machine: mill.yaml"))
        .containsExactly(
            "setup.yaml:1:10: `machine` names the file `mill.yaml`, but this sheet is no file"
                + " itself; write it out in its place");
    assertThat(problems(write("setup.yaml", "machine: \"a\\0b\"\n")))
        .containsExactly(
            "setup.yaml:1:10: `machine`: this is no path of a file; a relative path is due");
    assertThat(problems(write("setup.yaml", "machine: " + "p".repeat(1001) + "\n")))
        .containsExactly(
            "setup.yaml:1:10: `machine`: a path of 1001 characters; at most 1000 are read");
    assertThat(problems(write("setup.yaml", "machine: " + "p".repeat(1000) + "\n")))
        .hasSize(1)
        .first()
        .asString()
        .contains("does not exist");
  }

  @Test
  void aLinkToTheSheetIsTheSheet() throws Exception {
    Path sheet = write("setup.yaml", "machine: link.yaml\n");
    Files.createSymbolicLink(root.resolve("link.yaml"), sheet);
    assertThat(problems(sheet))
        .containsExactly(
            "setup.yaml:1:10: `machine`: the sheet refers to itself; it refers to a file that holds"
                + " the machine alone");
  }

  @Test
  void anEmptyReferredFileHoldsNothing() throws Exception {
    write("mill.yaml", "# to come\n");
    Path sheet = write("setup.yaml", "machine: mill.yaml\n");
    assertThat(new SheetReader().read(sheet).get(MachineKeys.RESOLUTION)).isEmpty();
  }

  @Test
  void filesThatCannotBeRead() throws Exception {
    assertThat(problems(root.resolve("none.yaml")))
        .containsExactly(
            "none.yaml:1:1: the file `none.yaml` does not exist; name a setup sheet that exists;"
                + " `hairline init` writes a new one");
    assertThat(problems(root)).hasSize(1).first().asString().contains("is no file");
    Path latin = root.resolve("latin.yaml");
    Files.write(latin, "gauge:\n  # µ é\n".getBytes(StandardCharsets.ISO_8859_1));
    assertThat(problems(latin))
        .containsExactly("latin.yaml:2:5: a byte that is not UTF-8; save the sheet as UTF-8");
    Path cut = root.resolve("cut.yaml");
    Files.write(cut, new byte[] {'#', (byte) 0xC2});
    assertThat(problems(cut))
        .containsExactly("cut.yaml:1:2: a byte that is not UTF-8; save the sheet as UTF-8");
    Path closed = write("closed.yaml", "gauge:\n");
    assumeTrue(closed.toFile().setReadable(false, false) && !Files.isReadable(closed));
    assertThat(problems(closed)).hasSize(1).first().asString().contains("may not be read");
  }

  @Test
  void aFileTooLongForASheet() throws Exception {
    Path sheet = write("long.yaml", "#".repeat(SheetFile.MOST_BYTES));
    assertThat(new SheetReader().read(sheet).tools()).isEmpty();
    Files.writeString(sheet, "#".repeat(SheetFile.MOST_BYTES + 1));
    assertThat(problems(sheet))
        .containsExactly(
            "long.yaml:1:1: `long.yaml` is longer than 1048576 bytes; a setup sheet is a short"
                + " text: is it the right file?");
  }

  @Test
  void theSheetOfAProgram() throws Exception {
    Path program = write("jobs/insert/a.nc", "%");
    assertThat(SheetFinder.find(program)).isEmpty();
    Path above = write("setup.yaml", "gauge: {uncertainty: 1 um}\n");
    assertThat(SheetFinder.find(program)).contains(above);
    Path nearer = write("jobs/setup.yaml", "gauge: {uncertainty: 2 um}\n");
    assertThat(SheetFinder.find(program)).contains(nearer);
    Path beside = write("jobs/insert/setup.yaml", "gauge: {uncertainty: 3 um}\n");
    assertThat(SheetFinder.find(program)).contains(beside);
    Path own = write("jobs/insert/a.setup.yaml", "gauge: {uncertainty: 4 um}\n");
    assertThat(SheetFinder.find(program)).contains(own);
    assertThat(SheetFinder.find(root.resolve("jobs/insert/b.nc"))).contains(beside);
    Path dotted = write("jobs/insert/a.b.setup.yaml", "");
    assertThat(SheetFinder.find(root.resolve("jobs/insert/a.b.nc"))).contains(dotted);
    Path bare = write("jobs/insert/bare.setup.yaml", "");
    assertThat(SheetFinder.find(root.resolve("jobs/insert/bare"))).contains(bare);
    Path hidden = write("jobs/insert/.nc.setup.yaml", "");
    assertThat(SheetFinder.find(root.resolve("jobs/insert/.nc"))).contains(hidden);
  }

  @Test
  void aFolderIsNoSheetAndADeadLinkIsOne() throws Exception {
    Path program = write("jobs/a.nc", "%");
    Path above = write("setup.yaml", "");
    Files.createDirectories(root.resolve("jobs/setup.yaml"));
    assertThat(SheetFinder.find(program)).contains(above);
    Path dead = Files.createSymbolicLink(root.resolve("jobs/a.setup.yaml"), root.resolve("gone"));
    assertThat(SheetFinder.find(program)).contains(dead);
    assertThat(problems(dead)).hasSize(1).first().asString().contains("does not exist");
  }

  @Test
  void aRelativeProgramHasARelativeSheet() throws IOException {
    Path here = Path.of("target", "finder-test");
    Files.createDirectories(here);
    Path sheet = Files.writeString(here.resolve("a.setup.yaml"), "");
    assertThat(SheetFinder.find(here.resolve("x/../a.nc"))).contains(sheet);
    assertThat(SheetFinder.find(here.resolve("a.nc").toAbsolutePath()))
        .contains(sheet.toAbsolutePath());
  }

  @Test
  void aSheetAboveTheWorkingFolderIsNamedFromThere() throws IOException {
    write("setup.yaml", "");
    Path here = root.resolve("jobs/insert");
    assertThat(SheetFinder.find(Path.of("a.nc"), here)).contains(Path.of("../../setup.yaml"));
    assertThat(SheetFinder.find(Path.of("../b.nc"), here)).contains(Path.of("../../setup.yaml"));
    write("jobs/insert/x/setup.yaml", "");
    assertThat(SheetFinder.find(Path.of("x/a.nc"), here)).contains(Path.of("x/setup.yaml"));
    assertThat(SheetFinder.find(here.resolve("a.nc"), here)).contains(root.resolve("setup.yaml"));
  }

  @Test
  void askedForComesFirstAndTheEmbeddedSheetLast() throws Exception {
    Path program = write("a.nc", "%");
    Path own = write("a.setup.yaml", "gauge: {uncertainty: 1 um}\n");
    Path asked = write("asked.yaml", "gauge: {uncertainty: 2 um}\n");
    SheetReader reader = new SheetReader();
    assertThat(
            reader
                .readFor(Optional.of(asked), Optional.of(program))
                .get(ShopKeys.GAUGE_UNCERTAINTY))
        .contains(Length.ofUm("2"));
    assertThat(reader.readFor(Optional.empty(), Optional.of(program)).name())
        .isEqualTo(own.toString());
    Setup embedded = reader.readFor(Optional.empty(), Optional.empty());
    assertThat(embedded.embedded()).isTrue();
    assertThat(reader.read(own).embedded()).isFalse();
    Files.delete(own);
    assertThat(reader.readFor(Optional.empty(), Optional.of(program)).embedded()).isTrue();
  }

  @Test
  void theEmbeddedSheetAssumesLittle() {
    Setup embedded = new SheetReader().embedded();
    assertThat(embedded.name()).isEqualTo("embedded default sheet");
    // Least input increment of metric controls: common practice, no source.
    assertThat(embedded.get(MachineKeys.RESOLUTION)).contains(Length.ofUm("1"));
    assertThat(embedded.get(MachineKeys.INCH_RESOLUTION)).contains(new Length(2_540_000));
    assertThat(embedded.get(MachineKeys.ROUNDING)).contains(Rounding.NEAREST);
    // NISTIR 6556 §3.5.3: centre-form arcs are refused when the radii differ by more than 0.002 mm.
    assertThat(embedded.get(ControlKeys.ARC_TOLERANCE)).contains(Length.ofUm("2"));
    assertThat(embedded.values().keys())
        .containsExactly(
            MachineKeys.NAME,
            MachineKeys.RESOLUTION,
            MachineKeys.INCH_RESOLUTION,
            MachineKeys.ROUNDING,
            ControlKeys.ARC_TOLERANCE);
    assertThat(embedded.tools()).isEmpty();
  }
}
