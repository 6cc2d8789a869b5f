package hairline.checks.compare;

import hairline.checks.setup.Setup;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A value that the sheets of two programs have otherwise.
 *
 * @param key what the user would type to name it
 * @param before the value that holds for the program before; empty for none
 * @param after the value that holds for the program after; empty for none
 */
public record SheetDifference(String key, Optional<String> before, Optional<String> after) {

  /** Compares the values that hold, given or not, in the order of the sheets. */
  public static List<SheetDifference> of(Setup before, Setup after) {
    if (before == after) {
      return List.of();
    }
    Map<String, String> was = before.valuesInForce();
    Map<String, String> is = after.valuesInForce();
    Map<String, String> all = new LinkedHashMap<>(was);
    is.forEach(all::putIfAbsent);
    List<SheetDifference> differences = new ArrayList<>();
    for (String key : all.keySet()) {
      Optional<String> a = Optional.ofNullable(was.get(key));
      Optional<String> b = Optional.ofNullable(is.get(key));
      if (!a.equals(b)) {
        differences.add(new SheetDifference(key, a, b));
      }
    }
    return differences;
  }
}
