package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/**
 * Programs put together from pieces at random, with the demo's sheet: the check ends without a
 * fault, and its result hangs neither on how lines are read nor on how many threads there are.
 */
class MadeUpProgramsProperties {
  private static final String GRAMMAR_ONLY = "hairline.grammarOnly";
  private static final String HEAD = "G21 G90 G17 G94 G54\nT3 M6\nS30000 M3\nG0 G43 H3 X0. Y0. Z1.";

  /** Coarse: it is not the height field's fineness that is asked for. */
  private static final OptionalLong CELL_PM = OptionalLong.of(20_000_000);

  private static final Setup SHEET = Programs.demoSheet();

  @Provide
  Arbitrary<String> programs() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(MadeUpProgramsProperties.class.getResourceAsStream("pieces.txt"))) {
      List<String> pieces =
          new String(in.readAllBytes(), StandardCharsets.US_ASCII)
              .lines()
              .map(String::translateEscapes)
              .toList();
      return Arbitraries.of(pieces)
          .list()
          .ofMaxSize(120)
          .map(picked -> HEAD + String.join("", picked));
    }
  }

  @Property(tries = 150)
  void endWithTheSameResultHoweverTheyAreRead(@ForAll("programs") String program) {
    ProgramResult scanned = check(ProgramCheck.Threads.ONE, program);
    assertThat(check(ProgramCheck.Threads.SEVERAL, program)).isEqualTo(scanned);
    System.setProperty(GRAMMAR_ONLY, "true");
    try {
      assertThat(check(ProgramCheck.Threads.ONE, program)).isEqualTo(scanned);
    } finally {
      System.clearProperty(GRAMMAR_ONLY);
    }
  }

  private static ProgramResult check(ProgramCheck.Threads threads, String program) {
    try {
      return ProgramCheck.of(Selection.ALL)
          .withCell(CELL_PM)
          .on(threads)
          .check(PartPrograms.of("made-up", program.getBytes(StandardCharsets.US_ASCII)), SHEET);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
