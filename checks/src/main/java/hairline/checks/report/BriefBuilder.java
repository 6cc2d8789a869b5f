package hairline.checks.report;

import hairline.checks.budget.BudgetedStep;
import hairline.checks.budget.Decision;
import hairline.checks.budget.StepBudget;
import hairline.checks.cutting.Band;
import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Extent;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Place;
import hairline.checks.report.BriefPage.Fact;
import hairline.checks.report.BriefPage.Facts;
import hairline.checks.report.BriefPage.Figure;
import hairline.checks.report.BriefPage.Found;
import hairline.checks.report.BriefPage.Items;
import hairline.checks.report.BriefPage.Part;
import hairline.checks.report.BriefPage.Section;
import hairline.checks.report.BriefPage.Table;
import hairline.checks.rules.OperationBook;
import hairline.checks.rules.OperationBook.Happening;
import hairline.checks.rules.OperationBook.Happens;
import hairline.checks.rules.OperationBook.Operation;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Key;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthRange;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.MaterialKeys;
import hairline.checks.setup.Offset;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.setup.WarmUpPlace;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.stock.TerraceArea;
import hairline.checks.timing.ProgramSummary;
import hairline.checks.warmth.ProgramTimeline;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Puts the brief of one program together. */
final class BriefBuilder {
  private static final int MOST_ROWS = 24;
  private static final int MOST_FINDINGS = 12;
  private static final int MOST_LINES = 8;
  private static final int MOST_SLOW_OPERATIONS = 3;

  /** An operation that stays below its feeds for less of its time is not named. */
  private static final double LEAST_SHARE_BELOW = 0.01;

  private final CheckedProgram program;
  private final ProgramResult result;
  private final Brief brief;
  private final OperationBook book;
  private final Setup sheet;
  private final ReportOptions options;

  private BriefBuilder(CheckedProgram program, Brief brief, ReportOptions options) {
    this.program = program;
    this.result = program.result().orElseThrow();
    this.brief = brief;
    this.book = brief.book();
    this.sheet = brief.book().setup();
    this.options = options;
  }

  /** The brief of a program that was checked and watched for it. */
  static BriefPage of(CheckedProgram program, ReportOptions options) {
    BriefBuilder builder = new BriefBuilder(program, program.brief().orElseThrow(), options);
    List<Section> sections = new ArrayList<>();
    sections.add(builder.identity());
    sections.add(builder.findings());
    sections.add(builder.operations());
    sections.add(builder.happenings());
    sections.add(builder.reach());
    sections.add(builder.levels());
    sections.add(builder.growth());
    builder.budgets().ifPresent(sections::add);
    sections.add(builder.verify());
    builder.notChecked().ifPresent(sections::add);
    sections.add(builder.figures());
    return new BriefPage(program.name(), sections);
  }

  private String time(Key<Double> seconds) {
    return sheet.get(seconds).map(Quantities::time).orElse("a time that the sheet lacks");
  }

  // The program.

  private Section identity() {
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(
            "program",
            program.name()
                + (brief.programNumber().isEmpty() ? "" : ", " + brief.programNumber())));
    facts.add(
        new Fact(
            "content", "SHA-256 " + brief.sha256() + ", " + Words.count(brief.bytes(), "byte")));
    ProgramSummary summary = brief.summary();
    facts.add(
        new Fact(
            "blocks",
            summary.blocks()
                + " executed, "
                + summary.moves()
                + " moves; "
                + Quantities.mm(summary.feedMm())
                + " at feed, "
                + Quantities.mm(summary.rapidMm())
                + " rapid"));
    facts.add(new Fact("duration", duration(summary)));
    feedsReached().ifPresent(facts::add);
    facts.add(
        new Fact(
            "sheet",
            result.embeddedSheet()
                ? "none found: nothing is known of machine, tools and job"
                : result.sheet()));
    facts.add(
        new Fact(
            "job",
            "machine "
                + sheet.get(MachineKeys.NAME).orElse("not named")
                + "; material "
                + sheet.get(MaterialKeys.NAME).orElse("not named")));
    if (result.notUnderstood() || result.macroUnread() || result.stepBudgetReached()) {
      facts.add(new Fact("unread", Words.NOT_UNDERSTOOD));
    }
    for (Conditions.Named condition : options.conditions().all()) {
      facts.add(new Fact(condition.name(), condition.text()));
    }
    return new Section("What this program is", true, List.of(new Facts(facts)));
  }

  private static String duration(ProgramSummary summary) {
    return (summary.time().isKnown() ? "" : "at least ")
        + Quantities.time(summary.time().atLeastSeconds())
        + (summary.plan().isPresent() ? " as planned" : " as programmed")
        + (summary.time().waitsForOperator() ? ", and what the operator takes" : "");
  }

  // Findings.

  private Section findings() {
    List<Part> parts = new ArrayList<>();
    if (result.findings().isEmpty()) {
      parts.add(
          new Items(
              List.of(
                  "nothing found"
                      + (result.notChecked().isEmpty()
                          ? ""
                          : "; not all was checked, see the end"))));
    }
    int shown = 0;
    for (Finding finding : result.findings()) {
      if (++shown > MOST_FINDINGS && !options.verbose()) {
        parts.add(new Items(List.of(more(result.findings().size() - MOST_FINDINGS, "finding"))));
        break;
      }
      List<Fact> facts = new ArrayList<>();
      facts.add(
          new Fact(
              "where",
              Words.worstLine(result, finding)
                  + ", "
                  + finding.rule()
                  + (Words.blockDelete(finding).isEmpty()
                      ? ""
                      : ", " + Words.blockDelete(finding))));
      finding.worst().cure().ifPresent(cure -> facts.add(new Fact("cure", cure)));
      parts.add(new Found(finding.level().word(), finding.worst().message(), facts));
    }
    if (!result.accepted().isEmpty()) {
      parts.add(
          new Items(
              result.accepted().stream()
                  .limit(MOST_FINDINGS)
                  .map(
                      f ->
                          "accepted in the program, "
                              + Words.line(result, f.at())
                              + ": "
                              + f.rule()
                              + ": "
                              + f.acceptedBecause().orElse(""))
                  .toList()));
    }
    return new Section("What the check finds", result.findings().size() > 2, parts);
  }

  // Feeds.

  /** Whether the machine reaches the feeds, and the tools that do least. */
  private Optional<Fact> feedsReached() {
    ProgramSummary summary = brief.summary();
    if (summary.plan().isEmpty()) {
      return Optional.empty();
    }
    String most =
        summary.operations().stream()
            .filter(op -> op.plan().isPresent() && below(op) >= LEAST_SHARE_BELOW)
            .sorted(Comparator.comparingDouble(BriefBuilder::below).reversed())
            .limit(MOST_SLOW_OPERATIONS)
            .map(
                op ->
                    (op.tool().isPresent() ? "T" + op.tool().getAsInt() : "no tool")
                        + " from "
                        + Words.line(result, op.from())
                        + " on ("
                        + FeedsText.percent(below(op))
                        + " of its time)")
            .collect(Collectors.joining(", "));
    String lost =
        program
            .feeds()
            .flatMap(Feeds::shown)
            .map(shown -> FeedsText.lost(shown.lostSeconds()))
            .orElse("");
    return Optional.of(
        new Fact(
            "feeds",
            FeedsText.reached(summary.plan().get())
                + (most.isEmpty() ? "" : "; most by " + most)
                + (lost.isEmpty() ? "" : "; lost to " + lost)));
  }

  private static double below(ProgramSummary.Operation op) {
    return op.plan().map(ProgramSummary.Plan::shareOfTimeBelowFeed).orElse(0.0);
  }

  private static String more(long count, String what) {
    return Words.count(count, "more " + what) + "; check lists them all";
  }

  // Operations.

  private Section operations() {
    List<List<String>> rows = new ArrayList<>();
    List<Operation> all = book.operations();
    for (Operation op : all) {
      if (rows.size() == MOST_ROWS) {
        break;
      }
      rows.add(
          List.of(
              op.number() + "",
              op.tool().map(n -> "T" + n).orElse("none"),
              op.rpm().isPresent() ? Quantities.significant(op.rpm().getAsDouble(), 9) : "",
              feeds(op),
              seconds(op),
              finest(op),
              op.lowestZPm().isPresent() ? um(op.lowestZPm().getAsLong()) : "",
              op.chip().map(c -> um(c.chipUm())).orElse(""),
              op.chip().flatMap(c -> c.minimumUm()).map(BriefBuilder::um).orElse(""),
              String.join(", ", op.coolants()),
              lines(op.first(), op.last())));
    }
    List<Part> parts = new ArrayList<>();
    parts.add(
        new Table(
            "Operations in their order; chip: the thinnest of the largest chips, runout counted in",
            List.of(
                "no.",
                "tool",
                "rpm",
                "mm/min",
                "time",
                "finest step µm, as stored",
                "lowest Z µm",
                "chip µm",
                "its minimum µm",
                "coolant",
                "lines"),
            rows));
    List<List<String>> tools = new ArrayList<>();
    Set<Integer> seen = new LinkedHashSet<>();
    all.forEach(op -> op.tool().ifPresent(seen::add));
    for (int number : seen) {
      if (tools.size() == MOST_ROWS) {
        break;
      }
      tools.add(tool(number));
    }
    if (!tools.isEmpty()) {
      parts.add(
          new Table(
              "Tools in the order of use, as the sheet has them",
              List.of(
                  "tool",
                  "name",
                  "Ø mm",
                  "flutes",
                  "edge µm",
                  "runout µm",
                  "reach mm",
                  "deepest used",
                  "length offset",
                  "m/min"),
              tools));
    }
    int left = Math.max(0, all.size() - MOST_ROWS);
    if (left > 0 || book.left() > 0) {
      parts.add(new Items(List.of(more(left + book.left(), "operation or event"))));
    }
    return new Section("What the tools do", true, parts);
  }

  /** As the control stores it; as written too, where that differs. */
  private static String finest(Operation op) {
    if (op.finestStepPm().isEmpty()) {
      return "";
    }
    long stored = op.finestStepPm().getAsLong();
    long written = op.finestWrittenPm().orElse(stored);
    return um(stored) + (written == stored ? "" : " (written " + um(written) + ")");
  }

  private static String feeds(Operation op) {
    if (Double.isNaN(op.lowestFeedMmPerMin())) {
      return "";
    }
    String high = Quantities.significant(op.highestFeedMmPerMin(), 5);
    return op.lowestFeedMmPerMin() == op.highestFeedMmPerMin()
        ? high
        : Quantities.significant(op.lowestFeedMmPerMin(), 5) + " to " + high;
  }

  private String seconds(Operation op) {
    return brief.summary().operations().stream()
        .filter(o -> within(op, o.from()))
        .findFirst()
        .map(o -> Quantities.time(o.seconds()))
        .orElse("");
  }

  private static boolean within(Operation op, Place at) {
    return at.file() == op.first().file()
        && at.line() >= op.first().line()
        && at.line() <= op.last().line();
  }

  private List<String> tool(int number) {
    Optional<Tool> tool = sheet.tool(number);
    if (tool.isEmpty()) {
      return List.of("T" + number, "not on the sheet", "", "", "", "", "", "", "", "");
    }
    Tool t = tool.get();
    Optional<Length> reach = t.get(ToolKeys.NECK_LENGTH).or(() -> t.get(ToolKeys.CUTTING_LENGTH));
    List<Operation> its = cuttingWith(number);
    long lowest =
        its.stream()
            .mapToLong(op -> op.lowestZPm().orElse(Long.MAX_VALUE))
            .min()
            .orElse(Long.MAX_VALUE);
    Optional<Length> top = sheet.get(hairline.checks.setup.StockKeys.TOP);
    String deepest =
        lowest == Long.MAX_VALUE || top.isEmpty()
            ? ""
            : SurfaceWords.mm(top.get().pm() - lowest) + " mm below the top";
    return List.of(
        "T" + number,
        t.get(ToolKeys.NAME).orElse(""),
        t.get(ToolKeys.DIAMETER).map(d -> SurfaceWords.mm(d.pm())).orElse(""),
        t.get(ToolKeys.FLUTES).map(String::valueOf).orElse(""),
        t.get(ToolKeys.EDGE_RADIUS).map(e -> um(e.um())).orElse(""),
        t.get(ToolKeys.RUNOUT).map(e -> um(e.um())).orElse(""),
        reach.map(r -> SurfaceWords.mm(r.pm())).orElse(""),
        deepest,
        lengthOffset(t, its),
        its.stream()
            .filter(op -> op.surfaceSpeedMPerMin().isPresent())
            .map(op -> Quantities.significant(op.surfaceSpeedMPerMin().getAsDouble(), 3))
            .distinct()
            .collect(Collectors.joining(", ")));
  }

  private List<Operation> cuttingWith(int tool) {
    return book.operations().stream()
        .filter(op -> op.tool().equals(Optional.of(tool)) && op.cuts())
        .toList();
  }

  /** What the program has in force when the tool cuts; that of the sheet, where it is another. */
  private static String lengthOffset(Tool tool, List<Operation> its) {
    String onSheet = tool.get(ToolKeys.LENGTH_OFFSET).map(h -> "H" + h).orElse("");
    String inProgram =
        its.stream()
            .flatMap(op -> op.lengthOffsets().stream())
            .distinct()
            .sorted()
            .collect(Collectors.joining(", "));
    if (inProgram.isEmpty() || inProgram.equals(onSheet)) {
      return onSheet;
    }
    return inProgram + " in the program, " + onSheet + " on the sheet";
  }

  private static String um(long pm) {
    return Ticks.minus(SurfaceWords.um(pm));
  }

  private static String um(Band band) {
    String typical = Quantities.significant(band.typical(), 3);
    return band.isExact()
        ? typical
        : typical
            + " ("
            + Quantities.significant(band.low(), 3)
            + " to "
            + Quantities.significant(band.high(), 3)
            + ")";
  }

  /** "12", "12–15", "12–3 of O7777.nc". */
  private String lines(Place first, Place last) {
    String to = Words.line(result, last).substring("line ".length());
    if (first.file() != last.file()) {
      return Words.line(result, first).substring("line ".length()) + " – " + to;
    }
    return first.line() == last.line() ? to : first.line() + "–" + to;
  }

  // What happens.

  private Section happenings() {
    List<List<String>> rows = new ArrayList<>();
    List<Happening> shown =
        book.happenings().stream()
            .filter(h -> h.what() != Happens.SPINDLE && h.what() != Happens.COOLANT)
            .toList();
    for (Happening happening : shown) {
      if (rows.size() == MOST_ROWS) {
        break;
      }
      rows.add(
          List.of(
              Words.line(result, happening.at()).replaceFirst("^line ", ""),
              clock(happening.at()),
              happening.what().words(),
              happening.code(),
              check(happening)));
    }
    List<Part> parts = new ArrayList<>();
    if (rows.isEmpty()) {
      parts.add(new Items(List.of("no stop, no warm-up, no measuring and no tool change")));
    } else {
      parts.add(
          new Table(
              "Stops, warm-up, measuring and tool changes, with what to check there",
              List.of("line", "min:s", "what", "code", "to check"),
              rows));
    }
    if (shown.size() > rows.size()) {
      parts.add(new Items(List.of(more(shown.size() - rows.size(), "event"))));
    }
    return new Section("Where it stops, warms up and measures", false, parts);
  }

  private String clock(Place at) {
    return brief.timeline().marks().stream()
        .filter(m -> m.at().equals(at))
        .findFirst()
        .map(m -> TimelineWords.clock(m.fromSeconds()))
        .orElse("");
  }

  private String check(Happening happening) {
    Modes modes = happening.modes();
    return switch (happening.what()) {
      case STOP ->
          (happening.code().equals("M1") ? "only with optional stop on; " : "")
              + "spindle "
              + spindle(modes)
              + ", coolant "
              + (modes.coolant().value().map(c -> c.on()).orElse(false) ? "on" : "off")
              + ", "
              + modes.tool().value().map(t -> "T" + t).orElse("no known tool")
              + ", "
              + modes.workOffset().value().orElse("no known offset")
              + "; measured again before a fine cut?";
      case WARM_UP ->
          "spindle "
              + spindle(modes)
              + " for "
              + time(SpindleKeys.WARM_UP_TIME_S)
              + ", valid for "
              + time(SpindleKeys.WARM_UP_VALID_FOR_S);
      case MEASURING ->
          modes.tool().value().map(t -> "T" + t).orElse("no known tool")
              + " at "
              + spindle(modes)
              + (growthAt(happening.at()).isEmpty() ? "" : "; grown " + growthAt(happening.at()));
      case TOOL_CHANGE ->
          modes
                  .tool()
                  .value()
                  .flatMap(sheet::tool)
                  .flatMap(t -> t.get(ToolKeys.NAME))
                  .map(name -> name + ", ")
                  .orElse("")
              + "clean and tight";
      default -> "";
    };
  }

  private String growthAt(Place at) {
    return brief.timeline().marks().stream()
        .filter(m -> m.at().equals(at) && m.growthUm().isPresent())
        .findFirst()
        .map(m -> TimelineWords.um(m.growthUm()) + " µm")
        .orElse("");
  }

  private static String spindle(Modes modes) {
    return modes
        .turningRpm()
        .map(rpm -> rpm == 0 ? "stopped" : Quantities.rpm(rpm))
        .orElse("speed not known");
  }

  // Reach.

  private Section reach() {
    List<List<String>> rows = new ArrayList<>();
    for (OperationBook.Reach reach : book.reaches()) {
      for (Axis axis : List.of(Axis.X, Axis.Y, Axis.Z)) {
        Extent work = reach.work().get(axis);
        if (work == null) {
          continue;
        }
        Optional<LengthRange> travel =
            sheet.get(
                axis == Axis.X
                    ? MachineKeys.TRAVEL_X
                    : axis == Axis.Y ? MachineKeys.TRAVEL_Y : MachineKeys.TRAVEL_Z);
        Optional<Extent> machine = Optional.ofNullable(reach.machine().get(axis));
        rows.add(
            List.of(
                reach.offset().isEmpty() ? "not known" : reach.offset(),
                reach.rapid() ? "rapid" : "feed",
                axis.toString(),
                range(work.lowest(), work.highest()),
                machine.map(m -> range(m.lowest(), m.highest())).orElse("not known"),
                travel.map(t -> range(t.lo().pm(), t.hi().pm())).orElse("not on the sheet"),
                machine.isPresent() && travel.isPresent()
                    ? room(machine.get(), travel.get())
                    : ""));
      }
    }
    List<Part> parts = new ArrayList<>();
    parts.add(
        new Table(
            "How far it reaches, in mm, offsets and tool lengths from the sheet",
            List.of("offset", "moves", "axis", "work", "machine", "travel", "room left"),
            rows));
    return new Section("Offsets and travel", false, parts);
  }

  private static String range(long low, long high) {
    return Ticks.minus(mm(low)) + (low == high ? "" : " to " + Ticks.minus(mm(high)));
  }

  /** To a tenth of a micron, finer than any axis. */
  private static String mm(long pm) {
    return Quantities.mm(Math.round(pm / 1e5) * 100_000).replace(" mm", "");
  }

  private static String room(Extent reached, LengthRange travel) {
    long room = Math.min(reached.lowest() - travel.lo().pm(), travel.hi().pm() - reached.highest());
    return Ticks.minus(mm(room));
  }

  // Levels.

  private Section levels() {
    List<Part> parts = new ArrayList<>();
    Map<String, List<TerraceArea>> byFeature = new TreeMap<>();
    boolean known = false;
    for (SurfaceShown.Under under : brief.surface().offsets()) {
      known |= under.known();
      if (under.terraces().isPresent()) {
        for (TerraceArea area : under.terraces().get().areas()) {
          byFeature.computeIfAbsent(feature(area), f -> new ArrayList<>()).add(area);
        }
      }
    }
    List<List<String>> rows = new ArrayList<>();
    for (Feature feature : sheet.features()) {
      row(rows, feature.name(), declared(feature), byFeature.remove("1" + feature.name()));
    }
    byFeature.forEach((name, areas) -> row(rows, "elsewhere", "", areas));
    if (!known) {
      parts.add(new Items(List.of("the surface left is not known, or nothing is known to be cut")));
    }
    if (!rows.isEmpty()) {
      parts.add(
          new Table(
              "Terraces as they will be left, in µm; steps between those that adjoin",
              List.of("feature", "declared", "heights", "steps"),
              rows));
    }
    return new Section("Levels and terraces", false, parts);
  }

  private String feature(TerraceArea area) {
    long x = area.xMinPm() / 2 + area.xMaxPm() / 2;
    long y = area.yMinPm() / 2 + area.yMaxPm() / 2;
    return area.uncut()
        ? "2"
        : sheet.features().stream()
            .filter(f -> f.contains(x, y))
            .findFirst()
            .map(f -> "1" + f.name())
            .orElse("2");
  }

  private static String declared(Feature feature) {
    List<String> parts = new ArrayList<>();
    feature.step().ifPresent(s -> parts.add("step " + um(s.pm())));
    if (!feature.levels().isEmpty()) {
      parts.add(
          "levels "
              + feature.levels().stream().map(l -> um(l.pm())).collect(Collectors.joining(", ")));
    }
    feature.tolerance().ifPresent(t -> parts.add(Ticks.minus(t.toString())));
    return String.join(", ", parts);
  }

  private static void row(
      List<List<String>> rows,
      String name,
      String declared,
      @org.jspecify.annotations.Nullable List<TerraceArea> areas) {
    if (areas == null || areas.isEmpty()) {
      rows.add(List.of(name, declared, "none", ""));
      return;
    }
    TreeSet<Long> heights = new TreeSet<>(java.util.Comparator.reverseOrder());
    TreeMap<Long, Integer> steps = new TreeMap<>();
    for (TerraceArea area : areas) {
      heights.add(area.heightPm());
      for (TerraceArea.Neighbour neighbour : area.neighbours()) {
        if (neighbour.stepPm() > 0) {
          steps.merge(neighbour.stepPm(), 1, Integer::sum);
        }
      }
    }
    rows.add(
        List.of(
            name,
            declared,
            some(heights.stream().map(BriefBuilder::um).toList()),
            some(
                steps.entrySet().stream()
                    .map(e -> um(e.getKey()) + (e.getValue() > 1 ? " × " + e.getValue() : ""))
                    .toList())));
  }

  private static String some(List<String> texts) {
    return texts.size() <= MOST_ROWS
        ? String.join(", ", texts)
        : String.join(", ", texts.subList(0, MOST_ROWS))
            + ", … "
            + (texts.size() - MOST_ROWS)
            + " more";
  }

  // Growth.

  private Section growth() {
    ProgramTimeline timeline = brief.timeline();
    List<List<String>> rows = new ArrayList<>();
    List<List<ProgramTimeline.Cutting>> stretches = stretches(timeline);
    for (List<ProgramTimeline.Cutting> cuts : stretches) {
      if (rows.size() == MOST_LINES) {
        break;
      }
      ProgramTimeline.Cutting first = cuts.get(0);
      ProgramTimeline.Cutting last = cuts.get(cuts.size() - 1);
      rows.add(
          List.of(
              first.tool().isPresent() ? "T" + first.tool().getAsInt() : "not known",
              lines(first.first(), last.last()),
              TimelineWords.clock(first.fromSeconds())
                  + " to "
                  + TimelineWords.clock(last.toSeconds()),
              Ticks.minus(TimelineWords.um(timeline.growthAt(first.fromSeconds()))),
              Ticks.minus(TimelineWords.um(timeline.growthAt(last.toSeconds()))),
              Ticks.minus(TimelineWords.um(first.driftAtStartUm())),
              Ticks.minus(TimelineWords.um(last.driftAtEndUm()))));
    }
    List<Part> parts = new ArrayList<>();
    if (rows.isEmpty()) {
      parts.add(new Items(List.of("no fine cut is known")));
    } else if (!timeline.growthTold()) {
      parts.add(
          new Items(List.of("growth is not known: machine.spindle.growth is not on the sheet")));
    } else {
      parts.add(
          new Table(
              "Growth of the spindle at each fine operation, as predicted, and drift since"
                  + " measuring, in µm",
              List.of("tool", "lines", "min:s", "grown from", "to", "drift from", "to"),
              rows));
      if (stretches.size() > rows.size()) {
        parts.add(new Items(List.of(more(stretches.size() - rows.size(), "fine operation"))));
      }
    }
    return new Section("Time and growth", false, parts);
  }

  /** Fine cuts of one tool with no tool change and no measuring between. */
  private static List<List<ProgramTimeline.Cutting>> stretches(ProgramTimeline timeline) {
    List<List<ProgramTimeline.Cutting>> stretches = new ArrayList<>();
    double end = 0;
    for (ProgramTimeline.Cutting cut : timeline.fineCuts()) {
      double from = end;
      boolean between =
          timeline.marks().stream()
              .anyMatch(m -> m.fromSeconds() >= from && m.fromSeconds() < cut.fromSeconds());
      if (stretches.isEmpty() || between) {
        stretches.add(new ArrayList<>());
      }
      stretches.get(stretches.size() - 1).add(cut);
      end = cut.toSeconds();
    }
    return stretches;
  }

  // Budgets.

  private Optional<Section> budgets() {
    List<StepBudget> all = result.budgets().stream().map(ProgramResult.Budget::step).toList();
    if (all.isEmpty()) {
      return Optional.empty();
    }
    List<List<String>> rows = new ArrayList<>();
    for (StepBudget budget : tightest(all)) {
      rows.add(
          List.of(
              budget.step().feature().orElse("outside of any"),
              height(budget.step()),
              budget.toleranceUm().isPresent()
                  ? "±" + Quantities.significant(budget.toleranceUm().getAsDouble(), 4)
                  : "not known",
              um(budget.errorUm()),
              decision(budget),
              budget.weighed().stream()
                  .filter(w -> w.um() != 0)
                  .limit(2)
                  .map(
                      w ->
                          w.part().source().words()
                              + " "
                              + Quantities.significant(w.shareOfError() * 100, 2)
                              + " %")
                  .collect(Collectors.joining(", ")),
              Words.line(result, budget.step().at())));
    }
    return Optional.of(
        new Section(
            "Can the steps hold their tolerances",
            true,
            List.of(
                new Table(
                    "Error budget of each feature, the tightest step of each, in µm",
                    List.of(
                        "feature",
                        "step, as stored",
                        "tolerance",
                        "error expected",
                        "result",
                        "largest parts",
                        "where"),
                    rows))));
  }

  /** Of each feature the step that uses most of its tolerance. */
  static List<StepBudget> tightest(List<StepBudget> all) {
    Map<String, StepBudget> tightest = new java.util.LinkedHashMap<>();
    for (StepBudget budget : all) {
      tightest.merge(budget.step().feature().orElse(""), budget, (a, b) -> use(b) > use(a) ? b : a);
    }
    return tightest.values().stream().limit(MOST_ROWS).toList();
  }

  private static double use(StepBudget budget) {
    return budget.errorUm().typical() / budget.toleranceUm().orElse(1);
  }

  /** What is decided, in a word or two. */
  static String decided(StepBudget budget) {
    return switch (budget.decision()) {
      case HOLDS -> "holds";
      case FAILS -> "fails";
      default -> budget.missing().isEmpty() ? "undecided" : "not decided";
    };
  }

  /** As the control stores it; as declared or written too, where that differs. */
  private static String height(BudgetedStep step) {
    return step.heightPm() == step.nominalPm()
        ? um(step.heightPm())
        : um(step.heightPm())
            + (step.declared() ? " (declared " : " (written ")
            + um(step.nominalPm())
            + ")";
  }

  private static String decision(StepBudget budget) {
    return budget.decision() != Decision.UNDECIDED || budget.missing().isEmpty()
        ? decided(budget)
        : decided(budget)
            + ", missing: "
            + budget.missing().stream()
                .map(m -> m.source().words())
                .distinct()
                .collect(Collectors.joining(", "));
  }

  // By hand.

  private Section verify() {
    List<String> items = new ArrayList<>();
    items.add("the program in the control is this one: number, length and first blocks");
    items.add(
        result.embeddedSheet()
            ? "a setup sheet for this machine and job is still to be written"
            : "the sheet is that of this machine, these tools and this job");
    for (SurfaceShown.Under under : brief.surface().offsets()) {
      under
          .stock()
          .ifPresent(
              box ->
                  items.add(
                      under.offset()
                          + ": stock clamped, X "
                          + range(box.xMinPm(), box.xMaxPm())
                          + ", Y "
                          + range(box.yMinPm(), box.yMaxPm())
                          + ", top at Z "
                          + mm(box.topPm())
                          + " mm"));
    }
    Set<String> offsets = new LinkedHashSet<>();
    book.reaches().forEach(r -> offsets.add(r.offset()));
    for (String name : offsets) {
      items.add(
          (name.isEmpty() ? "the work offset in force (the program states none)" : name)
              + " is set and probed"
              + sheet.offset(name).map(BriefBuilder::values).orElse(""));
    }
    Set<Integer> tools = new LinkedHashSet<>();
    book.operations().forEach(op -> op.tool().ifPresent(tools::add));
    for (int number : tools.stream().limit(MOST_ROWS).toList()) {
      items.add(
          "T"
              + number
              + sheet
                  .tool(number)
                  .map(
                      t ->
                          ": "
                              + t.get(ToolKeys.NAME).orElse("tool")
                              + ", edges sound under the lens"
                              + t.get(ToolKeys.RUNOUT)
                                  .map(r -> ", runout " + um(r.um()) + " µm or less")
                                  .orElse(", runout measured")
                              + ", "
                              + lengthOffset(t, cuttingWith(number)))
                  .orElse(": not on the sheet"));
    }
    boolean before = sheet.get(SpindleKeys.WARM_UP_WHERE).equals(Optional.of(WarmUpPlace.BEFORE));
    if (before) {
      items.add("spindle warmed up before the start: " + time(SpindleKeys.WARM_UP_TIME_S));
    } else if (book.happenings().stream().anyMatch(h -> h.what() == Happens.WARM_UP)) {
      items.add("the warm-up in the program is not skipped");
    }
    if (brief.deletable()) {
      items.add("block delete switch: position decided and set");
    }
    if (book.happenings().stream()
        .anyMatch(h -> h.what() == Happens.STOP && h.code().equals("M1"))) {
      items.add("optional stop switch: position decided and set");
    }
    items.add("feed, rapid and spindle overrides at the values meant");
    if (book.operations().stream()
        .anyMatch(op -> op.coolants().stream().anyMatch(c -> !c.equals("off")))) {
      items.add("coolant of the kinds named above, full and aimed");
    }
    items.add("guards closed, interlocks work, emergency stop in reach");
    items.add("proved out: above the part, single block, reduced rapid");
    return new Section("To verify by hand", true, List.of(new BriefPage.Ticks(items)));
  }

  private static String values(Offset offset) {
    List<String> parts = new ArrayList<>();
    offset.x().ifPresent(v -> parts.add("X " + Ticks.minus(mm(v.pm()))));
    offset.y().ifPresent(v -> parts.add("Y " + Ticks.minus(mm(v.pm()))));
    offset.z().ifPresent(v -> parts.add("Z " + Ticks.minus(mm(v.pm()))));
    return parts.isEmpty() ? "" : ", on the sheet " + String.join(", ", parts) + " mm";
  }

  // Drawings.

  private Section figures() {
    List<Part> parts = new ArrayList<>();
    String heights = HeightsAlong.of(result, book.operations());
    if (!heights.isEmpty()) {
      parts.add(
          new Figure(
              "Lowest Z of the tool in contact along each operation, each with a scale of its own",
              heights));
    }
    String bars = BudgetBars.of(tightest(result.budgets().stream().map(b -> b.step()).toList()));
    if (!bars.isEmpty()) {
      parts.add(
          new Figure("Error expected of the tightest step of each feature, by its parts", bars));
    }
    for (SurfaceShown.Under under : brief.surface().offsets()) {
      SurfaceDrawing drawing =
          new SurfaceDrawing(
              Canvas.BRIEF, program.name(), brief.surface(), under, result.sheet(), 0);
      parts.add(
          new Figure(
              "The part left under "
                  + under.offset()
                  + ", from above, coloured by height"
                  + (under.sections().isEmpty() ? "" : "; a section along each feature below"),
              svg(drawing.markup(), Canvas.BRIEF.width(), drawing.bottom())));
    }
    TimelineDrawing timeline =
        new TimelineDrawing(Canvas.BRIEF, program.name(), brief.timeline(), result, 0);
    parts.add(
        new Figure(
            "Speed and growth of the spindle along the program's time: "
                + TimelineWords.whole(brief.timeline())
                + brief.timeline().notes().stream()
                    .map(n -> "; " + n)
                    .collect(Collectors.joining()),
            svg(timeline.markup(), Canvas.BRIEF.width(), timeline.bottom())));
    return new Section("To look at", true, parts);
  }

  /** A whole drawing of its own. */
  static String svg(String markup, double width, double height) {
    return new SvgText()
        .raw("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ")
        .number(width)
        .raw(" ")
        .number(height)
        .raw("\">\n")
        .raw(markup)
        .raw("</svg>\n")
        .toString();
  }

  // What is left open.

  private Optional<Section> notChecked() {
    List<Part> parts = new ArrayList<>();
    Map<String, TreeSet<String>> byReason = new TreeMap<>();
    for (NotChecked missing : result.notChecked()) {
      byReason.computeIfAbsent(missing.reason(), r -> new TreeSet<>()).add(missing.rule());
    }
    List<String> items = new ArrayList<>();
    byReason.forEach(
        (reason, rules) -> {
          rules.remove("");
          items.add(
              "not checked: " + reason + (rules.isEmpty() ? "" : ": " + String.join(", ", rules)));
        });
    Assumed.items(result).forEach(item -> items.add("assumed: " + item));
    brief.summary().doubts().stream()
        .limit(MOST_LINES)
        .forEach(d -> items.add("in doubt: " + d.what() + "; " + Words.line(result, d.first())));
    if (items.isEmpty()) {
      return Optional.empty();
    }
    boolean all = options.verbose() || items.size() <= MOST_ROWS;
    parts.add(new Items(all ? items : items.subList(0, MOST_ROWS)));
    if (!all) {
      parts.add(new Items(List.of(more(items.size() - MOST_ROWS, "reason"))));
    }
    return Optional.of(new Section("Not checked, and assumed", true, parts));
  }
}
