package hairline.checks.compare;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.compare.Change.Kind;
import hairline.checks.compare.Change.Where;
import hairline.checks.motion.Event;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/**
 * Programs made up block by block, so that each word of them has an effect: whatever is edited must
 * be found, and only what has no effect may be passed over.
 */
class MotionComparisonProperties {
  private static final Setup SHEET = sheet();

  private static Setup sheet() {
    try {
      return new SheetReader()
          .parse(
              """
              machine:
                resolution: 0.1 um
                control: {dwell: {P: s, X: s}}
                codes: {warm_up: [M71], measure_tool: [M72], ignore: [M90]}
              """,
              "sheet");
    } catch (SheetException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A block of its words. */
  private static final class Line {
    final List<String> words;

    Line(String... words) {
      this.words = new ArrayList<>(List.of(words));
    }

    Line(Line other) {
      this.words = new ArrayList<>(other.words);
    }
  }

  private static String at(char letter, long tenthsUm) {
    return String.format(Locale.ROOT, "%c%d.%04d", letter, tenthsUm / 10_000, tenthsUm % 10_000);
  }

  /** A program: no two of its points are one, and no two feeds or speeds. */
  private static List<Line> program(Random random, int blocks) {
    List<Line> lines = new ArrayList<>();
    lines.add(new Line("G21", "G90", "G17", "G94"));
    lines.add(new Line("G54"));
    lines.add(new Line("T1", "M6"));
    lines.add(new Line("S20000", "M3"));
    lines.add(new Line("M71"));
    lines.add(new Line("M72"));
    lines.add(new Line("M8"));
    lines.add(new Line("G0", "G43", "H1", "X0.", "Y0.", "Z9."));
    int tool = 1;
    for (int k = 1; k <= blocks; k++) {
      long x = 100L * k + random.nextInt(40);
      long y = 100L * random.nextInt(1000) + 50;
      long z = 100L * random.nextInt(50);
      switch (random.nextInt(12)) {
        case 0 -> lines.add(new Line("G4", "P" + (k + 1) + "."));
        case 1 -> lines.add(new Line(random.nextBoolean() ? "M0" : "M1"));
        case 2 -> lines.add(new Line("S" + (20_000 + k), "M3"));
        case 3 -> {
          tool++;
          lines.add(new Line("T" + tool, "M6"));
          lines.add(new Line("S" + (20_000 + k), "M3"));
          lines.add(new Line("M72"));
          lines.add(new Line("G0", "G43", "H" + tool, "Z" + (9 + k) + "."));
        }
        case 4 -> lines.add(new Line("G0", at('X', x), at('Y', y), at('Z', z + 10_000)));
        case 5 ->
            lines.add(
                new Line(
                    "G2",
                    at('X', x),
                    at('Y', y),
                    at('Z', z),
                    "R" + (100 + random.nextInt(50)) + ".",
                    "F" + (k + 9) + "."));
        default ->
            lines.add(new Line("G1", at('X', x), at('Y', y), at('Z', z), "F" + (k + 9) + "."));
      }
    }
    lines.add(new Line("M9"));
    lines.add(new Line("M5"));
    lines.add(new Line("G0", "Z99."));
    lines.add(new Line("M30"));
    return lines;
  }

  private static String text(List<Line> lines) {
    StringBuilder text = new StringBuilder();
    lines.forEach(line -> text.append(String.join(" ", line.words)).append('\n'));
    return text.toString();
  }

  private static MotionComparison.Program run(String text) {
    return sink -> {
      ProgramFiles files =
          ProgramFiles.alone(
              PartPrograms.of("a.nc", text.getBytes(StandardCharsets.UTF_8)), e -> {});
      new Interpreter(SheetControl.of(SHEET), files)
          .run(
              event -> {
                if (!(event instanceof Event.BlockProblem)) {
                  sink.accept(event);
                }
              },
              false);
    };
  }

  private static List<Change> changes(String before, String after) {
    try {
      MotionComparison comparison = MotionComparison.of(run(before), run(after));
      assertThat(comparison.notCompared()).isEmpty();
      return comparison.changes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Property(tries = 200)
  void aDisguiseIsNoChange(@ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int blocks) {
    Random random = new Random(seed);
    List<Line> lines = program(random, blocks);
    StringBuilder disguised = new StringBuilder("%\nO" + random.nextInt(9000) + " (other)\n");
    int number = 0;
    for (Line line : lines) {
      number += 1 + random.nextInt(10);
      List<String> words = new ArrayList<>(line.words);
      Collections.shuffle(words, random);
      disguised.append(random.nextBoolean() ? "N" + number + " " : "");
      for (String word : words) {
        disguised
            .append(random.nextInt(5) == 0 ? "(remark)" : "")
            .append(random.nextInt(5) == 0 ? word.toLowerCase(Locale.ROOT) : word)
            .append(" ".repeat(random.nextInt(3)));
      }
      disguised.append(random.nextBoolean() ? "; end\n" : "\r\n");
      if (random.nextInt(4) == 0) {
        disguised.append("(a line of its own)\n\n");
      }
    }
    assertThat(changes(text(lines), disguised.toString())).isEmpty();
    assertThat(changes(text(lines), text(lines))).isEmpty();
  }

  @Property(tries = 100)
  void theSameMotionInIncrementsIsNoChangeOnTheWay(@ForAll long seed) {
    Random random = new Random(seed);
    StringBuilder absolute = new StringBuilder("G21 G90 G17 G94 G54\nG0 X0. Y0. Z0.\n");
    StringBuilder increments = new StringBuilder("G21 G90 G17 G94 G54\nG0 X0. Y0. Z0.\nG91\n");
    long x = 0;
    for (int k = 0; k < 20; k++) {
      long by = 1L + random.nextInt(1000);
      x += by;
      absolute.append("G1 ").append(at('X', x)).append(" F50.\n");
      increments.append("G1 ").append(at('X', by)).append(" F50.\n");
    }
    String end = "M30\n";
    List<Change> changes = changes(absolute + end, increments + end);
    assertThat(changes).singleElement().matches(c -> c.kind() == Kind.STATE_AT_END);
    assertThat(changes(absolute + end, increments + "G90\n" + end)).isEmpty();
  }

  private static final long INCREMENT_PM = 100_000;

  private static List<Change> changesBesideTheWay(String before, String after) {
    try {
      return MotionComparison.of(run(before), run(after), INCREMENT_PM, Set.of()).changes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String point(long x, long y, long z, String rest) {
    return "G1 " + at('X', x) + " " + at('Y', y) + " " + at('Z', z) + " " + rest + "\n";
  }

  /** Straight ways in pieces, each point rounded to the increment: one motion. */
  @Property(tries = 200)
  void aWayInPiecesIsNoChange(@ForAll long seed, @ForAll @IntRange(min = 1, max = 20) int ways) {
    Random random = new Random(seed);
    StringBuilder whole = new StringBuilder("G21 G90 G17 G94 G54\nG0 X0. Y0. Z0.\n");
    StringBuilder pieces = new StringBuilder(whole);
    StringBuilder slower = new StringBuilder(whole);
    long[] from = new long[3];
    for (int k = 0; k < ways; k++) {
      long[] to = {from[0] + 200 + random.nextInt(5000), random.nextInt(5000), random.nextInt(99)};
      int parts = 1 + random.nextInt(4);
      for (int part = 1; part <= parts; part++) {
        long[] by = new long[3];
        for (int axis = 0; axis < 3; axis++) {
          by[axis] = from[axis] + Math.round((to[axis] - from[axis]) * (double) part / parts);
        }
        pieces.append(point(by[0], by[1], by[2], "F100."));
        slower.append(point(by[0], by[1], by[2], part == 2 ? "F90." : "F100."));
      }
      whole.append(point(to[0], to[1], to[2], "F100."));
      from = to;
    }
    String end = "G1 X9. F100.\nM30\n";
    assertThat(changesBesideTheWay(whole + end, pieces + end)).as(whole + "\n" + pieces).isEmpty();
    assertThat(changesBesideTheWay(pieces + end, whole + end)).isEmpty();
    if (slower.indexOf("F90.") > 0) {
      assertThat(changesBesideTheWay(whole + end, slower + end))
          .extracting(Change::kind)
          .containsOnly(Kind.FEED);
    }
  }

  /** A point on the way moved by one increment beside it: another path, divided or not. */
  @Property(tries = 200)
  void aPointBesideTheWayIsFound(@ForAll long seed) {
    Random random = new Random(seed);
    String begin = "G21 G90 G17 G94 G54\nG0 X0. Y0. Z0.\n";
    long length = 10L + random.nextInt(5000);
    long x = 1L + random.nextInt((int) length - 1);
    String end = point(length, 0, 0, "F100.") + "M30\n";
    String on = begin + point(x, 0, 0, "F100.") + end;
    String beside = begin + point(x, random.nextBoolean() ? 1 : 2, 0, "F100.") + end;
    assertThat(changesBesideTheWay(begin + end, on)).isEmpty();
    for (String before : List.of(begin + end, on)) {
      assertThat(changesBesideTheWay(before, beside)).as(before + beside).isNotEmpty();
      assertThat(changesBesideTheWay(beside, before)).isNotEmpty();
    }
    // Back and forth on one line is no way in pieces.
    String back = begin + point(length + 5, 0, 0, "F100.") + point(x, 0, 0, "F100.") + end;
    assertThat(changesBesideTheWay(begin + end, back)).isNotEmpty();
  }

  /** A circle or helix from which arcs are cut; all in tenths of a micron, angles in radians. */
  private record Helix(
      String plane, long centreFirst, long centreSecond, double radius, long rise) {
    static Helix any(Random random) {
      return new Helix(
          List.of("G17", "G18", "G19").get(random.nextInt(3)),
          20_000 + random.nextInt(9000),
          30_000 + random.nextInt(9000),
          500 + random.nextInt(15_000),
          random.nextBoolean() ? 0 : 1 + random.nextInt(400));
    }

    /** The plane's first axis, its second, and the one normal to it: ISO 841, right-handed. */
    private String axes() {
      return plane.equals("G17") ? "XYZ" : plane.equals("G18") ? "ZXY" : "YZX";
    }

    long[] point(double angle, double share) {
      return new long[] {
        centreFirst + Math.round(radius * StrictMath.cos(angle)),
        centreSecond + Math.round(radius * StrictMath.sin(angle)),
        1000 + Math.round(rise * share)
      };
    }

    private String to(long[] point) {
      StringBuilder text = new StringBuilder();
      for (int k = 0; k < 3; k++) {
        text.append(' ').append(at(axes().charAt(k), point[k]));
      }
      return text.toString();
    }

    /** An arc around the centre, or with the radius where that is given. */
    private String arc(double sweep, long[] from, long[] to, boolean withRadius, String rest) {
      String round =
          withRadius
              ? " " + at('R', Math.round(radius))
              : " " + offset(0, centreFirst - from[0]) + " " + offset(1, centreSecond - from[1]);
      return (sweep < 0 ? "G2" : "G3") + to(to) + round + " " + rest + "\n";
    }

    private String offset(int axis, long tenths) {
      char letter = (char) ('I' + axes().charAt(axis) - 'X');
      return letter + (tenths < 0 ? "-" : "") + at('0', Math.abs(tenths)).substring(1);
    }
  }

  private static String arcs(
      Helix helix, double start, double sweep, double[] ends, boolean withRadius, String[] rest) {
    long[] from = helix.point(start, 0);
    StringBuilder text =
        new StringBuilder("G21 G90 G94 G54 " + helix.plane() + "\nG0" + helix.to(from) + "\n");
    for (int k = 0; k < ends.length; k++) {
      long[] to = helix.point(start + sweep * ends[k], ends[k]);
      text.append(helix.arc(sweep, from, to, withRadius, rest[k % rest.length]));
      from = to;
    }
    return text + "G1" + helix.to(new long[] {9, 9, 9}) + " F100.\nM30\n";
  }

  private static double[] parts(Random random) {
    double[] ends = new double[2 + random.nextInt(4)];
    for (int k = 0; k < ends.length - 1; k++) {
      ends[k] = (k + 0.3 + 0.6 * random.nextDouble()) / ends.length;
    }
    ends[ends.length - 1] = 1;
    return ends;
  }

  private static final double[] WHOLE = {1};

  /** Arcs, helices and full circles in pieces around one centre, each point rounded. */
  @Property(tries = 300)
  void anArcInPiecesIsNoChange(@ForAll long seed) {
    Random random = new Random(seed);
    Helix helix = Helix.any(random);
    double start = 2 * Math.PI * random.nextDouble();
    double sweep =
        (random.nextBoolean() ? 1 : -1)
            * (random.nextInt(4) == 0 ? 2 * Math.PI : 0.5 + 5.5 * random.nextDouble());
    double[] ends = parts(random);
    String[] alike = {"F100."};
    String whole = arcs(helix, start, sweep, WHOLE, false, alike);
    String pieces = arcs(helix, start, sweep, ends, false, alike);
    assertThat(changesBesideTheWay(whole, pieces)).as(whole + pieces).isEmpty();
    assertThat(changesBesideTheWay(pieces, whole)).as(pieces + whole).isEmpty();
    String slower = arcs(helix, start, sweep, ends, false, new String[] {"F100.", "F90."});
    assertThat(changesBesideTheWay(whole, slower)).extracting(Change::kind).containsOnly(Kind.FEED);
    assertThat(changesBesideTheWay(pieces, slower))
        .extracting(Change::kind)
        .containsOnly(Kind.FEED);
  }

  /** With the radius too, where each piece is so short that its centre is well told by its ends. */
  @Property(tries = 200)
  void anArcInPiecesWithItsRadiusIsNoChange(@ForAll long seed) {
    Random random = new Random(seed);
    Helix helix = Helix.any(random);
    double start = 2 * Math.PI * random.nextDouble();
    double sweep = (random.nextBoolean() ? 1 : -1) * (0.5 + 0.8 * random.nextDouble());
    double[] ends = parts(random);
    String[] alike = {"F100."};
    String whole = arcs(helix, start, sweep, WHOLE, true, alike);
    String pieces = arcs(helix, start, sweep, ends, true, alike);
    assertThat(changesBesideTheWay(whole, pieces)).as(whole + pieces).isEmpty();
    assertThat(changesBesideTheWay(pieces, whole)).as(pieces + whole).isEmpty();
  }

  /** A point off the circle by four increments, a centre off by one, another direction or plane. */
  @Property(tries = 200)
  void anArcBesideTheCircleIsFound(@ForAll long seed) {
    Random random = new Random(seed);
    Helix helix = Helix.any(random);
    double start = 2 * Math.PI * random.nextDouble();
    double sweep = (random.nextBoolean() ? 1 : -1) * (0.5 + 5 * random.nextDouble());
    double[] ends = parts(random);
    String[] alike = {"F100."};
    String whole = arcs(helix, start, sweep, WHOLE, false, alike);
    String pieces = arcs(helix, start, sweep, ends, false, alike);
    String[] lines = pieces.split("\n", -1);
    String first = lines[2];
    long[] point = helix.point(start + sweep * ends[0], ends[0]);
    long[] off = point.clone();
    int axis = Math.abs(point[0] - helix.centreFirst()) > helix.radius() * 0.7 ? 0 : 1;
    off[axis] += random.nextBoolean() ? 4 : -4;
    String radius = first.substring(0, first.lastIndexOf(' '));
    String beside =
        pieces
            .replace(first, first.replace(helix.to(point), helix.to(off)))
            .replace(lines[3], arcAgain(helix, sweep, off, start, ends));
    assertThat(changesBesideTheWay(whole, beside)).as(whole + beside).isNotEmpty();
    assertThat(changesBesideTheWay(beside, pieces)).isNotEmpty();
    String moved = pieces.replace(radius, radius.substring(0, radius.length() - 1) + other(radius));
    assertThat(moved).isNotEqualTo(pieces);
    assertThat(changesBesideTheWay(whole, moved)).as(whole + moved).isNotEmpty();
    assertThat(changesBesideTheWay(pieces, moved)).isNotEmpty();
    String turned = pieces.replace(sweep < 0 ? "G2" : "G3", sweep < 0 ? "G3" : "G2");
    assertThat(changesBesideTheWay(whole, turned)).as(whole + turned).isNotEmpty();
  }

  private static String arcAgain(
      Helix helix, double sweep, long[] from, double start, double[] ends) {
    long[] to = helix.point(start + sweep * ends[1], ends[1]);
    return helix.arc(sweep, from, to, false, "F100.").strip();
  }

  private static char other(String text) {
    char last = text.charAt(text.length() - 1);
    return last == '9' ? '8' : (char) (last + 1);
  }

  @Property(tries = 50)
  void aStopOnTheWayIsToldAndSoIsAnotherState(@ForAll long seed) {
    long x = 1L + new Random(seed).nextInt(4998);
    String begin = "G21 G90 G17 G94 G54\nG61\nG0 X0. Y0. Z0.\n";
    String end = point(5000, 0, 0, "F100.") + "M30\n";
    assertThat(changesBesideTheWay(begin + end, begin + point(x, 0, 0, "F100.") + end))
        .singleElement()
        .matches(c -> c.kind() == Kind.PATH_MODE && c.after().equals("exact stop"));
    String smooth = begin.replace("G61", "G64");
    assertThat(changesBesideTheWay(smooth + end, smooth + point(x, 0, 0, "F100.") + end)).isEmpty();
    assertThat(changesBesideTheWay(smooth + end, smooth + point(x, 0, 0, "F100.") + "M8\n" + end))
        .extracting(Change::kind)
        .contains(Kind.COOLANT);
  }

  /** Changes one word, takes a block out or puts one in; each has an effect. */
  private static int edit(List<Line> lines, Random random, Set<Kind> expected) {
    while (true) {
      int at = 2 + random.nextInt(lines.size() - 3);
      Line line = new Line(lines.get(at));
      int w = random.nextInt(line.words.size());
      String word = line.words.get(w);
      char letter = word.charAt(0);
      boolean move = line.words.get(0).matches("G[012]") || line.words.contains("G43");
      switch (letter) {
        case 'X', 'Y', 'Z', 'R' -> {
          // Half a micron, in the program's own digits.
          long tenths = Math.round(Double.parseDouble(word.substring(1)) * 10_000);
          line.words.set(w, at(letter, tenths + 5));
          expected.add(Kind.PATH);
        }
        case 'F' -> {
          line.words.set(w, word.replace(".", ".5"));
          expected.add(Kind.FEED);
        }
        case 'S' -> {
          line.words.set(w, word + "0");
          expected.add(Kind.SPEED);
        }
        case 'P' -> {
          line.words.set(w, word + "25");
          expected.add(Kind.DWELL);
        }
        case 'M' -> {
          if (List.of("M71", "M72", "M0", "M1").contains(word)) {
            lines.remove(at);
            expected.add(
                word.equals("M71")
                    ? Kind.WARM_UP
                    : word.equals("M72") ? Kind.MEASURING : Kind.STOP);
            return -1;
          }
          if (!word.equals("M8")) {
            continue;
          }
          line.words.set(w, "M7");
          expected.add(Kind.COOLANT);
        }
        case 'T' -> {
          line.words.set(w, word + "7");
          expected.add(Kind.TOOL);
        }
        case 'H' -> {
          line.words.set(w, word + "7");
          expected.add(Kind.LENGTH_OFFSET);
        }
        default -> {
          if (!move || !word.equals("G0")) {
            continue;
          }
          line.words.set(w, "G1");
          expected.add(Kind.MOTION);
        }
      }
      lines.set(at, line);
      return at + 1;
    }
  }

  @Property(tries = 400)
  void everyEditIsFoundAndPointedAt(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int blocks) {
    Random random = new Random(seed);
    List<Line> lines = program(random, blocks);
    List<Line> edited = new ArrayList<>(lines);
    Set<Kind> expected = new HashSet<>();
    int line = edit(edited, random, expected);
    List<Change> changes = changes(text(lines), text(edited));
    assertThat(changes)
        .as(text(lines) + "\n" + text(edited))
        .extracting(Change::kind)
        .containsAll(expected);
    if (line > 0) {
      assertThat(changes)
          .filteredOn(c -> expected.contains(c.kind()))
          .anySatisfy(
              c -> {
                assertThat(c.first().after().orElseThrow().line()).isEqualTo(line);
                String text = String.join(" ", edited.get(line - 1).words);
                int column = c.first().after().get().span().column();
                assertThat(String.join(" ", lines.get(line - 1).words).substring(column - 1))
                    .isNotEqualTo(text.substring(column - 1));
              });
    }
  }

  @Property(tries = 200)
  void manyEditsAreFoundAndTheComparisonIsSymmetric(
      @ForAll long seed,
      @ForAll @IntRange(min = 1, max = 80) int blocks,
      @ForAll @IntRange(min = 1, max = 12) int edits) {
    Random random = new Random(seed);
    List<Line> lines = program(random, blocks);
    List<Line> edited = new ArrayList<>(lines);
    for (int k = 0; k < edits; k++) {
      edit(edited, random, new HashSet<>());
    }
    List<Change> there = changes(text(lines), text(edited));
    List<Change> back = changes(text(edited), text(lines));
    assertThat(there).isNotEmpty();
    assertThat(back.stream().map(MotionComparisonProperties::turned).toList())
        .containsExactlyInAnyOrderElementsOf(there);
  }

  @Property(tries = 100)
  void blocksPutInAreFoundAsNew(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 40) int blocks) {
    Random random = new Random(seed);
    List<Line> lines = program(random, blocks);
    List<Line> edited = new ArrayList<>(lines);
    int at = 8 + random.nextInt(lines.size() - 11);
    edited.add(at, new Line("G1", at('X', 7), at('Y', 7), at('Z', 7), "F3."));
    // Where a new move stands between two that begin at unknown places, it may be paired with one
    // of them, and the other is the new one.
    assertThat(changes(text(lines), text(edited)))
        .anySatisfy(
            c -> {
              assertThat(c.kind()).isEqualTo(Kind.MOVES);
              assertThat(c.before()).isEmpty();
              assertThat(c.count()).isEqualTo(1);
              assertThat(c.first().after().orElseThrow().line()).isBetween(at + 1, at + 2);
            });
  }

  @SuppressWarnings("ArgumentSelectionDefectChecker") // Turning is what it is for.
  private static Change turned(Change change) {
    return new Change(
        change.kind(),
        change.operationAfter(),
        change.operationBefore(),
        change.after(),
        change.before(),
        change.count(),
        turned(change.first()),
        change.largest().map(MotionComparisonProperties::turned),
        change.farMm(),
        change.blockDelete());
  }

  @SuppressWarnings("ArgumentSelectionDefectChecker")
  private static Where turned(Where where) {
    return new Where(where.after(), where.before());
  }
}
