package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.util.Optional;

/** Whatever the bytes, they are read to their end, line by line, without a fault. */
class BlocksFuzz {
  @FuzzTest(maxDuration = "5m")
  void everyByteBelongsToOneLine(byte[] bytes) throws IOException {
    long next = 0;
    int line = 0;
    try (BlockSource blocks = PartPrograms.of("fuzz", bytes).blocks()) {
      for (Optional<Block> read = blocks.next(); read.isPresent(); read = blocks.next()) {
        Block block = read.get();
        line++;
        assertThat(block.line()).isEqualTo(line);
        assertThat(block.byteOffset()).isGreaterThanOrEqualTo(next);
        assertThat(block.byteOffset() - next).isLessThanOrEqualTo(3);
        next = block.byteOffset() + block.byteLength();
        assertThat(next).isLessThanOrEqualTo(bytes.length);
      }
    }
    assertThat(bytes.length - next).isBetween(0L, 2L);
  }
}
