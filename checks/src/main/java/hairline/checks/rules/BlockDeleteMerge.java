package hairline.checks.rules;

import hairline.checks.finding.Collector;
import hairline.checks.finding.Finding;
import hairline.checks.finding.Finding.BlockDelete;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Puts the findings of both settings of the block delete switch together. */
final class BlockDeleteMerge {
  private BlockDeleteMerge() {}

  /** What holds either way stands once; what holds one way says which. */
  static List<Finding> of(Run off, Run on) {
    Map<Collector.Key, Finding> whenOff = off.groups();
    Map<Collector.Key, Finding> whenOn = on.groups();
    List<Finding> all = new ArrayList<>();
    whenOff.forEach(
        (key, finding) ->
            all.add(whenOn.containsKey(key) ? finding : only(finding, BlockDelete.ONLY_OFF)));
    whenOn.forEach(
        (key, finding) -> {
          if (!whenOff.containsKey(key)) {
            all.add(only(finding, BlockDelete.ONLY_ON));
          }
        });
    return FindingOrder.sorted(all);
  }

  private static Finding only(Finding finding, BlockDelete which) {
    return new Finding(
        finding.first(),
        finding.worst(),
        finding.count(),
        finding.last(),
        which,
        finding.acceptedBecause());
  }
}
