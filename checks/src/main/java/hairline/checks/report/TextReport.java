package hairline.checks.report;

import hairline.checks.finding.Finding;
import hairline.checks.finding.Level;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.ProgramResult.SourceLine;
import hairline.checks.motion.Place;
import hairline.checks.setup.SheetReader;
import hairline.checks.stock.SurfaceShown;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The report for people. Labels and line numbers stand in a gutter on the left, what they speak of
 * in one column beside it. All text from outside passes {@link Visible} here.
 */
final class TextReport implements ReportWriter {
  private static final int MOST_ITEMS = 12;
  private static final int MANY_KEYS = 4;
  private static final int MOST_RULES_NAMED = 12;
  private static final int RULES_NAMED_OF_MANY = 4;
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");
  private static final String MISSING = " is not on the sheet";

  private final Writer out;
  private final Gutter gutter;
  private final ReportOptions options;

  /** Troubles told, each with the first program that has it. */
  private final Map<String, String> told = new HashMap<>();

  private boolean anything;

  TextReport(OutputStream out, ReportOptions options) {
    this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    this.gutter = new Gutter(this.out, options.width(), options.colour());
    this.options = options;
  }

  @Override
  public void begin() throws IOException {
    if (!options.quiet()) {
      conditions();
    }
  }

  /** What makes the run less than a whole one. */
  private void conditions() throws IOException {
    for (Conditions.Named condition : options.conditions().all()) {
      anything = true;
      labelled(condition.name(), Paint.WARNING, condition.text());
    }
  }

  @Override
  public void program(CheckedProgram program) throws IOException {
    if (options.quiet()) {
      quietly(program);
      return;
    }
    separate();
    line(paint(Paint.STRONG, Visible.of(program.name())));
    if (program.trouble().isPresent()) {
      trouble(program.name(), program.trouble().get());
      return;
    }
    ProgramResult result = program.result().orElseThrow();
    sheet(result);
    asked(program, result);
    for (Finding finding : result.findings()) {
      line("");
      finding(result, finding);
    }
    accepted(result);
    notChecked(result);
    assumptions(result);
  }

  /** What was asked for by an option of its own. */
  private void asked(CheckedProgram program, ProgramResult result) throws IOException {
    if (program.summary().isPresent()) {
      line("");
      for (SummaryText.Line part : SummaryText.of(program.summary().get(), result)) {
        labelled(part.label(), Paint.QUIET, part.text());
      }
    }
    if (program.surface().isPresent()) {
      surface(program.surface().get());
    }
    if (program.depths().isPresent()) {
      part(DepthsText.of(program.depths().get(), result, options.verbose()));
    }
    if (program.timeline().isPresent()) {
      for (SurfaceText.Part part :
          TimelineText.of(program.timeline().get(), result, columns(), options.verbose())) {
        part(part);
      }
    }
    if (program.feeds().isPresent() && program.feeds().get().shown().isPresent()) {
      for (SurfaceText.Part part :
          FeedsText.of(program.feeds().get().shown().get(), result, options.verbose())) {
        part(part);
      }
    }
    if (program.budgets()) {
      budgets(result);
    }
  }

  private void surface(SurfaceShown surface) throws IOException {
    for (SurfaceText.Part part : SurfaceText.of(surface, options.verbose(), columns())) {
      part(part);
    }
  }

  private void part(SurfaceText.Part part) throws IOException {
    line("");
    for (SummaryText.Line sentence : part.head()) {
      labelled(sentence.label(), Paint.QUIET, sentence.text());
    }
    for (String row : part.table()) {
      label("", Paint.QUIET);
      line(row);
    }
    if (part.left() > 0) {
      labelled("…", Paint.QUIET, part.left() + " more; --verbose lists them all");
    }
  }

  private void budgets(ProgramResult result) throws IOException {
    List<BudgetText.Table> tables = BudgetText.of(result, columns());
    if (tables.isEmpty()) {
      line("");
      labelled(
          "budget",
          Paint.QUIET,
          "none: no step is known to draw one up for, or budget-exceeds-tolerance is not asked");
    }
    int shown = BudgetText.shown(tables.size(), options.verbose());
    for (BudgetText.Table table : tables.subList(0, shown)) {
      line("");
      labelled(table.head().label(), Paint.QUIET, table.head().text());
      Paint paint =
          switch (table.decision()) {
            case HOLDS -> Paint.STRONG;
            case UNDECIDED -> Paint.WARNING;
            case FAILS -> Paint.ERROR;
          };
      labelled(table.result().label(), paint, table.result().text());
      for (String row : table.table()) {
        label("", Paint.QUIET);
        line(row);
      }
      for (SummaryText.Line foot : table.foot()) {
        labelled(foot.label(), Paint.QUIET, foot.text());
      }
    }
    if (shown < tables.size()) {
      line("");
      labelled(
          "…",
          Paint.QUIET,
          (tables.size() - shown) + " more with more room; --verbose lists them all");
    }
  }

  private void quietly(CheckedProgram program) throws IOException {
    anything = true;
    if (program.trouble().isPresent()) {
      quietly(program.name(), program.trouble().get());
      return;
    }
    ProgramResult result = program.result().orElseThrow();
    boolean more =
        program.summary().isPresent()
            || program.surface().isPresent()
            || program.depths().isPresent()
            || program.timeline().isPresent()
            || program.feeds().isPresent()
            || program.budgets();
    if (more) {
      line(paint(Paint.STRONG, Visible.of(program.name())));
      asked(program, result);
      line("");
    }
    for (Finding finding : result.findings()) {
      line(
          where(result, finding.at())
              + ": "
              + paint(Paint.of(finding.level()), finding.level().word())
              + ": "
              + Visible.of(finding.first().message())
              + (finding.count() > 1 ? " (" + finding.count() + " times)" : "")
              + " ["
              + finding.rule()
              + "]");
    }
  }

  private void trouble(String program, Trouble trouble) throws IOException {
    String before = told.putIfAbsent(trouble.sentence(), program);
    if (before != null) {
      labelled("unchecked", Paint.ERROR, "for the same reason as " + before);
      return;
    }
    String next = "unchecked";
    for (String line : trouble.sentence().split("\n", -1)) {
      labelled(next, Paint.ERROR, line);
      next = "";
    }
    labelled("cure", Paint.QUIET, trouble.cure());
  }

  private void quietly(String program, Trouble trouble) throws IOException {
    String before = told.putIfAbsent(trouble.sentence(), program);
    String reason = before == null ? trouble.sentence() : "for the same reason as " + before;
    line(
        Visible.of(program)
            + ": not checked: "
            + reason.lines().map(Visible::of).collect(Collectors.joining("\n  ")));
  }

  private void sheet(ProgramResult result) throws IOException {
    if (result.embeddedSheet()) {
      labelled(
          "sheet",
          Paint.WARNING,
          "none found: nothing is known of machine, tools and job. "
              + "The embedded default sheet stands in and assumes "
              + new SheetReader()
                  .embedded().givenValues().stream()
                      .filter(value -> !value.startsWith("machine.name"))
                      .collect(Collectors.joining(", ")));
    } else {
      labelled("sheet", Paint.QUIET, result.sheet());
    }
    for (String unread : Words.unread(result)) {
      labelled("unread", Paint.ERROR, unread);
    }
  }

  private void finding(ProgramResult result, Finding finding) throws IOException {
    Occurrence first = finding.first();
    Paint paint = Paint.of(finding.level());
    String label = sign(finding.level()) + " " + finding.level().word();
    for (String part : Wrap.at(columns(), Visible.of(first.message()))) {
      label(label, paint);
      line(paint(Paint.STRONG, part));
      label = "";
    }
    label("", paint);
    line(paint(Paint.QUIET, shortPlace(result, finding.at())) + "  " + finding.rule());
    source(result, finding.at(), paint);
    list("why", first.facts());
    if (first.cure().isPresent()) {
      labelled("cure", Paint.QUIET, first.cure().get());
    }
    if (finding.count() > 1) {
      Occurrence worst = finding.worst();
      labelled("times", Paint.QUIET, times(result, finding));
      if (!worst.at().equals(finding.at())) {
        source(result, worst.at(), paint);
      }
      list("why", Words.worstFacts(finding));
      Optional<String> cure = Words.worstCure(finding);
      if (cure.isPresent()) {
        labelled("cure", Paint.QUIET, cure.get());
      }
    }
    String blockDelete = Words.blockDelete(finding);
    if (!blockDelete.isEmpty()) {
      labelled("holds", Paint.QUIET, blockDelete);
    }
  }

  private void source(ProgramResult result, Place at, Paint paint) throws IOException {
    Optional<String> text =
        Optional.ofNullable(result.excerpts().get(new SourceLine(at.file(), at.line())));
    if (text.isEmpty() || text.get().isBlank()) {
      return;
    }
    Excerpt excerpt = Excerpt.of(text.get(), at.span(), columns());
    label(Integer.toString(at.line()), Paint.QUIET);
    line(excerpt.text());
    label("", paint);
    line(paint(paint, excerpt.marks()));
  }

  private static String times(ProgramResult result, Finding finding) {
    StringBuilder text = new StringBuilder();
    text.append("found ").append(finding.count()).append(" times");
    if (finding.last().equals(finding.at())) {
      text.append(", all there");
    } else {
      text.append(", the last time at ").append(Words.line(result, finding.last(), finding));
    }
    Occurrence worst = finding.worst();
    if (!worst.message().equals(finding.first().message()) || !worst.at().equals(finding.at())) {
      text.append("; worst at ")
          .append(Words.line(result, worst.at(), finding))
          .append(": ")
          .append(worst.message());
    }
    return text.toString();
  }

  private void accepted(ProgramResult result) throws IOException {
    List<String> items = new ArrayList<>();
    for (Finding finding : result.accepted()) {
      items.add(
          Words.line(result, finding.at())
              + ", "
              + finding.rule()
              + (finding.count() > 1 ? ", " + finding.count() + " times" : "")
              + ": "
              + finding.acceptedBecause().orElse(""));
    }
    section("accepted in the program", items);
  }

  private record Gap(TreeSet<String> rules, Optional<Place> first, long count) {
    Gap and(NotChecked more) {
      rules.add(more.rule());
      return new Gap(
          rules, first.isPresent() ? first : more.first(), Math.max(count, more.count()));
    }
  }

  private void notChecked(ProgramResult result) throws IOException {
    Map<String, Gap> byReason = new TreeMap<>();
    TreeSet<String> wantSheet = new TreeSet<>();
    for (NotChecked missing : result.notChecked()) {
      if (result.embeddedSheet() && missing.reason().contains(MISSING)) {
        wantSheet.add(missing.rule());
      } else {
        Gap gap =
            byReason.getOrDefault(missing.reason(), new Gap(new TreeSet<>(), Optional.empty(), 0));
        byReason.put(missing.reason(), gap.and(missing));
      }
    }
    List<String> items = new ArrayList<>();
    if (!wantSheet.isEmpty()) {
      items.add(
          "for want of a setup sheet (hairline init begins one): " + String.join(", ", wantSheet));
    }
    if (options.verbose()) {
      byReason.forEach((reason, gap) -> items.add(gap(result, reason, gap)));
    } else {
      missingKeys(byReason).ifPresent(items::add);
      alike(byReason)
          .forEach(
              gaps -> {
                Map.Entry<String, Gap> first = gaps.get(0);
                int more = gaps.size() - 1;
                items.add(
                    gap(result, first.getKey(), first.getValue())
                        + (more == 0
                            ? ""
                            : "; " + Words.count(more, "more reason") + " of this kind"));
              });
    }
    section("not checked", items);
  }

  /** Where many keys are missing they are one item, so that other reasons keep their place. */
  private static Optional<String> missingKeys(Map<String, Gap> byReason) {
    List<String> reasons =
        byReason.keySet().stream().filter(reason -> reason.contains(MISSING)).toList();
    if (reasons.size() < MANY_KEYS) {
      return Optional.empty();
    }
    TreeSet<String> keys = new TreeSet<>();
    TreeSet<String> rules = new TreeSet<>();
    for (String reason : reasons) {
      keys.add(reason.substring(0, reason.indexOf(MISSING)));
      Gap gap = byReason.remove(reason);
      if (gap != null) {
        rules.addAll(gap.rules());
      }
    }
    return Optional.of(
        "not on the sheet: " + String.join(", ", keys) + "; for: " + named(rules, false));
  }

  /** Reasons of the same rules that differ in their numbers only. */
  private static Collection<List<Map.Entry<String, Gap>>> alike(Map<String, Gap> byReason) {
    Map<String, List<Map.Entry<String, Gap>>> alike = new LinkedHashMap<>();
    for (Map.Entry<String, Gap> entry : byReason.entrySet()) {
      String kind = NUMBER.matcher(entry.getKey()).replaceAll("#") + entry.getValue().rules();
      alike.computeIfAbsent(kind, k -> new ArrayList<>()).add(entry);
    }
    return alike.values();
  }

  /** Rules by their names; of very many in the short report the first, and how many more. */
  private static String named(Collection<String> rules, boolean all) {
    return all || rules.size() <= MOST_RULES_NAMED
        ? String.join(", ", rules)
        : rules.stream().limit(RULES_NAMED_OF_MANY).collect(Collectors.joining(", "))
            + " and "
            + (rules.size() - RULES_NAMED_OF_MANY)
            + " more rules (--verbose names them)";
  }

  private String gap(ProgramResult result, String reason, Gap gap) {
    StringBuilder text = new StringBuilder(reason);
    gap.rules().remove("");
    if (!gap.rules().isEmpty()) {
      text.append(": ").append(named(gap.rules(), options.verbose()));
    }
    if (gap.first().isPresent()) {
      text.append("; ").append(Words.line(result, gap.first().get()));
      if (gap.count() > 1) {
        text.append(" and ").append(gap.count() - 1).append(" more");
      }
    }
    return text.toString();
  }

  private void assumptions(ProgramResult result) throws IOException {
    section("assumed", Assumed.items(result));
  }

  @Override
  public void end(Verdict verdict) throws IOException {
    separate();
    if (options.quiet()) {
      conditions();
    }
    StringBuilder text =
        new StringBuilder(
            verdict.programs() == 0
                ? "nothing was checked"
                : Words.found(verdict) + " in " + Words.count(verdict.programs(), "program"));
    if (verdict.accepted() > 0) {
      text.append(", ").append(verdict.accepted()).append(" accepted");
    }
    if (verdict.undecided() > 0) {
      text.append("; ")
          .append(Words.count(verdict.undecided(), "rule"))
          .append(" could not decide everywhere");
    }
    if (verdict.incomplete() > 0) {
      text.append("; ")
          .append(Words.count(verdict.incomplete(), "program"))
          .append(" not analysed in full");
    }
    if (verdict.troubled() > 0) {
      text.append("; ").append(Words.count(verdict.troubled(), "input")).append(" not checked");
    }
    Conditions conditions = options.conditions();
    if (!conditions.only().isEmpty()) {
      text.append("; only ").append(Words.count(options.rules().size(), "rule")).append(" asked");
    } else if (!conditions.skip().isEmpty()) {
      text.append("; ").append(Words.count(conditions.skip().size(), "rule")).append(" left out");
    }
    if (!conditions.whatIf().isEmpty()) {
      text.append("; with ")
          .append(Words.count(conditions.whatIf().size(), "value"))
          .append(" that the sheet does not have");
    }
    Paint paint =
        verdict.errors() > 0 || verdict.troubled() + verdict.incomplete() > 0
            ? Paint.ERROR
            : verdict.warnings() > 0 ? Paint.WARNING : Paint.STRONG;
    if (!options.quiet()) {
      gutter.rule();
    }
    String next = "verdict";
    for (String part : Wrap.at(columns(), text.toString())) {
      label(next, paint);
      line(paint(paint == Paint.WARNING || paint == Paint.ERROR ? paint : Paint.STRONG, part));
      next = "";
    }
    labelled("caution", Paint.QUIET, Words.CAUTION);
    out.flush();
  }

  /** A heading in the column, then one item a line, at most {@link #MOST_ITEMS}. */
  private void section(String heading, List<String> items) throws IOException {
    if (items.isEmpty()) {
      return;
    }
    line("");
    label("", Paint.QUIET);
    line(paint(Paint.QUIET, heading));
    int shown = options.verbose() ? items.size() : Math.min(items.size(), MOST_ITEMS);
    for (String item : items.subList(0, shown)) {
      labelled("·", Paint.QUIET, item);
    }
    if (shown < items.size()) {
      labelled("…", Paint.QUIET, (items.size() - shown) + " more; --verbose lists them all");
    }
  }

  private void list(String label, List<String> items) throws IOException {
    String next = label;
    for (String item : items) {
      labelled(next, Paint.QUIET, item);
      next = "";
    }
  }

  private void labelled(String label, Paint paint, String text) throws IOException {
    gutter.labelled(label, paint, text);
  }

  private void label(String text, Paint paint) throws IOException {
    gutter.label(text, paint);
  }

  private void line(String text) throws IOException {
    gutter.line(text);
  }

  private void separate() throws IOException {
    if (anything) {
      line("");
    }
    anything = true;
  }

  /** Columns beside the gutter. */
  private int columns() {
    return gutter.columns();
  }

  /** Below the heading the folder is known; a file beside the program is named whole. */
  private static String shortPlace(ProgramResult result, Place at) {
    String whole = where(result, at);
    return at.file() == 0
            && Words.file(result, at).equals(result.program())
            && Words.file(result, at).contains("/")
        ? whole.substring(Visible.of(result.program()).lastIndexOf('/') + 1)
        : whole;
  }

  private static String where(ProgramResult result, Place at) {
    return Visible.of(Words.file(result, at)) + ":" + at.line() + ":" + at.span().column();
  }

  private static String sign(Level level) {
    return switch (level) {
      case ERROR -> "■";
      case WARNING -> "▲";
      case NOTE -> "○";
    };
  }

  private String paint(Paint paint, String text) {
    return gutter.paint(paint, text);
  }
}
