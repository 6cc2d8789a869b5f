package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.stock.DepthStretch;
import hairline.checks.stock.DepthsShown;
import java.util.ArrayList;
import java.util.List;

/** The depths along moves in the text report. */
final class DepthsText {
  private static final int MOST_ROWS = 60;

  private DepthsText() {}

  /**
   * The moves that take more than one depth; all moves where the report is whole.
   *
   * @param result knows the files that the moves stand in
   * @param whole whether all are shown
   */
  static SurfaceText.Part of(DepthsShown depths, ProgramResult result, boolean whole) {
    List<SummaryText.Line> head = new ArrayList<>();
    long several = depths.moves().stream().filter(move -> move.stretches().size() > 1).count();
    head.add(
        new SummaryText.Line(
            "depths",
            depths.moves().size()
                + (depths.moves().size() == 1 ? " move takes" : " moves take")
                + " material, "
                + several
                + " of them more than one depth along the path"));
    if (!depths.complete()) {
      head.add(
          new SummaryText.Line(
              "left out", "what lies beyond " + DepthsShown.MOST_STRETCHES + " stretches"));
    }
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("line", "from mm", "to mm", "depth µm"));
    for (DepthsShown.Taken move : depths.moves()) {
      if (whole || move.stretches().size() > 1) {
        for (DepthStretch stretch : move.stretches()) {
          rows.add(
              List.of(
                  Words.line(result, move.at()).substring("line ".length()),
                  SurfaceText.fixed(stretch.fromMm(), 4),
                  SurfaceText.fixed(stretch.toMm(), 4),
                  stretch.depthPm().isPresent()
                      ? SurfaceWords.um(stretch.depthPm().getAsLong())
                      : "top not known"));
        }
      }
    }
    if (rows.size() == 1) {
      return new SurfaceText.Part(head, List.of(), 0);
    }
    int shown = whole ? rows.size() : Math.min(rows.size(), MOST_ROWS + 1);
    return new SurfaceText.Part(
        head, SurfaceText.aligned(rows.subList(0, shown)), rows.size() - shown);
  }
}
