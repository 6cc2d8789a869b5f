package hairline.checks.report;

import com.fasterxml.jackson.core.JsonGenerator;
import hairline.checks.stock.Section;
import hairline.checks.stock.StockModel;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.stock.TerraceArea;
import hairline.checks.stock.Terraces;
import java.io.IOException;

/** The part left in the JSON report; the names stand in the schema. */
final class SurfaceJson {
  private SurfaceJson() {}

  static void write(JsonGenerator json, SurfaceShown surface) throws IOException {
    if (!surface.wanted().terraces() && surface.wanted().sections().isEmpty()) {
      return;
    }
    json.writeObjectFieldStart("surface");
    number(json, "cellUm", SurfaceWords.um(surface.cellPm()));
    number(json, "toleranceUm", SurfaceWords.um(surface.tolerancePm()));
    json.writeArrayFieldStart("offsets");
    for (SurfaceShown.Under under : surface.offsets()) {
      offset(json, under, surface.wanted().terraces());
    }
    json.writeEndArray();
    json.writeEndObject();
    if (surface.wanted().terraces()) {
      json.writeArrayFieldStart("terraces");
      for (SurfaceShown.Under under : surface.offsets()) {
        for (TerraceArea area : under.terraces().orElseThrow().areas()) {
          terrace(json, under, area);
        }
      }
      json.writeEndArray();
    }
    if (!surface.wanted().sections().isEmpty()) {
      json.writeArrayFieldStart("sections");
      for (SurfaceShown.Under under : surface.offsets()) {
        for (Section section : under.sections()) {
          section(json, under, section);
        }
      }
      json.writeEndArray();
    }
  }

  private static void box(JsonGenerator json, String name, StockModel.Box stock)
      throws IOException {
    json.writeObjectFieldStart(name);
    pair(json, "xMm", SurfaceWords.mm(stock.xMinPm()), SurfaceWords.mm(stock.xMaxPm()));
    pair(json, "yMm", SurfaceWords.mm(stock.yMinPm()), SurfaceWords.mm(stock.yMaxPm()));
    number(json, "topMm", SurfaceWords.mm(stock.topPm()));
    if (stock.bottomPm().isPresent()) {
      number(json, "bottomMm", SurfaceWords.mm(stock.bottomPm().getAsLong()));
    }
    json.writeEndObject();
  }

  private static void offset(JsonGenerator json, SurfaceShown.Under under, boolean terraces)
      throws IOException {
    json.writeStartObject();
    json.writeStringField("offset", under.offset());
    json.writeBooleanField("known", under.known());
    number(json, "memoryMiB", SurfaceWords.mib(under.bytes()));
    if (under.stock().isPresent()) {
      box(json, "stock", under.stock().get());
    }
    if (under.assumedStock().isPresent()) {
      box(json, "assumedStock", under.assumedStock().get());
    }
    if (terraces) {
      Terraces all = under.terraces().orElseThrow();
      json.writeNumberField("otherAreas", all.otherAreas());
      number(json, "otherMm2", SurfaceWords.number(all.otherMm2()));
      JsonText.texts(json, "leftOut", all.left());
    }
    json.writeEndObject();
  }

  private static void terrace(JsonGenerator json, SurfaceShown.Under under, TerraceArea area)
      throws IOException {
    json.writeStartObject();
    json.writeNumberField("id", area.id());
    json.writeStringField("offset", under.offset());
    number(json, "heightUm", SurfaceWords.um(area.heightPm()));
    json.writeBooleanField("uncut", area.uncut());
    number(json, "areaMm2", SurfaceWords.number(area.areaMm2()));
    json.writeObjectFieldStart("box");
    pair(json, "xMm", SurfaceWords.mm(area.xMinPm()), SurfaceWords.mm(area.xMaxPm()));
    pair(json, "yMm", SurfaceWords.mm(area.yMinPm()), SurfaceWords.mm(area.yMaxPm()));
    json.writeEndObject();
    json.writeArrayFieldStart("neighbours");
    for (TerraceArea.Neighbour neighbour : area.neighbours()) {
      json.writeStartObject();
      json.writeNumberField("id", neighbour.id());
      number(json, "stepUm", SurfaceWords.um(neighbour.stepPm()));
      number(json, "borderMm", SurfaceWords.number(neighbour.borderMm()));
      json.writeEndObject();
    }
    json.writeEndArray();
    JsonText.texts(
        json, "beside", area.beside().stream().sorted().map(stands -> stands.words()).toList());
    json.writeEndObject();
  }

  private static void section(JsonGenerator json, SurfaceShown.Under under, Section section)
      throws IOException {
    json.writeStartObject();
    json.writeStringField("offset", under.offset());
    pair(
        json,
        "fromMm",
        SurfaceWords.mm(section.line().x0Pm()),
        SurfaceWords.mm(section.line().y0Pm()));
    pair(
        json,
        "toMm",
        SurfaceWords.mm(section.line().x1Pm()),
        SurfaceWords.mm(section.line().y1Pm()));
    json.writeBooleanField("complete", section.complete());
    json.writeArrayFieldStart("points");
    for (Section.Point point : section.points()) {
      String height =
          point.heightPm().isPresent() ? SurfaceWords.um(point.heightPm().getAsLong()) : "null";
      json.writeRawValue("[" + SurfaceWords.mm(point.distancePm()) + ", " + height + "]");
    }
    json.writeEndArray();
    json.writeArrayFieldStart("gaps");
    for (Section.Gap gap : section.gaps()) {
      json.writeStartObject();
      number(json, "fromMm", SurfaceWords.mm(gap.fromPm()));
      number(json, "toMm", SurfaceWords.mm(gap.toPm()));
      json.writeStringField("why", gap.why().words());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static void number(JsonGenerator json, String name, String value) throws IOException {
    json.writeFieldName(name);
    json.writeNumber(value);
  }

  private static void pair(JsonGenerator json, String name, String one, String other)
      throws IOException {
    json.writeFieldName(name);
    json.writeRawValue("[" + one + ", " + other + "]");
  }
}
