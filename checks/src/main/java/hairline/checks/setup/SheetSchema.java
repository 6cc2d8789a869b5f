package hairline.checks.setup;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The JSON Schema (draft 2020-12) of setup sheets, for editors; made from the keys. */
public final class SheetSchema {
  private static final String DRAFT = "https://json-schema.org/draft/2020-12/schema";

  private SheetSchema() {}

  /** The schema as JSON text. */
  public static String write() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("$schema", DRAFT);
    schema.put("$id", "urn:hairline:setup-sheet:1");
    schema.put("title", "Hairline setup sheet");
    schema.putAll(section(Catalogue.SHEET));
    schema.put("$defs", quantities());
    StringWriter out = new StringWriter();
    DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(indenter);
    printer.indentArraysWith(indenter);
    try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
      json.setPrettyPrinter(printer);
      write(json, schema);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static Map<String, Object> quantities() {
    Map<String, Object> quantities = new LinkedHashMap<>();
    for (Dimension dimension : Dimension.values()) {
      if (dimension != Dimension.NUMBER) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("description", dimension.takes());
        schema.put("type", "string");
        schema.put("pattern", QuantityPattern.of(dimension));
        quantities.put(dimension.schemaName(), schema);
      }
    }
    return quantities;
  }

  private static Map<String, Object> entry(Entry entry) {
    if (entry instanceof Entry.Leaf leaf) {
      return leaf(leaf.key());
    }
    if (entry instanceof Entry.Section section) {
      return sectionOrBrief(section);
    }
    return items((Entry.Items) entry);
  }

  private static <T> Map<String, Object> leaf(Key<T> key) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("description", key.doc());
    schema.putAll(key.type().schema());
    key.defaultValue().ifPresent(value -> schema.put("default", plain(key, value)));
    return schema;
  }

  /** A default in the JSON type that the schema asks for. */
  private static <T> Object plain(Key<T> key, T value) {
    String text = key.format(value);
    if (value instanceof Boolean) {
      return value;
    }
    return text.matches("-?[0-9]+(\\.[0-9]+)?") ? new BigDecimal(text) : text;
  }

  private static Map<String, Object> sectionOrBrief(Entry.Section section) {
    Map<String, Object> mapping = section(section);
    if (section.brief().isPresent()) {
      return either(section.doc(), section.brief().get().type().schema(), mapping);
    }
    if (section.path().equals(Catalogue.MACHINE)) {
      return either(section.doc(), file(), mapping);
    }
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("description", section.doc());
    schema.putAll(mapping);
    return schema;
  }

  /** A mapping; one with nothing in it reads as null. */
  private static Map<String, Object> section(Entry.Section section) {
    Map<String, Object> properties = new LinkedHashMap<>();
    section.entries().forEach((word, entry) -> properties.put(word, entry(entry)));
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", List.of("object", "null"));
    schema.put("properties", properties);
    schema.put("additionalProperties", false);
    return schema;
  }

  private static Map<String, Object> items(Entry.Items items) {
    Map<String, Object> item = new LinkedHashMap<>(section(items.item()));
    if (items.kind() == Entry.Kind.OFFSETS) {
      Map<String, Object> schema = new LinkedHashMap<>();
      schema.put("description", items.doc());
      schema.put("type", List.of("object", "null"));
      schema.put("propertyNames", new OffsetNameType().schema());
      schema.put("additionalProperties", item);
      return schema;
    }
    boolean tools = items.kind() == Entry.Kind.TOOLS;
    item.put("type", "object");
    item.put("required", List.of(tools ? ToolKeys.NUMBER.path() : FeatureKeys.NAME.path()));
    Map<String, Object> list = new LinkedHashMap<>();
    list.put("type", List.of("array", "null"));
    list.put("items", item);
    list.put("maxItems", Reading.MOST_ITEMS);
    if (tools) {
      return either(items.doc(), file(), list);
    }
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("description", items.doc());
    schema.putAll(list);
    return schema;
  }

  private static Map<String, Object> file() {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", "string");
    schema.put("minLength", 1);
    schema.put("pattern", "^[^/]");
    return schema;
  }

  private static Map<String, Object> either(
      String doc, Map<String, Object> a, Map<String, Object> b) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("description", doc);
    schema.put("anyOf", List.of(a, b));
    return schema;
  }

  /** Schemas nest as deep as the keys do. */
  private static void write(JsonGenerator json, Object value) throws IOException {
    if (value instanceof Map<?, ?> map) {
      json.writeStartObject();
      for (Map.Entry<?, ?> member : map.entrySet()) {
        json.writeFieldName((String) member.getKey());
        write(json, member.getValue());
      }
      json.writeEndObject();
    } else if (value instanceof List<?> list) {
      json.writeStartArray();
      for (Object element : list) {
        write(json, element);
      }
      json.writeEndArray();
    } else if (value instanceof String text) {
      json.writeString(text);
    } else if (value instanceof Boolean flag) {
      json.writeBoolean(flag);
    } else if (value instanceof BigDecimal number) {
      json.writeNumber(number.toPlainString());
    } else {
      json.writeNumber(((Number) value).longValue());
    }
  }
}
