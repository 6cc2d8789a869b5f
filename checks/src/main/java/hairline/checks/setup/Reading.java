package hairline.checks.setup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** One reading of a sheet: from nodes to values, by the catalogue, with all problems collected. */
final class Reading {
  /** More tools or features than this are no longer a job. */
  static final int MOST_ITEMS = 1000;

  private static final int MOST_PATH_CHARACTERS = 1000;

  private final Set<String> ruleNames;
  private final Problems problems;
  private final Setup.Builder builder = Setup.builder();
  private final Map<String, SourcePosition> firstSeen = new HashMap<>();
  private Optional<Path> sheetFile = Optional.empty();

  Reading(Set<String> ruleNames, Problems problems) {
    this.ruleNames = ruleNames;
    this.problems = problems;
  }

  /** Reads a whole sheet. */
  Setup sheet(String text, String file, Optional<Path> path) throws SheetException {
    sheetFile = path;
    problems.startWith(file);
    builder.named(file).knowing(ruleNames);
    Optional<Node> root = SheetText.compose(text, file, problems);
    root.ifPresent(node -> builder.with(section(Catalogue.SHEET, "", file, node)));
    Setup setup = builder.build();
    if (problems.isEmpty()) {
      CrossChecks.check(setup, problems);
    }
    problems.throwIfAny();
    return setup;
  }

  /**
   * The values of a mapping; items in it go to the builder.
   *
   * @param prefix dotted name of the mapping as the user would type it, with a dot at its end, or
   *     nothing for the whole sheet
   */
  Values section(Entry.Section section, String prefix, String file, Node node) {
    if (SheetText.isEmpty(node)) {
      return Values.NONE;
    }
    if (node instanceof ScalarNode && section.brief().isPresent()) {
      return leaf(section.brief().get(), withoutDot(prefix), file, node);
    }
    if (!(node instanceof MappingNode mapping)) {
      problems.add(
          SheetText.position(file, node),
          name(prefix)
              + (node instanceof ScalarNode ? "a text" : "a list")
              + " where a mapping is due",
          "the keys here are " + String.join(", ", section.entries().keySet()));
      return Values.NONE;
    }
    Values values = Values.NONE;
    Map<String, Integer> lines = new LinkedHashMap<>();
    for (NodeTuple tuple : mapping.getValue()) {
      Node keyNode = tuple.getKeyNode();
      SourcePosition position = SheetText.position(file, keyNode);
      String word = keyNode instanceof ScalarNode scalar ? scalar.getValue() : "";
      Entry entry = section.entries().get(word);
      if (entry == null) {
        unknown(section, prefix, word, position);
      } else if (lines.putIfAbsent(word, position.line()) != null) {
        problems.add(
            position,
            "`" + prefix + word + "` stands twice, first in line " + lines.get(word),
            "one of the two is to go");
      } else {
        values = values.with(entry(entry, prefix + word, file, tuple.getValueNode()));
      }
    }
    return values;
  }

  private void unknown(Entry.Section section, String prefix, String word, SourcePosition position) {
    if (problems.isFull()) {
      problems.add(position, "", "");
      return;
    }
    String keys = "the keys here are " + String.join(", ", section.entries().keySet());
    String cure;
    if (word.equals("<<")) {
      cure = "merge keys are not read: write the keys out";
    } else {
      Optional<String> home = Catalogue.homeOf(word);
      Optional<String> near = Nearest.of(word, section.entries().keySet());
      if (near.isPresent()) {
        cure = "nearest is `" + near.get() + "`";
      } else if (home.isPresent()) {
        cure =
            "`"
                + word
                + "` belongs "
                + (home.get().isEmpty() ? "at the top of the sheet" : "under `" + home.get() + "`");
      } else {
        cure = keys;
      }
    }
    problems.add(position, "unknown key `" + prefix + Shown.cut(word) + "`", cure);
  }

  /** The values of one entry; items go to the builder. */
  Values entry(Entry entry, String path, String file, Node node) {
    if (entry instanceof Entry.Leaf leaf) {
      return leaf(leaf.key(), path, file, node);
    }
    boolean refers =
        node instanceof ScalarNode
            && !SheetText.isEmpty(node)
            && (path.equals(Catalogue.MACHINE) || path.equals(Catalogue.TOOLS));
    if (refers) {
      return referred(entry, path, file, (ScalarNode) node);
    }
    if (entry instanceof Entry.Section section) {
      return section(section, path + ".", file, node);
    }
    Entry.Items items = (Entry.Items) entry;
    if (!SheetText.isEmpty(node)) {
      if (items.kind() == Entry.Kind.OFFSETS) {
        offsets(items, file, node);
      } else {
        list(items, file, node);
      }
    }
    return Values.NONE;
  }

  private <T> Values leaf(Key<T> key, String path, String file, Node node) {
    try {
      T value = key.type().read(node);
      checkRuleNames(key, path, file, node);
      return Values.NONE.with(key, value, Optional.of(SheetText.position(file, node)));
    } catch (Misread misread) {
      problems.add(
          SheetText.position(file, misread.place().orElse(node)),
          "`" + path + "`: " + misread.sentence(),
          misread.cure());
      return Values.NONE;
    }
  }

  private void checkRuleNames(Key<?> key, String path, String file, Node node) {
    if (ruleNames.isEmpty()) {
      return;
    }
    List<Node> names = List.of();
    if (key.equals(RuleKeys.SKIP) && node instanceof SequenceNode sequence) {
      names = sequence.getValue();
    } else if (key.equals(RuleKeys.LEVEL) && node instanceof MappingNode mapping) {
      names = mapping.getValue().stream().map(NodeTuple::getKeyNode).toList();
    }
    for (Node name : names) {
      String rule = ((ScalarNode) name).getValue().strip();
      if (!ruleNames.contains(rule)) {
        problems.add(
            SheetText.position(file, name),
            "`" + path + "`: there is no rule `" + rule + "`",
            Nearest.of(rule, ruleNames)
                .map(near -> "nearest is `" + near + "`")
                .orElse("`hairline rules` lists them"));
      }
    }
  }

  /** The values of a file that stands in the place of a mapping or list. */
  private Values referred(Entry entry, String path, String file, ScalarNode node) {
    SourcePosition asked = SheetText.position(file, node);
    String text = node.getValue().strip();
    if (sheetFile.isEmpty()) {
      problems.add(
          asked,
          "`"
              + path
              + "` names the file `"
              + Shown.cut(text)
              + "`, but this sheet is no file itself",
          "write it out in its place");
      return Values.NONE;
    }
    if (!file.equals(sheetFile.get().toString())) {
      problems.add(
          asked,
          "`" + path + "`: a file that a sheet refers to holds a path itself",
          "write it out in its place");
      return Values.NONE;
    }
    Optional<Path> found = resolve(path, text, asked, sheetFile.get());
    Optional<String> content =
        found.flatMap(
            target ->
                SheetFile.read(
                    target,
                    target.toString(),
                    asked,
                    "the path is relative to the sheet",
                    problems));
    if (found.isEmpty() || content.isEmpty()) {
      return Values.NONE;
    }
    String shown = found.get().toString();
    Optional<Node> root = SheetText.compose(content.get(), shown, problems);
    if (root.isEmpty()) {
      return Values.NONE;
    }
    Optional<NodeTuple> wrapper = onlyKey(root.get(), path);
    if (wrapper.isPresent()) {
      problems.add(
          SheetText.position(shown, wrapper.get().getKeyNode()),
          "`" + path + ":` stands above the content",
          "the file holds the content itself: take this line away and indent less");
      return Values.NONE;
    }
    return entry(entry, path, shown, root.get());
  }

  private Optional<Path> resolve(String path, String text, SourcePosition asked, Path sheet) {
    Path target;
    if (text.length() > MOST_PATH_CHARACTERS) {
      problems.add(
          asked,
          "`" + path + "`: a path of " + text.length() + " characters",
          "at most " + MOST_PATH_CHARACTERS + " are read");
      return Optional.empty();
    }
    try {
      target = Path.of(text);
    } catch (InvalidPathException e) {
      problems.add(asked, "`" + path + "`: this is no path of a file", "a relative path is due");
      return Optional.empty();
    }
    if (target.isAbsolute()) {
      problems.add(
          asked,
          "`" + path + "`: `" + Shown.cut(text) + "` is absolute",
          "the path is relative to the sheet");
      return Optional.empty();
    }
    Path resolved = sheet.resolveSibling(target).normalize();
    if (resolved.toAbsolutePath().normalize().equals(sheet.toAbsolutePath().normalize())
        || isSameFile(resolved, sheet)) {
      problems.add(
          asked,
          "`" + path + "`: the sheet refers to itself",
          "it refers to a file that holds the " + path + " alone");
      return Optional.empty();
    }
    return Optional.of(resolved);
  }

  private static boolean isSameFile(Path a, Path b) {
    try {
      return Files.exists(a) && Files.isSameFile(a, b);
    } catch (IOException e) {
      return false;
    }
  }

  private static Optional<NodeTuple> onlyKey(Node node, String word) {
    return node instanceof MappingNode mapping
            && mapping.getValue().size() == 1
            && mapping.getValue().get(0).getKeyNode() instanceof ScalarNode scalar
            && scalar.getValue().equals(word)
        ? Optional.of(mapping.getValue().get(0))
        : Optional.empty();
  }

  private void list(Entry.Items items, String file, Node node) {
    if (!(node instanceof SequenceNode sequence)) {
      problems.add(
          SheetText.position(file, node),
          "`" + items.path() + "`: no list",
          "a list is due: one `- ` each");
      return;
    }
    if (sequence.getValue().size() > MOST_ITEMS) {
      problems.add(
          SheetText.position(file, node),
          "`" + items.path() + "`: " + sequence.getValue().size() + " items",
          "at most " + MOST_ITEMS + " are read");
      return;
    }
    int ordinal = 0;
    for (Node item : sequence.getValue()) {
      ordinal++;
      boolean tool = items.kind() == Entry.Kind.TOOLS;
      Key<?> nameKey = tool ? ToolKeys.NUMBER : FeatureKeys.NAME;
      String name = textOf(item, nameKey.path()).orElse("[" + ordinal + "]");
      Values values = section(items.item(), items.path() + "." + name + ".", file, item);
      SourcePosition position = SheetText.position(file, item);
      if (values.given(nameKey).isEmpty()) {
        boolean readable = item instanceof MappingNode || SheetText.isEmpty(item);
        if (readable && textOf(item, nameKey.path()).isEmpty()) {
          problems.add(
              position,
              "`" + items.path() + "`: item " + ordinal + " has no `" + nameKey.path() + "`",
              "give it one, such as `" + nameKey.path() + ": " + nameKey.example() + "`");
        }
      } else if (isNew(
          items.path() + "." + values.given(nameKey).get(), nameKey.path(), values, position)) {
        if (tool) {
          builder.tool(new Tool(values));
        } else {
          Feature feature = Feature.of(values);
          builder.feature(feature);
          CrossChecks.check(feature, values.position(FeatureKeys.STEP).orElse(position), problems);
        }
      }
    }
  }

  private boolean isNew(String name, String keyName, Values values, SourcePosition position) {
    SourcePosition first = firstSeen.putIfAbsent(name, position);
    if (first != null) {
      problems.add(
          position,
          "`" + name + "` is listed twice, first in line " + first.line(),
          "each has its own `" + keyName + "`");
      return false;
    }
    return !values.keys().isEmpty();
  }

  private static Optional<String> textOf(Node item, String word) {
    if (item instanceof MappingNode mapping) {
      for (NodeTuple tuple : mapping.getValue()) {
        if (tuple.getKeyNode() instanceof ScalarNode key
            && key.getValue().equals(word)
            && tuple.getValueNode() instanceof ScalarNode value) {
          return Optional.of(Shown.cut(value.getValue().strip()));
        }
      }
    }
    return Optional.empty();
  }

  private void offsets(Entry.Items items, String file, Node node) {
    if (!(node instanceof MappingNode mapping)) {
      problems.add(
          SheetText.position(file, node),
          "`" + items.path() + "`: no mapping",
          "a mapping is due, such as {G54: {X: -20 mm, Y: 5 mm, Z: -60 mm}}");
      return;
    }
    for (NodeTuple tuple : mapping.getValue()) {
      try {
        String name = new OffsetNameType().read(tuple.getKeyNode());
        Values values =
            section(items.item(), items.path() + "." + name + ".", file, tuple.getValueNode());
        SourcePosition position = SheetText.position(file, tuple.getKeyNode());
        if (isNew(items.path() + "." + name, "name", values, position)) {
          builder.offset(
              new Offset(
                  name,
                  values.given(OffsetKeys.X),
                  values.given(OffsetKeys.Y),
                  values.given(OffsetKeys.Z)));
        }
      } catch (Misread misread) {
        problems.add(
            SheetText.position(file, tuple.getKeyNode()),
            "`" + items.path() + "`: " + misread.sentence(),
            misread.cure());
      }
    }
  }

  private static String name(String prefix) {
    return prefix.isEmpty() ? "" : "`" + withoutDot(prefix) + "`: ";
  }

  private static String withoutDot(String prefix) {
    return prefix.endsWith(".") ? prefix.substring(0, prefix.length() - 1) : prefix;
  }
}
