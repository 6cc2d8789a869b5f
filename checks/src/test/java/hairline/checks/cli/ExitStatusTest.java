package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import hairline.checks.report.Golden;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** With which status a run ends, and what it says then. */
class ExitStatusTest {
  private static final String ONLY = "--only=digits-below-resolution";

  @TempDir private Path folder;

  private Path clean;
  private Path faulty;

  @BeforeEach
  void writePrograms() throws IOException {
    Files.writeString(folder.resolve("setup.yaml"), "machine: {resolution: 0.1 um}\n");
    clean = program("clean.nc", "G21 G90\nG54\nG0 X1.0001\nM30\n");
    faulty = program("faulty.nc", "G21 G90\nG54\nG0 X1.00005\nM30\n");
  }

  private Path program(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private static Ran check(Object... args) {
    String[] all = new String[args.length + 2];
    all[0] = "check";
    all[1] = ONLY;
    for (int i = 0; i < args.length; i++) {
      all[i + 2] = args[i].toString();
    }
    return Ran.of(all);
  }

  private static void refused(Ran ran, int status, String... parts) {
    assertThat(ran.status()).as(ran.err()).isEqualTo(status);
    assertThat(ran.err()).startsWith("hairline: ").contains(parts).doesNotContain("\tat ");
    assertThat(ran.err().lines().count()).as("a sentence and its cure").isGreaterThanOrEqualTo(2);
  }

  @Test
  void isZeroWhereNothingIsFound() {
    Ran ran = check(clean);
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("nothing found in 1 program").contains("no prove-out");
    assertThat(ran.err()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"error,0", "warning,1", "note,1", "never,0"})
  void isOneFromTheLevelAskedForOn(String level, int status) {
    assertThat(check(faulty, "--fail-on", level).status()).isEqualTo(status);
  }

  @Test
  void isThreeWhereAnInputIsMissingAndTheOthersAreStillChecked() {
    Ran ran = check(folder.resolve("gone.nc"), faulty);
    refused(ran, 3, "gone.nc` does not exist");
    assertThat(ran.out()).contains("digits-below-resolution").contains("1 input not checked");
  }

  @Test
  void isTwoWhereASheetIsWrongAndTheOthersAreStillChecked() throws IOException {
    Files.createDirectory(folder.resolve("other"));
    Path other = program("other/other.nc", "M30\n");
    Files.writeString(folder.resolve("other/setup.yaml"), "machine: {resolutoin: 1 um}\n");
    Ran ran = check(other, faulty, folder.resolve("gone.nc"));
    refused(ran, 2, "setup.yaml:1:11", "resolutoin", "nearest", "resolution");
    assertThat(ran.out()).contains("digits-below-resolution");
  }

  @Test
  void aWrongSheetIsToldOnceForAllItsPrograms() throws IOException {
    Files.writeString(folder.resolve("setup.yaml"), "machine: {resolutoin: 1 um}\n");
    Ran ran = check(clean, faulty);
    refused(ran, 2, "resolutoin");
    assertThat(ran.err()).containsOnlyOnce("resolutoin");
    assertThat(ran.out()).containsOnlyOnce("resolutoin").contains("2 inputs not checked");
    assertThat(ran.out().replaceAll("\\s+", " "))
        .contains("unchecked for the same reason as " + Inputs.name(clean));
  }

  @Test
  void aRuleThatCouldNotDecideIsCountedOnce() throws IOException {
    Files.writeString(folder.resolve("setup.yaml"), "machine: {name: bench mill}\n");
    assertThat(check(clean, faulty).out())
        .contains("machine.resolution is not on the sheet")
        .contains("; 1 rule could not decide everywhere");
  }

  @Test
  void aFailureIsToldOnceBeforeTheSameEyes() {
    String[] args = {"check", ONLY, "gone.nc"};
    Ran terminal = Ran.with(Map.of(), true, new byte[0], args);
    assertThat(terminal.out()).contains("`gone.nc` does not exist");
    assertThat(terminal.err()).isEmpty();
    assertThat(terminal.status()).isEqualTo(3);
    String[] json = {"check", ONLY, "--format=json", "gone.nc"};
    assertThat(Ran.with(Map.of(), true, new byte[0], json).err()).contains("gone.nc");
    assertThat(Ran.of(args).err()).contains("gone.nc");
  }

  @Test
  void pathsAreToldAsTheyWereTyped() throws IOException {
    Path here = Path.of("target", "paths-test");
    Files.createDirectories(here.resolve("prog"));
    Files.writeString(here.resolve("setup.yaml"), "machine: {resolution: 0.1 um}\n");
    Files.writeString(here.resolve("prog/main.nc"), "G21 G90\nG54\nM98 P8888\nM30\n");
    Files.writeString(here.resolve("prog/8888.nc"), "G0 X1.00005\nM99\n");
    for (String format : new String[] {"text", "json", "sarif", "junit"}) {
      Ran ran = check("--format", format, "--summary", here.resolve("prog/main.nc"));
      assertThat(ran.out()).contains("target/paths-test/prog/8888.nc");
      assertThat(ran.out())
          .as(format)
          .doesNotContain(Path.of("").toAbsolutePath().toString().replace('\\', '/'));
    }
    assertThat(check(here.resolve("prog/main.nc")).out())
        .contains("target/paths-test/prog/8888.nc:1:4")
        .contains("target/paths-test/setup.yaml");
  }

  @Test
  void isThreeForAMacroUnlessThatIsAllowed() throws IOException {
    Path macro = program("macro.nc", "G21 G90\nG54\nWHILE [#1 LT 3] DO1\nM30\n");
    assertThat(check(macro).status()).isEqualTo(3);
    assertThat(check(macro).out()).contains("macro statements that are not read");
    assertThat(check(macro, "--allow-unread").status()).isZero();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "X99999999999999999999.", // no position holds it
        "M98 P9999", // nowhere
        "M98 P1", // in itself
        "G68 X0. Y0. R45.", // turns the axes
        "G51 X0. Y0. P2.",
        "G51.1 X0.",
        "G16",
        "G123",
        "X#7", // never set
        "U1.",
        "G0 G1 X1.",
        "X1. X2.",
        "G92 X0.", // at a place that is not known
        "G1 X",
      })
  void isThreeWhereABlockIsNotUnderstoodWhateverIsFound(String block) throws IOException {
    Path lost = program("lost.nc", "O1\nG21 G90\nG54\nG28 X0.\n" + block + "\nM30\n");
    for (String rules : List.of("move-lost-in-rounding", "digits-below-resolution")) {
      Ran ran = Ran.of("check", "--only", rules, lost.toString());
      assertThat(ran.status()).isEqualTo(3);
      assertThat(ran.out())
          .contains("not all was understood")
          .contains("1 program not analysed in full");
    }
    Ran sarif = check(lost, "--format", "sarif");
    assertThat(sarif.out()).containsPattern("\"executionSuccessful\"\\s*:\\s*false");
  }

  @Test
  void isThreeWhereABlockIsNotReadThoughNothingWasKnownBeforeIt() throws IOException {
    for (String block : List.of("X[", "X".repeat(70_000), "Y1.X", "X1.\0")) {
      Path first = program("first.nc", "G21 G90\nG54\n" + block + "\nM30\n");
      Ran ran = check(first);
      assertThat(ran.status()).isEqualTo(3);
      assertThat(ran.out()).contains("1 program not analysed in full");
    }
  }

  /** What only the machine or the sheet could tell is not the fault of the analysis. */
  @ParameterizedTest
  @ValueSource(
      strings = {"G28 X0.", "G38.2 Z-1. F10.", "G10 L2 P1 Z-60.", "G92 Z0.", "G43 H3", "G53 X0."})
  void isNotThreeWhereOnlyTheMachineKnowsWhereAnAxisStands(String block) throws IOException {
    Path known = program("known.nc", "O1\nG21 G90\nG54\nG0 Z1.\n" + block + "\nM30\n");
    assertThat(check(known).status()).isZero();
  }

  @Test
  void refusesAnEmptyFileABinaryOneAndAFolderWithoutPrograms() throws IOException {
    refused(check(program("empty.nc", "")), 3, "empty.nc` is empty");
    Path binary = folder.resolve("picture.nc");
    Files.write(binary, new byte[] {'P', 'K', 3, 4, 0, 0, 0, 0, 'x', 0, 0});
    refused(check(binary), 3, "is no text: byte 3 of it is 03");
    Path none = Files.createDirectory(folder.resolve("none"));
    Files.writeString(none.resolve("readme.txt"), "G1");
    refused(check(none), 3, "no part program in the folder", "nc, cnc");
  }

  @Test
  void readsFoldersAndStandardInput() {
    Ran both = check(folder);
    assertThat(both.out()).contains("clean.nc").contains("in 2 programs");
    Ran input = Ran.withInput("G21 G90\nG54\nG0 X1.00005\nM30\n", "check", ONLY, "-");
    assertThat(input.status()).isEqualTo(1);
    assertThat(input.out()).contains("standard input:3:4");
    refused(Ran.withInput("", "check", "-"), 3, "`standard input` is empty");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "check | no program given",
        "chek | nearest is check",
        "check x.nc --formt=text | nearest is --format",
        "check x.nc --fail-on=eror | nearest is error",
        "check x.nc --color=auot | nearest is auto",
        "check x.nc --only=digits-below-resolutoin | nearest is `digits-below-resolution`",
        "check x.nc --skip=nonsense | no rule `nonsense`",
        "check x.nc --only=syntax --skip=syntax | leave no rule to ask",
        "check x.nc --set=machine.resolution | is no key=value",
        "check x.nc --jobs=0 | 1 to 256",
        "check x.nc --jobs=many | whole number from 1 to 256",
        "check x.nc --jobs=99999999999 | whole number from 1 to 256",
        "explain end-missing foo | `foo` is one argument too many",
        "rules x | `x` is one argument too many",
        "explain warm-up | there are warm-up-deletable, warm-up-missing",
        "check x.nc --report=text=- | is no file to write",
        "check x.nc --report=text | is no FORMAT=FILE",
        "check x.nc --report=txt=out | nearest is text",
        "check x.nc --report=text=no/such/folder/out | its folder does not exist",
        "check x.nc --report=text=src | it is a folder",
        "check x.nc --report=text=a --report=text=./a | two reports would be written",
        "check x.nc --report=text=x.nc | over an input",
        "check x.nc --setup=nowhere.yaml | nowhere.yaml",
        "check @x | does not exist",
      })
  void saysWhatIsWrongWithACommandLine(String line, String part) {
    refused(Ran.of(line.split(" ")), line.contains("@") ? 3 : 2, part);
  }

  /** A sheet names other files, and a program calls some, that are read only later. */
  @Test
  void noReportReplacesWhatLooksLikeAProgramOrASheet() throws IOException {
    for (String name : List.of("other.nc", "tools.yaml", "O77", "77.NC", "7001")) {
      Path source = folder.resolve(name);
      Files.writeString(source, "kept");
      refused(check(clean, "--report", "json=" + source), 2, "calls a part program");
      refused(
          Ran.of("brief", clean.toString(), "-o", source.toString()), 2, "calls a part program");
      assertThat(source).hasContent("kept");
    }
    Path report = folder.resolve("report.json");
    Files.writeString(report, "an older one");
    assertThat(check(clean, "--report", "json=" + report).status()).isZero();
    assertThat(Files.readString(report)).contains("schemaVersion");
  }

  /** Under such a name the next run would read the report. */
  @Test
  void noReportIsMadeThatLooksLikeAProgramOrASheet() {
    for (String name : List.of("O0777.nc", "o777", "7777.TAP", "12", "job.yaml", "new.gcode")) {
      Path file = folder.resolve(name);
      refused(check(clean, "--report", "svg=" + file), 2, "calls a part program", "another name");
      refused(Ran.of("brief", clean.toString(), "-o", file.toString()), 2, "calls a part program");
      assertThat(file).doesNotExist();
    }
    Path sheet = folder.resolve("new.nc");
    refused(Ran.of("init", clean.toString(), "-o", sheet.toString()), 2, "calls a part program");
    assertThat(sheet).doesNotExist();
  }

  @Test
  void aDeadLinkIsNotReplacedByAReport() throws IOException {
    for (String to : List.of("gone", "report.txt")) {
      Path link = folder.resolve("report.txt");
      Files.deleteIfExists(link);
      Files.createSymbolicLink(link, folder.resolve(to));
      refused(check(clean, "--report", "text=" + link), 2, "a link that leads to no file");
      refused(Ran.of("init", "--force", clean.toString(), "-o", link.toString()), 2, "leads to no");
      assertThat(Files.isSymbolicLink(link)).isTrue();
      assertThat(Files.exists(link)).isFalse();
    }
  }

  @Test
  void aFolderThatTakesNoFilesIsToldAsSuch() {
    assumeTrue(Files.isDirectory(Path.of("/proc/self")));
    refused(
        check(clean, "--report", "text=/proc/hairline"),
        3,
        "cannot write `/proc/hairline`: its folder takes no new file");
  }

  @Test
  void aValueSetFromOutsideCounts() {
    assertThat(check(faulty, "--set", "machine.resolution=0.01 um").status()).isZero();
    refused(
        check(faulty, "--set", "machine.resolutoin=1 um"), 2, "nearest is `machine.resolution`");
  }

  @Test
  void aRunThatAsksNothingIsNotGreen() throws IOException {
    Files.writeString(folder.resolve("setup.yaml"), "rules: {skip: [digits-below-resolution]}\n");
    refused(check(clean), 2, "rules.skip of", "leave no rule to ask");
  }

  @Test
  void theReportSaysWhatWasLeftOutAndChanged() {
    Ran ran = check(faulty, "--set", "machine.resolution = 0.01 um");
    assertThat(ran.out())
        .contains("asked  only digits-below-resolution")
        .contains("what if  machine.resolution = 0.01 um")
        .contains("; only 1 rule asked; with 1 value that the sheet does not have");
  }

  /** No figure leaves without the word that the sheet does not have it. */
  @Test
  void everyCommandSaysWhatWasChangedForTheRun() throws IOException {
    Path drawing = folder.resolve("window.svg");
    String[][] commands = {
      {"window"},
      {"window", "--format=json"},
      {"window", "--svg=" + drawing},
      {"brief"},
      {"brief", "--format=html"},
      {"compare", clean.toString()},
      {"compare", "--format=json", clean.toString()},
      {"compare", "--format=html", clean.toString()},
      {"check", "--format=json"},
      {"check", "--format=csv", "--timeline"},
      {"check", "--format=svg"},
    };
    for (String[] command : commands) {
      String[] args = Arrays.copyOf(command, command.length + 2);
      args[command.length] = "--set=machine.resolution=0.05 um";
      args[command.length + 1] = clean.toString();
      Ran ran = Ran.of(args);
      assertThat(ran.err()).isEmpty();
      assertThat(ran.out())
          .as(String.join(" ", command))
          .contains("machine.resolution")
          .contains("0.05 um");
    }
    assertThat(drawing).content().contains("what if: machine.resolution = 0.05 um");
  }

  @Test
  void aFullDiskIsToldAndABrokenPipeIsQuiet() {
    Ran full = Ran.to(Ran.failing("No space left on device"), "check", ONLY, faulty.toString());
    refused(full, 3, "cannot write standard output: No space left on device");
    Ran pipe = Ran.to(Ran.failing("Broken pipe"), "check", ONLY, faulty.toString());
    assertThat(pipe.err()).isEmpty();
    assertThat(pipe.status()).as("the check itself went on").isEqualTo(1);
  }

  @Test
  void reportsGoIntoFilesWholeOrNotAtAll() throws IOException {
    Path file = folder.resolve("report.txt");
    assertThat(check(faulty, "--report", "text=" + file).status()).isEqualTo(1);
    assertThat(file).content(StandardCharsets.UTF_8).contains("digits-below-resolution");
    Files.writeString(file, "kept");
    refused(check(faulty, "--report", "text=" + file, "--report=text=/no/such/x"), 2, "/no/such/x");
    assertThat(file).hasContent("kept");
    Path full = Path.of("/dev/full");
    if (Files.exists(full)) {
      refused(check(faulty, "--report", "text=" + full), 3, "cannot write `/dev/full`");
    }
    try (var files = Files.list(folder)) {
      assertThat(files).noneMatch(f -> f.toString().endsWith(".part"));
    }
  }

  @Test
  void colourIsForTerminalsUnlessNotWanted() {
    String[] args = {"check", ONLY, faulty.toString()};
    byte[] none = new byte[0];
    assertThat(Ran.with(Map.of(), true, none, args).out()).contains("\u001b[");
    assertThat(Ran.with(Map.of("NO_COLOR", ""), true, none, args).out()).contains("\u001b[");
    assertThat(Ran.with(Map.of("NO_COLOR", "1"), true, none, args).out()).doesNotContain("\u001b");
    assertThat(Ran.with(Map.of("TERM", "dumb"), true, none, args).out()).doesNotContain("\u001b");
    assertThat(Ran.of(args).out()).doesNotContain("\u001b");
    assertThat(check("--color=always", faulty).out()).contains("\u001b[");
  }

  @Test
  void theReportIsAsWideAsTheTerminal() {
    String[] args = {"check", ONLY, "--color=never", "gone/" + "x".repeat(30) + ".nc"};
    byte[] none = new byte[0];
    for (int columns : new int[] {60, 80, 140}) {
      Ran ran = Ran.with(Map.of("COLUMNS", "" + columns), true, none, args);
      assertThat(ran.out().lines()).allMatch(line -> line.length() <= columns);
      assertThat(ran.out()).contains("\n" + "─".repeat(columns) + "\n");
    }
    assertThat(Ran.with(Map.of("COLUMNS", "20"), true, none, args).out())
        .contains("\n" + "─".repeat(60) + "\n");
    for (String columns : new String[] {"", "0", "many"}) {
      assertThat(Ran.with(Map.of("COLUMNS", columns), true, none, args).out())
          .contains("\n" + "─".repeat(100) + "\n");
    }
    assertThat(Ran.with(Map.of("COLUMNS", "60"), false, none, args).out())
        .as("no terminal: the same bytes everywhere")
        .contains("\n" + "─".repeat(100) + "\n");
  }

  @Test
  void isFourForAFaultOfOurOwnAndSaysHowToReportIt() {
    InputStream broken =
        new InputStream() {
          @Override
          public int read() {
            throw new IllegalStateException("never to happen");
          }

          @Override
          public int read(byte[] bytes, int from, int length) {
            return read();
          }
        };
    for (String verbose : new String[] {"--color=never", "--verbose"}) {
      ByteArrayOutputStream err = new ByteArrayOutputStream();
      Streams streams =
          new Streams(
              broken,
              new WatchedOutput(OutputStream.nullOutputStream(), false),
              Streams.utf8(err),
              false,
              false,
              false,
              Map.of());
      assertThat(Main.run(streams, "check", "-", verbose)).isEqualTo(4);
      String told = err.toString(StandardCharsets.UTF_8);
      assertThat(told).contains("a fault of hairline's own", "never to happen", "report it");
      assertThat(told.contains("  at hairline.checks")).isEqualTo(verbose.equals("--verbose"));
    }
  }

  @Test
  void tellsALinkThatLeadsNowhereAndAFolderWithoutPermission() throws IOException {
    Path loop = folder.resolve("loop.nc");
    Files.createSymbolicLink(loop, loop);
    refused(check(loop), 3, "loop.nc` is a link that leads to no file, or round in a circle");
    assertThat(Reasons.of(new java.nio.file.AccessDeniedException("x"))).isEqualTo("no permission");
    assertThat(Reasons.of(new java.nio.file.FileSystemException("x")))
        .isEqualTo("the system gives no reason");
  }

  @Test
  void refusesWhatIsNoFileAndNamesThatNoSystemHas() {
    assumeTrue(Files.exists(Path.of("/dev/null")));
    refused(check("/dev/null"), 3, "neither a file nor a folder", "standard input");
    refused(check("a\0b.nc"), 3, "cannot name the file");
    refused(Ran.of(), 2, "no command given");
  }

  @Test
  void everyFailureHasASentenceACureAndAStatus() {
    for (Failure failure : Failure.values()) {
      Object[] about = {"A", "B", "C"};
      assertThat(failure.code()).matches("[a-z]+(-[a-z]+)*");
      assertThat(failure.status()).isNotIn(ExitStatus.CLEAN, ExitStatus.FOUND);
      assertThat(failure.sentence(about)).doesNotContain("%").doesNotEndWith(".");
      assertThat(failure.cure(about)).isNotBlank().doesNotContain("%").doesNotEndWith(".");
    }
  }

  @Test
  void theReportOfASmallFaultyProgramIsAsKept() {
    String faultyProgram = "src/test/resources/hairline/checks/cli/faulty.nc";
    for (String format : new String[] {"text", "junit"}) {
      Ran ran = Ran.of("check", ONLY, "--format=" + format, faultyProgram);
      assertThat(ran.status()).isEqualTo(1);
      Golden.check("faulty." + format, ran.out());
    }
  }

  @Test
  void theHelpTellsEveryStatus() {
    Ran help = Ran.of("check", "--help");
    assertThat(help.status()).isZero();
    for (ExitStatus status : ExitStatus.values()) {
      assertThat(help.out()).contains(status.code() + "   " + status.meaning());
    }
    Inputs.ENDINGS.forEach(
        ending -> assertThat(help.out()).containsPattern("\\b" + ending + "\\b"));
  }

  @Test
  void whatOutweighsWhat() {
    assertThat(ExitStatus.FAULT.and(ExitStatus.USAGE)).isEqualTo(ExitStatus.FAULT);
    assertThat(ExitStatus.USAGE.and(ExitStatus.INCOMPLETE)).isEqualTo(ExitStatus.USAGE);
    assertThat(ExitStatus.FOUND.and(ExitStatus.INCOMPLETE)).isEqualTo(ExitStatus.INCOMPLETE);
    assertThat(ExitStatus.CLEAN.and(ExitStatus.FOUND)).isEqualTo(ExitStatus.FOUND);
  }
}
