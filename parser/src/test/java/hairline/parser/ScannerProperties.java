package hairline.parser;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
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
    Block expected = grammar.parse(line(bytes));
    equal(quick.parse(line), expected);
    int length = bytes.length;
    for (char end : new char[] {'\n', '\r'}) {
      // Among other lines it is read up to its end.
      byte[] between = Arrays.copyOf("X1\n".getBytes(UTF_8), length + 20);
      Arrays.fill(between, (byte) '7');
      System.arraycopy(bytes, 0, between, 3, length);
      between[3 + length] = (byte) end;
      equal(quick.scanner().scan(between, 3, between.length) == 3 + length, scanned);
      Line there = line(bytes);
      there.take(between, 3, 3 + length);
      if (scanned) {
        equal(quick.scanner().block(there), expected);
      }
    }
    for (String end : List.of("\n", "\r\n")) {
      passedAsScanned(bytes, end);
    }
    return scanned;
  }

  /** Makes AssertJ's objects for what differs alone: it is asked a hundred million times. */
  private static void equal(Object found, Object expected) {
    if (!found.equals(expected)) {
      assertThat(found).isEqualTo(expected);
    }
  }

  private static void equal(int found, int expected) {
    if (found != expected) {
      assertThat(found).isEqualTo(expected);
    }
  }

  private static void equal(boolean found, boolean expected) {
    if (found != expected) {
      assertThat(found).isEqualTo(expected);
    }
  }

  /** Compares lines passed over together, this one among them, with the same lines scanned. */
  private void passedAsScanned(byte[] bytes, String end) {
    byte[] before = ("G1 X1.5" + end + end + " (c) Y2" + end).getBytes(ISO_8859_1);
    int linesBefore = 3;
    byte[] behind = (end + "X-0.5 Y0" + end + "Z12345.678" + end).getBytes(ISO_8859_1);
    byte[] all = Arrays.copyOf(before, before.length + bytes.length + behind.length + 80);
    Arrays.fill(all, before.length, all.length, (byte) '7');
    System.arraycopy(bytes, 0, all, before.length, bytes.length);
    System.arraycopy(behind, 0, all, before.length + bytes.length, behind.length);
    // Each line in its turn is the one where a window begins, and the one that ends what is known.
    int from = 0;
    int known = all.length;
    while (from < before.length) {
      int passed = passedAsScanned(all, from, all.length, all.length);
      if (from == 0 && passed > linesBefore) {
        timesSkimmed++;
      }
      passedAsScanned(all, from, all.length, from + 12);
      passedAsScanned(all, from, known, all.length);
      from = behindLine(all, from);
      known = before.length + bytes.length + (known == all.length ? end.length() - 1 : 0);
    }
  }

  private static int behindLine(byte[] bytes, int from) {
    int at = from;
    while (bytes[at] != '\n' && bytes[at] != '\r') {
      at++;
    }
    return bytes[at] == '\r' && bytes[at + 1] == '\n' ? at + 2 : at + 1;
  }

  /** Gives how many lines were passed over. */
  private int passedAsScanned(byte[] bytes, int from, int known, int stop) {
    int next = skimmer.skimLines(bytes, from, known, Math.min(known, stop));
    int lines = skimmer.lines();
    boolean withPoint = false;
    boolean withoutPoint = false;
    int worded = -1;
    int lastEnd = skimmer.lastEnd();
    int at = from;
    for (int i = 0; i < lines; i++) {
      equal(at < stop, true);
      int behind = behindLine(bytes, at);
      int eol = quick.scanner().scan(bytes, at, known);
      equal(eol >= at, true);
      Line line = line(bytes);
      line.take(bytes, at, eol);
      equal(quick.scanner().isPlainButForNumber(line.bytes, line.to), true);
      equal(quick.scanner().isNumbered(), false);
      withPoint |= quick.scanner().hasLengthWithPoint();
      withoutPoint |= quick.scanner().hasLengthWithoutPoint();
      if (worded < 0 && quick.scanner().hasWords()) {
        worded = i;
        equal(skimmer.wordedSpan(), quick.scanner().spanOfWords());
      }
      equal(i < lines - 1 || lastEnd == eol, true);
      at = behind;
    }
    equal(next, at);
    equal(skimmer.worded(), worded);
    equal(skimmer.hasLengthWithPoint(), withPoint);
    equal(skimmer.hasLengthWithoutPoint(), withoutPoint);
    return lines;
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
            "X-12.3456 Y12345678 Z1234567. I.1234567",
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
