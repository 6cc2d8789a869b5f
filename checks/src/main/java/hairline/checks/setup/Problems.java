package hairline.checks.setup;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What was found wrong so far, in bounded number. */
final class Problems {
  /** A sheet with more than this is better read again after these are cured. */
  static final int MOST = 100;

  private final List<SheetProblem> found = new ArrayList<>();
  private final Map<String, Integer> files = new LinkedHashMap<>();
  private boolean more;

  /** Problems of this file come before those of files that are met later. */
  void startWith(String file) {
    files.putIfAbsent(file, files.size());
  }

  void add(SourcePosition position, String sentence, String cure) {
    if (isFull()) {
      more = true;
      return;
    }
    files.putIfAbsent(position.file(), files.size());
    found.add(new SheetProblem(position, Shown.onOneLine(sentence), Shown.onOneLine(cure)));
  }

  /** Whether further problems are only counted, so that no work goes into their sentences. */
  boolean isFull() {
    return found.size() == MOST;
  }

  boolean isEmpty() {
    return found.isEmpty();
  }

  /** Throws if anything is wrong: all of it, by file and place. */
  void throwIfAny() throws SheetException {
    if (found.isEmpty()) {
      return;
    }
    List<SheetProblem> sorted = new ArrayList<>(found);
    sorted.sort(
        Comparator.comparing(
                (SheetProblem problem) -> files.getOrDefault(problem.position().file(), 0))
            .thenComparing(problem -> problem.position().line())
            .thenComparing(problem -> problem.position().column()));
    if (more) {
      SheetProblem last = sorted.get(sorted.size() - 1);
      sorted.add(
          new SheetProblem(
              last.position(),
              "more than " + MOST + " problems; the others are not listed",
              "these first, then the rest shows"));
    }
    throw new SheetException(sorted);
  }
}
