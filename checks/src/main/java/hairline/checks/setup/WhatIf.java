package hairline.checks.setup;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.nodes.Node;

/** One value of a sheet changed from outside, to see what would be if. */
final class WhatIf {
  static final String OPTION = "--set ";

  private final Setup setup;
  private final String key;
  private final Problems problems = new Problems();
  private final SourcePosition position;

  private WhatIf(Setup setup, String key) {
    this.setup = setup;
    this.key = key;
    this.position = new SourcePosition(OPTION + key, 1, 1);
  }

  static Setup apply(Setup setup, String key, String value) throws SheetException {
    WhatIf change = new WhatIf(setup, key);
    Optional<Node> node = SheetText.compose(value, change.position.file(), change.problems);
    if (node.isEmpty() && change.problems.isEmpty()) {
      change.problems.add(change.position, "`" + key + "`: no value", "key=value is due");
    }
    change.problems.throwIfAny();
    Setup.Builder builder = setup.toBuilder();
    change.change(builder, node.orElseThrow());
    change.problems.throwIfAny();
    Setup changed = builder.build();
    CrossChecks.check(changed, change.problems);
    change.problems.throwIfAny();
    return changed;
  }

  private void change(Setup.Builder builder, Node node) {
    if (key.startsWith("tools.")) {
      tool(builder, node);
    } else if (key.startsWith("offsets.")) {
      offset(builder, node);
    } else if (key.startsWith("job.features.")) {
      feature(builder, node);
    } else {
      read(Catalogue.SHEET, "", key, node).ifPresent(builder::with);
    }
  }

  private void tool(Setup.Builder builder, Node node) {
    String[] parts = key.split("\\.", 3);
    Optional<Tool> tool =
        setup.tools().stream()
            .filter(t -> Integer.toString(t.number()).equals(parts[1]))
            .findFirst();
    if (tool.isEmpty() || parts.length < 3) {
      problems.add(
          position,
          "`" + key + "` names no value of a listed tool",
          known(setup.tools().stream().map(t -> "tools." + t.number()).toList()));
      return;
    }
    if (parts[2].equals(ToolKeys.NUMBER.path())) {
      problems.add(position, "`" + key + "`: a tool keeps its number", "other keys can be set");
      return;
    }
    read(Catalogue.TOOL, "tools." + parts[1] + ".", parts[2], node)
        .ifPresent(values -> builder.tool(new Tool(tool.get().values().with(values))));
  }

  private void offset(Setup.Builder builder, Node node) {
    String rest = key.substring("offsets.".length());
    int dot = rest.lastIndexOf('.');
    String name = (dot < 0 ? rest : rest.substring(0, dot)).toUpperCase(Locale.ROOT);
    Optional<Offset> offset = setup.offset(name);
    if (offset.isEmpty() || dot < 0) {
      problems.add(
          position,
          "`" + key + "` names no axis of a listed work offset",
          known(setup.offsets().stream().map(o -> "offsets." + o.name()).toList()));
      return;
    }
    Offset old = offset.get();
    read(Catalogue.OFFSET, "offsets." + name + ".", rest.substring(dot + 1), node)
        .ifPresent(
            values ->
                builder.offset(
                    new Offset(
                        name,
                        values.given(OffsetKeys.X).or(old::x),
                        values.given(OffsetKeys.Y).or(old::y),
                        values.given(OffsetKeys.Z).or(old::z))));
  }

  private void feature(Setup.Builder builder, Node node) {
    String rest = key.substring("job.features.".length());
    int dot = rest.lastIndexOf('.');
    String name = dot < 0 ? rest : rest.substring(0, dot);
    Optional<Feature> feature =
        setup.features().stream().filter(f -> f.name().equals(name)).findFirst();
    if (feature.isEmpty() || dot < 0) {
      problems.add(
          position,
          "`" + key + "` names no value of a listed feature",
          known(setup.features().stream().map(f -> "job.features." + f.name()).toList()));
      return;
    }
    if (rest.substring(dot + 1).equals(FeatureKeys.NAME.path())) {
      problems.add(position, "`" + key + "`: a feature keeps its name", "other keys can be set");
      return;
    }
    read(Catalogue.FEATURE, "job.features." + name + ".", rest.substring(dot + 1), node)
        .map(feature.get()::with)
        .ifPresent(
            changed -> {
              CrossChecks.check(changed, position, problems);
              builder.replace(feature.get(), changed);
            });
  }

  /** The value of a dotted key below a section, by the sheet's own reading. */
  private Optional<Values> read(Entry.Section section, String prefix, String path, Node node) {
    List<String> words = new ArrayList<>(Arrays.asList(path.split("\\.", -1)));
    Entry entry = section;
    Entry.Section last = section;
    for (String word : words) {
      Entry next = entry instanceof Entry.Section s ? s.entries().get(word) : null;
      if (next == null) {
        problems.add(
            position,
            "unknown key `" + prefix + path + "`",
            nearest(path, pathsBelow(section))
                .map(near -> "nearest is `" + prefix + near + "`")
                .orElse("the keys here are " + String.join(", ", last.entries().keySet())));
        return Optional.empty();
      }
      entry = next;
      if (next instanceof Entry.Section s) {
        last = s;
      }
    }
    if (entry instanceof Entry.Items) {
      problems.add(
          position,
          "`" + prefix + path + "` is a list",
          "one value of one of its items can be set");
      return Optional.empty();
    }
    Reading reading = new Reading(setup.ruleNames(), problems);
    Values values = reading.entry(entry, prefix + path, position.file(), node);
    return problems.isEmpty() ? Optional.of(values) : Optional.empty();
  }

  /** A path that ends in these words, else one spelt nearly so. */
  private static Optional<String> nearest(String path, List<String> paths) {
    return paths.stream()
        .filter(candidate -> candidate.endsWith("." + path))
        .findFirst()
        .or(() -> Nearest.of(path, paths));
  }

  private static List<String> pathsBelow(Entry.Section section) {
    List<String> paths = new ArrayList<>();
    List<Entry.Section> open = new ArrayList<>(List.of(section));
    for (int i = 0; i < open.size(); i++) {
      for (Entry entry : open.get(i).entries().values()) {
        if (entry instanceof Entry.Leaf leaf) {
          paths.add(leaf.key().path());
        } else if (entry instanceof Entry.Section below) {
          open.add(below);
        }
      }
    }
    return paths;
  }

  private static String known(List<String> names) {
    return names.isEmpty()
        ? "the sheet lists none"
        : "the sheet lists " + names.stream().collect(Collectors.joining(", "));
  }
}
