package hairline.checks.motion;

import hairline.checks.motion.CycleStep.OperatorStop;
import hairline.checks.motion.CycleStep.SpindleStep;
import hairline.checks.motion.CycleStep.SpindleStep.Action;
import hairline.checks.motion.CycleStep.Travel;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Optional;

/** The steps of one cycle block, made hole by hole and peck by peck (NISTIR 6556 §3.5.16). */
final class CycleSteps implements Iterator<CycleStep> {
  private final Cycle cycle;
  private final Cycle.Words words;
  private final Coordinate peckGap;
  private final Coordinate level;
  private final Coordinate bottom;
  private final Coordinate clear;
  private final Deque<CycleStep> ready = new ArrayDeque<>();

  private Coordinate first;
  private Coordinate second;
  private Coordinate normal;
  private long holesLeft;
  private boolean inHole;
  private Coordinate depth = Coordinate.UNKNOWN;

  CycleSteps(
      Cycle cycle,
      Cycle.Words words,
      Cycle.Point from,
      Optional<Boolean> toLevel,
      Coordinate peckGap) {
    this.cycle = cycle;
    this.words = words;
    this.peckGap = peckGap;
    this.level = cycle.levelPosition();
    this.bottom = cycle.bottomPosition();
    this.clear = clear(cycle.initialLevel(), level, toLevel);
    this.first = from.first();
    this.second = from.second();
    this.normal = from.normal();
    this.holesLeft = words.repeats();
    if (holesLeft > 0 && level.above(normal)) {
      along(true, level);
    }
  }

  /** Where the tool returns to: the initial level, unless that is below the R level. */
  private static Coordinate clear(Coordinate initial, Coordinate level, Optional<Boolean> toLevel) {
    if (level.above(initial) || toLevel.orElse(false)) {
      return level;
    }
    boolean initialHolds = initial.known() && level.known() && toLevel.isPresent();
    return initialHolds || initial.equals(level) ? initial : Coordinate.UNKNOWN;
  }

  @Override
  public boolean hasNext() {
    while (ready.isEmpty()) {
      if (inHole) {
        peck();
      } else if (holesLeft > 0) {
        holesLeft--;
        approach();
        drill();
      } else {
        return false;
      }
    }
    return true;
  }

  @Override
  public CycleStep next() {
    if (!hasNext()) {
      throw new NoSuchElementException();
    }
    return ready.remove();
  }

  private void approach() {
    Coordinate fromFirst = first;
    Coordinate fromSecond = second;
    across(
        words.first().map(target -> target.from(fromFirst)).orElse(first),
        words.second().map(target -> target.from(fromSecond)).orElse(second));
    along(true, level);
  }

  private void drill() {
    switch (cycle.code()) {
      case G73, G83 -> {
        inHole = true;
        depth = level;
        peck();
      }
      case G81 -> {
        along(false, bottom);
        along(true, clear);
      }
      case G82 -> {
        along(false, bottom);
        dwell();
        along(true, clear);
      }
      case G84 -> {
        along(false, bottom);
        spindle(Action.STOP);
        spindle(Action.START_COUNTER_CLOCKWISE);
        along(false, clear);
        spindle(Action.STOP);
        spindle(Action.START_CLOCKWISE);
      }
      case G85 -> {
        along(false, bottom);
        along(false, clear);
      }
      case G86 -> {
        along(false, bottom);
        dwell();
        spindle(Action.STOP);
        along(true, clear);
        spindle(Action.RESTART);
      }
      case G87 -> boreBack();
      case G88 -> {
        along(false, bottom);
        dwell();
        spindle(Action.STOP);
        ready.add(new OperatorStop());
        // The operator leaves the tool where he likes.
        normal = Coordinate.UNKNOWN;
        ready.add(new Travel(true, first, second, normal));
        spindle(Action.RESTART);
      }
      case G89 -> {
        along(false, bottom);
        dwell();
        along(false, clear);
      }
    }
  }

  private void peck() {
    Coordinate next = cycle.peck().map(depth::minus).orElse(Coordinate.UNKNOWN);
    if (next.above(bottom)) {
      along(false, next);
      if (cycle.code() == Cycle.Code.G83) {
        along(true, level);
      }
      Coordinate resume = next.plus(peckGap);
      along(true, resume.above(level) ? level : resume);
      depth = next;
    } else {
      along(false, bottom);
      along(true, clear);
      inHole = false;
    }
  }

  private void boreBack() {
    Coordinate hole = first;
    Coordinate holeSecond = second;
    Coordinate beside = cycle.offsetFirst().map(hole::plus).orElse(hole);
    Coordinate besideSecond = cycle.offsetSecond().map(holeSecond::plus).orElse(holeSecond);
    across(beside, besideSecond);
    spindle(Action.STOP_ORIENTED);
    along(true, bottom);
    across(hole, holeSecond);
    spindle(Action.RESTART);
    along(false, cycle.topPosition());
    along(false, bottom);
    spindle(Action.STOP_ORIENTED);
    across(beside, besideSecond);
    along(true, clear);
    across(hole, holeSecond);
    spindle(Action.RESTART);
  }

  /** A rapid in the plane, unless the tool stands there. */
  private void across(Coordinate toFirst, Coordinate toSecond) {
    boolean stays =
        toFirst.known() && toSecond.known() && toFirst.equals(first) && toSecond.equals(second);
    first = toFirst;
    second = toSecond;
    if (!stays) {
      ready.add(new Travel(true, first, second, normal));
    }
  }

  /** A movement normal to the plane, unless the tool stands there. */
  private void along(boolean rapid, Coordinate to) {
    boolean stays = to.known() && to.equals(normal);
    normal = to;
    if (!stays) {
      ready.add(new Travel(rapid, first, second, normal));
    }
  }

  private void dwell() {
    cycle.dwell().ifPresent(ready::add);
  }

  private void spindle(Action action) {
    ready.add(new SpindleStep(action));
  }
}
