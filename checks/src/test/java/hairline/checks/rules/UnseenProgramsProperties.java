package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.ProgramResult;
import hairline.checks.rules.ProgramCheck.Threads;
import hairline.checks.setup.Setup;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/**
 * A long program that is looked through while it is run gives what it gives when it is looked
 * through first, whatever turns up in its midst.
 */
class UnseenProgramsProperties {
  private static final String HEAD =
      "%\nO1\nG21 G90 G17 G94 G54\nT3 M6\nS30000 M3\nG0 G43 H3 X0. Y0. Z1.\nG1 Z-0.004 F300.\n"
          + "X0.1 Y0.2\nX0.2 Y0.1\n".repeat(250);

  private static final String TAIL =
      ("(" + "a".repeat(998) + ")\n").repeat(67) + "G0 Z1.\nM5\nM30\n%\n";

  /** Coarse: it is not the height field's fineness that is asked for. */
  private static final OptionalLong CELL_PM = OptionalLong.of(20_000_000);

  private static final Setup SHEET = Programs.demoSheet();

  @Provide
  Arbitrary<List<String>> lines() {
    Arbitrary<String> usual =
        Arbitraries.of(
            "X1. Y2.",
            "G0 Z1.",
            "G1 Z-0.008",
            "G3 X1. Y2. I0. J3.",
            "",
            "G1 X1.2 F300.",
            "(side)",
            "N7",
            "X2. (side) Y1.",
            "X1.00004",
            "G4 P3.",
            "S60000 M3",
            "X999.");
    Arbitrary<String> unusual =
        Arbitraries.of(
            "X5",
            "O12",
            "%",
            "M30",
            "M99",
            "M98 P12",
            "/X5.",
            "N7 X5.",
            "#1=5",
            "X#1",
            "G1 X",
            "(hairline: accept outside-travel until end: odd)",
            "some text",
            "G65 P9000");
    return Arbitraries.frequencyOf(Tuple.of(12, usual), Tuple.of(1, unusual)).list().ofMaxSize(25);
  }

  @Property(tries = 60)
  void givesTheSameResult(@ForAll("lines") List<String> lines) throws IOException {
    Path file = Files.createTempFile("unseen", ".nc");
    try {
      String text = HEAD + String.join("\n", lines) + "\n" + TAIL;
      write(file, text);
      assertThat(check(Threads.SEVERAL, file)).isEqualTo(check(Threads.ONE, file));
    } finally {
      Files.delete(file);
    }
  }

  private static ProgramResult check(Threads threads, Path file) throws IOException {
    return ProgramCheck.of(Selection.ALL).withCell(CELL_PM).on(threads).check(file, SHEET);
  }

  /** It is not looked through first wherever that is not needed. */
  @Example
  void isNotLookedThroughFirst() throws IOException {
    Path folder = Files.createTempDirectory("unseen");
    Path beside = folder.resolve("O9001.nc");
    Path file = folder.resolve("main.nc");
    try {
      write(beside, "O9001\nX1. Y1.\n(hairline: accept outside-travel until end: odd)\nM99\n");
      for (String lines : List.of("", "M98 P9001\n", "M98 P1\n", "M98 P9002\n")) {
        write(file, HEAD + lines + TAIL);
        Timings clocks = Timings.measured();
        ProgramResult quick =
            ProgramCheck.of(Selection.ALL)
                .withCell(CELL_PM)
                .timedBy(clocks)
                .on(Threads.SEVERAL)
                .check(file, SHEET);
        assertThat(quick).isEqualTo(check(Threads.ONE, file));
        assertThat(clocks.nanos().keySet().toString()).doesNotContain("first look");
      }
    } finally {
      for (Path path : List.of(beside, file, folder)) {
        Files.deleteIfExists(path);
      }
    }
  }

  /** Whether the switch matters may show only in a file that is called. */
  @Example
  void deletableBlocksMayStandBeside() throws IOException {
    Path folder = Files.createTempDirectory("unseen");
    Path beside = folder.resolve("O9001.nc");
    Path file = folder.resolve("main.nc");
    try {
      write(beside, "O9001\n/G0 Z5.\nG0 X1.\nM99\n");
      write(file, HEAD + "M98 P9001\n" + TAIL);
      ProgramResult result = check(Threads.SEVERAL, file);
      assertThat(result.findings()).anyMatch(f -> f.blockDelete() == BlockDelete.ONLY_ON);
      assertThat(result).isEqualTo(check(Threads.ONE, file));
    } finally {
      for (Path path : List.of(beside, file, folder)) {
        Files.deleteIfExists(path);
      }
    }
  }

  private static void write(Path file, String text) throws IOException {
    Files.write(file, text.getBytes(StandardCharsets.US_ASCII));
  }
}
