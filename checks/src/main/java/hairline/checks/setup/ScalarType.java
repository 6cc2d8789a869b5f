package hairline.checks.setup;

import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.Tag;

/**
 * A value that is one text.
 *
 * @param <T> the type of the value read
 */
abstract class ScalarType<T> extends ValueType<T> {

  /** Reads and checks the text, blanks at its ends taken off. */
  abstract T parse(String text) throws Misread;

  @Override
  final T read(Node node) throws Misread {
    if (!(node instanceof ScalarNode scalar)) {
      throw new Misread(
              "a mapping or a list stands where one value is due", "the key takes " + takes())
          .at(node);
    }
    String text = scalar.getValue().strip();
    if (text.isEmpty() || (scalar.isPlain() && Tag.NULL.equals(scalar.getTag()))) {
      throw new Misread("no value", "the key takes " + takes() + "; without a value, leave it out")
          .at(node);
    }
    try {
      return parse(text);
    } catch (Misread misread) {
      throw misread.at(node);
    }
  }
}
