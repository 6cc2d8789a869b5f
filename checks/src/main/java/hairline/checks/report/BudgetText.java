package hairline.checks.report;

import hairline.checks.budget.Decision;
import hairline.checks.budget.Missing;
import hairline.checks.budget.Part;
import hairline.checks.budget.Source;
import hairline.checks.budget.StepBudget;
import hairline.checks.budget.StepBudget.Weighed;
import hairline.checks.cutting.Band;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The error budgets of steps in the text report: a table each, the tightest first. */
final class BudgetText {
  private static final int MOST_TABLES = 12;
  private static final int DIGITS = 4;
  private static final int PERCENT_DIGITS = 2;
  private static final List<String> HEADING =
      List.of("part", "µm", "share", "if halved", "reckoned from");
  private static final String BETWEEN = "  ";

  /**
   * One budget, or several that differ in nothing but their places.
   *
   * @param head whose budget it is and what it comes to
   * @param decision what can be said of it
   * @param table rows of a table, the heading first
   * @param foot what brings nothing, and what is missing
   */
  record Table(
      SummaryText.Line head,
      Decision decision,
      SummaryText.Line result,
      List<String> table,
      List<SummaryText.Line> foot) {}

  /** All but the places of a budget. */
  private record Alike(
      String feature,
      long upperZPm,
      long lowerZPm,
      List<Part> parts,
      List<Missing> missing,
      BlockDelete blockDelete) {}

  private final ProgramResult result;
  private final int width;

  private BudgetText(ProgramResult result, int width) {
    this.result = result;
    this.width = width;
  }

  /** The tables, the tightest first. */
  static List<Table> of(ProgramResult result, int width) {
    BudgetText text = new BudgetText(result, width);
    Map<Alike, List<ProgramResult.Budget>> groups = new LinkedHashMap<>();
    result.budgets().stream()
        .sorted(Comparator.comparingDouble((ProgramResult.Budget b) -> -tightness(b.step())))
        .forEach(b -> groups.computeIfAbsent(alike(b), a -> new ArrayList<>()).add(b));
    return groups.values().stream().map(text::table).toList();
  }

  /** How many tables are shown. */
  static int shown(int tables, boolean all) {
    return all ? tables : Math.min(tables, MOST_TABLES);
  }

  private static double tightness(StepBudget budget) {
    return budget.errorUm().typical() / budget.toleranceUm().orElse(1);
  }

  private static Alike alike(ProgramResult.Budget budget) {
    StepBudget step = budget.step();
    return new Alike(
        step.step().feature().orElse(""),
        step.step().upperZPm(),
        step.step().lowerZPm(),
        step.parts(),
        step.missing(),
        budget.blockDelete());
  }

  private Table table(List<ProgramResult.Budget> alike) {
    StepBudget budget = alike.get(0).step();
    List<Weighed> counting = budget.weighed().stream().filter(w -> w.um() != 0).toList();
    List<List<String>> rows = new ArrayList<>();
    counting.forEach(weighed -> rows.add(row(weighed)));
    return new Table(
        new SummaryText.Line("budget", head(alike)),
        budget.decision(),
        new SummaryText.Line(label(budget.decision()), outcome(budget)),
        rows.isEmpty() ? List.of() : aligned(rows),
        foot(budget));
  }

  private String head(List<ProgramResult.Budget> alike) {
    StepBudget budget = alike.get(0).step();
    Place at = budget.step().at();
    return Words.line(result, at)
        + budget.step().feature().map(name -> ", " + name).orElse("")
        + ": step of "
        + Quantities.um(budget.step().heightPm())
        + ", "
        + (budget.step().upperUncut() ? "the uncut top at " : "")
        + Quantities.mm(budget.step().upperZPm())
        + " down to "
        + Quantities.mm(budget.step().lowerZPm())
        + (alike.size() > 1 ? "; " + (alike.size() - 1) + " more alike" : "")
        + switch (alike.get(0).blockDelete()) {
          case BOTH -> "";
          case ONLY_ON -> "; with block delete on";
          case ONLY_OFF -> "; with block delete off";
        };
  }

  private static String label(Decision decision) {
    return switch (decision) {
      case HOLDS -> "holds";
      case UNDECIDED -> "▲ open";
      case FAILS -> "■ fails";
    };
  }

  private static String outcome(StepBudget budget) {
    double eitherWayUm = 0;
    for (Part part : budget.parts()) {
      if (part instanceof Part.DriftEitherWay drift) {
        eitherWayUm += drift.um();
      }
    }
    StringBuilder text = new StringBuilder(opening(budget));
    text.append("|")
        .append(number(budget.driftUm()))
        .append(eitherWayUm > 0 ? "| + " + number(eitherWayUm) + " + " : "| + ")
        .append(StepBudget.COVERAGE_FACTOR)
        .append(" × ")
        .append(number(budget.standardUncertaintyUm()))
        .append(" = ")
        .append(Quantities.um(budget.errorUm().typical()))
        .append(range(budget.errorUm(), " (", ")"));
    if (budget.toleranceUm().isPresent() && budget.guardUm().isPresent()) {
      double toleranceUm = budget.toleranceUm().getAsDouble();
      double guardUm = budget.guardUm().getAsDouble();
      text.append("; tolerance ±")
          .append(Quantities.um(toleranceUm))
          .append(", gauge ")
          .append(Quantities.um(guardUm))
          .append(": ")
          .append(
              toleranceUm >= guardUm
                  ? "holds up to " + Quantities.um(toleranceUm - guardUm)
                  : "nothing is shown to hold")
          .append(", fails above ")
          .append(Quantities.um(toleranceUm + guardUm));
    }
    return text.toString();
  }

  private static String opening(StepBudget budget) {
    if (budget.missing().isEmpty()) {
      return "may be off by ";
    }
    String missing =
        budget.missing().stream()
            .map(m -> m.source().words())
            .distinct()
            .collect(Collectors.joining(", "));
    return budget.decision() == Decision.FAILS
        ? "may be off, " + missing + " not counted, by "
        : "not decided, missing: " + missing + "; the rest makes ";
  }

  private static List<String> row(Weighed weighed) {
    Part part = weighed.part();
    boolean eitherWay = part instanceof Part.Random || part instanceof Part.DriftEitherWay;
    return List.of(
        part.source().words(),
        (eitherWay ? "±" : "") + number(weighed.um()),
        Quantities.significant(weighed.shareOfError() * 100, PERCENT_DIGITS) + " %",
        (weighed.halvingGainsUm() < 0 ? "+" : "") + number(-weighed.halvingGainsUm()),
        part instanceof Part.Drift drift
            ? range(drift.um(), "", "; ") + part.basis()
            : part.basis());
  }

  private static List<SummaryText.Line> foot(StepBudget budget) {
    List<SummaryText.Line> foot = new ArrayList<>();
    List<String> nothing = new ArrayList<>();
    for (Weighed weighed : budget.weighed()) {
      if (weighed.um() == 0) {
        nothing.add(weighed.part().source().words() + " (" + weighed.part().basis() + ")");
      }
    }
    if (!nothing.isEmpty()) {
      foot.add(new SummaryText.Line("nothing", "from " + String.join(", ", nothing)));
    }
    Map<Source, List<Missing>> bySource = new LinkedHashMap<>();
    budget
        .missing()
        .forEach(m -> bySource.computeIfAbsent(m.source(), k -> new ArrayList<>()).add(m));
    String label = "missing";
    for (Map.Entry<Source, List<Missing>> part : bySource.entrySet()) {
      foot.add(
          new SummaryText.Line(label, part.getKey().words() + ": " + reasons(part.getValue())));
      label = "";
    }
    return foot;
  }

  /** "machine.a, machine.b not on the sheet; the force is not known". */
  private static String reasons(List<Missing> missing) {
    String keys =
        missing.stream()
            .filter(Missing::isKey)
            .map(Missing::reason)
            .collect(Collectors.joining(", "));
    String others =
        missing.stream()
            .filter(m -> !m.isKey())
            .map(Missing::reason)
            .distinct()
            .collect(Collectors.joining("; "));
    return keys.isEmpty()
        ? others
        : keys + " not on the sheet" + (others.isEmpty() ? "" : "; " + others);
  }

  /** "0.4 to 0.5", or nothing for a band without width. */
  private static String range(Band band, String before, String behind) {
    return band.isExact()
        ? ""
        : before + number(band.low()) + " to " + number(band.high()) + behind;
  }

  private static String number(double um) {
    return Quantities.significant(um, DIGITS);
  }

  /** Columns of equal width; the last one is wrapped. */
  private List<String> aligned(List<List<String>> rows) {
    int last = HEADING.size() - 1;
    int[] widths = new int[last];
    for (int k = 0; k < last; k++) {
      widths[k] = DisplayWidth.of(HEADING.get(k));
      for (List<String> row : rows) {
        widths[k] = Math.max(widths[k], DisplayWidth.of(row.get(k)));
      }
    }
    int used = 0;
    for (int columns : widths) {
      used += columns + BETWEEN.length();
    }
    List<String> lines = new ArrayList<>();
    lines.add(line(HEADING, widths, HEADING.get(last)));
    for (List<String> row : rows) {
      List<String> parts = Wrap.at(Math.max(1, width - used), Visible.of(row.get(last)));
      lines.add(line(row, widths, parts.get(0)));
      for (String more : parts.subList(1, parts.size())) {
        lines.add(" ".repeat(used) + more);
      }
    }
    return lines;
  }

  /** The first column to the left, numbers to the right. */
  private static String line(List<String> row, int[] widths, String end) {
    StringBuilder line = new StringBuilder();
    for (int k = 0; k < widths.length; k++) {
      String cell = Visible.of(row.get(k));
      String pad = " ".repeat(Math.max(0, widths[k] - DisplayWidth.of(cell)));
      line.append(k == 0 ? cell + pad : pad + cell).append(BETWEEN);
    }
    return line.append(end).toString();
  }
}
