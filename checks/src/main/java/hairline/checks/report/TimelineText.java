package hairline.checks.report;

import hairline.checks.cutting.Band;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.warmth.ProgramTimeline;
import hairline.checks.warmth.ProgramTimeline.Cutting;
import hairline.checks.warmth.ProgramTimeline.Mark;
import hairline.checks.warmth.ProgramTimeline.Point;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The timeline of a program in the text report: lanes with one letter for each part of the time,
 * and what happens in its order.
 */
final class TimelineText {
  private static final int MOST_ROWS = 60;
  private static final int NAME_WIDTH = 8;
  private static final int FEWEST_LETTERS = 20;
  private static final int MOST_LETTERS = 96;
  private static final String HEIGHTS = "▁▂▃▄▅▆▇█";

  /** Times nearer than this are one. */
  private static final double NOW_SECONDS = 1e-6;

  private final ProgramTimeline timeline;
  private final ProgramResult result;
  private final double seconds;

  /** A row of the table. */
  private record Row(double fromSeconds, double toSeconds, int rank, String what, String more) {
    Row(double fromSeconds, double toSeconds, int rank, String what) {
      this(fromSeconds, toSeconds, rank, what, "");
    }
  }

  private TimelineText(ProgramTimeline timeline, ProgramResult result) {
    this.timeline = timeline;
    this.result = result;
    this.seconds = timeline.time().atLeastSeconds();
  }

  /**
   * The lanes and the table.
   *
   * @param columns how wide they may be
   * @param whole whether the table is shown whole
   */
  static List<SurfaceText.Part> of(
      ProgramTimeline timeline, ProgramResult result, int columns, boolean whole) {
    TimelineText text = new TimelineText(timeline, result);
    List<SurfaceText.Part> parts = new ArrayList<>();
    parts.add(new SurfaceText.Part(text.head(), text.lanes(columns), 0));
    List<List<String>> rows = text.rows();
    if (rows.size() > 1) {
      int shown = whole ? rows.size() : Math.min(rows.size(), MOST_ROWS + 1);
      parts.add(
          new SurfaceText.Part(
              List.of(), SurfaceText.aligned(rows.subList(0, shown)), rows.size() - shown));
    }
    return parts;
  }

  private List<SummaryText.Line> head() {
    List<SummaryText.Line> head = new ArrayList<>();
    head.add(new SummaryText.Line("timeline", TimelineWords.whole(timeline)));
    for (String note : timeline.notes()) {
      head.add(new SummaryText.Line("", note));
    }
    return head;
  }

  // Lanes.

  private List<String> lanes(int columns) {
    if (!(seconds > 0)) {
      return List.of();
    }
    int letters = Math.max(FEWEST_LETTERS, Math.min(MOST_LETTERS, columns - NAME_WIDTH - 2));
    List<String> lanes = new ArrayList<>();
    double fastest = 0;
    double tallest = 0;
    for (Point point : timeline.points()) {
      fastest = Math.max(fastest, point.rpm().orElse(0));
      tallest = Math.max(tallest, Math.abs(typical(point)));
    }
    lanes.add(lane("speed", speeds(letters, fastest)) + "  up to " + Quantities.rpm(fastest));
    if (timeline.growthTold()) {
      lanes.add(lane("growth", growth(letters, tallest)) + "  up to " + Quantities.um(tallest));
    }
    lanes.add(lane("tool", marks(letters, false)));
    if (timeline.marks().stream().anyMatch(TimelineText::isStop)) {
      lanes.add(lane("stops", marks(letters, true)));
    }
    lanes.add(lane("cuts", cuts(letters)));
    String end = Quantities.time(seconds);
    lanes.add(lane("", "0" + " ".repeat(Math.max(1, letters - 1 - DisplayWidth.of(end))) + end));
    lanes.add(
        lane("", "W warm-up  T tool change  M measuring  S stop for the operator  ")
            + "█ fine cut  ░ other cut");
    return lanes;
  }

  private static String lane(String name, String letters) {
    return name + " ".repeat(NAME_WIDTH - name.length()) + letters;
  }

  /** The fastest in each part of the time; "·" standing, "?" not known. */
  private String speeds(int letters, double fastest) {
    char[] lane = new char[letters];
    List<Point> points = timeline.points();
    for (int k = 0; k < letters; k++) {
      double from = seconds * k / letters;
      double to = seconds * (k + 1) / letters;
      OptionalDouble most = OptionalDouble.of(0);
      for (int p = 0; p + 1 < points.size(); p++) {
        boolean here = points.get(p).seconds() < to && points.get(p + 1).seconds() > from;
        if (here && most.isPresent()) {
          OptionalDouble rpm = points.get(p).rpm();
          most = rpm.isEmpty() || rpm.getAsDouble() > most.getAsDouble() ? rpm : most;
        }
      }
      lane[k] = most.isEmpty() ? '?' : height(most.getAsDouble(), fastest);
    }
    return new String(lane);
  }

  /** The growth in the middle of each part of the time; "?" not known. */
  private String growth(int letters, double tallest) {
    char[] lane = new char[letters];
    for (int k = 0; k < letters; k++) {
      Optional<Band> um = timeline.growthAt(seconds * (k + 0.5) / letters);
      lane[k] = um.isEmpty() ? '?' : height(Math.abs(um.get().typical()), tallest);
    }
    return new String(lane);
  }

  private static char height(double value, double most) {
    int eighths = most > 0 ? (int) Math.ceil(value / most * HEIGHTS.length() - 1e-9) : 0;
    return eighths <= 0 ? '·' : HEIGHTS.charAt(Math.min(eighths, HEIGHTS.length()) - 1);
  }

  /** A stop takes no time by itself, and would hide what happens beside it, or be hidden. */
  private static boolean isStop(Mark mark) {
    return mark.kind() == ProgramTimeline.Kind.OPERATOR;
  }

  private String marks(int letters, boolean stops) {
    char[] lane = " ".repeat(letters).toCharArray();
    timeline.marks().stream()
        .filter(mark -> isStop(mark) == stops)
        .sorted(Comparator.comparing(TimelineText::weight))
        .forEach(mark -> fill(lane, mark.fromSeconds(), mark.toSeconds(), letter(mark)));
    return new String(lane);
  }

  private static char letter(Mark mark) {
    return switch (mark.kind()) {
      case WARM_UP -> 'W';
      case MEASURING -> 'M';
      case TOOL_CHANGE -> 'T';
      case OPERATOR -> 'S';
    };
  }

  /** What stands above others in one place. */
  private static int weight(Mark mark) {
    return switch (mark.kind()) {
      case WARM_UP -> 0;
      case TOOL_CHANGE -> 1;
      case OPERATOR -> 2;
      case MEASURING -> 3;
    };
  }

  private String cuts(int letters) {
    char[] lane = " ".repeat(letters).toCharArray();
    timeline.otherCuts().forEach(cut -> fill(lane, cut.fromSeconds(), cut.toSeconds(), '░'));
    timeline.fineCuts().forEach(cut -> fill(lane, cut.fromSeconds(), cut.toSeconds(), '█'));
    return new String(lane);
  }

  private void fill(char[] lane, double from, double to, char letter) {
    int first = Math.min(lane.length - 1, (int) (from / seconds * lane.length));
    int last = Math.min(lane.length - 1, (int) (to / seconds * lane.length - 1e-9));
    for (int k = first; k <= Math.max(first, last); k++) {
      lane[k] = letter;
    }
  }

  private static double typical(Point point) {
    return point.growthUm().map(Band::typical).orElse(0.0);
  }

  // Table.

  private List<List<String>> rows() {
    List<Row> all = new ArrayList<>();
    spindle(all);
    for (Mark mark : timeline.marks()) {
      all.add(new Row(mark.fromSeconds(), mark.toSeconds(), 1, TimelineWords.mark(result, mark)));
    }
    cuts(all, timeline.otherCuts(), "cuts");
    cuts(all, timeline.fineCuts(), "fine cuts");
    all.sort(Comparator.comparingDouble(Row::fromSeconds).thenComparing(Row::rank));
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("from min:s", "to", "rpm", "growth µm", "to", ""));
    for (Row row : all) {
      Optional<Point> at = timeline.at(row.fromSeconds() + NOW_SECONDS);
      OptionalDouble rpm = at.isPresent() ? at.get().rpm() : OptionalDouble.empty();
      rows.add(
          List.of(
              TimelineWords.clock(row.fromSeconds()),
              TimelineWords.clock(row.toSeconds()),
              rpm.isPresent() ? Quantities.significant(rpm.getAsDouble(), 6) : "?",
              TimelineWords.um(timeline.growthAt(row.fromSeconds() + NOW_SECONDS)),
              TimelineWords.um(timeline.growthAt(row.toSeconds() - NOW_SECONDS)),
              row.what()));
      if (!row.more().isEmpty()) {
        rows.add(List.of("", "", "", "", "", row.more()));
      }
    }
    return rows;
  }

  /** One row for each stretch of one speed that takes time. */
  private void spindle(List<Row> all) {
    List<Point> points = timeline.points();
    int from = 0;
    for (int p = 1; p <= points.size(); p++) {
      if (p == points.size() || !points.get(p).rpm().equals(points.get(from).rpm())) {
        double begin = points.get(from).seconds();
        double end = p == points.size() ? seconds : points.get(p).seconds();
        if (end > begin + NOW_SECONDS) {
          OptionalDouble rpm = points.get(from).rpm();
          String what = "speed not known";
          if (rpm.isPresent()) {
            what = rpm.getAsDouble() > 0 ? "spindle turns" : "spindle stands";
          }
          all.add(new Row(begin, end, 0, what));
        }
        from = p;
      }
    }
  }

  /** Cuts of one tool at one speed, with no stop and no mark between, are one row. */
  private void cuts(List<Row> all, List<Cutting> cuts, String what) {
    int from = 0;
    for (int c = 1; c <= cuts.size(); c++) {
      if (c < cuts.size()
          && cuts.get(c).tool().equals(cuts.get(from).tool())
          && noMarkBetween(cuts.get(c - 1).toSeconds(), cuts.get(c).fromSeconds())
          && turnsOn(cuts.get(c - 1).toSeconds(), cuts.get(c).fromSeconds())) {
        continue;
      }
      Cutting first = cuts.get(from);
      Cutting last = cuts.get(c - 1);
      all.add(
          new Row(
              first.fromSeconds(),
              last.toSeconds(),
              2,
              TimelineWords.cuts(result, what, first, last),
              TimelineWords.drift(first.driftAtStartUm(), last.driftAtEndUm())));
      from = c;
    }
  }

  /** Whether the spindle goes on at one speed. */
  private boolean turnsOn(double from, double to) {
    List<Point> points = timeline.points();
    for (int p = 1; p < points.size(); p++) {
      double at = points.get(p).seconds();
      if (at >= from - NOW_SECONDS
          && at <= to + NOW_SECONDS
          && !points.get(p).rpm().equals(points.get(p - 1).rpm())) {
        return false;
      }
    }
    return true;
  }

  private boolean noMarkBetween(double from, double to) {
    return timeline.marks().stream()
        .noneMatch(
            mark ->
                mark.fromSeconds() >= from - NOW_SECONDS && mark.toSeconds() <= to + NOW_SECONDS);
  }
}
