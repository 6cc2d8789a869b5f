package hairline.checks.stock;

import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Tool;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * Puts moves in contact into passes. A pass goes on while moves keep to one level, or while they
 * make none; moves in air that keep to the level don't end it.
 */
final class PassBook {
  private final StockModel model;
  private final FeatureAreas features;
  private final Outlet out;
  private int lastId;
  private Optional<Pass> open = Optional.empty();

  /** A pass while it is open. */
  private static final class Pass {
    private final int id;
    private final Optional<Level> level;
    private final Optional<Tool> tool;
    private final int operation;
    private final Optional<Feature> feature;
    private final String offset;
    private final Place first;
    private Place last;
    private double lengthMm;
    private Optional<StepDown> largest = Optional.empty();
    private boolean spring = true;

    Pass(int id, Contacted contacted, Optional<Feature> feature) {
      this.id = id;
      this.level = contacted.level();
      this.tool = contacted.tool();
      this.operation = contacted.move().modes().operation();
      this.feature = feature;
      this.offset = contacted.offset();
      this.first = contacted.move().at();
      this.last = first;
    }

    private static int id(Optional<Level> level) {
      return level.isPresent() ? level.get().id : Cut.NO_LEVEL;
    }

    boolean goesOn(Contacted contacted) {
      return offset.equals(contacted.offset()) && id(level) == id(contacted.level());
    }

    void take(Contacted contacted) {
      last = contacted.move().at();
      lengthMm += contacted.move().lengthMm();
      spring &= contacted.engagement().spring();
      Optional<StepDown> height = contacted.largest();
      if (height.isPresent()
          && (largest.isEmpty() || height.get().storedPm() > largest.get().storedPm())) {
        largest = height;
      }
    }

    PassEnded ended(Place at) {
      return new PassEnded(
          at,
          id,
          level.map(l -> l.id).orElse(Cut.NO_LEVEL),
          first,
          last,
          lengthMm,
          stored(largest),
          written(largest),
          false,
          spring,
          tool,
          operation,
          feature,
          offset);
    }
  }

  /**
   * A move in contact, and what was found out about it.
   *
   * @param cutter its tool's shape, where known
   * @param stepDowns heights taken, the largest first
   * @param partlyUnknown whether it runs over unknown heights as well
   * @param level the level it makes
   * @param again whether that level was cut before
   * @param approach from where Z came
   * @param removal what it takes
   */
  record Contacted(
      Move move,
      Path path,
      String offset,
      ContactBasis basis,
      Optional<Tool> tool,
      Optional<Cutter> cutter,
      List<StepDown> stepDowns,
      boolean partlyUnknown,
      Engagement engagement,
      Optional<Level> level,
      boolean again,
      ApproachDirection approach,
      Removal removal) {

    Optional<StepDown> largest() {
      return stepDowns.isEmpty() ? Optional.empty() : Optional.of(stepDowns.get(0));
    }

    boolean runsAtLevel() {
      return path.level() && path.movesInPlan();
    }
  }

  PassBook(StockModel model, FeatureAreas features, Outlet out) {
    this.model = model;
    this.features = features;
    this.out = out;
  }

  /** The level of the open pass. */
  Optional<Level> level() {
    return open.flatMap(pass -> pass.level);
  }

  /** A move in air ends the pass unless it keeps to its level. */
  void air(Place at, Path path) {
    boolean keeps = path.level() && level().map(level -> level.key.zPm() == path.z0).orElse(false);
    if (!keeps) {
      end(at);
    }
  }

  /** Ends the pass, if one is open, for the event of this block. */
  void end(Place at) {
    open.ifPresent(pass -> out.put(pass.ended(at)));
    open = Optional.empty();
  }

  /**
   * Takes a move in contact, and passes its cut on.
   *
   * @param sequence the uninterrupted motion at feed it is part of
   */
  void take(Contacted contacted, int sequence) {
    Move move = contacted.move();
    Optional<Feature> feature = features.of(contacted.path());
    boolean begins = open.isEmpty() || !open.get().goesOn(contacted);
    if (begins) {
      end(move.at());
      open = Optional.of(new Pass(++lastId, contacted, feature));
    }
    Pass pass = open.orElseThrow();
    pass.take(contacted);
    boolean fine = fine(contacted, feature);
    if (contacted.level().isPresent()) {
      Level level = contacted.level().get();
      level.cutAt(move.at(), move.modes().operation());
      if (!contacted.engagement().spring()) {
        level.setFine(fine);
      }
      if (begins) {
        out.put(reached(contacted, level, pass.id, feature));
      }
      out.levelCut(move.modes().operation(), sequence, fine);
    }
    put(contacted, cut(contacted, feature, fine, pass.id), sequence);
  }

  /** By the height it takes: at most the fine step, or in a feature that feature's step. */
  private boolean fine(Contacted contacted, Optional<Feature> feature) {
    if (contacted.engagement().spring()) {
      return contacted.level().map(Level::fine).orElse(false);
    }
    long declared = feature.map(features::stepPm).orElse(OptionalLong.empty()).orElse(0);
    long limit = Cut.deepestFinePm(model.fineStepPm(), declared);
    return contacted.largest().map(height -> height.storedPm() <= limit).orElse(false);
  }

  private static Cut cut(Contacted contacted, Optional<Feature> feature, boolean fine, int passId) {
    return new Cut(
        contacted.move(),
        Contact.YES,
        contacted.basis(),
        contacted.tool(),
        contacted.stepDowns(),
        contacted.partlyUnknown(),
        contacted.engagement().radialMm(),
        contacted.engagement().slot(),
        contacted.engagement().side(),
        fine,
        !fine && contacted.stepDowns().isEmpty() && contacted.partlyUnknown(),
        contacted.engagement().spring(),
        contacted.level().map(l -> l.id).orElse(Cut.NO_LEVEL),
        contacted.runsAtLevel(),
        passId,
        feature,
        contacted.removal());
  }

  /** Ramps and plunges of tools that make levels wait for the level they may lead to. */
  private void put(Contacted contacted, Cut cut, int sequence) {
    boolean contour =
        contacted.path().movesInPlan()
            && contacted.cutter().map(c -> 2 * c.radiusPm() <= model.fineToolPm()).orElse(false);
    if (contacted.runsAtLevel() || contacted.cutter().isEmpty()) {
      out.put(cut);
    } else if (contacted.cutter().get().leavesFloor()) {
      out.putEntry(cut, sequence, contour);
    } else {
      out.put(contour ? cut.withFine(true) : cut);
    }
  }

  private static LevelReached reached(
      Contacted contacted, Level level, int passId, Optional<Feature> feature) {
    return new LevelReached(
        contacted.move().at(),
        passId,
        level.id,
        contacted.again(),
        level.key.zPm(),
        level.writtenZPm,
        contacted.approach(),
        level.tool,
        contacted.move().modes().operation(),
        feature,
        contacted.offset(),
        stored(contacted.largest()),
        written(contacted.largest()));
  }

  private static OptionalLong stored(Optional<StepDown> height) {
    return height.map(h -> OptionalLong.of(h.storedPm())).orElse(OptionalLong.empty());
  }

  private static OptionalLong written(Optional<StepDown> height) {
    return height.map(StepDown::writtenPm).orElse(OptionalLong.empty());
  }

  /** A cut that removes nothing, or of which that is not known. */
  Cut idle(
      Move move,
      Contact contact,
      ContactBasis basis,
      Optional<Tool> tool,
      boolean runsAtLevel,
      Optional<Feature> feature) {
    boolean unknown = contact == Contact.UNKNOWN;
    return new Cut(
        move,
        contact,
        basis,
        tool,
        List.of(),
        unknown,
        OptionalDouble.empty(),
        false,
        Optional.empty(),
        false,
        unknown,
        false,
        Cut.NO_LEVEL,
        runsAtLevel,
        0,
        feature,
        Removal.NONE);
  }
}
