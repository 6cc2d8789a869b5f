package hairline.checks.setup;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All values of a sheet by their dotted names, as the user could type them. */
final class InForce {
  private final Map<String, String> values = new LinkedHashMap<>();

  private InForce() {}

  static Map<String, String> of(Setup setup) {
    InForce all = new InForce();
    for (Key<?> key : keys(Catalogue.SHEET)) {
      all.put("", key, setup.resolve(key));
    }
    for (Tool tool : setup.tools()) {
      for (Key<?> key : keys(Catalogue.TOOL)) {
        all.put("tools." + tool.number() + ".", key, tool.resolve(key));
      }
    }
    for (Offset offset : setup.offsets()) {
      String prefix = "offsets." + offset.name() + ".";
      all.put(prefix, OffsetKeys.X, offset.x());
      all.put(prefix, OffsetKeys.Y, offset.y());
      all.put(prefix, OffsetKeys.Z, offset.z());
    }
    for (Feature feature : setup.features()) {
      String prefix = "job.features." + feature.name() + ".";
      all.put(prefix, FeatureKeys.X, feature.x());
      all.put(prefix, FeatureKeys.Y, feature.y());
      all.put(prefix, FeatureKeys.STEP, feature.step());
      all.put(
          prefix,
          FeatureKeys.LEVELS,
          Optional.of(feature.levels()).filter(levels -> !levels.isEmpty()));
      all.put(prefix, FeatureKeys.TOLERANCE, feature.tolerance());
    }
    return all.values;
  }

  /** The keys below a section, but for those of the lists in it. */
  private static List<Key<?>> keys(Entry.Section section) {
    List<Key<?>> keys = new ArrayList<>();
    for (Entry entry : section.entries().values()) {
      if (entry instanceof Entry.Leaf leaf) {
        keys.add(leaf.key());
      } else if (entry instanceof Entry.Section below) {
        keys.addAll(keys(below));
      }
    }
    return keys;
  }

  /** The resolved value is of the key's type: it came by that key. */
  @SuppressWarnings("unchecked")
  private <T> void put(String prefix, Key<T> key, Resolved<?> resolved) {
    put(prefix, key, (Optional<T>) resolved.value());
  }

  private <T> void put(String prefix, Key<T> key, Optional<T> value) {
    value.ifPresent(v -> values.put(prefix + key.path(), key.format(v)));
  }
}
