package hairline.checks.report;

import com.fasterxml.jackson.core.JsonGenerator;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Extent;
import hairline.checks.motion.ToolUse;
import hairline.checks.timing.Gap;
import hairline.checks.timing.ProgramSummary;
import hairline.checks.timing.TimeTaken;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;

/** The summary of a program in the JSON report. */
final class SummaryJson {
  private static final double PER_UNIT_LINEAR = 1e9;
  private static final double PER_UNIT_ROTARY = 1e6;

  private SummaryJson() {}

  static void write(JsonGenerator json, ProgramSummary summary, ProgramResult result)
      throws IOException {
    json.writeStartObject();
    json.writeNumberField("blocks", summary.blocks());
    json.writeNumberField("moves", summary.moves());
    json.writeNumberField("rapids", summary.rapids());
    json.writeNumberField("lines", summary.lines());
    json.writeNumberField("arcsClockwise", summary.arcsClockwise());
    json.writeNumberField("arcsCounterClockwise", summary.arcsCounterClockwise());
    json.writeNumberField("inCycles", summary.inCycles());
    json.writeNumberField("dwells", summary.dwells());
    JsonText.number(json, "rapidMm", summary.rapidMm());
    JsonText.number(json, "feedMm", summary.feedMm());
    time(json, summary);
    json.writeArrayFieldStart("reach");
    for (ProgramSummary.Reach reach : summary.extents()) {
      json.writeStartObject();
      json.writeStringField("workOffset", reach.workOffset());
      extents(json, "rapid", reach.rapid());
      extents(json, "feed", reach.feed());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("operations");
    for (ProgramSummary.Operation operation : summary.operations()) {
      operation(json, result, operation);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("tools");
    for (ToolUse tool : summary.tools()) {
      tool(json, result, tool);
    }
    json.writeEndArray();
    json.writeObjectFieldStart("calls");
    for (Map.Entry<String, Long> call : summary.calls().entrySet()) {
      json.writeNumberField(call.getKey(), call.getValue());
    }
    json.writeEndObject();
    json.writeArrayFieldStart("doubts");
    for (ProgramSummary.Doubt doubt : summary.doubts()) {
      json.writeStartObject();
      JsonText.text(json, "what", doubt.what());
      JsonText.text(json, "file", Words.file(result, doubt.first()));
      json.writeNumberField("line", doubt.first().line());
      json.writeNumberField("count", doubt.count());
      json.writeEndObject();
    }
    json.writeEndArray();
    if (summary.ending().isPresent()) {
      ending(json, result, summary.ending().get());
    }
    json.writeEndObject();
  }

  private static void time(JsonGenerator json, ProgramSummary summary) throws IOException {
    TimeTaken time = summary.time();
    json.writeObjectFieldStart("time");
    JsonText.number(json, "atLeastSeconds", time.atLeastSeconds());
    if (!Double.isInfinite(time.atMostSeconds())) {
      JsonText.number(json, "atMostSeconds", time.atMostSeconds());
    }
    JsonText.number(json, "feedSeconds", summary.feedSeconds());
    JsonText.number(json, "rapidSeconds", summary.rapidSeconds());
    JsonText.number(json, "dwellSeconds", summary.dwellSeconds());
    plan(json, summary.plan());
    JsonText.texts(
        json, "unknown", time.gaps().stream().map(Gap::cause).map(c -> c.reason()).toList());
    json.writeEndObject();
  }

  static void plan(JsonGenerator json, Optional<ProgramSummary.Plan> plan) throws IOException {
    if (plan.isPresent()) {
      json.writeObjectFieldStart("plan");
      JsonText.number(json, "plannedSeconds", plan.get().plannedSeconds());
      JsonText.number(json, "programmedSeconds", plan.get().programmedSeconds());
      JsonText.number(json, "shareBelowFeed", plan.get().shareBelowFeed());
      JsonText.number(json, "shareOfTimeBelowFeed", plan.get().shareOfTimeBelowFeed());
      json.writeEndObject();
    }
  }

  private static void operation(
      JsonGenerator json, ProgramResult result, ProgramSummary.Operation operation)
      throws IOException {
    json.writeStartObject();
    JsonText.text(json, "file", Words.file(result, operation.from()));
    json.writeNumberField("firstLine", operation.from().line());
    if (operation.tool().isPresent()) {
      json.writeNumberField("tool", operation.tool().getAsInt());
    }
    if (operation.rpm().isPresent()) {
      JsonText.number(json, "rpm", operation.rpm().getAsDouble());
    }
    JsonText.number(json, "seconds", operation.seconds());
    plan(json, operation.plan());
    json.writeEndObject();
  }

  private static void extents(JsonGenerator json, String name, Map<Axis, Extent> extents)
      throws IOException {
    json.writeObjectFieldStart(name);
    for (Map.Entry<Axis, Extent> extent : extents.entrySet()) {
      double perUnit = extent.getKey().linear() ? PER_UNIT_LINEAR : PER_UNIT_ROTARY;
      json.writeObjectFieldStart(extent.getKey().name());
      JsonText.number(json, "lowest", extent.getValue().lowest() / perUnit);
      JsonText.number(json, "highest", extent.getValue().highest() / perUnit);
      json.writeEndObject();
    }
    json.writeEndObject();
  }

  private static void tool(JsonGenerator json, ProgramResult result, ToolUse tool)
      throws IOException {
    json.writeStartObject();
    if (tool.number().isPresent()) {
      json.writeNumberField("number", tool.number().getAsInt());
    }
    JsonText.text(json, "file", Words.file(result, tool.first()));
    json.writeNumberField("firstLine", tool.first().line());
    json.writeArrayFieldStart("speedsRpm");
    for (double speed : tool.speedsRpm()) {
      json.writeNumber(Quantities.significant(speed, 9));
    }
    json.writeEndArray();
    if (tool.feedsMmPerMin().isPresent()) {
      JsonText.number(json, "lowestFeedMmPerMin", tool.feedsMmPerMin().get().lowest());
      JsonText.number(json, "highestFeedMmPerMin", tool.feedsMmPerMin().get().highest());
    }
    JsonText.number(json, "feedMm", tool.feedMm());
    json.writeEndObject();
  }

  private static void ending(JsonGenerator json, ProgramResult result, ProgramSummary.Ending ending)
      throws IOException {
    json.writeObjectFieldStart("end");
    JsonText.text(json, "file", Words.file(result, ending.at()));
    json.writeNumberField("line", ending.at().line());
    JsonText.text(json, "code", ending.code());
    json.writeObjectFieldStart("modes");
    for (Map.Entry<String, String> mode : ModesText.of(ending.modes(), result).entrySet()) {
      JsonText.text(json, mode.getKey(), mode.getValue());
    }
    json.writeEndObject();
    json.writeEndObject();
  }
}
