package hairline.checks.rules;

import hairline.checks.finding.Finding;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/** The order of findings in every report: by file, line, column, then rule and message. */
final class FindingOrder {
  private static final Comparator<Finding> ORDER =
      Comparator.comparingInt((Finding f) -> f.at().file())
          .thenComparingInt(f -> f.at().line())
          .thenComparingInt(f -> f.at().span().column())
          .thenComparing(Finding::rule)
          .thenComparing(f -> f.first().message())
          .thenComparing(f -> f.blockDelete());

  private FindingOrder() {}

  static List<Finding> sorted(Collection<Finding> findings) {
    return findings.stream().sorted(ORDER).toList();
  }
}
