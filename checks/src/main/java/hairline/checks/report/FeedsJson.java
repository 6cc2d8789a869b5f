package hairline.checks.report;

import com.fasterxml.jackson.core.JsonGenerator;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import hairline.checks.timing.FeedHold;
import hairline.checks.timing.FeedMove;
import hairline.checks.timing.FeedsShown;
import hairline.checks.timing.PlannedMove;
import java.io.IOException;
import java.util.Map;

/** The feeds that the machine reaches, in the JSON report. */
final class FeedsJson {
  private final JsonGenerator json;
  private final ProgramResult result;

  private FeedsJson(JsonGenerator json, ProgramResult result) {
    this.json = json;
    this.result = result;
  }

  static void write(JsonGenerator json, ProgramResult result, FeedsShown feeds) throws IOException {
    new FeedsJson(json, result).write(feeds);
  }

  private void write(FeedsShown feeds) throws IOException {
    json.writeObjectFieldStart("feeds");
    SummaryJson.plan(json, feeds.plan());
    lost(feeds.lostSeconds());
    json.writeArrayFieldStart("operations");
    for (FeedsShown.Operation operation : feeds.operations()) {
      operation(operation);
    }
    json.writeEndArray();
    json.writeNumberField("notPlanned", feeds.notPlanned());
    JsonText.texts(json, "missing", feeds.missing());
    json.writeBooleanField("complete", feeds.complete());
    json.writeEndObject();
  }

  private void operation(FeedsShown.Operation operation) throws IOException {
    json.writeStartObject();
    place("from", operation.of().from());
    if (operation.of().tool().isPresent()) {
      json.writeNumberField("tool", operation.of().tool().getAsInt());
    }
    if (operation.of().rpm().isPresent()) {
      JsonText.number(json, "rpm", operation.of().rpm().getAsDouble());
    }
    JsonText.number(json, "seconds", operation.of().seconds());
    SummaryJson.plan(json, operation.of().plan());
    json.writeNumberField("moves", operation.moves());
    json.writeNumberField("movesBelow", operation.below());
    lost(operation.lostSeconds());
    json.writeArrayFieldStart("slowest");
    for (FeedsShown.Slow slow : operation.slowest()) {
      FeedMove move = slow.first();
      PlannedMove planned = move.planned().orElseThrow();
      json.writeStartObject();
      place("at", move.move().at());
      JsonText.number(json, "lengthMm", move.move().lengthMm());
      JsonText.number(json, "programmedMmPerMin", move.move().feedMmPerMin().orElse(0));
      JsonText.number(json, "entryMmPerMin", planned.entryMmPerMin());
      JsonText.number(json, "exitMmPerMin", planned.exitMmPerMin());
      JsonText.number(json, "lowestMmPerMin", planned.lowestMmPerMin());
      JsonText.number(json, "highestMmPerMin", planned.peakMmPerMin());
      JsonText.number(json, "meanMmPerMin", planned.meanMmPerMin());
      JsonText.number(json, "seconds", planned.seconds());
      JsonText.number(json, "lostSeconds", move.lostSeconds());
      JsonText.text(json, "heldBy", move.held().map(FeedHold::words));
      json.writeNumberField("count", slow.count());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void lost(Map<FeedHold, Double> lost) throws IOException {
    json.writeObjectFieldStart("lostSeconds");
    for (Map.Entry<FeedHold, Double> part : lost.entrySet()) {
      JsonText.number(json, part.getKey().words(), part.getValue());
    }
    json.writeEndObject();
  }

  private void place(String name, Place place) throws IOException {
    json.writeObjectFieldStart(name);
    JsonText.text(json, "file", Words.file(result, place));
    json.writeNumberField("line", place.line());
    json.writeEndObject();
  }
}
