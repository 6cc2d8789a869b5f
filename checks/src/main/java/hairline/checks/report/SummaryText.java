package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Extent;
import hairline.checks.motion.ToolUse;
import hairline.checks.timing.Gap;
import hairline.checks.timing.ProgramSummary;
import hairline.checks.timing.TimeTaken;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The summary of a program in the text report: labels for the gutter, and what they speak of. */
final class SummaryText {
  private static final int MOST_ITEMS = 12;

  /** A line; one without a label goes on with the label before. */
  record Line(String label, String text) {}

  private final List<Line> lines = new ArrayList<>();

  private final ProgramResult result;

  private SummaryText(ProgramResult result) {
    this.result = result;
  }

  /**
   * The summary.
   *
   * @param result knows the files that its lines stand in
   */
  static List<Line> of(ProgramSummary summary, ProgramResult result) {
    SummaryText text = new SummaryText(result);
    text.moves(summary);
    text.reach(summary);
    text.time(summary);
    text.operations(summary);
    text.tools(summary);
    text.calls(summary);
    text.end(summary);
    text.doubts(summary);
    return text.lines;
  }

  private void add(String label, String text) {
    lines.add(new Line(label, text));
  }

  private void moves(ProgramSummary summary) {
    long arcs = summary.arcsClockwise() + summary.arcsCounterClockwise();
    add(
        "moves",
        summary.moves()
            + " in "
            + Words.count(summary.blocks(), "block")
            + ": "
            + summary.rapids()
            + " rapid, "
            + summary.lines()
            + " straight, "
            + Words.count(arcs, "arc")
            + (arcs == 0 ? "" : " (" + summary.arcsClockwise() + " clockwise)")
            + (summary.inCycles() == 0 ? "" : "; " + summary.inCycles() + " of them in cycles")
            + (summary.dwells() == 0 ? "" : "; " + Words.count(summary.dwells(), "dwell")));
    add(
        "path",
        Quantities.mm(summary.feedMm())
            + " at feed, "
            + Quantities.mm(summary.rapidMm())
            + " rapid");
  }

  private void reach(ProgramSummary summary) {
    String label = "reach";
    for (ProgramSummary.Reach reach : summary.extents()) {
      String offset = reach.workOffset().isEmpty() ? "no known offset" : reach.workOffset();
      if (!reach.feed().isEmpty()) {
        add(label, offset + " at feed: " + extents(reach.feed()));
        label = "";
      }
      if (!reach.rapid().isEmpty()) {
        add(label, offset + " rapid: " + extents(reach.rapid()));
        label = "";
      }
    }
  }

  private static String extents(Map<Axis, Extent> extents) {
    List<String> parts = new ArrayList<>();
    extents.forEach(
        (axis, extent) -> {
          int scale = axis.linear() ? 9 : 6;
          parts.add(
              axis
                  + " "
                  + (extent.lowest() == extent.highest()
                      ? ""
                      : plain(extent.lowest(), scale) + " to ")
                  + plain(extent.highest(), scale)
                  + (axis.linear() ? " mm" : "°"));
        });
    return String.join(", ", parts);
  }

  /** To ten nanometres, a tenth of the finest increment in use, or a ten thousandth of a degree. */
  private static String plain(long value, int scale) {
    BigDecimal number =
        BigDecimal.valueOf(value, scale).setScale(scale == 9 ? 5 : 4, RoundingMode.HALF_UP);
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }

  private void time(ProgramSummary summary) {
    TimeTaken time = summary.time();
    StringBuilder text = new StringBuilder(time.isKnown() ? "" : "at least ");
    text.append(Quantities.time(time.atLeastSeconds()))
        .append(summary.plan().isPresent() ? " as planned" : " as programmed");
    if (!time.isKnown() && !Double.isInfinite(time.atMostSeconds())) {
      text.append(", at most ").append(Quantities.time(time.atMostSeconds()));
    }
    text.append(": ").append(Quantities.time(summary.feedSeconds())).append(" at feed");
    text.append(", ").append(Quantities.time(summary.rapidSeconds())).append(" rapid");
    text.append(", ").append(Quantities.time(summary.dwellSeconds())).append(" dwelling");
    add("time", text.toString());
    summary
        .plan()
        .ifPresent(
            plan ->
                add(
                    "",
                    "feed moves "
                        + Quantities.time(plan.plannedSeconds())
                        + " as planned, "
                        + Quantities.time(plan.programmedSeconds())
                        + " at the commanded feeds; below the commanded feed on "
                        + Quantities.significant(plan.shareBelowFeed() * 100, 3)
                        + " % of their length, for "
                        + Quantities.significant(plan.shareOfTimeBelowFeed() * 100, 3)
                        + " % of their time"));
    for (Gap gap : time.gaps()) {
      add(
          "",
          "not in it: "
              + gap.cause().reason()
              + gap.cause().key().map(key -> " (" + key + ")").orElse("")
              + "; "
              + Words.line(result, gap.at()));
    }
  }

  private void operations(ProgramSummary summary) {
    String label = "times";
    int shown = 0;
    for (ProgramSummary.Operation operation : summary.operations()) {
      if (++shown > MOST_ITEMS) {
        add("", (summary.operations().size() - MOST_ITEMS) + " more operations");
        return;
      }
      StringBuilder text = new StringBuilder();
      text.append(
          operation.tool().isPresent() ? "T" + operation.tool().getAsInt() : "no known tool");
      if (operation.rpm().isPresent()) {
        text.append(" at ").append(Quantities.rpm(operation.rpm().getAsDouble()));
      }
      text.append(" from ").append(Words.line(result, operation.from()));
      text.append(": ").append(Quantities.time(operation.seconds()));
      operation
          .plan()
          .ifPresent(
              plan ->
                  text.append(", ")
                      .append(Quantities.time(plan.plannedSeconds()))
                      .append(" at feed (")
                      .append(Quantities.time(plan.programmedSeconds()))
                      .append(" as programmed), below the commanded feed for ")
                      .append(Quantities.significant(plan.shareOfTimeBelowFeed() * 100, 3))
                      .append(" % of it"));
      add(label, text.toString());
      label = "";
    }
  }

  private void tools(ProgramSummary summary) {
    String label = "tools";
    for (ToolUse tool : summary.tools()) {
      StringBuilder text = new StringBuilder();
      text.append(tool.number().isPresent() ? "T" + tool.number().getAsInt() : "no known tool");
      text.append(" from ").append(Words.line(result, tool.first()));
      List<String> speeds = tool.speedsRpm().stream().map(Quantities::rpm).toList();
      if (!speeds.isEmpty()) {
        text.append(", ").append(String.join(", ", speeds));
      }
      if (tool.feedsMmPerMin().isPresent()) {
        ToolUse.Feeds feeds = tool.feedsMmPerMin().get();
        text.append(", feed ");
        if (feeds.lowest() != feeds.highest()) {
          text.append(Quantities.significant(feeds.lowest(), 5)).append(" to ");
        }
        text.append(Quantities.feed(feeds.highest()));
      }
      text.append(", ").append(Quantities.mm(tool.feedMm())).append(" at feed");
      add(label, text.toString());
      label = "";
    }
  }

  private void calls(ProgramSummary summary) {
    if (!summary.calls().isEmpty()) {
      List<String> calls = new ArrayList<>();
      summary.calls().forEach((name, count) -> calls.add(name + " × " + count));
      add("calls", String.join(", ", calls));
    }
  }

  private void end(ProgramSummary summary) {
    if (summary.ending().isEmpty()) {
      add("end", "not reached");
      return;
    }
    ProgramSummary.Ending end = summary.ending().get();
    add("end", Words.line(result, end.at()) + ", " + end.code().orElse("no end code"));
    List<String> modes = new ArrayList<>();
    ModesText.of(end.modes(), result)
        .forEach(
            (item, value) -> {
              if (value.equals("not set") || value.contains("unknown")) {
                modes.add(words(item) + " " + value);
              } else {
                modes.add(value);
              }
            });
    add("state", String.join(", ", modes));
  }

  /** "feedMode" as "feed mode". */
  private static String words(String item) {
    return item.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
  }

  private void doubts(ProgramSummary summary) {
    String label = "doubts";
    int shown = 0;
    for (ProgramSummary.Doubt doubt : summary.doubts()) {
      if (++shown > MOST_ITEMS) {
        add("", (summary.doubts().size() - MOST_ITEMS) + " more");
        return;
      }
      add(
          label,
          doubt.what()
              + "; "
              + Words.line(result, doubt.first())
              + (doubt.count() > 1 ? " and " + (doubt.count() - 1) + " more" : ""));
      label = "";
    }
  }
}
