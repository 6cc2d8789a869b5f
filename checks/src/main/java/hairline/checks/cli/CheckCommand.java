package hairline.checks.cli;

import hairline.checks.report.Conditions;
import hairline.checks.report.ReportFormat;
import hairline.checks.report.ReportOptions;
import hairline.checks.rules.Selection;
import hairline.checks.rules.Timings;
import hairline.checks.stock.SurfaceWanted;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code hairline check}. */
@Command(
    name = "check",
    description = {
      "Checks part programs against what their setup sheets say of machine, tools and job.",
      "",
      "Of a folder, all files are checked, those of folders below too, whose names have one of the"
          + " endings nc, cnc, ncc, tap, gcode, gc, ngc, eia, iso, din; hidden ones are left out."
          + " A file there that another program calls as a subprogram, and that is nothing else, is"
          + " checked through its callers only; name it to check it by itself."
          + " The sheet of a program NAME.nc is NAME.setup.yaml beside it, else setup.yaml in its"
          + " folder or in the nearest above; without one an embedded sheet stands in, which knows"
          + " very little.",
      "",
      "What is meant so is accepted in the program, with a reason: (hairline: accept RULE: reason)"
          + " for the block it stands in or, on a line of its own, for the next;"
          + " (hairline: accept RULE until end: reason) for the rest of the program. Several rules"
          + " are joined by commas. What is accepted stays in the report.",
      ""
    })
final class CheckCommand implements Action {
  private static final int MOST_JOBS = 256;

  @Parameters(
      arity = "0..*",
      paramLabel = "PATH",
      description = "Part programs, folders of them, or - for standard input.")
  private List<String> paths = new ArrayList<>();

  @Option(names = "--setup", paramLabel = "FILE", description = "The setup sheet for all of them.")
  private @Nullable String setup;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description =
          "What if: a value of the sheet changed, such as tools.3.flutes=2. May be repeated.")
  private List<String> changes = new ArrayList<>();

  @Option(
      names = "--only",
      completionCandidates = RuleNames.All.class,
      split = ",",
      paramLabel = "RULE",
      description = "Ask only these rules. May be repeated, or names joined by commas.")
  private List<String> only = new ArrayList<>();

  @Option(
      names = "--skip",
      completionCandidates = RuleNames.All.class,
      split = ",",
      paramLabel = "RULE",
      description = "Leave these rules out.")
  private List<String> skip = new ArrayList<>();

  @Option(
      names = "--fail-on",
      paramLabel = "LEVEL",
      description = "Exit status 1 from this level on: ${COMPLETION-CANDIDATES} (warning).")
  private FailOn failOn = FailOn.WARNING;

  @Option(
      names = "--allow-unread",
      description = "Macro statements that are not read do not make the exit status 3.")
  private boolean allowUnread;

  @Option(
      names = "--summary",
      description =
          "Adds what the program does as a whole: moves, reach, time as planned, tools, and the"
              + " modal state at its end (text and json).")
  private boolean summary;

  @Option(
      names = "--budget",
      description =
          "Adds the error budget of each step: its parts, the largest first, with their shares and"
              + " what halving each would gain (text, json, csv).")
  private boolean budget;

  @Option(
      names = "--terraces",
      description =
          "Lists the terraces of the part left: connected areas of one height, with height, area,"
              + " outline and steps to their neighbours (text, json, csv).")
  private boolean terraces;

  @Option(
      names = "--section",
      paramLabel = "X0,Y0,X1,Y1",
      description =
          "Adds the heights of the part left along a line from one point to another, in work"
              + " coordinates, mm unless a unit stands behind (text, json, csv, svg). May be"
              + " repeated.")
  private List<String> sections = new ArrayList<>();

  @Option(
      names = "--depths",
      description =
          "Lists the depths that each move truly takes along its path, where passes cross; of a"
              + " move that varies Z the largest (text, json, csv).")
  private boolean depths;

  @Option(
      names = "--timeline",
      description =
          "Shows the program along its time: speed and growth of the spindle, warm-up, tool"
              + " changes, measuring, fine cuts (text, json, csv, svg).")
  private boolean timeline;

  @Option(
      names = "--feeds",
      description =
          "Compares the feed that the machine reaches with that programmed: for each operation"
              + " time, share of it below, what holds the feed, and the moves that fall furthest"
              + " below (text, json); each move (csv).")
  private boolean feeds;

  @Option(
      names = "--cell",
      paramLabel = "LENGTH",
      description =
          "What if: edge of the cells in which the surface of the part is kept, such as 2um; 0.1 um"
              + " to 1 mm.")
  private @Nullable String cell;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "Format of the report on standard output: ${COMPLETION-CANDIDATES} (text).")
  private ReportFormat format = ReportFormat.TEXT;

  @Option(
      names = "--report",
      paramLabel = "FORMAT=FILE",
      description = "One more report, in a file. May be repeated.")
  private List<String> reports = new ArrayList<>();

  @Option(
      names = "--color",
      paramLabel = "WHEN",
      description =
          "Colour in the text report: ${COMPLETION-CANDIDATES} (auto: on a terminal,"
              + " unless NO_COLOR is set).")
  private Colour colour = Colour.AUTO;

  @Option(
      names = "--timings",
      description = "Tells on standard error how long each stage and each rule took.")
  private boolean timings;

  @Option(
      names = {"-q", "--quiet"},
      description =
          "In the text report one line a finding, and what other options ask for; no progress"
              + " bar.")
  private boolean quiet;

  @Option(
      names = {"-v", "--verbose"},
      description = "Lists in the text report whole; failures with their traces.")
  private boolean verbose;

  @Option(
      names = {"-j", "--jobs"},
      paramLabel = "N",
      description = "Programs checked at a time (one for each core). The report is the same.")
  private @Nullable String jobs;

  @Override
  public boolean verbose() {
    return verbose;
  }

  /** Takes the usual options as the annotations above have them, each once. */
  UsualLine.Taker taker() {
    return new UsualLine.Taker() {
      @Override
      public void path(String path) {
        paths.add(path);
      }

      @Override
      public boolean flag(String option) {
        boolean before;
        switch (option) {
          case "-q", "--quiet" -> {
            before = quiet;
            quiet = true;
          }
          case "-v", "--verbose" -> {
            before = verbose;
            verbose = true;
          }
          case "--summary" -> {
            before = summary;
            summary = true;
          }
          case "--timings" -> {
            before = timings;
            timings = true;
          }
          case "--allow-unread" -> {
            before = allowUnread;
            allowUnread = true;
          }
          default -> before = true;
        }
        return !before;
      }

      @Override
      public boolean option(String name, String value) {
        boolean known = true;
        switch (name) {
          case "--setup" -> setup = value;
          case "--only" -> only.addAll(UsualLine.names(value));
          case "--skip" -> skip.addAll(UsualLine.names(value));
          case "-j", "--jobs" -> {
            known = jobs == null;
            jobs = value;
          }
          case "--format" -> {
            known = named(ReportFormat.values(), value).isPresent();
            format = named(ReportFormat.values(), value).orElse(format);
          }
          case "--fail-on" -> {
            known = named(FailOn.values(), value).isPresent();
            failOn = named(FailOn.values(), value).orElse(failOn);
          }
          default -> known = false;
        }
        return known;
      }
    };
  }

  @Override
  public ExitStatus run(Streams streams, Messages messages) throws Failed {
    if (paths.isEmpty()) {
      throw Failed.of(Failure.NO_INPUT);
    }
    int workers = workers();
    Set<String> onlyThese = RuleNames.known(only);
    Set<String> notThese = RuleNames.known(skip);
    Selection selection = new Selection(onlyThese, notThese);
    List<String> asked = asked(selection);
    if (asked.isEmpty()) {
      throw Failed.of(Failure.NO_RULE_LEFT, "--only and --skip");
    }
    Surfaces surfaces = surfaces();
    Sheets sheets = Sheets.of(setup, changes);
    List<Input> named = Inputs.of(paths, streams.in());
    List<Reports.Wanted> wanted = Reports.Wanted.of(reports, readFiles(named, sheets));
    Subprograms subprograms = Subprograms.among(named, sheets);
    List<Input> inputs = subprograms.others(named);
    ReportOptions options =
        new ReportOptions(
            Version.number(),
            failOn.level(),
            colour.on(streams),
            quiet,
            verbose,
            streams.columns(),
            asked,
            new Conditions(List.copyOf(onlyThese), List.copyOf(notThese), whatIf(sheets)));
    boolean seen = format == ReportFormat.TEXT && !verbose && streams.bothInOnePlace();
    Timings clocks = timings ? Timings.measured() : Timings.NONE;
    long start = System.nanoTime();
    CheckRun run =
        new CheckRun(
            selection,
            sheets,
            options,
            allowUnread,
            summary,
            feedTables(),
            surfaces,
            clocks,
            seen,
            messages);
    try (Reports open = new Reports(format, streams.out(), wanted, options, messages)) {
      try (Progress progress = Progress.start(streams, inputs.size(), !quiet)) {
        run.run(inputs, workers, progress, program -> open.program(program.withBudgets(budget)));
      }
      open.end(run.verdict());
      subprograms.sentence().ifPresent(messages::tell);
      if (timings) {
        TimingsText.of(clocks.nanos(), (System.nanoTime() - start) / 1e9).forEach(messages::tell);
      }
      return run.status().and(open.status());
    }
  }

  private static <E> Optional<E> named(E[] all, String name) {
    return Arrays.stream(all).filter(one -> one.toString().equals(name)).findFirst();
  }

  /** The formats of all reports. */
  private List<ReportFormat> formats() {
    List<ReportFormat> formats = new ArrayList<>(Reports.Wanted.formats(reports));
    formats.add(format);
    return formats;
  }

  private FeedTables feedTables() {
    List<ReportFormat> formats = formats();
    return new FeedTables(
        feeds,
        formats.contains(ReportFormat.TEXT)
            || formats.contains(ReportFormat.JSON)
            || formats.contains(ReportFormat.HTML));
  }

  /** What is to be seen of the part left. */
  private Surfaces surfaces() throws Failed {
    List<ReportFormat> formats = formats();
    SurfaceWanted wanted =
        new SurfaceWanted(terraces, Surfaces.lines(sections), formats.contains(ReportFormat.SVG));
    if (formats.contains(ReportFormat.CSV)
        && !terraces
        && !depths
        && !timeline
        && !feeds
        && !budget
        && sections.isEmpty()) {
      throw Failed.of(Failure.CSV_OF_NOTHING);
    }
    return new Surfaces(
        wanted,
        depths,
        timeline,
        formats.contains(ReportFormat.HTML),
        cell == null ? OptionalLong.empty() : OptionalLong.of(Surfaces.cell(cell)));
  }

  private List<Conditions.WhatIf> whatIf(Sheets sheets) {
    List<Conditions.WhatIf> all = new ArrayList<>(sheets.changes());
    if (cell != null) {
      all.add(new Conditions.WhatIf("edge of a cell of the surface", cell.strip()));
    }
    return all;
  }

  private static List<String> asked(Selection selection) {
    return selection.rules(List.of()).stream().map(rule -> rule.info().name()).toList();
  }

  private int workers() throws Failed {
    if (jobs == null) {
      return Runtime.getRuntime().availableProcessors();
    }
    int workers = jobs.matches("[0-9]{1,9}") ? Integer.parseInt(jobs) : 0;
    if (workers < 1 || workers > MOST_JOBS) {
      throw Failed.of(
          Failure.WRONG_OPTION,
          "--jobs takes a whole number from 1 to " + MOST_JOBS + ", not `" + jobs + "`",
          "check ");
    }
    return workers;
  }

  /** The files that no report may replace. */
  private List<Path> readFiles(List<Input> inputs, Sheets sheets) {
    if (reports.isEmpty()) {
      return List.of();
    }
    List<Path> files = new ArrayList<>(Inputs.files(inputs));
    for (Path program : Inputs.files(inputs)) {
      sheets.fileFor(Optional.of(program)).ifPresent(files::add);
    }
    if (setup != null) {
      files.add(Path.of(setup));
    }
    return files;
  }
}
