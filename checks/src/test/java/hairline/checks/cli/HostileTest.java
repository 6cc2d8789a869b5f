package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import hairline.checks.report.ReportFormat;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Names, comments and texts that are out to harm whoever reads the report. */
class HostileTest {
  private static final String SEQUENCE = "\u001b]0;owned\u0007\u001b[2J<script>&\u202e";

  @TempDir private Path folder;

  private static void harmless(String text) {
    text.codePoints()
        .filter(c -> c != '\n')
        .forEach(
            c ->
                assertThat(c >= ' ' && c != 0x7F && !(c >= 0x80 && c < 0xA0) && c != 0x202E)
                    .as("U+%04X", c)
                    .isTrue());
  }

  private Path file(String name, String text) throws IOException {
    assumeTrue(File.separatorChar == '/');
    try {
      return Files.writeString(folder.resolve(name), text);
    } catch (InvalidPathException e) {
      assumeTrue(false, "this locale has no such name");
      throw e;
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"TEXT", "JSON", "SARIF", "JUNIT"})
  void namesAndCommentsComeOutHarmless(ReportFormat format) throws IOException {
    Path program =
        file(
            SEQUENCE.replace("/", "") + ".nc",
            "G21 G90 (" + SEQUENCE + ")\nG54\nG0 X0.0000001 (" + SEQUENCE + ")\nG1 X[[1\nM30\n");
    Ran ran = Ran.of("check", "--format=" + format, program.toString());
    assertThat(ran.status()).isLessThan(4);
    harmless(ran.out());
    harmless(ran.err());
    assertThat(ran.out()).contains("owned");
  }

  @Test
  void briefComparisonAndWindowComeOutHarmless() throws IOException {
    String text = "G21 G90 (" + SEQUENCE + ")\nG54\nT1 M6\nS9000 M3\nG0 X0.0000001 Z1.\nM0\nM30\n";
    Path program = file(SEQUENCE.replace("/", "") + ".nc", text);
    Path other = file("b" + SEQUENCE.replace("/", "") + ".nc", text.replace("M0", "G1 X[[1"));
    String[][] commands = {
      {"brief"},
      {"brief", "--format=html"},
      {"window"},
      {"window", "--format=json"},
      {"compare", other.toString()},
      {"compare", "--format=json", other.toString()},
      {"compare", "--format=html", other.toString()}
    };
    for (String[] command : commands) {
      String[] args = Arrays.copyOf(command, command.length + 1);
      args[command.length] = program.toString();
      Ran ran = Ran.of(args);
      assertThat(ran.status()).as(String.join(" ", command)).isLessThan(4);
      harmless(ran.out());
      harmless(ran.err());
      assertThat(ran.out()).contains("owned");
    }
  }

  @Test
  void messagesOnStandardErrorComeOutHarmless() throws IOException {
    Path sheet = file("setup.yaml", "machine: {\"" + "x\\e[31m" + "\": 1}\n");
    Path program = file("a.nc", "M30\n");
    Ran wrong = Ran.of("check", program.toString(), "--setup", sheet.toString());
    assertThat(wrong.status()).isEqualTo(2);
    harmless(wrong.err());
    for (String command : new String[] {SEQUENCE, "check"}) {
      Ran ran = Ran.of(command, "--" + SEQUENCE, SEQUENCE);
      assertThat(ran.status()).isEqualTo(2);
      harmless(ran.err());
    }
  }

  /** Programs that are no programs, or want more than any control would give. */
  private List<Path> awkward() throws IOException {
    Path bytes = folder.resolve("nul.nc");
    Files.write(bytes, "G21 G90\nG54\nG0 X1.\0\nM30\n".getBytes(StandardCharsets.ISO_8859_1));
    return List.of(
        bytes,
        Files.write(folder.resolve("nothing.nc"), new byte[5_000]),
        Files.createFile(folder.resolve("empty.nc")),
        file("digits.nc", "G21\nG1 X" + "1".repeat(1_000_000) + "\nM30\n"),
        file("decimals.nc", "G21\nG1 X0." + "1".repeat(50_000) + "\nM30\n"),
        file("brackets.nc", "G21\nG1 X" + "[".repeat(10_000) + "\nM30\n"),
        file("parameters.nc", "G21\nG1 X" + "#".repeat(10_000) + "1\nM30\n"),
        file("endless.nc", "O1\nG21 G90\nM98 P1\nM30\n"),
        file("circle.nc", "O1\nM98 P2\nM30\nO2\nM98 P3\nM99\nO3\nM98 P2\nM99\n"),
        file("missing.nc", "O1\nG21 G90\nM98 P777\nM30\n"),
        file("billion.nc", "O1\nG21 G90\nM98 P2 L1000000000\nM30\nO2\nG4 P0.\nM99\n"),
        file("holes.nc", "G21 G91\nG0 X0 Y0 Z1.\nG81 X1. R1. Z-1. L1000000000 F1.\nM30\n"),
        folder.resolve("gone.nc"));
  }

  private static final String[] SMALL = {"--set=machine.control.step_budget=2000"};

  private static void endsWell(String... args) {
    Assertions.assertTimeout(
        Duration.ofMinutes(2),
        () -> {
          Ran ran = Ran.of(args);
          String all = String.join(" ", args) + "\n" + ran.err();
          assertThat(ran.status()).as(all).isBetween(0, 3);
          assertThat(ran.out() + ran.err()).as(all).doesNotContain("Exception", "\tat ");
          assertThat(ran.out() + ran.err()).as("something is said: %s", all).isNotEmpty();
        });
  }

  @ParameterizedTest
  @EnumSource(ReportFormat.class)
  void awkwardProgramsEndInGoodTimeInEveryFormat(ReportFormat format) throws IOException {
    for (Path program : awkward()) {
      endsWell(
          "check",
          SMALL[0],
          "--terraces",
          "--format=" + format.name().toLowerCase(Locale.ROOT),
          program.toString());
    }
  }

  @Test
  void awkwardProgramsEndInGoodTimeInEveryCommand() throws IOException {
    Path good = file("good.nc", "%\nO1\nG21 G90 G17 G94 G54\nG0 X1. Y1. Z5.\nM30\n%\n");
    for (Path program : awkward()) {
      endsWell("brief", SMALL[0], program.toString());
      endsWell("brief", SMALL[0], "--format=html", program.toString());
      endsWell("window", SMALL[0], program.toString());
      endsWell("compare", SMALL[0], good.toString(), program.toString());
      endsWell("compare", SMALL[0], program.toString(), good.toString());
      String name = String.valueOf(program.getFileName());
      if (!name.equals("billion.nc") && !name.equals("holes.nc")) {
        endsWell("init", program.toString());
      }
    }
  }

  @Test
  void aLineOfAHundredMegabytesIsOneProblem() throws IOException {
    Path program = folder.resolve("line.nc");
    byte[] words = "X1. Y2. ".repeat(131_072).getBytes(StandardCharsets.US_ASCII);
    try (OutputStream out = Files.newOutputStream(program)) {
      out.write("G21 G90 G54\n".getBytes(StandardCharsets.US_ASCII));
      for (int k = 0; k < 100; k++) {
        out.write(words);
      }
      out.write("\nM30\n".getBytes(StandardCharsets.US_ASCII));
    }
    Ran ran = Ran.of("check", "--only=syntax", program.toString());
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.out())
        .contains("a line longer than is read, expected at most 65536 bytes", "line.nc:2:1")
        .hasSizeLessThan(5_000);
  }

  @Test
  void theBarIsOfFixedLength() {
    assertThat(Progress.bar(3, 12, "checked", 4))
        .isEqualTo("██████░░░░░░░░░░░░░░░░░░ 3 of 12 programs checked, 4 s");
    assertThat(Progress.bar(0, 1, "checked", 1)).contains("0 of 1 program checked");
  }
}
