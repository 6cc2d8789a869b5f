package hairline.checks.report;

import com.fasterxml.jackson.core.JsonGenerator;
import hairline.checks.finding.Assumption;
import hairline.checks.finding.Figure;
import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.ProgramResult.SourceLine;
import hairline.checks.stock.DepthStretch;
import hairline.checks.stock.DepthsShown;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The report for programs, as {@code report.schema.json} beside this class describes it. The schema
 * version's first number changes when a reader of the one before might misread it.
 */
final class JsonReport implements ReportWriter {
  static final String SCHEMA_VERSION = "1.7";

  private final JsonGenerator json;
  private final OutputStream out;
  private final ReportOptions options;

  JsonReport(OutputStream out, ReportOptions options) {
    this.out = out;
    this.options = options;
    this.json = JsonText.to(out);
  }

  @Override
  public void begin() throws IOException {
    json.writeStartObject();
    JsonText.head(json, SCHEMA_VERSION, options);
    json.writeStringField("failOn", options.failOn().map(level -> level.word()).orElse("never"));
    conditions(json, options.conditions());
    json.writeArrayFieldStart("programs");
  }

  /** What makes a run less than a whole one. */
  static void conditions(JsonGenerator json, Conditions conditions) throws IOException {
    json.writeObjectFieldStart("conditions");
    JsonText.texts(json, "only", conditions.only());
    JsonText.texts(json, "skip", conditions.skip());
    json.writeArrayFieldStart("whatIf");
    for (Conditions.WhatIf change : conditions.whatIf()) {
      json.writeStartObject();
      JsonText.text(json, "key", change.key());
      JsonText.text(json, "value", change.value());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  @Override
  public void program(CheckedProgram program) throws IOException {
    json.writeStartObject();
    JsonText.text(json, "name", program.name());
    if (program.trouble().isPresent()) {
      Trouble trouble = program.trouble().get();
      json.writeStringField("state", "not checked");
      json.writeObjectFieldStart("trouble");
      json.writeStringField("code", trouble.code());
      JsonText.text(json, "sentence", trouble.sentence());
      JsonText.text(json, "cure", trouble.cure());
      json.writeEndObject();
      json.writeEndObject();
      return;
    }
    result(program.result().orElseThrow());
    if (program.summary().isPresent()) {
      json.writeFieldName("summary");
      SummaryJson.write(json, program.summary().get(), program.result().orElseThrow());
    }
    if (program.surface().isPresent()) {
      SurfaceJson.write(json, program.surface().get());
    }
    if (program.depths().isPresent()) {
      depths(program.result().orElseThrow(), program.depths().get());
    }
    if (program.timeline().isPresent()) {
      TimelineJson.write(json, program.result().orElseThrow(), program.timeline().get());
    }
    if (program.feeds().isPresent() && program.feeds().get().shown().isPresent()) {
      FeedsJson.write(json, program.result().orElseThrow(), program.feeds().get().shown().get());
    }
    if (program.budgets()) {
      budgets(program.result().orElseThrow());
    }
    json.writeEndObject();
  }

  private void depths(ProgramResult result, DepthsShown depths) throws IOException {
    json.writeArrayFieldStart("depths");
    for (DepthsShown.Taken move : depths.moves()) {
      for (DepthStretch stretch : move.stretches()) {
        json.writeStartObject();
        if (move.at().file() > 0) {
          JsonText.text(json, "file", Words.file(result, move.at()));
        }
        json.writeNumberField("line", move.at().line());
        json.writeFieldName("fromMm");
        json.writeNumber(SurfaceWords.mm(stretch.fromMm() * 1e9));
        json.writeFieldName("toMm");
        json.writeNumber(SurfaceWords.mm(stretch.toMm() * 1e9));
        json.writeFieldName("depthUm");
        json.writeRawValue(
            stretch.depthPm().isPresent()
                ? SurfaceWords.um(stretch.depthPm().getAsLong())
                : "null");
        json.writeEndObject();
      }
    }
    json.writeEndArray();
    json.writeBooleanField("depthsComplete", depths.complete());
  }

  private void budgets(ProgramResult result) throws IOException {
    json.writeArrayFieldStart("budgets");
    for (ProgramResult.Budget budget : result.budgets()) {
      json.writeStartObject();
      JsonText.place(json, "at", result, budget.step().step().at());
      BudgetJson.write(json, budget);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void result(ProgramResult result) throws IOException {
    boolean whole = !result.stepBudgetReached() && !result.macroUnread() && !result.notUnderstood();
    json.writeStringField("state", whole ? "checked" : "partly checked");
    json.writeBooleanField("stepBudgetReached", result.stepBudgetReached());
    json.writeBooleanField("macroUnread", result.macroUnread());
    json.writeObjectFieldStart("sheet");
    JsonText.text(json, "name", result.sheet());
    json.writeBooleanField("embedded", result.embeddedSheet());
    json.writeEndObject();
    JsonText.texts(json, "files", result.files());
    Fingerprints fingerprints = new Fingerprints(result);
    findings(result, "findings", result.findings(), fingerprints);
    findings(result, "accepted", result.accepted(), fingerprints);
    json.writeArrayFieldStart("notChecked");
    for (NotChecked missing : result.notChecked()) {
      json.writeStartObject();
      if (!missing.rule().isEmpty()) {
        json.writeStringField("rule", missing.rule());
      }
      JsonText.text(json, "reason", missing.reason());
      if (missing.first().isPresent()) {
        JsonText.place(json, "first", result, missing.first().get());
      }
      json.writeNumberField("count", missing.count());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("assumptions");
    List<Assumption> assumptions =
        result.assumptions().stream().sorted(Comparator.comparing(Assumption::what)).toList();
    for (Assumption assumption : assumptions) {
      json.writeStartObject();
      JsonText.text(json, "what", assumption.what());
      JsonText.text(json, "value", assumption.value());
      JsonText.text(json, "because", assumption.because());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void findings(
      ProgramResult result, String name, List<Finding> findings, Fingerprints fingerprints)
      throws IOException {
    json.writeArrayFieldStart(name);
    for (Finding finding : findings) {
      Occurrence first = finding.first();
      json.writeStartObject();
      json.writeStringField("rule", finding.rule());
      json.writeStringField("level", finding.level().word());
      occurrence(result, first);
      JsonText.texts(json, "facts", first.facts());
      JsonText.text(json, "cure", first.cure());
      json.writeNumberField("count", finding.count());
      JsonText.place(json, "last", result, finding.last());
      if (!finding.worst().equals(first)) {
        json.writeObjectFieldStart("worst");
        occurrence(result, finding.worst());
        json.writeEndObject();
      }
      json.writeNumberField("operation", first.operation());
      json.writeStringField("blockDelete", finding.blockDelete().name().toLowerCase(Locale.ROOT));
      JsonText.text(json, "acceptedBecause", finding.acceptedBecause());
      json.writeStringField("fingerprint", fingerprints.of(finding));
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void occurrence(ProgramResult result, Occurrence occurrence) throws IOException {
    JsonText.place(json, "at", result, occurrence.at());
    JsonText.text(
        json,
        "source",
        Optional.ofNullable(
            result.excerpts().get(new SourceLine(occurrence.at().file(), occurrence.at().line()))));
    JsonText.text(json, "message", occurrence.message());
    json.writeArrayFieldStart("figures");
    for (Figure figure : occurrence.figures()) {
      json.writeStartObject();
      json.writeStringField("name", figure.name());
      JsonText.number(json, "value", figure.value());
      json.writeStringField("unit", figure.unit());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  @Override
  public void end(Verdict verdict) throws IOException {
    json.writeEndArray();
    json.writeObjectFieldStart("verdict");
    json.writeNumberField("programs", verdict.programs());
    json.writeNumberField("notChecked", verdict.troubled());
    json.writeNumberField("partlyChecked", verdict.incomplete());
    json.writeNumberField("errors", verdict.errors());
    json.writeNumberField("warnings", verdict.warnings());
    json.writeNumberField("notes", verdict.notes());
    json.writeNumberField("accepted", verdict.accepted());
    json.writeNumberField("rulesUndecided", verdict.undecided());
    json.writeNumberField("exitStatus", verdict.exitStatus());
    json.writeEndObject();
    json.writeEndObject();
    json.writeRaw('\n');
    json.flush();
    out.flush();
  }
}
