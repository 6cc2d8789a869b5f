package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.channels.ClosedChannelException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PartProgramsTest {
  @TempDir Path folder;

  private PartProgram file(byte[] bytes) throws IOException {
    return PartPrograms.of(Files.write(folder.resolve("insert.nc"), bytes));
  }

  @Test
  void aFileReadsLikeItsBytes() throws IOException {
    for (String sample : Read.SAMPLES) {
      byte[] bytes = Read.sample(sample);
      PartProgram program = file(bytes);
      assertThat(Read.all(program)).isNotEmpty().isEqualTo(Read.program(bytes));
      assertThat(Read.all(program)).isEqualTo(Read.program(bytes));
    }
  }

  @Test
  void names() throws IOException {
    assertThat(PartPrograms.of("stdin", new byte[0]).name()).isEqualTo("stdin");
    assertThat(file(new byte[0]).name()).isEqualTo(folder.resolve("insert.nc").toString());
  }

  @Test
  void fromAnyLineStart() throws IOException {
    for (String sample : Read.SAMPLES) {
      PartProgram program = file(Read.sample(sample));
      List<Block> all = Read.all(program);
      for (int i = 0; i < all.size(); i++) {
        Block first = all.get(i);
        try (BlockSource source = program.blocksFrom(first.byteOffset(), first.line())) {
          assertThat(Read.rest(source)).isEqualTo(all.subList(i, all.size()));
        }
      }
    }
  }

  @Test
  void fromTheEnd() throws IOException {
    PartProgram program = PartPrograms.of("t", "G1\n".getBytes(UTF_8));
    try (BlockSource source = program.blocksFrom(3, 2)) {
      assertThat(source.next()).isEmpty();
      assertThat(source.next()).isEmpty();
    }
    try (BlockSource source = program.blocksFrom(99, 2)) {
      assertThat(source.next()).isEmpty();
    }
  }

  @Test
  void fromNowhere() throws IOException {
    PartProgram program = file("G1\n".getBytes(UTF_8));
    assertThatThrownBy(() -> program.blocksFrom(-1, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("byte -1, line 1");
    assertThatThrownBy(() -> program.blocksFrom(0, 0)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aMissingFile() {
    PartProgram program = PartPrograms.of(folder.resolve("none.nc"));
    assertThatThrownBy(program::blocks).isInstanceOf(NoSuchFileException.class);
  }

  @Test
  void aFolder() {
    assertThatThrownBy(() -> Read.rest(PartPrograms.of(folder).blocks()))
        .isInstanceOf(IOException.class);
  }

  /** The file is let go: a reader that was closed reads no more. */
  @Test
  void aClosedReader() throws IOException {
    BlockSource source = file("G1\nG2\n".repeat(100_000).getBytes(UTF_8)).blocks();
    assertThat(source.next()).isPresent();
    source.close();
    assertThatThrownBy(() -> Read.rest(source)).isInstanceOf(ClosedChannelException.class);
  }

  @Test
  void everyOpenedSourceIsClosed() throws IOException {
    AtomicInteger open = new AtomicInteger();
    byte[] bytes = "TITLE\n%\nG1\n".getBytes(UTF_8);
    StoredProgram program =
        new StoredProgram(
            "t",
            () -> {
              open.incrementAndGet();
              return new FakeSource(bytes, 100, open::decrementAndGet);
            });
    assertThat(Read.all(program)).hasSize(3);
    assertThat(open).hasValue(0);
    try (BlockSource source = program.blocks()) {
      assertThat(source.next()).isPresent();
      assertThat(open).hasValue(1);
    }
    assertThat(open).hasValue(0);
  }

  @Test
  void manyReadersAtOnce() throws Exception {
    byte[] bytes = Read.sample("odd.nc");
    PartProgram program = file(bytes);
    List<Block> expected = Read.program(bytes);
    List<BlockSource> readers = new ArrayList<>();
    for (int i = 0; i < 50; i++) {
      readers.add(program.blocks());
    }
    for (Block block : expected) {
      for (BlockSource reader : readers) {
        assertThat(reader.next()).contains(block);
      }
    }
    for (BlockSource reader : readers) {
      assertThat(reader.next()).isEmpty();
      reader.close();
    }
  }

  @Test
  void manyThreadsAtOnce() throws Exception {
    byte[] bytes = Read.sample("odd.nc");
    PartProgram program = file(bytes);
    List<Block> expected = Read.program(bytes);
    ExecutorService threads = Executors.newFixedThreadPool(8);
    try {
      Callable<List<Block>> read = () -> Read.all(program);
      List<Future<List<Block>>> results = threads.invokeAll(Collections.nCopies(64, read));
      for (Future<List<Block>> result : results) {
        assertThat(result.get()).isEqualTo(expected);
      }
    } finally {
      threads.shutdown();
    }
  }
}
