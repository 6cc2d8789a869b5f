package hairline.checks.report;

import com.fasterxml.jackson.core.JsonGenerator;
import hairline.checks.cutting.Band;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import hairline.checks.warmth.ProgramTimeline;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The timeline of a program in the JSON report. */
final class TimelineJson {
  private final JsonGenerator json;
  private final ProgramResult result;

  private TimelineJson(JsonGenerator json, ProgramResult result) {
    this.json = json;
    this.result = result;
  }

  static void write(JsonGenerator json, ProgramResult result, ProgramTimeline timeline)
      throws IOException {
    new TimelineJson(json, result).write(timeline);
  }

  private void write(ProgramTimeline timeline) throws IOException {
    json.writeObjectFieldStart("timeline");
    JsonText.number(json, "seconds", timeline.time().atLeastSeconds());
    json.writeBooleanField("secondsKnown", timeline.time().isKnown());
    json.writeArrayFieldStart("points");
    for (ProgramTimeline.Point point : timeline.points()) {
      json.writeStartObject();
      JsonText.number(json, "seconds", point.seconds());
      if (point.rpm().isPresent()) {
        JsonText.number(json, "rpm", point.rpm().getAsDouble());
      }
      band("growthUm", point.growthUm());
      json.writeBooleanField("known", point.known());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("marks");
    for (ProgramTimeline.Mark mark : timeline.marks()) {
      json.writeStartObject();
      json.writeStringField("kind", mark.kind().words());
      place("at", mark.at());
      JsonText.number(json, "fromSeconds", mark.fromSeconds());
      JsonText.number(json, "toSeconds", mark.toSeconds());
      json.writeBooleanField("known", mark.known());
      tool(mark.tool());
      band("growthUm", mark.growthUm());
      json.writeEndObject();
    }
    json.writeEndArray();
    cuts("fineCuts", timeline.fineCuts());
    cuts("otherCuts", timeline.otherCuts());
    JsonText.texts(json, "notes", timeline.notes());
    json.writeEndObject();
  }

  private void cuts(String name, List<ProgramTimeline.Cutting> cuts) throws IOException {
    json.writeArrayFieldStart(name);
    for (ProgramTimeline.Cutting cut : cuts) {
      json.writeStartObject();
      place("first", cut.first());
      place("last", cut.last());
      JsonText.number(json, "fromSeconds", cut.fromSeconds());
      JsonText.number(json, "toSeconds", cut.toSeconds());
      tool(cut.tool());
      band("driftAtStartUm", cut.driftAtStartUm());
      band("driftAtEndUm", cut.driftAtEndUm());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void tool(OptionalInt tool) throws IOException {
    if (tool.isPresent()) {
      json.writeNumberField("tool", tool.getAsInt());
    }
  }

  private void place(String name, Place place) throws IOException {
    json.writeObjectFieldStart(name);
    JsonText.text(json, "file", Words.file(result, place));
    json.writeNumberField("line", place.line());
    json.writeEndObject();
  }

  private void band(String name, Optional<Band> band) throws IOException {
    if (band.isPresent()) {
      json.writeObjectFieldStart(name);
      JsonText.number(json, "low", band.get().low());
      JsonText.number(json, "typical", band.get().typical());
      JsonText.number(json, "high", band.get().high());
      json.writeEndObject();
    }
  }
}
