package hairline.checks.setup;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All words of the sheet as a tree, made from the keys' dotted names. */
final class Catalogue {
  /** The key of a mapping that may be the relative path of a file instead. */
  static final String MACHINE = "machine";

  /** The key of the list that may be the relative path of a file instead. */
  static final String TOOLS = "tools";

  private static final Map<String, String> SECTION_DOCS =
      Map.ofEntries(
          Map.entry(MACHINE, "the machine: its mapping, or the relative path of a file with it"),
          Map.entry("machine.travel", "travel in machine coordinates"),
          Map.entry("machine.spindle", "the spindle"),
          Map.entry("machine.spindle.growth", "ISO 230-3 spindle test: how far, how fast"),
          Map.entry("machine.spindle.warm_up", "what makes the spindle warm"),
          Map.entry("machine.control", "the control"),
          Map.entry("machine.control.start", "state at power-on or reset"),
          Map.entry("machine.control.dwell", "unit of G4's words; unset: time unknown"),
          Map.entry(
              "machine.codes",
              "what this machine's own codes mean; a code is a word (M71) or a call (P9001)"),
          Map.entry("material", "the work material"),
          Map.entry("stock", "the uncut part, in work coordinates"),
          Map.entry("environment", "the room"),
          Map.entry("gauge", "the step-height measurement"),
          Map.entry("setting", "the tool-length measurement"),
          Map.entry("times", "times of events"),
          Map.entry("job", "the job"),
          Map.entry("limits", "where a rule turns from silence to a finding"),
          Map.entry("rules", "which rules run, and at which level"));

  private static final Map<String, String> TOOL_SECTION_DOCS =
      Map.of(
          "neck", "the neck",
          "shank", "the shank",
          "material", "material of the tool's body, or its properties");

  /** One tool. */
  static final Entry.Section TOOL = tree("a tool", ToolKeys.ALL, TOOL_SECTION_DOCS);

  /** One feature. */
  static final Entry.Section FEATURE = tree("a feature", FeatureKeys.ALL, Map.of());

  /** One work offset. */
  static final Entry.Section OFFSET = tree("a work offset", OffsetKeys.ALL, Map.of());

  /** The whole sheet. */
  static final Entry.Section SHEET = sheet();

  private Catalogue() {}

  private static Entry.Section sheet() {
    Node root = new Node();
    for (List<Key<?>> keys :
        List.of(MachineKeys.ALL, SpindleKeys.ALL, ControlKeys.ALL, CodeKeys.ALL)) {
      keys.forEach(root::add);
    }
    root.add(
        TOOLS,
        new Entry.Items(
            TOOLS,
            "the tools: their list, or the relative path of a file with it",
            Entry.Kind.TOOLS,
            TOOL));
    MaterialKeys.ALL.forEach(root::add);
    root.add(
        "offsets",
        new Entry.Items(
            "offsets", "work offsets in machine coordinates", Entry.Kind.OFFSETS, OFFSET));
    for (List<Key<?>> keys : List.of(StockKeys.ALL, ShopKeys.ALL, JobKeys.ALL)) {
      keys.forEach(root::add);
    }
    root.add(
        "job.features",
        new Entry.Items("job.features", "features of the part", Entry.Kind.FEATURES, FEATURE));
    LimitKeys.ALL.forEach(root::add);
    RuleKeys.ALL.forEach(root::add);
    return root.section("", "a setup sheet", SECTION_DOCS);
  }

  private static Entry.Section tree(String doc, List<Key<?>> keys, Map<String, String> docs) {
    Node root = new Node();
    keys.forEach(root::add);
    return root.section("", doc, docs);
  }

  /**
   * The dotted name of the section or list that has this word, where exactly one other has it; for
   * words that stand in the wrong place.
   */
  static Optional<String> homeOf(String word) {
    List<String> homes = new ArrayList<>();
    List<Entry.Section> open = new ArrayList<>(List.of(SHEET));
    List<String> names = new ArrayList<>(List.of(""));
    for (int i = 0; i < open.size(); i++) {
      String name = names.get(i);
      for (Map.Entry<String, Entry> entry : open.get(i).entries().entrySet()) {
        if (entry.getKey().equals(word)) {
          homes.add(name);
        }
        String below = name.isEmpty() ? entry.getKey() : name + "." + entry.getKey();
        if (entry.getValue() instanceof Entry.Section section) {
          open.add(section);
          names.add(below);
        } else if (entry.getValue() instanceof Entry.Items items) {
          open.add(items.item());
          names.add(below);
        }
      }
    }
    return homes.size() == 1 ? Optional.of(homes.get(0)) : Optional.empty();
  }

  /** A part of the tree while it grows. */
  private static final class Node {
    private final Map<String, Object> below = new LinkedHashMap<>();
    private Optional<Key<?>> own = Optional.empty();

    void add(Key<?> key) {
      add(key.path(), key);
    }

    void add(String path, Object content) {
      Node node = this;
      String[] words = path.split("\\.", -1);
      for (int i = 0; i < words.length - 1; i++) {
        Object next = node.below.computeIfAbsent(words[i], word -> new Node());
        if (next instanceof Key<?> key) {
          Node section = new Node();
          section.own = Optional.of(key);
          node.below.put(words[i], section);
          next = section;
        }
        node = (Node) next;
      }
      node.below.put(words[words.length - 1], content);
    }

    Entry.Section section(String path, String doc, Map<String, String> docs) {
      Map<String, Entry> entries = new LinkedHashMap<>();
      below.forEach(
          (word, content) -> {
            if (content instanceof Key<?> key) {
              entries.put(word, new Entry.Leaf(key));
            } else if (content instanceof Entry.Items items) {
              entries.put(word, items);
            } else {
              String name = path.isEmpty() ? word : path + "." + word;
              entries.put(
                  word, ((Node) content).section(name, docs.getOrDefault(name, word), docs));
            }
          });
      return new Entry.Section(path, doc, own, Collections.unmodifiableMap(entries));
    }
  }
}
