package hairline.checks.setup;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * A list of values of one kind.
 *
 * @param <E> the type of an element
 * @param <T> the type of the whole
 */
final class ListType<E, T> extends ValueType<T> {
  private final ValueType<E> element;
  private final int least;
  private final int most;
  private final String takes;
  private final Maker<E, T> maker;
  private final Function<T, List<E>> elements;

  /** Checks the elements together and makes the whole. */
  interface Maker<E, T> {
    T make(List<E> elements) throws Misread;
  }

  ListType(
      ValueType<E> element,
      int least,
      int most,
      String takes,
      Maker<E, T> maker,
      Function<T, List<E>> elements) {
    this.element = element;
    this.least = least;
    this.most = most;
    this.takes = takes;
    this.maker = maker;
    this.elements = elements;
  }

  @Override
  T read(Node node) throws Misread {
    if (!(node instanceof SequenceNode sequence)) {
      throw new Misread("no list stands where one is due", "the key takes " + takes).at(node);
    }
    int size = sequence.getValue().size();
    if (size < least || size > most) {
      throw new Misread(
              "a list of " + size + (size == 1 ? " value" : " values"), "the key takes " + takes)
          .at(node);
    }
    List<E> read = new ArrayList<>(size);
    for (Node item : sequence.getValue()) {
      read.add(element.read(item));
    }
    try {
      return maker.make(List.copyOf(read));
    } catch (Misread misread) {
      throw misread.at(node);
    }
  }

  @Override
  String takes() {
    return takes;
  }

  @Override
  String format(T value) {
    return elements.apply(value).stream()
        .map(element::format)
        .collect(Collectors.joining(", ", "[", "]"));
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "array");
    schema.put("items", element.schema());
    if (least > 0) {
      schema.put("minItems", least);
    }
    schema.put("maxItems", most);
    return schema;
  }
}
