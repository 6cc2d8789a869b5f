package hairline.checks.setup;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * A value that is written either as one text or in a longer form.
 *
 * @param <T> the type of the value read
 */
final class EitherType<T> extends ValueType<T> {
  private final ScalarType<T> brief;
  private final ValueType<T> full;
  private final Predicate<T> isBrief;

  EitherType(ScalarType<T> brief, ValueType<T> full, Predicate<T> isBrief) {
    this.brief = brief;
    this.full = full;
    this.isBrief = isBrief;
  }

  @Override
  T read(Node node) throws Misread {
    return node instanceof ScalarNode ? brief.read(node) : full.read(node);
  }

  @Override
  String takes() {
    return brief.takes() + ", or " + full.takes();
  }

  @Override
  String format(T value) {
    return isBrief.test(value) ? brief.format(value) : full.format(value);
  }

  @Override
  Map<String, Object> schema() {
    return Map.of("anyOf", List.of(brief.schema(), full.schema()));
  }
}
