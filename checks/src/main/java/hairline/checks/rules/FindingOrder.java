package hairline.checks.rules;

import hairline.checks.finding.Finding;
import java.util.Collection;
import java.util.List;

/** The order of findings in every report: by file, line, column, then rule and message. */
final class FindingOrder {
  private FindingOrder() {}

  static List<Finding> sorted(Collection<Finding> findings) {
    return findings.stream().sorted(FindingOrder::compare).toList();
  }

  private static int compare(Finding one, Finding other) {
    int order = Integer.compare(one.at().file(), other.at().file());
    order = order != 0 ? order : Integer.compare(one.at().line(), other.at().line());
    order =
        order != 0 ? order : Integer.compare(one.at().span().column(), other.at().span().column());
    order = order != 0 ? order : one.rule().compareTo(other.rule());
    order = order != 0 ? order : one.first().message().compareTo(other.first().message());
    return order != 0 ? order : one.blockDelete().compareTo(other.blockDelete());
  }
}
