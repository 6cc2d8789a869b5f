package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.setup.Feature;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.Tool;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * A move with what it does to the part. It takes the place of its {@link Move} in the stream; rapid
 * moves come as cuts without contact.
 *
 * <p>Heights are exact where their {@link StepDown} says so. Where the engagement is not known
 * ({@code radialMm} empty), a full slot is the upper bound for force, and the feed per tooth is the
 * upper bound for the chip thickness.
 *
 * @param move the move itself
 * @param contact whether it removes stock; a spring pass counts as contact
 * @param contactBy what decided that
 * @param tool the tool, where the sheet lists it
 * @param stepDowns the heights taken over a meaningful part of the path, the largest first; empty
 *     without contact, in a spring pass, and where the surface before is not known
 * @param surfacePartlyUnknown whether a part of the path runs over a surface of unknown height, so
 *     that the largest of {@code stepDowns} need not be the largest height taken
 * @param radialMm width of cut a_e across the direction of travel: the exact distance from a
 *     parallel neighbouring path or edge of the stock, or the diameter in a full slot; empty where
 *     it cannot be told
 * @param slot whether the full diameter engages somewhere along the path
 * @param materialSide the side on which the material stands; empty in a slot and where unknown
 * @param fine whether it is a fine cut
 * @param fineUndecided whether it might be a fine cut, but the height it takes is not known
 * @param spring whether it repeats a path at the same stored Z, offset by no more than the edge
 *     radius
 * @param levelId the level it makes, counted from 1 in the order first cut; {@link #NO_LEVEL} where
 *     it makes none
 * @param runsAtLevel whether it moves in X or Y with Z standing still
 * @param passId the pass it belongs to, counted from 1; 0 outside of passes
 * @param feature the declared feature in which at least half of its path (tool centre) lies; of
 *     several the smallest
 * @param removal what it truly takes, by the height field
 */
public record Cut(
    Move move,
    Contact contact,
    ContactBasis contactBy,
    Optional<Tool> tool,
    List<StepDown> stepDowns,
    boolean surfacePartlyUnknown,
    OptionalDouble radialMm,
    boolean slot,
    Optional<Side> materialSide,
    boolean fine,
    boolean fineUndecided,
    boolean spring,
    int levelId,
    boolean runsAtLevel,
    int passId,
    Optional<Feature> feature,
    Removal removal)
    implements Event {

  public Cut {
    stepDowns = List.copyOf(stepDowns);
  }

  /** Level id of the uncut top of the stock. */
  public static final int UNCUT = 0;

  /** Level id of a surface that is no level: contoured, ramped, drilled. */
  public static final int NO_LEVEL = -1;

  @Override
  public Place at() {
    return move.at();
  }

  /** Whether stock is removed for certain. */
  public boolean inContact() {
    return contact == Contact.YES;
  }

  /** The largest height taken over a meaningful part of the path, from stored values. */
  public OptionalLong stepDownPm() {
    return stepDowns.isEmpty()
        ? OptionalLong.empty()
        : OptionalLong.of(stepDowns.get(0).storedPm());
  }

  /** The same height from values as written. */
  public OptionalLong writtenStepDownPm() {
    return stepDowns.isEmpty() ? OptionalLong.empty() : stepDowns.get(0).writtenPm();
  }

  /**
   * Whether it cuts climb (true) or conventional (false); empty where side or spindle direction is
   * not known. Clockwise seen from above with material on the right: teeth go in thick and come out
   * thin, which is climb.
   */
  public Optional<Boolean> climb() {
    return climb(move, materialSide);
  }

  /** The same for a move with material on this side. */
  static Optional<Boolean> climb(Move move, Optional<Side> materialSide) {
    if (materialSide.isEmpty()) {
      return Optional.empty();
    }
    boolean right = materialSide.get() == Side.RIGHT;
    if (move.modes().spindle().is(Modes.Spindle.CLOCKWISE)) {
      return Optional.of(right);
    }
    if (move.modes().spindle().is(Modes.Spindle.COUNTER_CLOCKWISE)) {
      return Optional.of(!right);
    }
    return Optional.empty();
  }

  /** How deep a pass at a level may be to be a fine cut, in a feature or outside of any. */
  public static long deepestFinePm(Setup setup, Optional<Feature> feature) {
    return deepestFinePm(
        setup.get(JobKeys.FINE_STEP).orElseThrow().pm(),
        feature.map(FeatureAreas::largestStep).orElse(OptionalLong.empty()).orElse(0));
  }

  static long deepestFinePm(long fineStepPm, long declaredStepPm) {
    return Math.max(fineStepPm, declaredStepPm);
  }

  /** The same cut, decided. */
  Cut withFine(boolean isFine) {
    return new Cut(
        move,
        contact,
        contactBy,
        tool,
        stepDowns,
        surfacePartlyUnknown,
        radialMm,
        slot,
        materialSide,
        isFine,
        fineUndecided && !isFine,
        spring,
        levelId,
        runsAtLevel,
        passId,
        feature,
        removal);
  }
}
