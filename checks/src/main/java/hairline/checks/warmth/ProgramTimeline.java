package hairline.checks.warmth;

import hairline.checks.cutting.Band;
import hairline.checks.motion.Place;
import hairline.checks.timing.TimeTaken;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A program along its time: what the spindle does, how far it has grown, when tools are measured
 * and when something is cut. Seconds are the known part of the time since the program began; what
 * takes a time that is not known has no length on it.
 *
 * <p>Its size is bounded, however long the program is: {@value #MOST_POINTS} points, {@value
 * #MOST_MARKS} marks, {@value #MOST_CUTS} stretches of either kind of cut.
 *
 * @param time the time of the whole program
 * @param growthTold whether the sheet tells how the spindle grows
 * @param points the spindle in the order of time; between two points speed stays that of the
 *     former, and growth changes about evenly. Two points at one time: something changed at once
 * @param marks what happens at the tool, in the order of time
 * @param fineCuts when fine cuts are made, in the order of time
 * @param otherCuts when other cuts are made, in the order of time
 * @param notes what was left out or put together because there was too much of it, as clauses
 */
public record ProgramTimeline(
    TimeTaken time,
    boolean growthTold,
    List<Point> points,
    List<Mark> marks,
    List<Cutting> fineCuts,
    List<Cutting> otherCuts,
    List<String> notes) {
  /** Most points. */
  public static final int MOST_POINTS = 4096;

  /** Most marks. */
  public static final int MOST_MARKS = 1000;

  /** Most stretches of fine cuts, and of other ones. */
  public static final int MOST_CUTS = 2000;

  public ProgramTimeline {
    points = List.copyOf(points);
    marks = List.copyOf(marks);
    fineCuts = List.copyOf(fineCuts);
    otherCuts = List.copyOf(otherCuts);
    notes = List.copyOf(notes);
  }

  /** The point at a time or the last one before; empty before the first. */
  public Optional<Point> at(double seconds) {
    int index = indexAt(seconds);
    return index < 0 ? Optional.empty() : Optional.of(points.get(index));
  }

  /** The growth at a time, in micrometres; empty where it is not known at all. */
  public Optional<Band> growthAt(double seconds) {
    int index = indexAt(seconds);
    if (index < 0) {
      return Optional.empty();
    }
    Point before = points.get(index);
    Optional<Band> from = before.growthUm();
    if (index + 1 == points.size() || from.isEmpty() || seconds <= before.seconds()) {
      return from;
    }
    Point after = points.get(index + 1);
    double part = (seconds - before.seconds()) / (after.seconds() - before.seconds());
    return after.growthUm().map(to -> from.get().scale(1 - part).plus(to.scale(part)));
  }

  /** The last of the points at a time or before; -1 before the first. */
  private int indexAt(double seconds) {
    int low = 0;
    int high = points.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (points.get(middle).seconds() <= seconds) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low - 1;
  }

  /**
   * The spindle at one time.
   *
   * @param seconds the time
   * @param rpm its speed from here on, 0 standing; empty where it is not known
   * @param growthUm how far it has grown in micrometres, the shift of its bearings included: the
   *     band of the sheet's figures, wider where speeds or times before are not known; empty where
   *     nothing bounds it, or the sheet does not tell
   * @param known whether speeds and times before are known, or no longer matter
   */
  public record Point(double seconds, OptionalDouble rpm, Optional<Band> growthUm, boolean known) {}

  /** What a mark stands for. */
  public enum Kind {
    /** The machine's own warm-up, by its code. */
    WARM_UP("warm-up"),
    /** A tool is measured. */
    MEASURING("measuring"),
    /** Another tool, or the same one called again. */
    TOOL_CHANGE("tool change"),
    /** M0 or M60: the operator goes on when he likes. */
    OPERATOR("stop for the operator");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** It in words. */
    public String words() {
      return words;
    }
  }

  /**
   * Something that happens at the tool.
   *
   * @param kind what
   * @param at the block
   * @param fromSeconds when it begins
   * @param toSeconds when it ends, as far as known
   * @param known whether its duration is known
   * @param tool the tool in the spindle at its end; empty where there is none or it is not known
   * @param growthUm growth at its end that the tool's offset is measured with; empty where nothing
   *     is measured or growth is not known
   */
  public record Mark(
      Kind kind,
      Place at,
      double fromSeconds,
      double toSeconds,
      boolean known,
      OptionalInt tool,
      Optional<Band> growthUm) {}

  /**
   * A stretch of time in which one tool cuts, measured once, with no break that counts.
   *
   * @param first its first block
   * @param last its last block
   * @param fromSeconds when it begins
   * @param toSeconds when it ends
   * @param tool the tool; empty where it is not known
   * @param driftAtStartUm growth at its begin less that at the tool's measuring, in micrometres;
   *     empty where the program does not measure the tool, or growth is not known
   * @param driftAtEndUm the same at its end
   */
  public record Cutting(
      Place first,
      Place last,
      double fromSeconds,
      double toSeconds,
      OptionalInt tool,
      Optional<Band> driftAtStartUm,
      Optional<Band> driftAtEndUm) {}
}
