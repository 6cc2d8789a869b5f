package hairline.checks.setup;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;

/** A level for each of some rules, {@code {rule: level}}. */
final class RuleLevelsType extends ValueType<Map<String, RuleLevel>> {
  private final ScalarType<String> name = new RuleNameType();
  private final ScalarType<RuleLevel> level = Types.choice(RuleLevel.class);

  @Override
  Map<String, RuleLevel> read(Node node) throws Misread {
    if (!(node instanceof MappingNode mapping)) {
      throw new Misread("no mapping stands where one is due", "the key takes " + takes()).at(node);
    }
    Map<String, RuleLevel> read = new LinkedHashMap<>();
    for (NodeTuple tuple : mapping.getValue()) {
      String rule = name.read(tuple.getKeyNode());
      if (read.put(rule, level.read(tuple.getValueNode())) != null) {
        throw new Misread("`" + rule + "` stands twice", "one of the two is to go")
            .at(tuple.getKeyNode());
      }
    }
    return Collections.unmodifiableMap(read);
  }

  @Override
  String takes() {
    return "a mapping of rule names to " + level.takes();
  }

  @Override
  String format(Map<String, RuleLevel> value) {
    return value.entrySet().stream()
        .map(entry -> entry.getKey() + ": " + level.format(entry.getValue()))
        .collect(Collectors.joining(", ", "{", "}"));
  }

  @Override
  Map<String, Object> schema() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "object");
    schema.put("propertyNames", name.schema());
    schema.put("additionalProperties", level.schema());
    return schema;
  }
}
