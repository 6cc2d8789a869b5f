package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** A line read by the scanner is the block that the grammar makes of it, to the last column. */
class ScannerProperties {
  private static final int LINES = 1_000;

  private final BlockParser quick = new BlockParser(SharedTables.ALL, true);
  private final LineSkimmer skimmer = new LineSkimmer();
  private int timesSkimmed;
  private final BlockParser grammar = new BlockParser(SharedTables.ALL, false);

  private Line line(byte[] bytes) {
    Line line = new Line();
    line.number = 7;
    line.byteOffset = 70;
    line.byteLength = bytes.length;
    line.take(bytes, 0, bytes.length);
    return line;
  }

  /** Compares; tells whether the scanner read the line. */
  private boolean same(byte[] bytes) {
    Line line = line(bytes);
    boolean scanned = quick.scan(line);
    assertThat(quick.parse(line)).isEqualTo(grammar.parse(line(bytes)));
    boolean plain = quick.scan(line) && quick.scanner().isPlain(line);
    int length = bytes.length;
    skimmedAsScanned(bytes, 0, length, length, plain);
    // Digits behind the line, as another line's in the buffer, belong to none of its numbers.
    byte[] padded = Arrays.copyOf(bytes, length + 8);
    Arrays.fill(padded, length, padded.length, (byte) '7');
    skimmedAsScanned(padded, 0, length, length, plain);
    for (char end : new char[] {'\n', '\r'}) {
      // Among other lines it is read up to its end.
      byte[] between = Arrays.copyOf("X1\n".getBytes(UTF_8), length + 20);
      Arrays.fill(between, (byte) '7');
      System.arraycopy(bytes, 0, between, 3, length);
      between[3 + length] = (byte) end;
      assertThat(quick.scanner().scan(between, 3, between.length) == 3 + length).isEqualTo(scanned);
      Line there = line(bytes);
      there.take(between, 3, 3 + length);
      if (scanned) {
        assertThat(quick.scanner().block(there)).isEqualTo(grammar.parse(line(bytes)));
      }
      skimmedAsScanned(between, 3, 3 + length, between.length, plain);
    }
    return scanned;
  }

  /** Compares a line passed over with the same line scanned; unless it is left alone. */
  private void skimmedAsScanned(byte[] bytes, int from, int end, int to, boolean plain) {
    int eol = skimmer.skim(bytes, from, to);
    if (eol == -1) {
      return;
    }
    assertThat(plain).isTrue();
    assertThat(eol).isEqualTo(end);
    assertThat(quick.scanner().scan(bytes, from, to)).isEqualTo(end);
    assertThat(
            List.of(
                skimmer.hasWords(), skimmer.hasLengthWithPoint(), skimmer.hasLengthWithoutPoint()))
        .isEqualTo(
            List.of(
                quick.scanner().hasWords(),
                quick.scanner().hasLengthWithPoint(),
                quick.scanner().hasLengthWithoutPoint()));
    if (skimmer.hasWords()) {
      assertThat(skimmer.spanOfWords(from)).isEqualTo(quick.scanner().spanOfWords());
    }
    timesSkimmed++;
  }

  /** Tape marks, and what only looks like one. */
  @Example
  void tapeMarks() {
    for (String text :
        List.of("%", " %", "%\t ", "%%", "% %", "%1", "%(end)", "(a)%", "/%", "%é")) {
      same(text.getBytes(UTF_8));
    }
    assertThat(quick.parse(line(" %".getBytes(UTF_8))).kind()).isEqualTo(Block.Kind.TAPE_MARK);
  }

  /** A thousand lines a try: a million a run. */
  @Property
  void randomLines(@ForAll long seed) {
    RandomLines lines = new RandomLines(seed);
    int scanned = 0;
    for (int i = 0; i < LINES; i++) {
      if (same(lines.next().getBytes(UTF_8))) {
        scanned++;
      }
    }
    assertThat(scanned).isBetween(LINES / 5, LINES * 9 / 10);
    assertThat(timesSkimmed).isGreaterThan(LINES / 50);
  }

  @Example
  void everyPrefixAndEveryOtherByte() {
    for (String sample :
        List.of(
            "N120 G1 X1.2040 Y-.5 F180. (first)",
            "g3x+0.5y-7i0.j.05 ;end",
            " /2 T3 M6 //remark",
            "X-1234.5678 Z+123456789. ;x",
            "G0 X.0 Y0.\tI-.125 K7 (a longer comment)",
            "X1 2.3 Z-0",
            "%",
            "O1(a)(b)N1N2")) {
      byte[] bytes = sample.getBytes(UTF_8);
      for (int at = 0; at < bytes.length; at++) {
        same(Arrays.copyOf(bytes, at));
        byte[] other = bytes.clone();
        for (int value = 0; value < 256; value++) {
          // Line ends stand in no line.
          if (value != '\n' && value != '\r') {
            other[at] = (byte) value;
            same(other);
          }
        }
      }
    }
  }

  @Example
  void theLongestNumbersAndTheMostWords() {
    same("X123456789012345678 Y1234567890123456789".getBytes(UTF_8));
    assertThat(same("X0.00000000000000001".getBytes(UTF_8))).isTrue();
    assertThat(same("X0.000000000000000001".getBytes(UTF_8))).isFalse();
    for (int words : new int[] {1, 2, 3, 63, 64, 65, 200}) {
      same("X1".repeat(words).getBytes(UTF_8));
      same("(c)".repeat(words).getBytes(UTF_8));
    }
    same(("(" + "long".repeat(2_000) + ")X1").getBytes(UTF_8));
  }

  @Example
  void programs() throws IOException {
    Path folder = Path.of("..", "programs");
    try (Stream<Path> files = Files.walk(folder)) {
      List<Path> programs = files.filter(f -> f.toString().endsWith(".nc")).sorted().toList();
      assertThat(programs).hasSizeGreaterThan(100);
      long scanned = programs.stream().mapToLong(this::scanned).sum();
      long all = programs.stream().mapToLong(file -> lines(file).size()).sum();
      assertThat(scanned).isGreaterThan(all * 8 / 10);
    }
  }

  private long scanned(Path file) {
    return lines(file).stream().filter(line -> same(line.getBytes(UTF_8))).count();
  }

  private static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file, UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
