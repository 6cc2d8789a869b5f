package hairline.checks.report;

import hairline.checks.budget.Missing;
import hairline.checks.budget.StepBudget;
import hairline.checks.cutting.Band;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.stock.DepthStretch;
import hairline.checks.stock.DepthsShown;
import hairline.checks.stock.Section;
import hairline.checks.stock.StockModel;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.stock.TerraceArea;
import hairline.checks.timing.FeedHold;
import hairline.checks.timing.FeedMove;
import hairline.checks.timing.FeedsShown;
import hairline.checks.timing.PlannedMove;
import hairline.checks.timing.ProgramSummary;
import hairline.checks.warmth.ProgramTimeline;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Terraces, sections, depths, timelines, feeds and error budgets as a table for spreadsheets: comma
 * separated values as RFC 4180 has them, one heading line, all lines with all fields. The field
 * {@code kind} tells which of the others are filled. A text that a spreadsheet would take for a
 * formula gets an apostrophe in front.
 */
final class CsvReport implements ReportWriter {
  /** The fields. */
  private enum Field {
    PROGRAM("program"),
    KIND("kind"),
    OFFSET("offset"),
    TERRACE("terrace"),
    HEIGHT("height_um"),
    AREA("area_mm2"),
    X_FROM("x_from_mm"),
    X_TO("x_to_mm"),
    Y_FROM("y_from_mm"),
    Y_TO("y_to_mm"),
    CELL("cell_um"),
    NEIGHBOUR("neighbour"),
    STEP("step_um"),
    BORDER("border_mm"),
    SECTION("section"),
    DISTANCE("distance_mm"),
    X("x_mm"),
    Y("y_mm"),
    NOTE("note"),
    LINE("line"),
    FEATURE("feature"),
    PART("part"),
    PART_KIND("part_kind"),
    VALUE("value_um"),
    SHARE("share"),
    HALVING_GAINS("halving_gains_um"),
    DISTANCE_TO("distance_to_mm"),
    DEPTH("depth_um"),
    FROM("from_s"),
    TO("to_s"),
    TOOL("tool"),
    SPEED("speed_rpm"),
    GROWTH_LOW("growth_low_um"),
    GROWTH("growth_um"),
    GROWTH_HIGH("growth_high_um"),
    DRIFT_FROM("drift_from_um"),
    DRIFT_TO("drift_to_um"),
    FILE("file"),
    MOVE("move"),
    LENGTH("length_mm"),
    PROGRAMMED("programmed_mm_per_min"),
    ENTRY("entry_mm_per_min"),
    EXIT("exit_mm_per_min"),
    LOWEST("lowest_mm_per_min"),
    HIGHEST("highest_mm_per_min"),
    MEAN("mean_mm_per_min"),
    TIME("time_s"),
    LOST("lost_s"),
    HELD("held_by");

    private final String heading;

    Field(String heading) {
      this.heading = heading;
    }
  }

  private final Writer out;
  private final ReportOptions options;

  CsvReport(OutputStream out, ReportOptions options) {
    this.options = options;
    this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
  }

  @Override
  public void begin() throws IOException {
    Map<Field, String> headings = new EnumMap<>(Field.class);
    for (Field field : Field.values()) {
      headings.put(field, field.heading);
    }
    row(headings);
    for (Conditions.Named condition : options.conditions().all()) {
      Map<Field, String> row = new EnumMap<>(Field.class);
      row.put(Field.KIND, condition.name());
      row.put(Field.NOTE, text(condition.text()));
      row(row);
    }
  }

  @Override
  public void program(CheckedProgram program) throws IOException {
    if (program.trouble().isPresent()) {
      Map<Field, String> row = row(program, "not checked", "");
      row.put(Field.NOTE, text(program.trouble().get().sentence()));
      row(row);
      return;
    }
    if (program.budgets()) {
      for (ProgramResult.Budget budget : program.result().orElseThrow().budgets()) {
        budget(program, budget);
      }
    }
    if (program.depths().isPresent()) {
      depths(program, program.depths().get());
    }
    if (program.timeline().isPresent()) {
      timeline(program, program.timeline().get());
    }
    if (program.feeds().isPresent()) {
      feeds(program, program.feeds().get().moves());
    }
    if (program.surface().isEmpty()) {
      return;
    }
    SurfaceShown surface = program.surface().get();
    if (surface.offsets().isEmpty()) {
      Map<Field, String> row = row(program, "surface", "");
      row.put(Field.CELL, SurfaceWords.um(surface.cellPm()));
      row.put(Field.NOTE, SurfaceWords.NOTHING);
      row(row);
    }
    for (SurfaceShown.Under under : surface.offsets()) {
      surface(program, surface, under);
      if (surface.wanted().terraces()) {
        for (TerraceArea area : under.terraces().orElseThrow().areas()) {
          terrace(program, under, area);
        }
      }
      int number = 0;
      for (Section section : under.sections()) {
        section(program, under, ++number, section);
      }
    }
  }

  private void depths(CheckedProgram program, DepthsShown depths) throws IOException {
    for (DepthsShown.Taken move : depths.moves()) {
      for (DepthStretch stretch : move.stretches()) {
        Map<Field, String> row = row(program, "depth", "");
        line(program, row, move.at());
        row.put(Field.DISTANCE, SurfaceWords.mm(stretch.fromMm() * 1e9));
        row.put(Field.DISTANCE_TO, SurfaceWords.mm(stretch.toMm() * 1e9));
        if (stretch.depthPm().isPresent()) {
          row.put(Field.DEPTH, SurfaceWords.um(stretch.depthPm().getAsLong()));
        } else {
          row.put(Field.NOTE, "top not known");
        }
        row(row);
      }
    }
    if (!depths.complete()) {
      Map<Field, String> row = row(program, "depth", "");
      row.put(Field.NOTE, "the rest is left out: too many stretches");
      row(row);
    }
  }

  private void timeline(CheckedProgram program, ProgramTimeline timeline) throws IOException {
    for (ProgramTimeline.Point point : timeline.points()) {
      Map<Field, String> row = row(program, "spindle", "");
      row.put(Field.FROM, SurfaceWords.number(point.seconds()));
      if (point.rpm().isPresent()) {
        row.put(Field.SPEED, SurfaceWords.number(point.rpm().getAsDouble()));
      }
      growth(row, point.growthUm());
      row.put(Field.NOTE, !timeline.growthTold() || point.known() ? "" : "growth within bounds");
      row(row);
    }
    for (ProgramTimeline.Mark mark : timeline.marks()) {
      Map<Field, String> row = row(program, mark.kind().words(), "");
      times(row, mark.fromSeconds(), mark.toSeconds(), mark.tool());
      line(program, row, mark.at());
      growth(row, mark.growthUm());
      if (!mark.known()) {
        row.put(Field.NOTE, "duration not known");
      }
      row(row);
    }
    cuts(program, "fine cut", timeline.fineCuts());
    cuts(program, "other cut", timeline.otherCuts());
    for (String note : timeline.notes()) {
      Map<Field, String> row = row(program, "timeline", "");
      row.put(Field.NOTE, note);
      row(row);
    }
  }

  private void cuts(CheckedProgram program, String kind, List<ProgramTimeline.Cutting> cuts)
      throws IOException {
    for (ProgramTimeline.Cutting cut : cuts) {
      Map<Field, String> row = row(program, kind, "");
      times(row, cut.fromSeconds(), cut.toSeconds(), cut.tool());
      line(program, row, cut.first());
      cut.driftAtStartUm()
          .ifPresent(um -> row.put(Field.DRIFT_FROM, SurfaceWords.number(um.typical())));
      cut.driftAtEndUm()
          .ifPresent(um -> row.put(Field.DRIFT_TO, SurfaceWords.number(um.typical())));
      row(row);
    }
  }

  /** A row that could not be written, out of where only moves are taken. */
  private static final class Unwritten extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient IOException why;

    Unwritten(IOException why) {
      super(why);
      this.why = why;
    }
  }

  private void feeds(CheckedProgram program, Feeds.Moves moves) throws IOException {
    FeedsShown shown;
    try {
      shown =
          moves.each(
              move -> {
                try {
                  feed(program, move);
                } catch (IOException e) {
                  throw new Unwritten(e);
                }
              });
    } catch (Unwritten e) {
      throw e.why;
    } catch (IOException | UncheckedIOException e) {
      Map<Field, String> row = row(program, "move", "");
      row.put(Field.NOTE, "the rest is left out: the program could not be read again");
      row(row);
      return;
    }
    for (FeedsShown.Operation operation : shown.operations()) {
      Map<Field, String> row = row(program, "operation", "");
      line(program, row, operation.of().from());
      operation.of().tool().ifPresent(number -> row.put(Field.TOOL, Integer.toString(number)));
      operation.of().rpm().ifPresent(rpm -> row.put(Field.SPEED, SurfaceWords.number(rpm)));
      plan(row, operation.of().plan(), operation.lostSeconds());
      row(row);
    }
    Map<Field, String> row = row(program, "feeds", "");
    plan(row, shown.plan(), shown.lostSeconds());
    if (!shown.missing().isEmpty()) {
      row.put(Field.NOTE, "not on the sheet: " + String.join(" and ", shown.missing()));
    }
    row(row);
  }

  /** Feed moves together: their time, share of it below the programmed feed, and time lost. */
  private static void plan(
      Map<Field, String> row, Optional<ProgramSummary.Plan> plan, Map<FeedHold, Double> lost) {
    if (plan.isPresent()) {
      row.put(Field.TIME, SurfaceWords.number(plan.get().plannedSeconds()));
      row.put(Field.SHARE, SurfaceWords.number(plan.get().shareOfTimeBelowFeed()));
      row.put(
          Field.LOST,
          SurfaceWords.number(lost.values().stream().mapToDouble(Double::doubleValue).sum()));
    }
  }

  private void feed(CheckedProgram program, FeedMove of) throws IOException {
    Move move = of.move();
    Map<Field, String> row = row(program, "move", "");
    line(program, row, move.at());
    row.put(Field.MOVE, move.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '));
    row.put(Field.LENGTH, SurfaceWords.number(move.lengthMm()));
    if (move.isFeed() && move.feedMmPerMin().isPresent()) {
      row.put(Field.PROGRAMMED, SurfaceWords.number(move.feedMmPerMin().getAsDouble()));
    }
    move.modes().tool().value().ifPresent(tool -> row.put(Field.TOOL, Integer.toString(tool)));
    if (of.planned().isPresent()) {
      PlannedMove planned = of.planned().get();
      row.put(Field.ENTRY, SurfaceWords.number(planned.entryMmPerMin()));
      row.put(Field.EXIT, SurfaceWords.number(planned.exitMmPerMin()));
      row.put(Field.LOWEST, SurfaceWords.number(planned.lowestMmPerMin()));
      row.put(Field.HIGHEST, SurfaceWords.number(planned.peakMmPerMin()));
      row.put(Field.MEAN, SurfaceWords.number(planned.meanMmPerMin()));
      row.put(Field.TIME, SurfaceWords.number(planned.seconds()));
    }
    if (of.planned().isPresent() && move.isFeed()) {
      row.put(Field.LOST, SurfaceWords.number(of.lostSeconds()));
      row.put(Field.HELD, of.held().map(FeedHold::words).orElse(""));
    }
    row(row);
  }

  private static void times(Map<Field, String> row, double from, double to, OptionalInt tool) {
    row.put(Field.FROM, SurfaceWords.number(from));
    row.put(Field.TO, SurfaceWords.number(to));
    tool.ifPresent(number -> row.put(Field.TOOL, Integer.toString(number)));
  }

  private static void growth(Map<Field, String> row, Optional<Band> um) {
    um.ifPresent(
        band -> {
          row.put(Field.GROWTH_LOW, SurfaceWords.number(band.low()));
          row.put(Field.GROWTH, SurfaceWords.number(band.typical()));
          row.put(Field.GROWTH_HIGH, SurfaceWords.number(band.high()));
        });
  }

  /** The line; with the file where it is another than the program's own. */
  private static void line(CheckedProgram program, Map<Field, String> row, Place at) {
    row.put(Field.LINE, Integer.toString(at.line()));
    if (at.file() > 0) {
      row.put(Field.FILE, text(Words.file(program.result().orElseThrow(), at)));
    }
  }

  private static Map<Field, String> row(CheckedProgram program, String kind, String offset) {
    Map<Field, String> row = new EnumMap<>(Field.class);
    row.put(Field.PROGRAM, text(program.name()));
    row.put(Field.KIND, kind);
    row.put(Field.OFFSET, offset);
    return row;
  }

  private void surface(CheckedProgram program, SurfaceShown surface, SurfaceShown.Under under)
      throws IOException {
    Map<Field, String> row = row(program, "surface", under.offset());
    row.put(Field.CELL, SurfaceWords.um(surface.cellPm()));
    if (under.stock().isPresent()) {
      StockModel.Box stock = under.stock().get();
      row.put(Field.HEIGHT, SurfaceWords.um(stock.topPm()));
      row.put(Field.X_FROM, SurfaceWords.mm(stock.xMinPm()));
      row.put(Field.X_TO, SurfaceWords.mm(stock.xMaxPm()));
      row.put(Field.Y_FROM, SurfaceWords.mm(stock.yMinPm()));
      row.put(Field.Y_TO, SurfaceWords.mm(stock.yMaxPm()));
    }
    row.put(
        Field.NOTE,
        under.known() ? "stock: " + SurfaceWords.stock(under) : "the surface is not known");
    row(row);
  }

  private void terrace(CheckedProgram program, SurfaceShown.Under under, TerraceArea area)
      throws IOException {
    Map<Field, String> row = row(program, "terrace", under.offset());
    row.put(Field.TERRACE, Integer.toString(area.id()));
    row.put(Field.HEIGHT, SurfaceWords.um(area.heightPm()));
    row.put(Field.AREA, SurfaceWords.number(area.areaMm2()));
    row.put(Field.X_FROM, SurfaceWords.mm(area.xMinPm()));
    row.put(Field.X_TO, SurfaceWords.mm(area.xMaxPm()));
    row.put(Field.Y_FROM, SurfaceWords.mm(area.yMinPm()));
    row.put(Field.Y_TO, SurfaceWords.mm(area.yMaxPm()));
    row.put(Field.NOTE, area.uncut() ? "uncut" : "");
    row(row);
    for (TerraceArea.Neighbour neighbour : area.neighbours()) {
      Map<Field, String> step = row(program, "step", under.offset());
      step.put(Field.TERRACE, Integer.toString(area.id()));
      step.put(Field.NEIGHBOUR, Integer.toString(neighbour.id()));
      step.put(Field.STEP, SurfaceWords.um(neighbour.stepPm()));
      step.put(Field.BORDER, SurfaceWords.number(neighbour.borderMm()));
      row(step);
    }
  }

  private void budget(CheckedProgram program, ProgramResult.Budget of) throws IOException {
    StepBudget budget = of.step();
    Map<Field, String> row = budgetRow(program, "budget", of);
    row.put(Field.STEP, SurfaceWords.um(budget.step().heightPm()));
    row.put(Field.VALUE, SurfaceWords.number(budget.errorUm().typical()));
    row.put(Field.NOTE, budget.decision().name().toLowerCase(Locale.ROOT));
    row(row);
    for (StepBudget.Weighed weighed : budget.weighed()) {
      Map<Field, String> part = budgetRow(program, "budget part", of);
      part.put(Field.PART, weighed.part().source().key());
      part.put(Field.PART_KIND, BudgetJson.kind(weighed.part()));
      part.put(Field.VALUE, SurfaceWords.number(weighed.um()));
      part.put(Field.SHARE, SurfaceWords.number(weighed.shareOfError()));
      part.put(Field.HALVING_GAINS, SurfaceWords.number(weighed.halvingGainsUm()));
      part.put(Field.NOTE, text(weighed.part().basis()));
      row(part);
    }
    for (Missing missing : budget.missing()) {
      Map<Field, String> part = budgetRow(program, "budget missing", of);
      part.put(Field.PART, missing.source().key());
      part.put(Field.NOTE, text(missing.reason()));
      row(part);
    }
  }

  private static Map<Field, String> budgetRow(
      CheckedProgram program, String kind, ProgramResult.Budget of) {
    Map<Field, String> row = row(program, kind, "");
    line(program, row, of.step().step().at());
    row.put(Field.FEATURE, text(of.step().step().feature().orElse("")));
    return row;
  }

  private void section(
      CheckedProgram program, SurfaceShown.Under under, int number, Section section)
      throws IOException {
    double dx = section.line().x1Pm() - (double) section.line().x0Pm();
    double dy = section.line().y1Pm() - (double) section.line().y0Pm();
    double length = section.line().lengthPm();
    int gap = 0;
    boolean inGap = false;
    for (Section.Point point : section.points()) {
      Map<Field, String> row = row(program, "section", under.offset());
      row.put(Field.SECTION, Integer.toString(number));
      row.put(Field.DISTANCE, SurfaceWords.mm(point.distancePm()));
      double share = point.distancePm() / length;
      row.put(Field.X, SurfaceWords.mm(section.line().x0Pm() + dx * share));
      row.put(Field.Y, SurfaceWords.mm(section.line().y0Pm() + dy * share));
      if (point.heightPm().isPresent()) {
        row.put(Field.HEIGHT, SurfaceWords.um(point.heightPm().getAsLong()));
      } else {
        row.put(Field.NOTE, section.gaps().get(gap).why().words());
        gap += inGap ? 1 : 0;
        inGap = !inGap;
      }
      row(row);
    }
    if (!section.complete()) {
      Map<Field, String> row = row(program, "section", under.offset());
      row.put(Field.SECTION, Integer.toString(number));
      row.put(Field.NOTE, "the rest is left out: too many points");
      row(row);
    }
  }

  @Override
  public void end(Verdict verdict) throws IOException {
    out.flush();
  }

  /** Text from outside: harmless, and no formula. */
  private static String text(String text) {
    String visible = Visible.of(text);
    return !visible.isEmpty() && "=+-@".indexOf(visible.charAt(0)) >= 0 ? "'" + visible : visible;
  }

  /** Writes a row; fields are quoted where RFC 4180, 2.6 and 2.7, asks for it. */
  private void row(Map<Field, String> row) throws IOException {
    String comma = "";
    for (Field field : Field.values()) {
      String value = row.getOrDefault(field, "");
      boolean quoted = value.indexOf(',') >= 0 || value.indexOf('"') >= 0;
      out.write(comma);
      out.write(quoted ? "\"" + value.replace("\"", "\"\"") + "\"" : value);
      comma = ",";
    }
    out.write("\r\n");
  }
}
