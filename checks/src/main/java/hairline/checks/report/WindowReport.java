package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.CuttingWindow;
import hairline.checks.rules.CuttingWindow.Limit;
import hairline.checks.rules.CuttingWindow.Limits;
import hairline.checks.rules.CuttingWindow.OfClass;
import hairline.checks.rules.CuttingWindow.Remedy;
import hairline.checks.rules.WindowSolver;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The windows of a program's operations as text. */
public final class WindowReport {
  private final Writer out;
  private final Gutter gutter;
  private final ReportOptions options;

  /** Writes UTF-8. */
  public WindowReport(OutputStream out, ReportOptions options) {
    this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    this.gutter = new Gutter(this.out, options.width(), options.colour());
    this.options = options;
  }

  /**
   * Writes them.
   *
   * @param result knows the program as the user named it, its files, and the sheet that the limits
   *     come from
   * @throws IOException if it can't be written
   */
  public void write(ProgramResult result, List<CuttingWindow> windows) throws IOException {
    for (Conditions.Named condition : options.conditions().all()) {
      gutter.labelled(condition.name(), Paint.WARNING, condition.text());
    }
    gutter.labelled("window", Paint.STRONG, result.program(), true);
    gutter.labelled("sheet", Paint.QUIET, result.sheet());
    for (String unread : Words.unread(result)) {
      gutter.labelled("unread", Paint.ERROR, unread + "; hairline check tells where");
    }
    if (windows.isEmpty()) {
      gutter.line("");
      gutter.labelled(
          "",
          Paint.QUIET,
          "no operation cuts with a tool of the sheet at a feed and a speed that are known");
    }
    for (CuttingWindow window : windows) {
      write(result, window);
    }
    gutter.line("");
    gutter.rule();
    gutter.labelled("caution", Paint.QUIET, Words.CAUTION);
    gutter.labelled(
        "",
        Paint.QUIET,
        "limits are those of the rules, each with all else as programmed; the part decides");
    if (windows.stream()
        .anyMatch(
            w ->
                w.feed().all().stream()
                    .anyMatch(l -> l.rule().equals(WindowSolver.ACCELERATION)))) {
      gutter.labelled("", Paint.QUIET, ACCELERATION_MEANS);
    }
    out.flush();
  }

  private void write(ProgramResult result, CuttingWindow window) throws IOException {
    gutter.line("");
    gutter.labelled("", Paint.QUIET, heading(result, window), true);
    boolean closed = window.feed().closed();
    boolean holds = window.feed().hold(window.feedMmPerMin());
    gutter.labelled(
        "feed",
        holds ? Paint.STRONG : Paint.ERROR,
        (closed ? "no feed will do: " : range(window.feed(), "mm/min") + "; ")
            + (closed ? closing(window.feed(), "mm/min") + "; " : "")
            + "programmed "
            + Quantities.feed(window.feedMmPerMin())
            + ", "
            + Quantities.um(perTooth(window, window.feedMmPerMin()))
            + " a tooth"
            + (holds || closed ? "" : ": outside")
            + (window.classes().size() > 1 ? "; all feeds of the operation together" : ""));
    limits(window.feed(), "mm/min", feed -> " = " + Quantities.um(perTooth(window, feed)));
    remedies(window, "feed", closed);
    for (OfClass of : window.classes()) {
      ofClass(window, of);
    }
    if (window.depth().isPresent()) {
      Limits depth = window.depth().get();
      String programmed =
          window
              .depthsUm()
              .map(
                  span ->
                      "; programmed "
                          + Quantities.significant(span.lowest(), 4)
                          + (span.lowest() == span.highest()
                              ? ""
                              : " to " + Quantities.significant(span.highest(), 4))
                          + " µm")
              .orElse("");
      gutter.labelled(
          "depth",
          Paint.STRONG,
          (depth.closed() ? "no depth will do: " + closing(depth, "µm") : range(depth, "µm"))
              + programmed);
      limits(depth, "µm", um -> "");
      remedies(window, "depth", depth.closed());
    } else {
      gutter.labelled(
          "depth",
          Paint.STRONG,
          window.classes().stream().anyMatch(of -> of.taken().isPresent())
              ? "no pass at a level of known depth; of the moves that vary Z see depth taken"
              : "not told: no pass at a level of known depth");
    }
    gutter.labelled(
        "speed",
        Paint.STRONG,
        (window.speed().closed()
                ? "no speed will do: " + closing(window.speed(), "rpm")
                : range(window.speed(), "rpm"))
            + "; programmed "
            + Quantities.rpm(window.rpm()));
    limits(window.speed(), "rpm", rpm -> "");
    remedies(window, "speed", window.speed().closed());
    for (String reason : window.notKnown()) {
      gutter.labelled("not known", Paint.WARNING, reason);
    }
  }

  private void remedies(CuttingWindow window, String opens, boolean closed) throws IOException {
    if (!closed) {
      return;
    }
    String label = "opens at";
    for (Remedy remedy : window.remedies()) {
      if (remedy.opens().equals(opens)) {
        gutter.labelled(label, Paint.WARNING, remedy(remedy));
        label = "";
      }
    }
    if (!label.isEmpty()) {
      gutter.labelled(label, Paint.WARNING, "no change of one figure was found that opens it");
    }
  }

  private static String remedy(Remedy remedy) {
    if (remedy.unit().equals("times")) {
      return remedy.what() + " " + Quantities.significant(remedy.to(), 4) + " times";
    }
    return remedy.what()
        + " "
        + Quantities.significant(remedy.to(), 4)
        + " "
        + remedy.unit()
        + (remedy.from() == remedy.to()
            ? ""
            : " instead of " + Quantities.significant(remedy.from(), 4) + " " + remedy.unit());
  }

  /** The window of a class of moves; where it is the only one, its feed is told above. */
  private void ofClass(CuttingWindow window, OfClass of) throws IOException {
    String programmed =
        "programmed "
            + (of.feeds().lowest() == of.feeds().highest()
                ? ""
                : Quantities.significant(of.feeds().lowest(), 4) + " to ")
            + Quantities.feed(of.feeds().highest())
            + (of.feeds().lowest() == of.feeds().highest()
                ? ""
                : ", most of it " + Quantities.feed(of.feedMmPerMin()));
    boolean alone = window.classes().size() == 1;
    if (alone) {
      gutter.labelled("", Paint.QUIET, "all feed moves: " + of.moves().words());
    } else {
      gutter.labelled(
          "feed",
          of.feed().hold(of.feedMmPerMin()) ? Paint.STRONG : Paint.ERROR,
          of.moves().words()
              + ": "
              + (of.feed().closed()
                  ? "no feed will do: " + closing(of.feed(), "mm/min")
                  : of.feed().all().isEmpty()
                      ? "no rule holds a limit against it"
                      : range(of.feed(), "mm/min"))
              + "; "
              + programmed);
      limits(of.feed(), "mm/min", feed -> " = " + Quantities.um(perTooth(window, feed)));
    }
    if (of.taken().isPresent()) {
      gutter.labelled(
          "depth",
          Paint.STRONG,
          "taken "
              + of.moves().words()
              + ": "
              + (of.taken().get().closed()
                  ? "no depth will do: " + closing(of.taken().get(), "µm")
                  : range(of.taken().get(), "µm"))
              + "; largest as programmed "
              + number(of.takenUm().orElse(0))
              + " µm; all of them together, the width of the cut as it is");
      limits(of.taken().get(), "µm", um -> "");
    }
  }

  /** What the limit that no rule speaks of means. */
  static final String ACCELERATION_MEANS =
      "acceleration is no rule's limit but this program's own measure: above it the machine, as"
          + " planned, stays below the feed on more than half of the length that is cut";

  static String heading(ProgramResult result, CuttingWindow window) {
    return "operation "
        + window.operation()
        + ": tool "
        + window.tool()
        + " at "
        + Quantities.rpm(window.rpm())
        + ", from "
        + Words.line(result, window.first());
  }

  private static double perTooth(CuttingWindow window, double feedMmPerMin) {
    return feedMmPerMin * 1000 / (window.rpm() * window.flutes());
  }

  private static String range(Limits limits, String unit) {
    Optional<Limit> lower = limits.lower();
    Optional<Limit> upper = limits.upper();
    if (lower.isEmpty() && upper.isEmpty()) {
      return "no limit known";
    }
    if (lower.isEmpty()) {
      return "up to " + number(upper.orElseThrow().likely()) + " " + unit;
    }
    return upper.isEmpty()
        ? "from " + number(lower.get().likely()) + " " + unit
        : number(lower.get().likely()) + " to " + number(upper.get().likely()) + " " + unit;
  }

  private static String closing(Limits limits, String unit) {
    Limit lower = limits.lower().orElseThrow();
    Limit upper = limits.upper().orElseThrow();
    return lower.rule()
        + " wants "
        + number(lower.likely())
        + " "
        + unit
        + " or more, "
        + upper.rule()
        + " "
        + number(upper.likely())
        + " "
        + unit
        + " or less";
  }

  /**
   * Each limit in a line, the tightest first; a band from where it is likely to where it is sure.
   */
  private void limits(Limits limits, String unit, java.util.function.DoubleFunction<String> beside)
      throws IOException {
    List<Limit> all =
        limits.all().stream()
            .sorted(
                (a, b) ->
                    a.lower() != b.lower()
                        ? Boolean.compare(b.lower(), a.lower())
                        : a.lower()
                            ? Double.compare(b.likely(), a.likely())
                            : Double.compare(a.likely(), b.likely()))
            .collect(Collectors.toList());
    for (Limit limit : all) {
      gutter.labelled(
          "",
          Paint.QUIET,
          (limit.lower() ? "≥ " : "≤ ")
              + number(limit.likely())
              + " "
              + unit
              + beside.apply(limit.likely())
              + "  "
              + limit.rule()
              + (number(limit.likely()).equals(number(limit.certain()))
                  ? ""
                  : limit.certain() == 0 || Double.isInfinite(limit.certain())
                      ? ", never for certain"
                      : ", for certain "
                          + (limit.lower() ? "below " : "above ")
                          + number(limit.certain())
                          + " "
                          + unit));
    }
  }

  private static String number(double value) {
    return Quantities.significant(value, 4);
  }
}
