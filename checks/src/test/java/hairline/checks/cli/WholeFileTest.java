package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hairline.checks.report.Trouble;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
  private static final byte[] HALF = "half".getBytes(StandardCharsets.UTF_8);

  @TempDir private Path folder;

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> String.valueOf(file.getFileName())).sorted().toList();
    }
  }

  @Test
  void whatIsCutShortLeavesTheOlderFile() throws IOException {
    Path file = Files.writeString(folder.resolve("a.csv"), "older");
    assertThatThrownBy(
            () ->
                WholeFile.write(
                    file,
                    List.of(),
                    out -> {
                      out.write(HALF);
                      throw new CancellationException();
                    }))
        .isInstanceOf(CancellationException.class);
    Optional<Trouble> trouble =
        WholeFile.write(
            file,
            List.of(),
            out -> {
              out.write(HALF);
              throw new IOException("disk full");
            });
    assertThat(trouble.orElseThrow().sentence()).startsWith("cannot write `");
    assertThat(names()).isEqualTo(List.of("a.csv"));
    assertThat(Files.readString(file)).isEqualTo("older");
    assertThat(WholeFile.write(file, List.of(), out -> out.write(HALF))).isEmpty();
    assertThat(names()).isEqualTo(List.of("a.csv"));
    assertThat(Files.readString(file)).isEqualTo("half");
  }

  @Test
  void nothingThatWasReadIsWrittenOver() throws IOException {
    Path sheet = Files.writeString(folder.resolve("sheet.txt"), "older");
    assertThat(WholeFile.write(sheet, List.of(sheet), out -> out.write(HALF)).map(Trouble::code))
        .contains("output-is-input");
    Path program = Files.writeString(folder.resolve("part.nc"), "older");
    assertThat(WholeFile.write(program, List.of(), out -> out.write(HALF)).map(Trouble::code))
        .contains("output-is-source");
    assertThat(Files.readString(sheet) + Files.readString(program)).isEqualTo("olderolder");
  }
}
