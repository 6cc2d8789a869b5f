package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;

/**
 * Whatever the bytes of a line, the scanner makes the block of it that the grammar makes. A line
 * ends before the first line feed or carriage return: neither ever stands in one.
 */
class ScannerFuzz {
  private final BlockParser quick = new BlockParser(SharedTables.ALL, true);
  private final BlockParser grammar = new BlockParser(SharedTables.ALL, false);

  @FuzzTest(maxDuration = "5m")
  void sameBlock(byte[] bytes) {
    assertThat(quick.parse(line(bytes))).isEqualTo(grammar.parse(line(bytes)));
  }

  private static Line line(byte[] bytes) {
    Line line = new Line();
    line.number = 1;
    line.byteLength = length(bytes);
    line.take(bytes, 0, line.byteLength);
    return line;
  }

  private static int length(byte[] bytes) {
    int length = 0;
    while (length < bytes.length && bytes[length] != '\n' && bytes[length] != '\r') {
      length++;
    }
    return length;
  }
}
