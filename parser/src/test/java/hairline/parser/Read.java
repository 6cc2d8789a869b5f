package hairline.parser;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads programs for tests. */
final class Read {
  private Read() {}

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
    if (blocks.size() != 1) {
      throw new AssertionError(blocks.size() + " blocks in " + text);
    }
    return blocks.get(0);
  }
}
