package hairline.checks.report;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * Writes JSON: UTF-8, two blanks a level, line feeds. What could steer a terminal or reorder text
 * leaves as {@code \}{@code uXXXX}, so that the bytes are harmless and a reader gets the text as it
 * was.
 */
final class JsonText {
  private static final int DIGITS = 12;

  /** Escapes what {@link Visible} would replace. */
  private static final class Escapes extends CharacterEscapes {
    private static final long serialVersionUID = 1L;

    @Override
    public int[] getEscapeCodesForAscii() {
      int[] codes = standardAsciiEscapesForJSON();
      codes[0x7F] = CharacterEscapes.ESCAPE_STANDARD;
      return codes;
    }

    @Override
    @SuppressWarnings("NullAway") // Jackson takes null for "as it is".
    public SerializableString getEscapeSequence(int c) {
      return c < 0x80 || Visible.isHarmless(c) ? null : new SerializedString(escape(c));
    }

    private static String escape(int c) {
      StringBuilder text = new StringBuilder();
      for (char unit : Character.toChars(c)) {
        text.append(String.format(Locale.ROOT, "\\u%04X", (int) unit));
      }
      return text.toString();
    }
  }

  private JsonText() {}

  static JsonGenerator to(OutputStream out) {
    try {
      JsonGenerator json = new JsonFactory().createGenerator(out, JsonEncoding.UTF8);
      json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
      json.setCharacterEscapes(new Escapes());
      DefaultIndenter indent = new DefaultIndenter("  ", "\n");
      json.setPrettyPrinter(
          new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(indent));
      return json;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What every report begins with. */
  static void head(JsonGenerator json, String schemaVersion, ReportOptions options)
      throws IOException {
    json.writeStringField("schemaVersion", schemaVersion);
    json.writeObjectFieldStart("tool");
    json.writeStringField("name", "hairline");
    json.writeStringField("version", options.version());
    json.writeEndObject();
    json.writeStringField("caution", Words.CAUTION);
  }

  /** A place in a program or a file that it calls. */
  static void place(JsonGenerator json, String name, ProgramResult result, Place place)
      throws IOException {
    json.writeObjectFieldStart(name);
    text(json, "file", Words.file(result, place));
    json.writeNumberField("line", place.line());
    json.writeNumberField("column", place.span().column());
    json.writeNumberField("endColumn", place.span().endColumn());
    json.writeEndObject();
  }

  /** A list of texts. */
  static void texts(JsonGenerator json, String name, Collection<String> texts) throws IOException {
    json.writeArrayFieldStart(name);
    for (String text : texts) {
      json.writeString(whole(text));
    }
    json.writeEndArray();
  }

  /** A text; nothing where there is none. */
  static void text(JsonGenerator json, String name, Optional<String> text) throws IOException {
    if (text.isPresent()) {
      text(json, name, text.get());
    }
  }

  /** A text. */
  static void text(JsonGenerator json, String name, String text) throws IOException {
    json.writeStringField(name, whole(text));
  }

  /**
   * A number to twelve significant digits, by its exact value: how Java itself prints a double
   * differs from version to version.
   */
  static void number(JsonGenerator json, String name, double value) throws IOException {
    json.writeFieldName(name);
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      json.writeNull();
      return;
    }
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(DIGITS));
    json.writeNumber(rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString());
  }

  /** Half a surrogate pair is no character, and UTF-8 has no bytes for it. */
  private static String whole(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (Character.isSurrogate(text.charAt(i))) {
        return text.codePoints()
            .map(c -> c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE ? 0xFFFD : c)
            .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
            .toString();
      }
    }
    return text;
  }
}
