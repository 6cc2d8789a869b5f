package hairline.checks.setup;

import java.util.List;

/** Keys of the job, {@code job}, but for its features. */
public final class JobKeys {
  /** Tolerance of a step height, where no feature says otherwise. */
  public static final Key<Tolerance> TOLERANCE =
      Key.of(
          "job.tolerance",
          Types.tolerance("10"),
          "±1 um",
          "tolerance of a step height, where no feature says otherwise");

  /** Tolerance of a wall. */
  public static final Key<Tolerance> WALL_TOLERANCE =
      Key.of("job.wall_tolerance", Types.tolerance("10"), "±2 um", "tolerance of a wall");

  /** Highest cusp. */
  public static final Key<Length> CUSP =
      Key.of("job.cusp", Types.length(Bounds.positive("10")), "0.2 um", "highest cusp");

  /** A cut this shallow or shallower counts as a fine cut. */
  public static final Key<Length> FINE_STEP =
      Key.of(
              "job.fine_step",
              Types.length(Bounds.positive("10")),
              "20 um",
              "a cut this shallow or shallower counts as a fine cut")
          .withDefault(Length.ofUm("20"), "default of the sheet");

  /** Contouring with a tool this small or smaller counts as a fine cut. */
  public static final Key<Length> FINE_TOOL =
      Key.of(
              "job.fine_tool",
              Types.length(Bounds.positive("100")),
              "1 mm",
              "contouring with a tool this small or smaller counts as a fine cut")
          .withDefault(Length.ofMm("1"), "default of the sheet");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL = List.of(TOLERANCE, WALL_TOLERANCE, CUSP, FINE_STEP, FINE_TOOL);

  private JobKeys() {}
}
