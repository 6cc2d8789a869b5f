package hairline.checks.report;

import com.fasterxml.jackson.core.JsonGenerator;
import hairline.checks.compare.Change;
import hairline.checks.compare.Comparison;
import hairline.checks.compare.FindingsDifference;
import hairline.checks.compare.SheetDifference;
import hairline.checks.compare.TimeDifference;
import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.stock.SurfaceDifference;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A comparison for programs, as {@code comparison.schema.json} beside this class describes it. */
final class ComparisonJson {
  static final String SCHEMA_VERSION = "2.1";

  private static final double PM_PER_UM = 1e6;
  private static final double PM_PER_MM = 1e9;

  private final JsonGenerator json;
  private final OutputStream out;
  private final ReportOptions options;

  ComparisonJson(OutputStream out, ReportOptions options) {
    this.out = out;
    this.options = options;
    this.json = JsonText.to(out);
  }

  void write(Comparison comparison, int status) throws IOException {
    json.writeStartObject();
    JsonText.head(json, SCHEMA_VERSION, options);
    JsonReport.conditions(json, options.conditions());
    program("before", comparison.before());
    program("after", comparison.after());
    json.writeArrayFieldStart("sheets");
    for (SheetDifference sheet : comparison.sheets()) {
      json.writeStartObject();
      JsonText.text(json, "key", sheet.key());
      JsonText.text(json, "before", sheet.before());
      JsonText.text(json, "after", sheet.after());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("changes");
    for (Change change : ComparisonText.ordered(comparison.changes())) {
      change(comparison, change);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("surfaces");
    for (SurfaceDifference surface : comparison.surfaces()) {
      surface(surface);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("times");
    for (TimeDifference time : comparison.times()) {
      json.writeStartObject();
      operation(comparison, time.operationBefore(), time.operationAfter());
      JsonText.number(json, "beforeSeconds", time.beforeSeconds());
      JsonText.number(json, "afterSeconds", time.afterSeconds());
      json.writeEndObject();
    }
    json.writeEndArray();
    FindingsDifference findings = comparison.findings();
    json.writeObjectFieldStart("findings");
    findings("new", findings.added(), comparison.after());
    findings("gone", findings.gone(), comparison.before());
    json.writeArrayFieldStart("changed");
    for (FindingsDifference.Pair pair : findings.changed()) {
      json.writeStartObject();
      json.writeStringField("how", pair.how().name().toLowerCase(Locale.ROOT));
      json.writeFieldName("before");
      finding(pair.before(), comparison.before());
      json.writeFieldName("after");
      finding(pair.after(), comparison.after());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
    JsonText.texts(json, "notCompared", comparison.notCompared());
    json.writeObjectFieldStart("verdict");
    json.writeBooleanField("differ", comparison.differ());
    json.writeBooleanField("newFindings", comparison.newFindings());
    json.writeNumberField("exitStatus", status);
    json.writeEndObject();
    json.writeEndObject();
    json.writeRaw('\n');
    json.flush();
    out.flush();
  }

  private void program(String name, ProgramResult result) throws IOException {
    json.writeObjectFieldStart(name);
    JsonText.text(json, "name", result.program());
    JsonText.text(json, "sheet", result.sheet());
    json.writeBooleanField("embeddedSheet", result.embeddedSheet());
    json.writeBooleanField(
        "understood",
        !result.notUnderstood() && !result.macroUnread() && !result.stepBudgetReached());
    json.writeEndObject();
  }

  private void change(Comparison comparison, Change change) throws IOException {
    json.writeStartObject();
    json.writeStringField("kind", change.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    operation(comparison, change.operationBefore(), change.operationAfter());
    JsonText.text(json, "before", change.before());
    JsonText.text(json, "after", change.after());
    json.writeNumberField("count", change.count());
    where(comparison, "first", change.first());
    if (change.largest().isPresent()) {
      where(comparison, "largest", change.largest().get());
    }
    if (!Double.isNaN(change.farMm())) {
      JsonText.number(
          json, change.kind() == Change.Kind.MOVES ? "lengthMm" : "farMm", change.farMm());
    }
    json.writeStringField(
        "blockDelete", change.blockDelete().isEmpty() ? "both" : "only_" + change.blockDelete());
    json.writeEndObject();
  }

  private void operation(Comparison comparison, int before, int after) throws IOException {
    operation(
        "operationBefore", before, Optional.ofNullable(comparison.titlesBefore().get(before)));
    operation("operationAfter", after, Optional.ofNullable(comparison.titles().get(after)));
  }

  private void operation(String name, int number, Optional<String> title) throws IOException {
    if (number != 0) {
      json.writeObjectFieldStart(name);
      json.writeNumberField("number", number);
      JsonText.text(json, "title", title);
      json.writeEndObject();
    }
  }

  private void where(Comparison comparison, String name, Change.Where where) throws IOException {
    json.writeObjectFieldStart(name);
    if (where.before().isPresent()) {
      JsonText.place(json, "before", comparison.before(), where.before().get());
    }
    if (where.after().isPresent()) {
      JsonText.place(json, "after", comparison.after(), where.after().get());
    }
    json.writeEndObject();
  }

  private void surface(SurfaceDifference surface) throws IOException {
    json.writeStartObject();
    json.writeStringField("offset", surface.offset());
    if (surface.notCompared().isPresent()) {
      json.writeStringField("notCompared", surface.notCompared().get());
      json.writeEndObject();
      return;
    }
    JsonText.number(json, "differentMm2", surface.differentMm2());
    JsonText.number(json, "otherwiseMm2", surface.otherwiseMm2());
    if (surface.largestPm() != 0) {
      json.writeObjectFieldStart("largest");
      JsonText.number(json, "higherUm", surface.largestPm() / PM_PER_UM);
      JsonText.number(json, "xMm", surface.xPm() / PM_PER_MM);
      JsonText.number(json, "yMm", surface.yPm() / PM_PER_MM);
      JsonText.number(json, "beforeUm", surface.beforePm() / PM_PER_UM);
      JsonText.number(json, "afterUm", surface.afterPm() / PM_PER_UM);
      json.writeEndObject();
    }
    json.writeEndObject();
  }

  private void findings(String name, List<Finding> findings, ProgramResult result)
      throws IOException {
    json.writeArrayFieldStart(name);
    for (Finding finding : findings) {
      finding(finding, result);
    }
    json.writeEndArray();
  }

  private void finding(Finding finding, ProgramResult result) throws IOException {
    json.writeStartObject();
    json.writeStringField("rule", finding.rule());
    json.writeStringField("level", finding.level().word());
    JsonText.text(json, "message", finding.worst().message());
    json.writeNumberField("count", finding.count());
    JsonText.place(json, "at", result, finding.worst().at());
    json.writeEndObject();
  }
}
