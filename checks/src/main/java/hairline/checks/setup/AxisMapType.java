package hairline.checks.setup;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.StringJoiner;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/** A rate for each axis, {@code {X: …, Y: …, Z: …}}. */
final class AxisMapType extends ValueType<AxisValues> {
  private static final List<String> AXES = List.of("X", "Y", "Z");

  private final ScalarType<Double> rate;

  AxisMapType(ScalarType<Double> rate) {
    this.rate = rate;
  }

  @Override
  AxisValues read(Node node) throws Misread {
    if (!(node instanceof MappingNode mapping)) {
      throw new Misread(
              "a list stands where one value or a mapping is due", "the key takes " + takes())
          .at(node);
    }
    Map<String, Double> read = new LinkedHashMap<>();
    for (NodeTuple tuple : mapping.getValue()) {
      String axis = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "";
      if (!AXES.contains(axis)) {
        throw new Misread("`" + Shown.cut(axis) + "` is no axis here", "the axes are X, Y and Z")
            .at(tuple.getKeyNode());
      }
      if (read.put(axis, rate.read(tuple.getValueNode())) != null) {
        throw new Misread("`" + axis + "` stands twice", "one of the two is to go")
            .at(tuple.getKeyNode());
      }
    }
    if (read.isEmpty()) {
      throw new Misread("no axis", "the key takes " + takes()).at(node);
    }
    return AxisValues.perAxis(of(read, "X"), of(read, "Y"), of(read, "Z"));
  }

  private static OptionalDouble of(Map<String, Double> read, String axis) {
    Double value = read.get(axis);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  @Override
  String takes() {
    return "one per axis ({X: …, Y: …, Z: …})";
  }

  @Override
  String format(AxisValues value) {
    StringJoiner joiner = new StringJoiner(", ", "{", "}");
    value.x().ifPresent(x -> joiner.add("X: " + rate.format(x)));
    value.y().ifPresent(y -> joiner.add("Y: " + rate.format(y)));
    value.z().ifPresent(z -> joiner.add("Z: " + rate.format(z)));
    return joiner.toString();
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> axes = new LinkedHashMap<>();
    AXES.forEach(axis -> axes.put(axis, rate.schema()));
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "object");
    schema.put("minProperties", 1);
    schema.put("properties", axes);
    schema.put("additionalProperties", false);
    return schema;
  }
}
