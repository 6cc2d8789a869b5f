package hairline.viewer.model;

import hairline.checks.cutting.Band;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Event;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.rules.ChipWatcher;
import hairline.checks.rules.FindingsWatcher;
import hairline.checks.rules.Stages;
import hairline.checks.rules.StagesWatcher;
import hairline.checks.stock.Cut;
import hairline.checks.stock.LevelReached;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.SurfaceLeft;
import hairline.checks.timing.PlannedMove;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/** Watches a check and writes into a {@link Program} what it sees. */
final class Watch implements StagesWatcher, ChipWatcher, FindingsWatcher {
  /** Findings are asked for no oftener than this. */
  private static final long LEAST_BETWEEN_ASKING_NANOS = 400_000_000L;

  /** And so that asking takes no more than one part in so many of the time. */
  private static final int SHARE_FOR_ASKING = 25;

  /** The clock is looked at once in so many events. */
  private static final int EVENTS_BETWEEN_LOOKS = 256;

  /** The growth is asked again when so much time has passed. */
  private static final double GROWTH_EVERY_SECONDS = 0.25;

  private static final double PM_PER_MM = 1e9;

  private final Program program;
  private final BooleanSupplier cancelled;
  private @Nullable Stages stages;
  private @Nullable SoFar soFar;
  private long events;
  private long askAgainNanos = System.nanoTime();
  private double pathMm;
  private long chipPm = Moves.UNKNOWN;
  private long minimumPm = Moves.UNKNOWN;
  private double growthAskedSeconds = Double.NEGATIVE_INFINITY;
  private long growthPm = Moves.UNKNOWN;
  private Optional<Modes> modes = Optional.empty();
  private final double[] extentMm = {
    Double.POSITIVE_INFINITY,
    Double.POSITIVE_INFINITY,
    Double.NEGATIVE_INFINITY,
    Double.NEGATIVE_INFINITY
  };

  Watch(Program program, BooleanSupplier cancelled) {
    this.program = program;
    this.cancelled = cancelled;
  }

  @Override
  public void begin(Stages all) {
    stages = all;
  }

  @Override
  public void chip(Cut cut, Band chipUm, Optional<Band> minimumUm) {
    chipPm = Math.round(chipUm.typical() * 1e6);
    minimumPm = minimumUm.map(m -> Math.round(m.typical() * 1e6)).orElse(Moves.UNKNOWN);
  }

  @Override
  public void begin(SoFar told) {
    soFar = told;
  }

  private void ask(SoFar told) {
    long begun = System.nanoTime();
    program.setFiles(told.files());
    program.setFoundSoFar(told.findings(), told.notChecked());
    long ended = System.nanoTime();
    askAgainNanos =
        ended + Math.max(LEAST_BETWEEN_ASKING_NANOS, SHARE_FOR_ASKING * (ended - begun));
  }

  @Override
  public void accept(Event event) {
    boolean stopping = event instanceof Cut && cancelled.getAsBoolean();
    SoFar told = soFar;
    if (told != null
        && (stopping
            || (++events % EVENTS_BETWEEN_LOOKS == 0 && System.nanoTime() - askAgainNanos >= 0))) {
      ask(told);
    }
    if (stopping) {
      throw new CancellationException();
    }
    if (event instanceof Cut cut) {
      try {
        cut(cut);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    } else if (event instanceof LevelReached level) {
      if (!level.again()) {
        program.add(
            new LevelMark(
                level.levelId(),
                level.storedZPm(),
                level.at(),
                program.moves().count(),
                level.tool().map(t -> OptionalInt.of(t.number())).orElse(OptionalInt.empty())));
      }
    } else if (event instanceof Event.SubprogramEntered entered) {
      enter(entered.at());
    } else if (event instanceof Event.SubprogramLeft) {
      program.calls().leave();
    } else if (event instanceof Event.Ended) {
      program.setEnded();
    } else if (event instanceof PartLeft part) {
      program.setPart(part.surfaces().stream().filter(SurfaceLeft::known).toList());
    }
  }

  private void enter(Place call) {
    program.calls().enter(call);
    SoFar told = soFar;
    if (told != null && told.files().size() != program.fileCount()) {
      program.setFiles(told.files());
    }
  }

  private void cut(Cut cut) throws IOException {
    Stages now = stages;
    Move move = cut.move();
    if (program.moves().count() >= Moves.MOST) {
      program.setTruncated();
      return;
    }
    if (modes.isEmpty() || modes.get().operation() != move.modes().operation()) {
      program.add(
          new Operation(
              move.modes().operation(),
              program.moves().count(),
              move.modes().tool().value(),
              move.modes().turningRpm(),
              move.modes().workOffset().value()));
    }
    modes = Optional.of(move.modes());
    program.calls().move(program.moves().count());
    pathMm += move.lengthMm();
    double seconds = 0;
    double duration = 0;
    long feed = Moves.UNKNOWN;
    if (now != null) {
      duration = now.time().ofThisEvent().atLeastSeconds();
      seconds = now.time().secondsNow() + duration;
      Optional<PlannedMove> planned = now.feed().ofThisMove();
      feed =
          planned
              .filter(p -> move.isFeed() && p.meanMmPerMin() > 0)
              .map(p -> Math.round(p.meanMmPerMin() * 1e3))
              .orElse(Moves.UNKNOWN);
      if (seconds >= growthAskedSeconds + GROWTH_EVERY_SECONDS) {
        growthAskedSeconds = seconds;
        growthPm =
            now.warmth()
                .growth()
                .flatMap(growth -> growth.sinceCold().middleUm())
                .map(um -> Math.round(um.typical() * 1e6))
                .orElse(Moves.UNKNOWN);
      }
    }
    Moves.Kind kind =
        !move.isFeed()
            ? Moves.Kind.RAPID
            : move.arc().isPresent() ? Moves.Kind.ARC : Moves.Kind.LINE;
    if (move.arc().isPresent() && move.modes().plane().is(Modes.Plane.XY)) {
      program
          .moves()
          .circleOfNext(
              move.arc().get().centreFirstMm(),
              move.arc().get().centreSecondMm(),
              move.arc().get().sweepRad());
    }
    Position to = move.to();
    if (move.isFeed() && to.knows(Axis.X) && to.knows(Axis.Y)) {
      extend(to.get(Axis.X) / PM_PER_MM, to.get(Axis.Y) / PM_PER_MM);
    }
    program
        .moves()
        .append(
            new Moves.Told(
                move.at(),
                kind,
                known(to, Axis.X),
                known(to, Axis.Y),
                known(to, Axis.Z),
                pathMm,
                seconds,
                duration,
                depth(cut),
                chipPm,
                minimumPm,
                feed,
                growthPm,
                move.modes().operation()));
    chipPm = Moves.UNKNOWN;
    minimumPm = Moves.UNKNOWN;
  }

  private void extend(double xMm, double yMm) {
    boolean wider =
        xMm < extentMm[0] || yMm < extentMm[1] || xMm > extentMm[2] || yMm > extentMm[3];
    if (wider) {
      extentMm[0] = Math.min(extentMm[0], xMm);
      extentMm[1] = Math.min(extentMm[1], yMm);
      extentMm[2] = Math.max(extentMm[2], xMm);
      extentMm[3] = Math.max(extentMm[3], yMm);
      program.setExtentMm(extentMm);
    }
  }

  private static long depth(Cut cut) {
    return cut.removal().volumeMm3().isPresent() ? cut.removal().deepestPm() : Moves.UNKNOWN;
  }

  private static long known(Position position, Axis axis) {
    return position.knows(axis) ? position.get(axis) : Moves.UNKNOWN;
  }

  /** The levels so far, for a test. */
  List<LevelMark> levels() {
    return program.levels();
  }
}
