package hairline.checks.setup;

import java.util.Map;
import org.yaml.snakeyaml.nodes.Node;

/**
 * What a key takes: how it is read, checked, described and written.
 *
 * @param <T> the type of the value read
 */
abstract class ValueType<T> {

  /** Reads and checks the value that stands at the node. */
  abstract T read(Node node) throws Misread;

  /** What it takes, as a phrase. */
  abstract String takes();

  /** A value as a user could type it; {@link #read} gives the same value again. */
  abstract String format(T value);

  /**
   * The JSON Schema of the value: strings, numbers, booleans, lists and maps, in a stable order.
   */
  abstract Map<String, Object> schema();
}
