package hairline.checks.rules;

import hairline.checks.motion.Event;
import hairline.checks.motion.Move;
import hairline.checks.rules.CuttingWindow.MoveClass;
import hairline.checks.setup.Setup;
import hairline.checks.stock.Cut;
import hairline.checks.stock.StepDown;
import hairline.checks.stock.StepFound;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;

/**
 * Watches a check and keeps what each operation cuts, so that rules can be asked about it again
 * with other feeds, depths and speeds. Passes at a level that differ in nothing that a rule of
 * chips or flex looks at are kept once.
 */
public final class CutsOfOperations implements StagesWatcher {
  /** So many operations are followed. */
  public static final int MOST_OPERATIONS = 100;

  /** So many different cuts of an operation are kept. */
  public static final int MOST_CUTS = 2_000;

  /** So many moves of an operation are kept for what depends on time. */
  public static final int MOST_MOVES = 20_000;

  private record Like(
      int tool,
      double feed,
      List<StepDown> stepDowns,
      boolean partlyUnknown,
      OptionalDouble radialMm,
      boolean slot,
      boolean fine,
      boolean undecided,
      int level,
      Optional<String> feature,
      Optional<Boolean> climb,
      boolean down) {}

  /** One operation. */
  static final class Kept {
    final int number;
    final List<Event> cuts = new ArrayList<>();
    final List<Event> moves = new ArrayList<>();
    final Map<Double, Double> mmByFeed = new TreeMap<>();
    final Map<MoveClass, Map<Double, Double>> mmByClass = new EnumMap<>(MoveClass.class);
    long deepestTakenPm;
    final Set<Like> seen = new HashSet<>();
    Optional<Cut> first = Optional.empty();
    double mmCut;
    double mmAtLevels;
    boolean cutsFull;
    boolean movesFull;

    Kept(int number) {
      this.number = number;
    }
  }

  private final Setup setup;
  private final Map<Integer, Kept> operations = new TreeMap<>();
  private final List<StepFound> steps = new ArrayList<>();
  private Optional<Stages> stages = Optional.empty();
  private boolean full;

  /** For a program with this sheet. */
  public CutsOfOperations(Setup setup) {
    this.setup = setup;
  }

  @Override
  public void begin(Stages begun) {
    stages = Optional.of(begun);
  }

  @Override
  public void accept(Event event) {
    if (event instanceof Cut cut) {
      kept(cut.move()).ifPresent(kept -> keep(kept, cut));
    } else if (event instanceof Move move) {
      kept(move).ifPresent(kept -> keep(kept, move));
    } else if (event instanceof StepFound step && steps.size() < MOST_CUTS) {
      steps.add(step);
    }
  }

  private Optional<Kept> kept(Move move) {
    int number = move.modes().operation();
    Kept kept = operations.get(number);
    if (kept == null) {
      if (operations.size() == MOST_OPERATIONS) {
        full = true;
        return Optional.empty();
      }
      kept = new Kept(number);
      operations.put(number, kept);
    }
    return Optional.of(kept);
  }

  private static void keep(Kept kept, Event move) {
    if (kept.moves.size() < MOST_MOVES) {
      kept.moves.add(move);
    } else {
      kept.movesFull = true;
    }
  }

  private static void keep(Kept kept, Cut cut) {
    keep(kept, (Event) cut);
    if (!cut.inContact()) {
      // One of several is enough to part the stretches that vary Z.
      if (!kept.cuts.isEmpty()
          && kept.cuts.get(kept.cuts.size() - 1) instanceof Cut last
          && last.inContact()) {
        kept.cuts.add(cut);
      }
      return;
    }
    Move move = cut.move();
    if (kept.first.isEmpty() && move.isFeed()) {
      kept.first = Optional.of(cut);
    }
    boolean down =
        move.from().xPm() == move.to().xPm()
            && move.from().yPm() == move.to().yPm()
            && move.arc().isEmpty();
    if (move.feedMmPerMin().isPresent() && !down) {
      kept.mmByFeed.merge(move.feedMmPerMin().getAsDouble(), move.lengthMm(), Double::sum);
    }
    if (move.feedMmPerMin().isPresent()) {
      kept.mmByClass
          .computeIfAbsent(MoveClass.of(move), c -> new TreeMap<>())
          .merge(move.feedMmPerMin().getAsDouble(), move.lengthMm(), Double::sum);
      if (MoveClass.of(move) == MoveClass.CONTOUR) {
        kept.deepestTakenPm = Math.max(kept.deepestTakenPm, cut.removal().deepestPm());
      }
    }
    kept.mmCut += move.lengthMm();
    if (cut.runsAtLevel()) {
      kept.mmAtLevels += move.lengthMm();
    }
    if (cut.runsAtLevel() || down) {
      Like like =
          new Like(
              cut.tool().map(t -> t.number()).orElse(-1),
              move.feedMmPerMin().orElse(-1),
              // How long a pass runs over a surface changes nothing.
              cut.stepDowns().stream()
                  .map(s -> new StepDown(0, s.storedPm(), s.writtenPm(), 0, s.exact()))
                  .toList(),
              cut.surfacePartlyUnknown(),
              cut.radialMm(),
              cut.slot(),
              cut.fine(),
              cut.fineUndecided(),
              cut.levelId(),
              cut.feature().map(f -> f.name()),
              cut.climb(),
              down);
      if (cut.radialMm().isPresent() || cut.slot() || down) {
        if (!kept.seen.add(like)) {
          return;
        }
      }
    }
    if (kept.cuts.size() < MOST_CUTS) {
      kept.cuts.add(cut);
    } else {
      kept.cutsFull = true;
    }
  }

  Setup setup() {
    return setup;
  }

  Stages stages() {
    return stages.orElseThrow();
  }

  List<StepFound> steps() {
    return steps;
  }

  /** The operations that cut at feed, in their order. */
  List<Kept> operations() {
    return operations.values().stream()
        .filter(kept -> kept.first.isPresent() && !kept.mmByFeed.isEmpty())
        .toList();
  }

  /** Whether there are operations that were not followed. */
  public boolean full() {
    return full;
  }
}
