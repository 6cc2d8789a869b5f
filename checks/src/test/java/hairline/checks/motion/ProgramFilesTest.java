package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hairline.checks.motion.ProgramFiles.Found;
import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.PartProgram;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where subprograms are looked for, and which texts are kept. */
class ProgramFilesTest {
  @TempDir private Path folder;
  private ProgramFiles files;

  private Path file(String name, String... lines) throws IOException {
    return Files.writeString(folder.resolve(name), String.join("\n", lines) + "\n");
  }

  @BeforeEach
  void program() throws IOException {
    files = ProgramFiles.of(file("main.nc", "G0 X0", "M30", "O7", "X7", "M99"), event -> {});
  }

  private Optional<String> found(long number) {
    return files
        .find(0, number)
        .map(found -> Path.of(files.name(found.file())).getFileName() + " " + found.name());
  }

  private List<String> texts(Found found) throws IOException {
    List<String> texts = new ArrayList<>();
    try (BlockSource source = files.open(found)) {
      for (Optional<Block> next = source.next(); next.isPresent(); next = source.next()) {
        texts.add(next.get().text());
      }
    }
    return texts;
  }

  @Test
  void theSameFileFirstThenThoseBeside() throws IOException {
    file("O0007.nc", "O7", "X0", "M99");
    assertThat(found(7)).contains("main.nc O7");
    file("8.nc", "O8", "X8", "M99");
    assertThat(found(8)).contains("8.nc O8");
    // Once found, it is there.
    assertThat(found(8)).contains("8.nc O8");
    assertThat(files.count()).isEqualTo(2);
    assertThat(files.realPathsBeside()).containsExactly(folder.resolve("8.nc").toRealPath());
  }

  @Test
  void theFullNameGoesBeforeTheShort() throws IOException {
    file("100", "X1");
    file("100.nc", "X1");
    file("O100", "X1");
    file("O100.nc", "X1");
    file("0100.nc", "X1");
    file("O0100", "X1");
    file("O0100.nc", "X1");
    for (String name : List.of("O0100.nc", "O0100", "0100.nc", "O100.nc", "O100", "100.nc")) {
      files = ProgramFiles.of(folder.resolve("main.nc"), event -> {});
      assertThat(found(100).orElseThrow()).startsWith(name + " ");
      Files.delete(folder.resolve(name));
    }
    files = ProgramFiles.of(folder.resolve("main.nc"), event -> {});
    assertThat(found(100)).isEmpty();
  }

  @Test
  void numberZeroIsANumber() throws IOException {
    file("O0000.nc", "X1", "M99");
    assertThat(found(0).orElseThrow()).startsWith("O0000.nc ");
    assertThat(found(-1)).isEmpty();
  }

  @Test
  void oneFileUnderTwoNamesIsDrawnOnOnce() throws IOException {
    file("O0008.nc", "O8", "X8", "M99", "O9", "X9", "M99");
    file("O0005.nc", "X5", "M99");
    Files.createSymbolicLink(folder.resolve("O0009.nc"), Path.of("O0008.nc"));
    assertThat(found(5)).isPresent();
    assertThat(found(8)).contains("O0008.nc O8");
    assertThat(found(9)).contains("O0008.nc O9");
    assertThat(files.count()).isEqualTo(3);
  }

  @Test
  void aFolderIsNoFileThatCannotBeRead() throws IOException {
    Files.createDirectory(folder.resolve("O0100.nc"));
    assertThat(found(100)).isEmpty();
    assertThat(files.places(100)).contains("O0100.nc").doesNotContain("O0100.nc (cannot be read)");
  }

  /** A file that is gone can't be read again: what is replayed then was kept. */
  @Test
  void aShortProgramOpenedAgainIsKept() throws IOException {
    Path beside = file("O0100.nc", "O100", "X1", "X2", "M99");
    Found found = files.find(0, 100).orElseThrow();
    List<String> first = texts(found);
    assertThat(first).endsWith("X1", "X2", "M99");
    assertThat(texts(found)).isEqualTo(first);
    Files.delete(beside);
    assertThat(texts(found)).isEqualTo(first);
    assertThat(texts(found)).isEqualTo(first);
  }

  @Test
  void aProgramOpenedOnceIsNotKept() throws IOException {
    Path beside = file("O0100.nc", "O100", "X1", "M99");
    Found found = files.find(0, 100).orElseThrow();
    texts(found);
    Files.delete(beside);
    assertThatThrownBy(() -> texts(found)).isInstanceOf(NoSuchFileException.class);
  }

  /** A program of so many bytes, its line ends included. */
  private Found ofBytes(int number, long bytes) throws IOException {
    StringBuilder text = new StringBuilder("O" + number + "\n");
    while (text.length() < bytes - 1) {
      text.append(text.length() % 80 == 79 ? '\n' : ' ');
    }
    Files.writeString(folder.resolve("O" + number + ".nc"), text.append('\n'));
    return files.find(0, number).orElseThrow();
  }

  /** Whether it is still there when it was opened twice and its file is gone. */
  private boolean isKept(Found found) throws IOException {
    texts(found);
    texts(found);
    Files.delete(Path.of(files.name(found.file())));
    try {
      texts(found);
      return true;
    } catch (NoSuchFileException e) {
      return false;
    }
  }

  @Test
  void aLongProgramIsReadAnew() throws IOException {
    assertThat(isKept(ofBytes(1000, ProgramFiles.KEPT_PROGRAM_BYTES))).isTrue();
    assertThat(isKept(ofBytes(1001, ProgramFiles.KEPT_PROGRAM_BYTES + 1))).isFalse();
  }

  /** 1 MiB takes sixteen of 64 KiB each. */
  @Test
  void manyProgramsAreKeptUpToALengthInSum() throws IOException {
    for (int i = 0; i < 16; i++) {
      assertThat(isKept(ofBytes(1000 + i, ProgramFiles.KEPT_PROGRAM_BYTES))).as("" + i).isTrue();
    }
    assertThat(isKept(ofBytes(2000, 100))).isFalse();
  }

  @Test
  void aReaderIsClosed() throws IOException {
    int[] open = {0};
    PartProgram inner = PartPrograms.of("x", "X1\nM30\n".getBytes(StandardCharsets.UTF_8));
    PartProgram counting =
        new PartProgram() {
          @Override
          public String name() {
            return "x";
          }

          @Override
          public BlockSource blocksFrom(long byteOffset, int line) throws IOException {
            BlockSource source = inner.blocksFrom(byteOffset, line);
            open[0]++;
            return new BlockSource() {
              @Override
              public Optional<Block> next() throws IOException {
                return source.next();
              }

              @Override
              public void close() throws IOException {
                open[0]--;
                source.close();
              }
            };
          }
        };
    files = ProgramFiles.alone(counting, event -> {});
    texts(files.main());
    assertThat(open[0]).isZero();
  }

  @Test
  void aProgramWithoutAFolderHasNoFilesBeside() throws IOException {
    file("O0100.nc", "X1", "M99");
    files =
        ProgramFiles.alone(
            PartPrograms.of("x", "M30\n".getBytes(StandardCharsets.UTF_8)), event -> {});
    assertThat(found(100)).isEmpty();
    assertThat(files.realPathsBeside()).isEmpty();
  }

  /** From half a megabyte of its own text on; what stands behind it in the file does not count. */
  @Test
  void longIsFromHalfAMegabyteOn() throws IOException {
    String line = " ".repeat(63) + "\n";
    String end = "M30" + " ".repeat(60) + "\n";
    String head = line.repeat((int) ProgramFiles.READ_AHEAD_BYTES / 64 - 1);
    assertThat(longest(head + end)).isTrue();
    assertThat(longest(head.substring(1) + end)).isFalse();
    assertThat(longest("M30\nO100\n" + head + end + end)).isFalse();
  }

  private static boolean longest(String text) throws IOException {
    return ProgramFiles.alone(
            PartPrograms.of("x", text.getBytes(StandardCharsets.UTF_8)), event -> {})
        .isLong();
  }
}
