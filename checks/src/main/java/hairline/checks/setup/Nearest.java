package hairline.checks.setup;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** The known word that a misspelt one most likely means. */
public final class Nearest {
  /** Longer words are cut here: no key is that long, and the work stays bounded. */
  private static final int MOST_CHARACTERS = 60;

  private Nearest() {}

  /**
   * The candidate with the smallest edit distance (optimal string alignment: insertions, deletions,
   * changes and swaps of neighbours count one each), if it is at most two, or a third of the word's
   * length where that is more. Of equals, the first.
   */
  public static Optional<String> of(String word, Collection<String> candidates) {
    String cut = fold(word);
    Optional<String> best = Optional.empty();
    int bestDistance = Math.max(2, cut.length() / 3) + 1;
    for (String candidate : candidates) {
      String folded = fold(candidate);
      int distance = distance(cut, folded);
      if (distance < bestDistance && distance < Math.max(cut.length(), folded.length())) {
        best = Optional.of(candidate);
        bestDistance = distance;
      }
    }
    return best;
  }

  private static String fold(String word) {
    String lower = word.toLowerCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    return lower.length() > MOST_CHARACTERS ? lower.substring(0, MOST_CHARACTERS) : lower;
  }

  static int distance(String a, String b) {
    int[] beforeLast = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int least = Math.min(Math.min(row[j - 1], last[j]) + 1, last[j - 1] + change);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          least = Math.min(least, beforeLast[j - 2] + 1);
        }
        row[j] = least;
      }
      int[] free = beforeLast;
      beforeLast = last;
      last = row;
      row = free;
    }
    return last[b.length()];
  }
}
