package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.timing.FeedHold;
import hairline.checks.timing.FeedMove;
import hairline.checks.timing.FeedsShown;
import hairline.checks.timing.PlannedMove;
import hairline.checks.timing.ProgramSummary;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The feeds that the machine reaches, in the text report: each operation with its slowest moves.
 */
final class FeedsText {
  private static final int MOST_OPERATIONS = 12;
  private static final int FEW_MOVES = 5;

  private final ProgramResult result;
  private final boolean whole;
  private final List<SurfaceText.Part> parts = new ArrayList<>();

  private FeedsText(ProgramResult result, boolean whole) {
    this.result = result;
    this.whole = whole;
  }

  /**
   * The parts: the program, then its operations.
   *
   * @param result knows the files that lines stand in
   * @param whole whether all operations and all moves that were kept are shown
   */
  static List<SurfaceText.Part> of(FeedsShown feeds, ProgramResult result, boolean whole) {
    FeedsText text = new FeedsText(result, whole);
    text.program(feeds);
    int shown =
        whole ? feeds.operations().size() : Math.min(feeds.operations().size(), MOST_OPERATIONS);
    for (FeedsShown.Operation operation : feeds.operations().subList(0, shown)) {
      text.operation(operation);
    }
    if (shown < feeds.operations().size()) {
      text.parts.add(new SurfaceText.Part(List.of(), List.of(), feeds.operations().size() - shown));
    }
    return text.parts;
  }

  private void program(FeedsShown feeds) {
    List<SummaryText.Line> head = new ArrayList<>();
    if (!feeds.missing().isEmpty()) {
      head.add(
          new SummaryText.Line(
              "feeds", "not planned: not on the sheet: " + String.join(", ", feeds.missing())));
    } else if (feeds.plan().isEmpty()) {
      head.add(new SummaryText.Line("feeds", "none: no feed move is planned"));
    } else {
      ProgramSummary.Plan plan = feeds.plan().get();
      head.add(new SummaryText.Line("feeds", reached(plan)));
      lost(head, feeds.lostSeconds());
    }
    if (feeds.notPlanned() > 0 && feeds.missing().isEmpty()) {
      head.add(
          new SummaryText.Line(
              "left out",
              Words.count(feeds.notPlanned(), "feed move")
                  + " of which feed, place or limits are not known"));
    }
    if (!feeds.complete()) {
      head.add(
          new SummaryText.Line(
              "left out", "operations beyond the first " + feeds.operations().size()));
    }
    parts.add(new SurfaceText.Part(head, List.of(), 0));
  }

  /** What a plan comes to. */
  static String reached(ProgramSummary.Plan plan) {
    return times(plan)
        + "; below the programmed feed for "
        + percent(plan.shareOfTimeBelowFeed())
        + " of the time, on "
        + percent(plan.shareBelowFeed())
        + " of the length";
  }

  private static String times(ProgramSummary.Plan plan) {
    return Quantities.time(plan.plannedSeconds())
        + " at feed as planned, "
        + Quantities.time(plan.programmedSeconds())
        + " as programmed";
  }

  private static void lost(List<SummaryText.Line> head, Map<FeedHold, Double> lost) {
    String words = lost(lost);
    if (!words.isEmpty()) {
      head.add(new SummaryText.Line("lost to", words));
    }
  }

  /** What the time is lost to, most of it first; empty where none is. */
  static String lost(Map<FeedHold, Double> lost) {
    return lost.entrySet().stream()
        .filter(part -> part.getValue() > 0)
        .sorted(Map.Entry.<FeedHold, Double>comparingByValue().reversed())
        .map(part -> part.getKey().words() + " " + Quantities.time(part.getValue()))
        .collect(Collectors.joining(", "));
  }

  private void operation(FeedsShown.Operation operation) {
    ProgramSummary.Operation of = operation.of();
    List<SummaryText.Line> head = new ArrayList<>();
    StringBuilder text = new StringBuilder();
    text.append(of.tool().isPresent() ? "T" + of.tool().getAsInt() : "no known tool");
    if (of.rpm().isPresent()) {
      text.append(" at ").append(Quantities.rpm(of.rpm().getAsDouble()));
    }
    text.append(" from ").append(Words.line(result, of.from()));
    of.plan().ifPresent(plan -> text.append(": ").append(times(plan)));
    text.append("; ");
    if (operation.below() == 0) {
      text.append(
          operation.moves() == 1
              ? "its one feed move is at the programmed feed all the way"
              : "all " + operation.moves() + " feed moves are at the programmed feed all the way");
    } else {
      of.plan()
          .ifPresent(
              plan ->
                  text.append("below the programmed feed for ")
                      .append(percent(plan.shareOfTimeBelowFeed()))
                      .append(" of the time, in "));
      text.append(operation.below()).append(" of ").append(Words.count(operation.moves(), "move"));
    }
    head.add(new SummaryText.Line("operation", text.toString()));
    lost(head, operation.lostSeconds());
    int shown =
        whole ? operation.slowest().size() : Math.min(operation.slowest().size(), FEW_MOVES);
    parts.add(
        new SurfaceText.Part(
            head,
            shown == 0 ? List.of() : SurfaceText.aligned(rows(operation.slowest(), shown)),
            0));
  }

  private List<List<String>> rows(List<FeedsShown.Slow> moves, int shown) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(
        List.of(
            "furthest below",
            "programmed",
            "entry",
            "lowest",
            "mean mm/min",
            "mm",
            "s",
            "lost s",
            "count",
            "held by"));
    for (FeedsShown.Slow slow : moves.subList(0, shown)) {
      FeedMove move = slow.first();
      PlannedMove planned = move.planned().orElseThrow();
      rows.add(
          List.of(
              Words.line(result, move.move().at()),
              Quantities.significant(move.move().feedMmPerMin().orElse(0), 5),
              Quantities.significant(planned.entryMmPerMin(), 4),
              Quantities.significant(planned.lowestMmPerMin(), 4),
              Quantities.significant(planned.meanMmPerMin(), 4),
              Quantities.significant(move.move().lengthMm(), 4),
              Quantities.significant(planned.seconds(), 3),
              Quantities.significant(move.lostSeconds(), 3),
              Long.toString(slow.count()),
              move.held().map(FeedHold::words).orElse("")));
    }
    return rows;
  }

  static String percent(double share) {
    return Quantities.significant(share * 100, 3) + " %";
  }
}
