package hairline.checks.compare;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Interpreter;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/**
 * Pairs of two sequences of acts, held against the longest common subsequence by dynamic
 * programming (a textbook method).
 */
class AlignmentProperties {
  private static final String[] SORTS = {"M90", "M71", "M72"};

  /** An act for each number: of one sort, and each number does something else. */
  private static Acts acts(int... numbers) {
    StringBuilder text = new StringBuilder();
    for (int number : numbers) {
      text.append("M90 P").append(number).append('\n');
    }
    return acts(text.toString());
  }

  private static Acts acts(String text) {
    Acts acts = new Acts();
    try {
      new Interpreter(
              SheetControl.of(
                  new SheetReader()
                      .parse(
                          "machine: {codes: {warm_up: [M71], measure_tool: [M72], ignore: [M90]}}",
                          "sheet")),
              ProgramFiles.alone(
                  PartPrograms.of("a.nc", text.getBytes(StandardCharsets.UTF_8)), e -> {}))
          .run(new ActReader(acts::add), false);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (SheetException e) {
      throw new IllegalStateException(e);
    }
    return acts;
  }

  private static int longestCommon(int[] a, int[] b) {
    int[][] length = new int[a.length + 1][b.length + 1];
    for (int i = a.length - 1; i >= 0; i--) {
      for (int j = b.length - 1; j >= 0; j--) {
        length[i][j] =
            a[i] == b[j] ? 1 + length[i + 1][j + 1] : Math.max(length[i + 1][j], length[i][j + 1]);
      }
    }
    return length[0][0];
  }

  /** How many pairs do the same; all pairs rise on both sides. */
  private static int alike(int[] a, int[] b) {
    Acts before = acts(a);
    Acts after = acts(b);
    int[] pairs = Alignment.of(before, after);
    int alike = 0;
    int last = -1;
    // The last act of each is the end.
    for (int k = 0; k < a.length; k++) {
      if (pairs[k] >= 0) {
        assertThat(pairs[k]).isGreaterThan(last).isLessThan(b.length);
        last = pairs[k];
        alike += a[k] == b[pairs[k]] ? 1 : 0;
      }
    }
    assertThat(pairs[a.length]).isEqualTo(b.length);
    int[] back = Alignment.of(after, before);
    for (int k = 0; k <= a.length; k++) {
      if (pairs[k] >= 0) {
        assertThat(back[pairs[k]]).as("the other way round").isEqualTo(k);
      }
    }
    return alike;
  }

  private static boolean onceInBoth(int[] a, int[] b) {
    int from = 0;
    while (from < Math.min(a.length, b.length) && a[from] == b[from]) {
      from++;
    }
    int end = 0;
    while (end < Math.min(a.length, b.length) - from
        && a[a.length - 1 - end] == b[b.length - 1 - end]) {
      end++;
    }
    int[] x = Arrays.copyOfRange(a, from, a.length - end);
    int[] y = Arrays.copyOfRange(b, from, b.length - end);
    return IntStream.range(0, 10)
        .anyMatch(
            v ->
                Arrays.stream(x).filter(n -> n == v).count() == 1
                    && Arrays.stream(y).filter(n -> n == v).count() == 1);
  }

  @Property(tries = 150)
  void repeatedActsKeepAsManyAsCanBeKept(
      @ForAll long seed, @ForAll @IntRange(min = 2, max = 4) int values) {
    Random random = new Random(seed);
    int[] a = random.ints(1 + random.nextInt(40), 0, values).toArray();
    int[] b = random.ints(1 + random.nextInt(40), 0, values).toArray();
    Assume.that(!onceInBoth(a, b));
    assertThat(alike(a, b)).isEqualTo(longestCommon(a, b));
  }

  @Property(tries = 100)
  void anEditedCopyKeepsAllButTheEdits(@ForAll long seed) {
    Random random = new Random(seed);
    int[] a = random.ints(60, 0, 3).toArray();
    List<Integer> edited = new ArrayList<>(Arrays.stream(a).boxed().toList());
    for (int k = 0; k < 5; k++) {
      int at = random.nextInt(edited.size());
      if (random.nextBoolean()) {
        edited.remove(at);
      } else {
        edited.add(at, random.nextInt(3));
      }
    }
    int[] b = edited.stream().mapToInt(Integer::intValue).toArray();
    Assume.that(!onceInBoth(a, b));
    assertThat(alike(a, b)).isEqualTo(longestCommon(a, b)).isGreaterThanOrEqualTo(55);
  }

  @Property(tries = 100)
  void whatOccursOnceKeepsTheLongestRisingSequence(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 40) int size) {
    Random random = new Random(seed);
    List<Integer> shuffled = new ArrayList<>(IntStream.range(0, size).boxed().toList());
    Collections.shuffle(shuffled, random);
    int[] a = IntStream.range(0, size).toArray();
    int[] b = shuffled.stream().mapToInt(Integer::intValue).toArray();
    assertThat(alike(a, b)).isEqualTo(longestCommon(a, b));
  }

  /** Beyond the bound of edits, acts of one sort are paired as they come. */
  @Property(tries = 5)
  void whatDiffersTooMuchIsPairedBySort(@ForAll long seed) {
    Random random = new Random(seed);
    StringBuilder before = new StringBuilder();
    StringBuilder after = new StringBuilder();
    int[] sorts = random.ints(2600, 0, 3).toArray();
    int[] sortsAfter = random.ints(1100, 0, 3).toArray();
    for (int k = 0; k < sorts.length; k++) {
      before.append(SORTS[sorts[k]]).append(" P").append(k).append('\n');
    }
    for (int k = 0; k < sortsAfter.length; k++) {
      after.append(SORTS[sortsAfter[k]]).append(" P").append(10_000 + k).append('\n');
    }
    int[] pairs = Alignment.of(acts(before.toString()), acts(after.toString()));
    int paired = 0;
    int last = -1;
    for (int k = 0; k < sorts.length; k++) {
      if (pairs[k] >= 0) {
        assertThat(sorts[k]).isEqualTo(sortsAfter[pairs[k]]);
        assertThat(pairs[k]).isGreaterThan(last);
        last = pairs[k];
        paired++;
      }
    }
    // As they come, each third act after is of the sort that is due.
    assertThat(paired).isBetween(300, 1100);
  }
}
