package hairline.checks.setup;

import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.composer.Composer;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.StreamReader;
import org.yaml.snakeyaml.resolver.Resolver;

/**
 * From text to YAML nodes, which hold texts, lists and mappings with their places. Nothing is
 * constructed from them, so no tag can act.
 */
final class SheetText {
  private static final int DEEPEST_NESTING = 32;
  private static final int MOST_ALIASES = 50;

  private static final Set<Tag> PLAIN_TAGS =
      Set.of(
          Tag.NULL,
          Tag.BOOL,
          Tag.INT,
          Tag.FLOAT,
          Tag.TIMESTAMP,
          Tag.STR,
          Tag.SEQ,
          Tag.MAP,
          Tag.MERGE);

  private SheetText() {}

  /**
   * The node of the only document in the text; nothing if it is empty or if it can't be read, which
   * then is among the problems.
   */
  static Optional<Node> compose(String text, String file, Problems problems) {
    String withoutMark = text.startsWith("\uFEFF") ? text.substring(1) : text;
    if (!isPrintable(withoutMark, file, problems)) {
      return Optional.empty();
    }
    LoaderOptions options = new LoaderOptions();
    options.setNestingDepthLimit(DEEPEST_NESTING);
    options.setMaxAliasesForCollections(MOST_ALIASES);
    options.setAllowDuplicateKeys(false);
    options.setAllowRecursiveKeys(false);
    options.setTagInspector(tag -> true); // isPlain refuses tags, with a better sentence
    options.setCodePointLimit(Integer.MAX_VALUE); // SheetFile limits the size
    try {
      StreamReader reader = new StreamReader(new StringReader(withoutMark));
      Composer composer = new Composer(new ParserImpl(reader, options), new Resolver(), options);
      Optional<Node> root = Optional.ofNullable(composer.getSingleNode());
      return root.filter(node -> isPlain(node, file, problems));
    } catch (MarkedYAMLException e) {
      problems.add(
          position(file, Optional.ofNullable(e.getProblemMark())),
          "not readable as YAML: " + e.getProblem(),
          "indent with blanks, not tabs; put a text with `: ` or ` #` in quotes; close what is open");
    } catch (YAMLException e) {
      problems.add(
          new SourcePosition(file, 1, 1),
          "not readable as YAML: " + e.getMessage(),
          "a sheet nests at most " + DEEPEST_NESTING + " deep and uses few aliases");
    }
    return Optional.empty();
  }

  private static boolean isPrintable(String text, String file, Problems problems) {
    int line = 1;
    int column = 1;
    int i = 0;
    while (i < text.length()) {
      int c = text.codePointAt(i);
      if (!StreamReader.isPrintable(c)) {
        problems.add(
            new SourcePosition(file, line, column),
            String.format(Locale.ROOT, "the character U+%04X is not allowed in YAML", c),
            "a sheet is plain UTF-8 text");
        return false;
      }
      boolean lineEnds =
          c == '\n' || (c == '\r' && !(i + 1 < text.length() && text.charAt(i + 1) == '\n'));
      line += lineEnds ? 1 : 0;
      column = lineEnds ? 1 : column + 1;
      i += Character.charCount(c);
    }
    return true;
  }

  /** Whether nothing contains itself and no tag stands anywhere. */
  private static boolean isPlain(Node root, String file, Problems problems) {
    Set<Node> open = Collections.newSetFromMap(new IdentityHashMap<>());
    Set<Node> done = Collections.newSetFromMap(new IdentityHashMap<>());
    Deque<Node> stack = new ArrayDeque<>(List.of(root));
    while (!stack.isEmpty()) {
      Node node = stack.peek();
      if (done.contains(node)) {
        stack.pop();
      } else if (open.contains(node)) {
        done.add(node);
        stack.pop();
      } else {
        if (!PLAIN_TAGS.contains(node.getTag())) {
          problems.add(
              position(file, node),
              "the tag `" + Shown.cut(node.getTag().getValue()) + "` stands here",
              "a sheet has no tags");
          return false;
        }
        open.add(node);
        for (Node child : children(node)) {
          if (open.contains(child) && !done.contains(child)) {
            problems.add(
                position(file, child),
                "the sheet refers to itself: an alias stands inside its own anchor",
                "an alias repeats a part that is complete");
            return false;
          }
          stack.push(child);
        }
      }
    }
    return true;
  }

  private static List<Node> children(Node node) {
    List<Node> children = new ArrayList<>();
    if (node instanceof SequenceNode sequence) {
      children.addAll(sequence.getValue());
    } else if (node instanceof MappingNode mapping) {
      for (NodeTuple tuple : mapping.getValue()) {
        children.add(tuple.getKeyNode());
        children.add(tuple.getValueNode());
      }
    }
    return children;
  }

  /** Where a node begins. */
  static SourcePosition position(String file, Node node) {
    return position(file, Optional.ofNullable(node.getStartMark()));
  }

  private static SourcePosition position(String file, Optional<Mark> mark) {
    return mark.map(m -> new SourcePosition(file, m.getLine() + 1, m.getColumn() + 1))
        .orElse(new SourcePosition(file, 1, 1));
  }

  /** Whether nothing but blanks and comments stands there. */
  static boolean isEmpty(Node node) {
    return node instanceof ScalarNode scalar
        && scalar.isPlain()
        && Tag.NULL.equals(scalar.getTag());
  }
}
