package hairline.checks.setup;

import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Writes the sheet that a new job starts from: what the program uses is filled in, every other key
 * stands in a comment with an example and its meaning. The sheet reads as it is.
 */
public final class StarterSheet {
  private static final int COMMENT_COLUMN = 44;
  private static final int MOST_NAME_CHARACTERS = 120;
  private static final List<CodeWord> COOLANT_ON =
      List.of(CodeWord.of('M', 7), CodeWord.of('M', 8));
  private static final List<CodeWord> COOLANT_OFF = List.of(CodeWord.of('M', 9));

  /** What a check takes without any sheet stands on the starter too, or it would find less. */
  private final Setup assumed = new SheetReader().embedded();

  private final Usage usage;
  private final StringBuilder out = new StringBuilder();

  private StarterSheet(Usage usage) {
    this.usage = usage;
  }

  /** The sheet's text, lines ended by a line feed. */
  public static String write(Usage usage) {
    StarterSheet sheet = new StarterSheet(usage);
    sheet.head();
    sheet.entries(Catalogue.SHEET, "");
    return sheet.out.toString();
  }

  private void head() {
    out.append("# Setup sheet for ").append(harmless(usage.program())).append("\n#\n");
    out.append(
        "# What the program uses is filled in. Every other key stands in a comment with an\n");
    out.append(
        "# example: take the mark away and put in the value of your machine, tool or job.\n");
    out.append(
        "# The values shown are examples and fit no machine; a key left out is not guessed,\n");
    out.append(
        "# the report names what it could not check without it. Keys with a default say so.\n");
    out.append(
        "# A few values of the machine are assumed, as they would be without a sheet, and say"
            + " so:\n");
    out.append("# the report names them as long as `machine.name` is left as it is.\n");
    out.append(
        "# A number may be a band, [low, typical, high], where the value is known no better.\n");
    out.append(
        "# `machine` and `tools` may be the path of a file instead, relative to this one.\n");
  }

  private void entries(Entry.Section section, String indent) {
    for (Map.Entry<String, Entry> entry : section.entries().entrySet()) {
      if (indent.isEmpty()) {
        out.append('\n');
      }
      entry(entry.getKey(), entry.getValue(), indent);
    }
  }

  private void entry(String word, Entry entry, String indent) {
    if (entry instanceof Entry.Leaf leaf) {
      leaf(indent, word, leaf.key());
    } else if (entry instanceof Entry.Section section) {
      section(word, section, indent);
    } else {
      items(word, (Entry.Items) entry, indent);
    }
  }

  private <T> void leaf(String indent, String word, Key<T> key) {
    Resolved<T> value = assumed.resolve(key);
    if (value.origin() == Origin.GIVEN) {
      line(
          indent + word + ": " + key.format(value.value().orElseThrow()),
          "assumed until yours stands here; " + key.doc());
    } else {
      toFill(indent, word, key, key.doc());
    }
  }

  private void section(String word, Entry.Section section, String indent) {
    if (section.brief().isPresent()) {
      toFill(indent, word, section.brief().get(), section.brief().get().doc());
      return;
    }
    line(indent + word + ":", section.doc());
    if (section.path().equals("machine.codes")) {
      codes(indent + "  ");
      return;
    }
    if (section.path().equals("machine.spindle")) {
      speeds(indent + "  ");
    }
    entries(section, indent + "  ");
  }

  private void items(String word, Entry.Items items, String indent) {
    line(indent + word + ":", items.doc());
    switch (items.kind()) {
      case TOOLS -> tools(items.item(), indent + "  ");
      case FEATURES ->
          toFill(
              indent + "  ",
              "- " + flow(items.item()),
              "one line each; `levels: "
                  + FeatureKeys.LEVELS.example()
                  + "` may stand for the step");
      case OFFSETS -> {
        for (String name : usage.workOffsets().isEmpty() ? List.of("G54") : usage.workOffsets()) {
          toFill(indent + "  ", name + ": " + flow(items.item()), "one line each");
        }
      }
    }
  }

  private void tools(Entry.Section item, String indent) {
    for (Usage.ToolUse tool : usage.tools()) {
      String speeds = speeds(tool.speedsRpm());
      line(
          indent + "- " + ToolKeys.NUMBER.path() + ": " + tool.number(),
          speeds.isEmpty()
              ? "the program sets no speed for it"
              : "the program runs it at " + speeds);
      for (Map.Entry<String, Entry> entry : item.entries().entrySet()) {
        if (entry.getKey().equals(ToolKeys.LENGTH_OFFSET.path())) {
          lengthOffset(tool, indent + "  ");
        } else if (!entry.getKey().equals(ToolKeys.NUMBER.path())) {
          entry(entry.getKey(), entry.getValue(), indent + "  ");
        }
      }
    }
  }

  private void lengthOffset(Usage.ToolUse tool, String indent) {
    int number = tool.lengthOffset().orElse(tool.number());
    toFill(
        indent,
        ToolKeys.LENGTH_OFFSET.path() + ": " + number,
        ToolKeys.LENGTH_OFFSET.doc()
            + (tool.lengthOffset().isPresent() ? "; the program uses H" + number : ""));
  }

  private static String speeds(List<Double> speedsRpm) {
    return new TreeSet<>(speedsRpm)
        .stream().map(SpindleKeys.MAX_SPEED_RPM::format).collect(Collectors.joining(", "));
  }

  private void speeds(String indent) {
    List<Double> all = usage.tools().stream().flatMap(tool -> tool.speedsRpm().stream()).toList();
    if (!all.isEmpty()) {
      out.append(indent).append("# The program commands ").append(speeds(all)).append(".\n");
    }
  }

  private void codes(String indent) {
    List<CodeWord> unknown =
        usage.codes().stream()
            .filter(code -> !COOLANT_ON.contains(code) && !COOLANT_OFF.contains(code))
            .distinct()
            .toList();
    if (!unknown.isEmpty()) {
      out.append(indent)
          .append("# The program uses ")
          .append(unknown.stream().map(CodeWord::toString).collect(Collectors.joining(", ")))
          .append(", whose meaning only this machine knows.\n");
    }
    for (Key<?> key : CodeKeys.ALL) {
      List<CodeWord> known =
          key.equals(CodeKeys.COOLANT_ON)
              ? used(COOLANT_ON)
              : key.equals(CodeKeys.COOLANT_OFF) ? used(COOLANT_OFF) : List.of();
      String word = key.path().substring(key.path().lastIndexOf('.') + 1);
      if (known.isEmpty()) {
        toFill(indent, word, key, key.doc());
      } else {
        line(indent + word + ": " + known, key.doc());
      }
    }
  }

  private List<CodeWord> used(List<CodeWord> candidates) {
    return candidates.stream().filter(usage.codes()::contains).toList();
  }

  private static String flow(Entry.Section item) {
    return item.entries().entrySet().stream()
        .filter(entry -> !entry.getKey().equals(FeatureKeys.LEVELS.path()))
        .map(entry -> entry.getKey() + ": " + ((Entry.Leaf) entry.getValue()).key().example())
        .collect(Collectors.joining(", ", "{", "}"));
  }

  private void toFill(String indent, String word, Key<?> key, String doc) {
    boolean fallback = key.defaultValue().isPresent();
    toFill(indent, word + ": " + key.example(), fallback ? "default; " + doc : doc);
  }

  private void toFill(String indent, String content, String doc) {
    line(indent + "# " + content, doc);
  }

  private void line(String content, String doc) {
    out.append(content)
        .append(" ".repeat(Math.max(1, COMMENT_COLUMN - content.length())))
        .append("# ")
        .append(doc)
        .append('\n');
  }

  /** A name from outside: no line end, no control or format character leaves the comment. */
  private static String harmless(String name) {
    StringBuilder text = new StringBuilder();
    name.codePoints()
        .limit(MOST_NAME_CHARACTERS)
        .forEach(
            c -> {
              int type = Character.getType(c);
              boolean visible =
                  type != Character.CONTROL
                      && type != Character.FORMAT
                      && type != Character.LINE_SEPARATOR
                      && type != Character.PARAGRAPH_SEPARATOR
                      && type != Character.SURROGATE
                      && type != Character.UNASSIGNED
                      && type != Character.PRIVATE_USE;
              text.appendCodePoint(visible ? c : '?');
            });
    return text.toString();
  }
}
