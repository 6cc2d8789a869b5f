package hairline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LinesTest {
  @TempDir private Path folder;

  private Lines lines(String text) throws IOException {
    Path file = folder.resolve("part.nc");
    Files.write(file, text.getBytes(StandardCharsets.UTF_8));
    Lines lines = new Lines(file);
    lines.find(() -> false);
    return lines;
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void linesEndInAnyOfTheThreeWays(String end) throws IOException {
    List<String> expected = new ArrayList<>();
    for (int line = 1; line <= 1000; line++) {
      expected.add(line % 7 == 0 ? "" : "N" + line + " X" + line + ".");
    }
    Lines lines = lines(String.join(end, expected));
    assertThat(lines.count()).isEqualTo(1000);
    for (int line : new int[] {1, 2, 7, 128, 129, 130, 512, 999, 1000}) {
      assertThat(lines.read(line)).isEqualTo(expected.get(line - 1));
    }
  }

  @Test
  void anEndOfLineAtTheEndMakesNoLineMore() throws IOException {
    assertThat(lines("G21\nG90\n").count()).isEqualTo(2);
    assertThat(lines("G21\n\n").count()).isEqualTo(2);
    assertThat(lines("\n").count()).isEqualTo(1);
    assertThat(lines("").count()).isZero();
  }

  @Test
  void whatWouldSteerTheScreenIsSpelledOut() throws IOException {
    assertThat(lines("(a\u202Eb)\u001B[2J").read(1)).isEqualTo("(a<U+202E>b)\u241B[2J");
  }

  @Test
  void onlySoManyPagesStayInMemory() throws IOException {
    StringBuilder text = new StringBuilder();
    for (int line = 1; line <= Lines.STRIDE * (Lines.PAGES_KEPT + 5); line++) {
      text.append('N').append(line).append('\n');
    }
    Lines lines = lines(text.toString());
    for (int line = 1; line <= lines.count(); line += Lines.STRIDE) {
      assertThat(lines.read(line)).isEqualTo("N" + line);
    }
    assertThat(lines.ifRead(1)).isEmpty();
    assertThat(lines.ifRead(lines.count())).contains("N" + lines.count());
  }
}
