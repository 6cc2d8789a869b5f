package hairline.checks.report;

import hairline.checks.finding.Assumption;
import hairline.checks.finding.ProgramResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What was assumed, in words; a value that several tools share is one item. */
final class Assumed {
  private static final Pattern TOOL_KEY = Pattern.compile("tools\\.([0-9]{1,9})\\.(.+)");

  private record Shared(String key, String value, String because) {}

  private Assumed() {}

  /** The items in the order of their keys. */
  static List<String> items(ProgramResult result) {
    Map<Shared, TreeSet<Integer>> tools =
        new TreeMap<>((one, other) -> one.toString().compareTo(other.toString()));
    List<String> items = new ArrayList<>();
    for (Assumption assumption : result.assumptions()) {
      Matcher tool = TOOL_KEY.matcher(assumption.what());
      if (tool.matches()) {
        tools
            .computeIfAbsent(
                new Shared(tool.group(2), assumption.value(), assumption.because()),
                shared -> new TreeSet<>())
            .add(Integer.valueOf(tool.group(1)));
      } else {
        items.add(item(assumption.what(), assumption.value(), assumption.because()));
      }
    }
    tools.forEach(
        (shared, numbers) -> {
          String of = numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
          boolean one = numbers.size() == 1;
          items.add(
              item(
                  (one ? "tools." + of + "." : "tools " + of + ": ") + shared.key(),
                  shared.value(),
                  shared.because()));
        });
    items.sort(null);
    return items;
  }

  private static String item(String what, String value, String because) {
    return what + " = " + value + (because.isEmpty() ? "" : " (" + because + ")");
  }
}
