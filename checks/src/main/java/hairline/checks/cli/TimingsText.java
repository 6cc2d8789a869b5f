package hairline.checks.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** How long stages and rules took, longest first, as lines for standard error. */
final class TimingsText {
  private static final double NANOS = 1e9;
  private static final double LEAST_SHARE = 0.0005;

  private TimingsText() {}

  /**
   * The lines.
   *
   * @param nanos how long each part took, in ns
   */
  static List<String> of(Map<String, Long> nanos, double wallSeconds) {
    double sum = Math.max(1, nanos.values().stream().mapToLong(Long::longValue).sum());
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "%.2f s in all; on all threads together, the clock's own time with them:",
            wallSeconds));
    List<Map.Entry<String, Long>> parts = new ArrayList<>(nanos.entrySet());
    parts.sort(Map.Entry.<String, Long>comparingByValue().reversed());
    int rest = 0;
    for (Map.Entry<String, Long> part : parts) {
      double share = part.getValue() / sum;
      if (share < LEAST_SHARE) {
        rest++;
      } else {
        lines.add(
            String.format(
                Locale.ROOT,
                "%9.3f s  %5.1f %%  %s",
                part.getValue() / NANOS,
                100 * share,
                part.getKey()));
      }
    }
    if (rest > 0) {
      lines.add("and " + rest + (rest == 1 ? " part" : " parts") + " below 0.05 % each");
    }
    return lines;
  }
}
