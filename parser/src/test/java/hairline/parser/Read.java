package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads programs for tests. */
final class Read {
  /** The sample programs among the test resources. */
  static final List<String> SAMPLES = List.of("mixer-insert.nc", "odd.nc", "nistir-6556-c2.nc");

  private Read() {}

  static byte[] sample(String name) {
    try (InputStream in = Read.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new AssertionError("no sample " + name);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static List<Block> program(String text) {
    return program(text.getBytes(StandardCharsets.UTF_8));
  }

  static List<Block> program(byte[] bytes) {
    return all(PartPrograms.of("test", bytes));
  }

  static List<Block> all(PartProgram program) {
    try (BlockSource source = program.blocks()) {
      return rest(source);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static List<Block> rest(BlockSource source) throws IOException {
    List<Block> blocks = new ArrayList<>();
    for (Optional<Block> b = source.next(); b.isPresent(); b = source.next()) {
      blocks.add(b.get());
    }
    return blocks;
  }

  /** The one block of a line. */
  static Block block(String text) {
    List<Block> blocks = program(text);
    assertThat(blocks).as(text).hasSize(1);
    return blocks.get(0);
  }

  /** The one block of a line that has no problem but blanks inside numbers. */
  static Block good(String text) {
    Block block = block(text);
    assertThat(block.problems())
        .as(text)
        .allMatch(p -> p.kind() == Problem.Kind.SPACE_INSIDE_NUMBER);
    return block;
  }

  /** The words of a good line, printed. */
  static List<String> words(String text) {
    return good(text).words().stream().map(Show::word).toList();
  }

  /** The value of the only word of a line that consists of an address letter and this text. */
  static Value value(String text) {
    Block block = good("X" + text);
    assertThat(block.words()).as(text).hasSize(1);
    return block.words().get(0).value();
  }

  /** The one problem of a line. */
  static Problem problem(String text) {
    Block block = block(text);
    assertThat(block.problems()).as(text).hasSize(1);
    Problem problem = block.problems().get(0);
    if (problem.kind() != Problem.Kind.SPACE_INSIDE_NUMBER) {
      assertThat(block.words()).as(text).isEmpty();
      assertThat(block.settings()).as(text).isEmpty();
    }
    return problem;
  }
}
