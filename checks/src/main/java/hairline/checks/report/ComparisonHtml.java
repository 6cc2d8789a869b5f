package hairline.checks.report;

import hairline.checks.compare.Change;
import hairline.checks.compare.Comparison;
import hairline.checks.compare.FindingsDifference;
import hairline.checks.compare.SheetDifference;
import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.report.BriefPage.Fact;
import hairline.checks.report.BriefPage.Facts;
import hairline.checks.report.BriefPage.Found;
import hairline.checks.report.BriefPage.Items;
import hairline.checks.report.BriefPage.Part;
import hairline.checks.report.BriefPage.Section;
import hairline.checks.report.BriefPage.Table;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A comparison as a page, in the look of the brief. */
final class ComparisonHtml {
  private static final int MOST_ROWS = 100;
  private static final List<String> HEAD =
      List.of("what", "before", "after", "how far", "times", "line after", "line before");

  private final Comparison comparison;

  private ComparisonHtml(Comparison comparison) {
    this.comparison = comparison;
  }

  static void write(OutputStream out, ReportOptions options, Comparison comparison)
      throws IOException {
    ComparisonHtml html = new ComparisonHtml(comparison);
    HtmlReport page = new HtmlReport(out, options);
    page.begin("Comparison of two programs");
    page.article("What is done otherwise", html.sections(options));
    page.end(ComparisonText.verdict(comparison) + ".");
  }

  private List<Section> sections(ReportOptions options) {
    List<Section> sections = new ArrayList<>();
    ComparisonText.sheetsSentence(comparison).ifPresent(s -> sections.add(sheets(s)));
    sections.add(programs(options));
    Map<String, List<Change>> byOperation = new LinkedHashMap<>();
    for (Change change : ComparisonText.ordered(comparison.changes())) {
      byOperation
          .computeIfAbsent(
              ComparisonText.heading(comparison, change.operationBefore(), change.operationAfter()),
              h -> new ArrayList<>())
          .add(change);
    }
    byOperation.forEach((heading, changes) -> sections.add(operation(heading, changes)));
    List<String> surfaces = comparison.surfaces().stream().map(ComparisonText::surface).toList();
    if (!surfaces.isEmpty()) {
      sections.add(new Section("The part left", true, List.of(new Items(surfaces))));
    }
    List<String> times = comparison.times().stream().map(ComparisonText::time).toList();
    if (!times.isEmpty()) {
      sections.add(new Section("The time planned", true, List.of(new Items(times))));
    }
    if (!comparison.findings().none()) {
      sections.add(findings(comparison.findings()));
    }
    if (!comparison.notCompared().isEmpty()) {
      sections.add(new Section("Not compared", true, List.of(new Items(comparison.notCompared()))));
    }
    return sections;
  }

  private Section sheets(String sentence) {
    List<Part> parts = new ArrayList<>();
    parts.add(new Items(List.of(sentence)));
    List<List<String>> rows = new ArrayList<>();
    List<SheetDifference> sheets = comparison.sheets();
    for (SheetDifference sheet : sheets.subList(0, Math.min(MOST_ROWS, sheets.size()))) {
      rows.add(
          List.of(
              sheet.key(),
              ComparisonText.value(sheet.before()),
              ComparisonText.value(sheet.after())));
    }
    if (!rows.isEmpty()) {
      parts.add(
          new Table("Values that differ", List.of("key of the sheet", "before", "after"), rows));
    }
    if (sheets.size() > rows.size()) {
      parts.add(more(sheets.size() - rows.size()));
    }
    return new Section("The setup sheets", true, parts);
  }

  private static Items more(int count) {
    return new Items(
        List.of(Words.count(count, "more difference") + "; --format json lists them all"));
  }

  private Section programs(ReportOptions options) {
    List<Fact> facts = new ArrayList<>();
    for (ProgramResult result : List.of(comparison.before(), comparison.after())) {
      facts.add(new Fact(facts.isEmpty() ? "before" : "after", result.program()));
      facts.add(
          new Fact(
              "", "sheet: " + ComparisonText.sheet(result) + "; " + ComparisonText.found(result)));
      if (result.notUnderstood() || result.macroUnread() || result.stepBudgetReached()) {
        facts.add(new Fact("unread", Words.NOT_UNDERSTOOD));
      }
    }
    for (Conditions.Named condition : options.conditions().all()) {
      facts.add(new Fact(condition.name(), condition.text()));
    }
    return new Section("Compared", true, List.of(new Facts(facts)));
  }

  private Section operation(String heading, List<Change> changes) {
    List<List<String>> rows = new ArrayList<>();
    for (Change change : changes.subList(0, Math.min(MOST_ROWS, changes.size()))) {
      Change.Where where = change.largest().orElse(change.first());
      rows.add(
          List.of(
              change.kind().words()
                  + (change.blockDelete().isEmpty()
                      ? ""
                      : ", only with block delete " + change.blockDelete()),
              change.before(),
              change.after(),
              far(change),
              Long.toString(change.count()),
              place(comparison.after(), where.after()),
              place(comparison.before(), where.before())));
    }
    List<Part> parts = new ArrayList<>();
    parts.add(
        new Table("Differences; of paths the largest, of other things the first", HEAD, rows));
    if (changes.size() > rows.size()) {
      parts.add(more(changes.size() - rows.size()));
    }
    return new Section(heading, true, parts);
  }

  private static String far(Change change) {
    if (Double.isNaN(change.farMm())) {
      return "";
    }
    if (change.kind() == Change.Kind.MOVES) {
      return Quantities.mm(change.farMm()) + " long";
    }
    return Double.isInfinite(change.farMm())
        ? "known in one only"
        : ComparisonText.far(change.farMm());
  }

  private static String place(ProgramResult result, Optional<Place> place) {
    return place.map(p -> ComparisonText.place(result, p)).orElse("");
  }

  private Section findings(FindingsDifference findings) {
    List<Part> parts = new ArrayList<>();
    findings.added().forEach(f -> parts.add(found("new", f, comparison.after())));
    findings.gone().forEach(f -> parts.add(found("gone", f, comparison.before())));
    findings.changed().forEach(pair -> parts.add(changed(pair)));
    return new Section("What the check finds", true, parts);
  }

  private Found changed(FindingsDifference.Pair pair) {
    String how = ComparisonText.how(pair);
    List<Fact> facts = new ArrayList<>();
    facts.add(where(pair.after(), comparison.after()));
    ComparisonText.saidBefore(pair).ifPresent(said -> facts.add(new Fact("before", said)));
    return new Found(
        pair.after().level().word(),
        (how.isEmpty() ? "changed: " : how) + pair.after().worst().message(),
        facts);
  }

  private static Found found(String what, Finding finding, ProgramResult result) {
    return new Found(
        finding.level().word(),
        what + ": " + finding.worst().message(),
        List.of(where(finding, result)));
  }

  private static Fact where(Finding finding, ProgramResult result) {
    return new Fact(
        "where",
        "line "
            + ComparisonText.place(result, finding.worst().at())
            + (finding.count() > 1 ? ", the worst of " + finding.count() : "")
            + ", "
            + finding.rule());
  }
}
