package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;

/**
 * Whatever the bytes, the whole check with the demo's sheet ends without a fault, and finds the
 * same whether plain lines are read by the scanner or with the grammar.
 */
class CheckFuzz {
  private static final String GRAMMAR_ONLY = "hairline.grammarOnly";

  /** So many blocks, repeats counted, and a program is given up. */
  private static final int STEP_BUDGET = 2_000;

  /** Coarse: it is not the height field's fineness that is asked for. */
  private static final long CELL_PM = 20_000_000;

  /**
   * What programs are made of; a byte picks one, so that more than a block now and then is read.
   */
  private static final List<String> PIECES = pieces();

  private final Setup sheet = sheet();

  @FuzzTest(maxDuration = "8m")
  void endsAndFindsTheSame(byte[] bytes) throws IOException {
    byte[] program = program(bytes);
    ProgramResult scanned = check(program);
    System.setProperty(GRAMMAR_ONLY, "true");
    try {
      assertThat(check(program)).isEqualTo(scanned);
    } finally {
      System.clearProperty(GRAMMAR_ONLY);
    }
  }

  private ProgramResult check(byte[] program) throws IOException {
    return ProgramCheck.of(Selection.ALL)
        .withCell(OptionalLong.of(CELL_PM))
        .check(PartPrograms.of("fuzz", program), sheet);
  }

  /** The bytes themselves, or, behind an even one, the pieces that they pick. */
  private static byte[] program(byte[] bytes) {
    if (bytes.length == 0 || (bytes[0] & 1) == 1) {
      return bytes;
    }
    ByteArrayOutputStream program = new ByteArrayOutputStream();
    program.writeBytes(
        "G21 G90 G17 G94 G54\nT3 M6\nS30000 M3\nG0 G43 H3 X0. Y0. Z1."
            .getBytes(StandardCharsets.US_ASCII));
    for (int k = 1; k < bytes.length; k++) {
      program.writeBytes(
          PIECES.get((bytes[k] & 0xFF) % PIECES.size()).getBytes(StandardCharsets.US_ASCII));
    }
    return program.toByteArray();
  }

  /** One in a line; ends of lines as in Java. */
  private static List<String> pieces() {
    try (InputStream in =
        Objects.requireNonNull(CheckFuzz.class.getResourceAsStream("pieces.txt"))) {
      return new String(in.readAllBytes(), StandardCharsets.US_ASCII)
          .lines()
          .map(String::translateEscapes)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Setup sheet() {
    Path demo = Path.of("../programs/mixer-insert");
    try {
      Path folder = Files.createTempDirectory("hairline-fuzz");
      Files.copy(demo.resolve("tools.yaml"), folder.resolve("tools.yaml"));
      Files.writeString(
          folder.resolve("machine.yaml"),
          Files.readString(demo.resolve("machine.yaml"))
              .replace("step_budget: 50000000", "step_budget: " + STEP_BUDGET));
      Path setup = Files.copy(demo.resolve("setup.yaml"), folder.resolve("setup.yaml"));
      Setup read = new SheetReader().read(setup);
      for (String name : List.of("tools.yaml", "machine.yaml", "setup.yaml", "")) {
        Files.delete(folder.resolve(name));
      }
      return read;
    } catch (IOException | SheetException e) {
      throw new IllegalStateException(e.getMessage(), e);
    }
  }
}
