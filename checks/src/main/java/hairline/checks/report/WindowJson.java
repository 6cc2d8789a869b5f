package hairline.checks.report;

import com.fasterxml.jackson.core.JsonGenerator;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import hairline.checks.rules.CuttingWindow;
import hairline.checks.rules.CuttingWindow.Limit;
import hairline.checks.rules.CuttingWindow.Limits;
import hairline.checks.rules.CuttingWindow.OfClass;
import hairline.checks.rules.CuttingWindow.Remedy;
import hairline.checks.rules.CuttingWindow.Span;
import hairline.checks.rules.WindowSolver;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Windows for programs, as {@code window.schema.json} beside this class describes them. */
final class WindowJson {
  static final String SCHEMA_VERSION = "1.0";

  private final JsonGenerator json;
  private final OutputStream out;
  private final ReportOptions options;

  WindowJson(OutputStream out, ReportOptions options) {
    this.out = out;
    this.options = options;
    this.json = JsonText.to(out);
  }

  void write(ProgramResult result, List<CuttingWindow> windows, int status) throws IOException {
    json.writeStartObject();
    JsonText.head(json, SCHEMA_VERSION, options);
    json.writeObjectFieldStart("program");
    JsonText.text(json, "name", result.program());
    JsonText.text(json, "sheet", result.sheet());
    json.writeBooleanField("embeddedSheet", result.embeddedSheet());
    json.writeBooleanField(
        "understood",
        !result.notUnderstood() && !result.macroUnread() && !result.stepBudgetReached());
    json.writeEndObject();
    json.writeArrayFieldStart("whatIf");
    for (Conditions.WhatIf change : options.conditions().whatIf()) {
      json.writeStartObject();
      JsonText.text(json, "key", change.key());
      JsonText.text(json, "value", change.value());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("windows");
    for (CuttingWindow window : windows) {
      window(result, window);
    }
    json.writeEndArray();
    json.writeNumberField("exitStatus", status);
    json.writeEndObject();
    json.writeRaw('\n');
    json.flush();
    out.flush();
  }

  private void window(ProgramResult result, CuttingWindow window) throws IOException {
    json.writeStartObject();
    json.writeNumberField("operation", window.operation());
    place(result, window.first());
    json.writeNumberField("tool", window.tool());
    json.writeNumberField("flutes", window.flutes());
    json.writeObjectFieldStart("feed");
    json.writeStringField("unit", "mm/min");
    JsonText.number(json, "programmed", window.feedMmPerMin());
    limits(window.feed());
    json.writeEndObject();
    json.writeArrayFieldStart("classes");
    for (OfClass of : window.classes()) {
      ofClass(of);
    }
    json.writeEndArray();
    if (window.depth().isPresent()) {
      json.writeObjectFieldStart("depth");
      json.writeStringField("unit", "µm");
      if (window.depthsUm().isPresent()) {
        span("programmed", window.depthsUm().get());
      }
      limits(window.depth().get());
      json.writeEndObject();
    }
    json.writeObjectFieldStart("speed");
    json.writeStringField("unit", "rpm");
    JsonText.number(json, "programmed", window.rpm());
    limits(window.speed());
    json.writeEndObject();
    json.writeArrayFieldStart("opens");
    for (Remedy remedy : window.remedies()) {
      json.writeStartObject();
      json.writeStringField("window", remedy.opens());
      JsonText.text(json, "what", remedy.what());
      JsonText.number(json, "from", remedy.from());
      JsonText.number(json, "to", remedy.to());
      json.writeStringField("unit", remedy.unit());
      json.writeEndObject();
    }
    json.writeEndArray();
    JsonText.texts(json, "notKnown", window.notKnown());
    json.writeEndObject();
  }

  private void ofClass(OfClass of) throws IOException {
    json.writeStartObject();
    json.writeStringField("moves", of.moves().name().toLowerCase(Locale.ROOT));
    json.writeObjectFieldStart("feed");
    json.writeStringField("unit", "mm/min");
    JsonText.number(json, "programmed", of.feedMmPerMin());
    span("all", of.feeds());
    limits(of.feed());
    json.writeEndObject();
    if (of.taken().isPresent()) {
      json.writeObjectFieldStart("depthTaken");
      json.writeStringField("unit", "µm");
      JsonText.number(json, "programmed", of.takenUm().orElse(0));
      limits(of.taken().get());
      json.writeEndObject();
    }
    json.writeEndObject();
  }

  private void place(ProgramResult result, Place place) throws IOException {
    json.writeObjectFieldStart("from");
    JsonText.text(json, "file", Words.file(result, place));
    json.writeNumberField("line", place.line());
    json.writeEndObject();
  }

  private void span(String name, Span span) throws IOException {
    json.writeObjectFieldStart(name);
    JsonText.number(json, "lowest", span.lowest());
    JsonText.number(json, "highest", span.highest());
    json.writeEndObject();
  }

  private void limits(Limits limits) throws IOException {
    json.writeBooleanField("closed", limits.closed());
    bound("lower", limits.lower());
    bound("upper", limits.upper());
    json.writeArrayFieldStart("limits");
    for (Limit limit : limits.all()) {
      json.writeStartObject();
      json.writeStringField("by", limit.rule());
      json.writeBooleanField("isRule", !limit.rule().equals(WindowSolver.ACCELERATION));
      json.writeStringField("side", limit.lower() ? "lower" : "upper");
      JsonText.number(json, "likely", limit.likely());
      if (limit.certain() > 0 && !Double.isInfinite(limit.certain())) {
        JsonText.number(json, "certain", limit.certain());
      }
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void bound(String name, Optional<Limit> limit) throws IOException {
    if (limit.isPresent()) {
      JsonText.number(json, name, limit.get().likely());
    }
  }
}
