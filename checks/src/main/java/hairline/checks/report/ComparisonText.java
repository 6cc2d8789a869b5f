package hairline.checks.report;

import hairline.checks.compare.Change;
import hairline.checks.compare.Comparison;
import hairline.checks.compare.FindingsDifference;
import hairline.checks.compare.SheetDifference;
import hairline.checks.compare.TimeDifference;
import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.stock.SurfaceDifference;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A comparison for people. */
final class ComparisonText {
  private static final int MOST_ITEMS = 12;

  private final Writer out;
  private final Gutter gutter;
  private final ReportOptions options;

  ComparisonText(OutputStream out, ReportOptions options) {
    this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    this.gutter = new Gutter(this.out, options.width(), options.colour());
    this.options = options;
  }

  void write(Comparison comparison) throws IOException {
    for (Conditions.Named condition : options.conditions().all()) {
      gutter.labelled(condition.name(), Paint.WARNING, condition.text());
    }
    sheets(comparison);
    program("before", comparison.before());
    program("after", comparison.after());
    int before = -1;
    int after = -1;
    List<Change> changes = comparison.changes();
    int shown = 0;
    int left = 0;
    Optional<Change.Kind> kind = Optional.empty();
    for (Change change : ordered(changes)) {
      if (change.operationBefore() != before || change.operationAfter() != after) {
        left(left);
        before = change.operationBefore();
        after = change.operationAfter();
        kind = Optional.empty();
        left = 0;
        gutter.line("");
        gutter.labelled("", Paint.QUIET, heading(comparison, before, after), true);
      }
      boolean next = kind.isPresent() && kind.get() == change.kind();
      shown = next ? shown + 1 : 1;
      if (!next) {
        left(left);
        left = 0;
      }
      kind = Optional.of(change.kind());
      if (shown > MOST_ITEMS && !options.verbose()) {
        left++;
        continue;
      }
      gutter.labelled(next ? "" : label(change.kind()), Paint.WARNING, text(comparison, change));
    }
    left(left);
    surfaces(comparison);
    times(comparison);
    findings(comparison);
    if (!comparison.notCompared().isEmpty()) {
      gutter.line("");
      gutter.labelled("", Paint.QUIET, "not compared");
      for (String item : comparison.notCompared()) {
        gutter.labelled("·", Paint.QUIET, item);
      }
    }
    gutter.line("");
    gutter.rule();
    gutter.labelled(
        "verdict", comparison.differ() ? Paint.WARNING : Paint.STRONG, verdict(comparison), true);
    gutter.labelled("caution", Paint.QUIET, Words.CAUTION);
    out.flush();
  }

  private void left(int left) throws IOException {
    if (left > 0) {
      gutter.labelled("…", Paint.QUIET, left + " more; --verbose lists them all");
    }
  }

  private void sheets(Comparison comparison) throws IOException {
    Optional<String> sentence = sheetsSentence(comparison);
    if (sentence.isEmpty()) {
      return;
    }
    List<SheetDifference> sheets = comparison.sheets();
    gutter.labelled("sheets", sheets.isEmpty() ? Paint.QUIET : Paint.WARNING, sentence.get(), true);
    int most = options.verbose() ? sheets.size() : Math.min(MOST_ITEMS, sheets.size());
    for (SheetDifference sheet : sheets.subList(0, most)) {
      gutter.labelled(
          "",
          Paint.WARNING,
          sheet.key() + ": " + value(sheet.before()) + " → " + value(sheet.after()));
    }
    left(sheets.size() - most);
    gutter.line("");
  }

  /** With which sheet each side was checked, where these are two. */
  static Optional<String> sheetsSentence(Comparison comparison) {
    String before = sheet(comparison.before());
    String after = sheet(comparison.after());
    if (comparison.sheets().isEmpty() && before.equals(after)) {
      return Optional.empty();
    }
    return Optional.of(
        (comparison.sheets().isEmpty()
                ? "two files, all values the same"
                : Words.count(comparison.sheets().size(), "value")
                    + " of the setup sheets "
                    + (comparison.sheets().size() == 1 ? "differs" : "differ")
                    + ", so that findings, levels and time may differ for that alone")
            + "; before checked with "
            + before
            + ", after with "
            + after);
  }

  static String sheet(ProgramResult result) {
    return result.embeddedSheet() ? "none found, the embedded one" : result.sheet();
  }

  static String value(Optional<String> value) {
    return value.orElse("nothing");
  }

  private void times(Comparison comparison) throws IOException {
    if (comparison.times().isEmpty()) {
      return;
    }
    gutter.line("");
    gutter.labelled("", Paint.QUIET, "the time planned", true);
    String label = "time";
    for (TimeDifference time : comparison.times()) {
      gutter.labelled(label, Paint.QUIET, time(time));
      label = "";
    }
  }

  static String time(TimeDifference time) {
    return (time.operationAfter() == 0
            ? "moves of operation " + time.operationBefore() + " of the program before"
            : "moves of operation " + time.operationAfter())
        + ": "
        + seconds(time.beforeSeconds())
        + " → "
        + seconds(time.afterSeconds());
  }

  private static String seconds(double seconds) {
    return Quantities.significant(Math.rint(seconds * 1000) / 1000, 9) + " s";
  }

  private void program(String label, ProgramResult result) throws IOException {
    gutter.labelled(label, Paint.QUIET, result.program(), true);
    gutter.labelled("", Paint.QUIET, "sheet: " + sheet(result) + "; " + found(result));
    if (result.notUnderstood() || result.macroUnread() || result.stepBudgetReached()) {
      gutter.labelled("unread", Paint.ERROR, Words.NOT_UNDERSTOOD);
    }
  }

  static String found(ProgramResult result) {
    return result.findings().isEmpty()
        ? "nothing found"
        : Words.count(result.findings().size(), "finding");
  }

  /** The changes with those of one pair of operations together. */
  static List<Change> ordered(List<Change> changes) {
    List<Change> ordered = new ArrayList<>(changes);
    ordered.sort(
        (a, b) -> {
          int byOperation =
              Integer.compare(
                  a.operationAfter() == 0 ? Integer.MAX_VALUE : a.operationAfter(),
                  b.operationAfter() == 0 ? Integer.MAX_VALUE : b.operationAfter());
          int byBefore = Integer.compare(a.operationBefore(), b.operationBefore());
          return byOperation != 0
              ? byOperation
              : byBefore != 0 ? byBefore : a.kind().compareTo(b.kind());
        });
    return ordered;
  }

  static String heading(Comparison comparison, int before, int after) {
    String was = title(comparison.titlesBefore(), before);
    String is = title(comparison.titles(), after);
    if (after == 0) {
      return "operation " + before + " of the program before" + was;
    }
    if (before == 0) {
      return "operation " + after + is + ", in the program after only";
    }
    return "operation "
        + after
        + is
        + (before == after ? "" : ", before the " + before + ".")
        + (was.equals(is) || was.isEmpty() ? "" : " (before" + was.replace(":", "") + ")");
  }

  private static String title(Map<Integer, String> titles, int operation) {
    String title = titles.getOrDefault(operation, "");
    return title.isEmpty() ? "" : ": " + title;
  }

  private static String label(Change.Kind kind) {
    return switch (kind) {
      case LENGTH_OFFSET -> "length";
      case COMPENSATION -> "comp.";
      case PATH_MODE -> "path mode";
      case WARM_UP -> "warm-up";
      case NOT_UNDERSTOOD -> "unread";
      case STATE_AT_END -> "at end";
      default -> kind.words();
    };
  }

  private static String text(Comparison comparison, Change change) {
    String at = places(comparison, change.largest().orElse(change.first()));
    String only =
        change.blockDelete().isEmpty() ? "" : "; only with block delete " + change.blockDelete();
    return switch (change.kind()) {
      case PATH ->
          Words.count(change.count(), "move")
              + " elsewhere, "
              + (Double.isInfinite(change.farMm())
                  ? "known in one program only"
                  : (change.count() > 1 ? "by up to " : "by ") + far(change.farMm()))
              + at
              + ": "
              + change.before()
              + " → "
              + change.after()
              + (change.largest().isEmpty() || change.largest().get().equals(change.first())
                  ? ""
                  : "; the first" + places(comparison, change.first()))
              + only;
      case MOVES ->
          (change.after().isEmpty() ? "gone: " : "new: ")
              + change.count()
              + " "
              + (change.count() == 1
                  ? one(change.before() + change.after())
                  : change.before() + change.after())
              + ", "
              + Quantities.mm(change.farMm())
              + ","
              + (change.count() > 1 ? " the first" : "")
              + at
              + only;
      case LEVEL, STEP ->
          arrow(change)
              + (change.count() > 1 ? ", " + change.count() + " times" : "")
              + ","
              + at
              + only;
      default ->
          arrow(change)
              + (change.count() > 1 ? ", " + change.count() + " times, the first" : ",")
              + at
              + only;
    };
  }

  static String one(String moves) {
    return moves.substring(0, moves.length() - 1);
  }

  static String arrow(Change change) {
    if (change.before().isEmpty()) {
      return "new: " + change.after();
    }
    return change.after().isEmpty()
        ? "gone: " + change.before()
        : change.before() + " → " + change.after();
  }

  static String far(double mm) {
    return mm < 1 ? Quantities.um(mm * 1000) : Quantities.mm(mm);
  }

  private static String places(Comparison comparison, Change.Where where) {
    Optional<String> before = where.before().map(p -> place(comparison.before(), p));
    Optional<String> after = where.after().map(p -> place(comparison.after(), p));
    if (before.isPresent() && after.isPresent()) {
      return " at line " + after.get() + " (before: " + before.get() + ")";
    }
    return after.map(a -> " at line " + a).orElse("")
        + before.map(b -> " at line " + b + " before").orElse("");
  }

  /** Line and column, with the file where it is a subprogram's. */
  static String place(ProgramResult result, Place place) {
    return place.line()
        + ":"
        + place.span().column()
        + (place.file() == 0 ? "" : " of " + Words.file(result, place));
  }

  private void surfaces(Comparison comparison) throws IOException {
    if (comparison.surfaces().isEmpty()) {
      return;
    }
    gutter.line("");
    gutter.labelled("", Paint.QUIET, "the part left", true);
    for (SurfaceDifference surface : comparison.surfaces()) {
      gutter.labelled("surface", Paint.WARNING, surface(surface));
    }
  }

  static String surface(SurfaceDifference surface) {
    if (surface.notCompared().isPresent()) {
      return surface.offset() + ": not compared: " + surface.notCompared().get();
    }
    StringBuilder text = new StringBuilder(surface.offset());
    text.append(" differs on ").append(area(surface.differentMm2()));
    if (surface.largestPm() != 0) {
      text.append(", most at X")
          .append(mm(surface.xPm()))
          .append(" Y")
          .append(mm(surface.yPm()))
          .append(": ")
          .append(Quantities.um(Math.abs(surface.largestPm())))
          .append(surface.largestPm() < 0 ? " lower (" : " higher (")
          .append(SurfaceWords.um(surface.beforePm()))
          .append(" → ")
          .append(Quantities.um(surface.afterPm()))
          .append(")");
    }
    if (surface.otherwiseMm2() != 0) {
      text.append("; ")
          .append(area(surface.otherwiseMm2()))
          .append(" of it is cut through, outside, or not known on one side only");
    }
    return text.toString();
  }

  private static String area(double mm2) {
    return Quantities.significant(mm2, 4) + " mm²";
  }

  private static String mm(long pm) {
    String text = Quantities.mm(pm);
    return text.substring(0, text.indexOf(' '));
  }

  private void findings(Comparison comparison) throws IOException {
    FindingsDifference findings = comparison.findings();
    if (findings.none()) {
      return;
    }
    gutter.line("");
    gutter.labelled("", Paint.QUIET, "what the check finds", true);
    findings("new", findings.added(), comparison.after());
    findings("gone", findings.gone(), comparison.before());
    String label = "changed";
    for (FindingsDifference.Pair pair : findings.changed()) {
      gutter.labelled(
          label,
          pair.how().worse() ? Paint.of(pair.after().level()) : Paint.QUIET,
          how(pair)
              + finding(pair.after(), comparison.after())
              + saidBefore(pair).map(said -> "; before: " + said).orElse(""));
      label = "";
    }
  }

  /** What has become of a finding, before what it says; empty where only its figures differ. */
  static String how(FindingsDifference.Pair pair) {
    return switch (pair.how()) {
      case GRAVER -> "graver, " + levels(pair) + ": ";
      case MILDER -> "less grave, " + levels(pair) + ": ";
      case OFTENER -> "more often, " + times(pair) + ": ";
      case RARER -> "less often, " + times(pair) + ": ";
      case OTHERWISE -> "";
    };
  }

  private static String levels(FindingsDifference.Pair pair) {
    return pair.before().level().word() + " → " + pair.after().level().word();
  }

  private static String times(FindingsDifference.Pair pair) {
    return pair.before().count() + " → " + pair.after().count() + " times";
  }

  /** What a finding said before; empty where it says the same still. */
  static Optional<String> saidBefore(FindingsDifference.Pair pair) {
    return Optional.of(pair.before().worst().message())
        .filter(said -> !said.equals(pair.after().worst().message()));
  }

  private void findings(String label, List<Finding> findings, ProgramResult result)
      throws IOException {
    String next = label;
    for (Finding finding : findings) {
      gutter.labelled(next, Paint.of(finding.level()), finding(finding, result));
      next = "";
    }
  }

  private static String finding(Finding finding, ProgramResult result) {
    return finding.level().word()
        + " "
        + finding.rule()
        + ", line "
        + place(result, finding.worst().at())
        + (finding.count() > 1 ? ", the worst of " + finding.count() : "")
        + ": "
        + finding.worst().message();
  }

  static String verdict(Comparison comparison) {
    List<String> parts = new ArrayList<>();
    if (!comparison.sheets().isEmpty()) {
      parts.add("two setup sheets, " + Words.count(comparison.sheets().size(), "value") + " apart");
    }
    parts.add(
        comparison.changes().isEmpty()
            ? "no difference in motion or state"
            : Words.count(comparison.changes().size(), "difference") + " of motion or state");
    boolean compared = comparison.surfaces().stream().allMatch(s -> s.notCompared().isEmpty());
    parts.add(
        comparison.surfaces().isEmpty()
            ? "the same surface"
            : compared ? "another surface" : "the surface not compared everywhere");
    parts.add(verdict(comparison.findings()));
    return String.join("; ", parts);
  }

  private static String verdict(FindingsDifference findings) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    counts.put("new", findings.added().size());
    counts.put("gone", findings.gone().size());
    for (FindingsDifference.Pair pair : findings.changed()) {
      counts.merge(
          switch (pair.how()) {
            case GRAVER -> "graver";
            case OFTENER -> "more often";
            case OTHERWISE -> "changed";
            case RARER -> "less often";
            case MILDER -> "less grave";
          },
          1,
          Integer::sum);
    }
    List<String> parts = new ArrayList<>();
    counts.forEach(
        (what, count) -> {
          if (count > 0) {
            parts.add(count + " " + what);
          }
        });
    return parts.isEmpty() ? "the same findings" : "findings: " + String.join(", ", parts);
  }
}
