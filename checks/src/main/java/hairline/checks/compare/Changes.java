package hairline.checks.compare;

import hairline.checks.compare.Change.Where;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Arc;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Gathers what differs; alike differences of one pair of operations are one. */
final class Changes {
  /** So many changes are told apart. */
  static final int MOST = 10_000;

  private static final double PM_PER_MM = 1e9;

  private static final String MOVED = "path";

  private record Key(Change.Kind kind, int before, int after, String was, String is) {}

  private static final class Group {
    final Where first;
    long count;
    double farMm = Double.NaN;
    Optional<Where> largest = Optional.empty();
    String was = "";
    String is = "";

    Group(Where first) {
      this.first = first;
    }
  }

  private final Map<Key, Group> groups = new LinkedHashMap<>();
  private final State statesBefore = new State();
  private final State statesAfter = new State();
  private long notTold;

  // Acts without a partner.

  void lost(Act act) {
    alone(act, true);
  }

  void added(Act act) {
    alone(act, false);
  }

  private void alone(Act act, boolean lost) {
    if (act.kind() == Act.Kind.END) {
      return;
    }
    Place at = act.at();
    Where where =
        lost
            ? new Where(Optional.of(at), Optional.empty())
            : new Where(Optional.empty(), Optional.of(at));
    int operation = act.modes().operation();
    if (act.kind() == Act.Kind.MOVE) {
      Move move = act.move().orElseThrow();
      String what = move.isFeed() ? "feed moves" : "rapid moves";
      Group group =
          group(
              new Key(
                  Change.Kind.MOVES,
                  lost ? operation : 0,
                  lost ? 0 : operation,
                  lost ? what : "",
                  lost ? "" : what),
              where);
      group.farMm = (Double.isNaN(group.farMm) ? 0 : group.farMm) + move.lengthMm();
      return;
    }
    String what = name(act);
    group(
        new Key(
            kind(act.kind()),
            lost ? operation : 0,
            lost ? 0 : operation,
            lost ? what : "",
            lost ? "" : what),
        where);
  }

  private static String name(Act act) {
    return switch (act.kind()) {
      case SPINDLE -> act.what().equals("stopped") ? "spindle stop" : "start at " + act.what();
      case COOLANT -> "coolant " + act.what();
      default -> act.what();
    };
  }

  private static Change.Kind kind(Act.Kind kind) {
    return switch (kind) {
      case TOOL_CHANGE -> Change.Kind.TOOL;
      case SPINDLE -> Change.Kind.SPEED;
      case COOLANT -> Change.Kind.COOLANT;
      case DWELL -> Change.Kind.DWELL;
      case STOP -> Change.Kind.STOP;
      case WARM_UP -> Change.Kind.WARM_UP;
      case MEASURING -> Change.Kind.MEASURING;
      case OTHER_CODE -> Change.Kind.CODE;
      case SHIFT -> Change.Kind.SHIFT;
      case NOT_UNDERSTOOD -> Change.Kind.NOT_UNDERSTOOD;
      case MOVE -> Change.Kind.MOVES;
      case END -> Change.Kind.STATE_AT_END;
    };
  }

  // Pairs.

  private void states(Act before, Act after) {
    Map<Change.Kind, String> was = statesBefore.items(before.modes());
    Map<Change.Kind, String> is = statesAfter.items(after.modes());
    was.forEach(
        (kind, item) -> differ(kind, before, after, item, is.getOrDefault(kind, ""), letter(kind)));
  }

  /** Pieces of one way that lie beside each other. */
  void pieces(Act before, Act after) {
    states(before, after);
    feeds(before, before.move().orElseThrow(), after, after.move().orElseThrow());
  }

  /** Whether the axes stop where pieces of one way end. */
  void stops(Act before, boolean was, Act after, boolean is) {
    if (was != is) {
      differ(Change.Kind.PATH_MODE, before, after, stop(was), stop(is), 'G');
    }
  }

  private void feeds(Act before, Move was, Act after, Move is) {
    if (was.isFeed() && is.isFeed()) {
      differ(Change.Kind.FEED, before, after, feed(was), feed(is), 'F');
    }
  }

  void pair(Act before, Act after) {
    states(before, after);
    if (before.move().isPresent() && after.move().isPresent()) {
      moves(before, before.move().get(), after, after.move().get());
    } else if (before.kind() != Act.Kind.SPINDLE
        && before.kind() != Act.Kind.COOLANT
        && before.kind() != Act.Kind.TOOL_CHANGE) {
      // What those three change is an item of the state.
      differ(kind(before.kind()), before, after, before.what(), after.what(), 'M');
    }
    if (before.kind() == Act.Kind.END) {
      differ(
          Change.Kind.STATE_AT_END,
          before,
          after,
          State.left(before.modes()),
          State.left(after.modes()),
          'M');
    }
  }

  private static char letter(Change.Kind kind) {
    return switch (kind) {
      case TOOL -> 'T';
      case SPEED -> 'S';
      case LENGTH_OFFSET -> 'H';
      case COMPENSATION -> 'D';
      case COOLANT -> 'M';
      default -> 'G';
    };
  }

  private void differ(Change.Kind kind, Act before, Act after, String was, String is, char letter) {
    if (!was.equals(is)) {
      group(
          new Key(kind, before.modes().operation(), after.modes().operation(), was, is),
          where(before, after, letter));
    }
  }

  private static Where where(Act before, Act after, char letter) {
    return new Where(Optional.of(before.at(letter)), Optional.of(after.at(letter)));
  }

  private void moves(Act before, Move was, Act after, Move is) {
    if (was.kind() != is.kind()) {
      differ(Change.Kind.MOTION, before, after, kind(was), kind(is), 'G');
    }
    stops(before, was.exactStop(), after, is.exactStop());
    feeds(before, was, after, is);
    double far = before.what().equals(after.what()) ? far(was, is) : Double.POSITIVE_INFINITY;
    if (far == 0) {
      return;
    }
    Group group =
        group(
            new Key(
                Change.Kind.PATH,
                before.modes().operation(),
                after.modes().operation(),
                MOVED,
                MOVED),
            where(before, after, letter(was, is)));
    if (group.largest.isEmpty() || far > group.farMm) {
      group.farMm = far;
      group.was = position(was);
      group.is = position(is);
      group.largest = Optional.of(where(before, after, letter(was, is)));
    }
  }

  private static boolean isArc(Move move) {
    return move.kind() == Move.Kind.ARC_CW || move.kind() == Move.Kind.ARC_CCW;
  }

  private static String kind(Move move) {
    return switch (move.kind()) {
      case RAPID -> "rapid";
      case LINE -> "straight at feed";
      case ARC_CW -> "arc clockwise";
      case ARC_CCW -> "arc counter-clockwise";
    };
  }

  private static String stop(boolean exact) {
    return exact ? "exact stop" : "no exact stop";
  }

  private static String feed(Move move) {
    return move.feedMmPerMin().isPresent()
        ? Quantities.significant(move.feedMmPerMin().getAsDouble(), 9) + " mm/min"
        : "not known";
  }

  /**
   * The address of what moves the end of a move farthest; of an arc's centre where no end moves.
   */
  private static char letter(Move was, Move is) {
    boolean arcs = was.arc().isPresent() && is.arc().isPresent();
    char letter = arcs ? 'I' : was.arc().isPresent() || is.arc().isPresent() ? 'G' : 'X';
    double most = 0;
    for (Axis axis : Axis.values()) {
      double far = far(axis, was.to(), is.to());
      if (far > most) {
        most = far;
        letter = axis.name().charAt(0);
      }
    }
    if (most == 0 && isArc(was) && isArc(is) && !arcs) {
      letter = 'R';
    } else if (most == 0 && arcs) {
      Arc a = was.arc().get();
      Arc b = is.arc().get();
      boolean second =
          Math.abs(a.centreSecondMm() - b.centreSecondMm())
              > Math.abs(a.centreFirstMm() - b.centreFirstMm());
      Modes.Plane plane = is.modes().plane().value().orElse(Modes.Plane.XY);
      letter =
          a.radiusForm() || b.radiusForm() ? 'R' : centre(second ? plane.second() : plane.first());
    }
    return letter;
  }

  private static char centre(Axis axis) {
    return switch (axis) {
      case X -> 'I';
      case Y -> 'J';
      default -> 'K';
    };
  }

  /** How far two moves are apart at most, in mm; infinite where only one is known. */
  private static double far(Move was, Move is) {
    double far = Math.max(far(was.from(), is.from()), far(was.to(), is.to()));
    if (was.arc().isPresent() != is.arc().isPresent()) {
      Move arc = was.arc().isPresent() ? was : is;
      Arc circle = arc.arc().orElseThrow();
      // The arc's rise over its chord.
      return Math.max(
          far, circle.startRadiusMm() * (1 - StrictMath.cos(Math.min(Math.PI, bow(circle)))));
    }
    if (was.arc().isEmpty()) {
      return far;
    }
    Arc a = was.arc().get();
    Arc b = is.arc().get();
    double centres =
        StrictMath.hypot(
            a.centreFirstMm() - b.centreFirstMm(), a.centreSecondMm() - b.centreSecondMm());
    boolean otherPlane = !was.modes().plane().value().equals(is.modes().plane().value());
    double radius = Math.max(a.startRadiusMm(), b.startRadiusMm());
    // Points of one circle that lie so far apart along it: the chord between them.
    double halfTurn = Math.min(Math.abs(a.sweepRad() - b.sweepRad()) / 2, Math.PI / 2);
    double turned = 2 * radius * StrictMath.sin(halfTurn);
    double middle = otherPlane ? 2 * radius : Math.max(centres, turned);
    return Math.max(far, middle <= CircleCourse.SAME_MM ? 0 : middle);
  }

  private static double bow(Arc arc) {
    return Math.abs(arc.sweepRad()) / 2;
  }

  private static double far(Position a, Position b) {
    double sum = 0;
    for (Axis axis : Axis.values()) {
      double far = far(axis, a, b);
      sum += far * far;
    }
    return Math.sqrt(sum);
  }

  /** In mm; of a rotary axis in degrees. */
  private static double far(Axis axis, Position a, Position b) {
    if (a.knows(axis) != b.knows(axis)) {
      return Double.POSITIVE_INFINITY;
    }
    double parts = axis.linear() ? PM_PER_MM : 1e6;
    return a.knows(axis) ? Math.abs((double) a.get(axis) - b.get(axis)) / parts : 0;
  }

  private static String position(Move move) {
    StringBuilder text = new StringBuilder();
    for (Axis axis : Axis.values()) {
      if (move.to().knows(axis)) {
        String value = Quantities.mm(move.to().get(axis));
        text.append(text.isEmpty() ? "" : " ").append(axis);
        text.append(
            axis.linear()
                ? value.substring(0, value.indexOf(' '))
                : Quantities.significant(move.to().get(axis) / 1e6, 9));
      }
    }
    if (move.arc().isPresent()) {
      Arc arc = move.arc().get();
      text.append(", centre ")
          .append(Quantities.significant(arc.centreFirstMm(), 9))
          .append(' ')
          .append(Quantities.significant(arc.centreSecondMm(), 9));
    }
    return text.isEmpty() ? "not known" : text.toString();
  }

  // What came together.

  private Group group(Key key, Where where) {
    Group group = groups.get(key);
    if (group == null) {
      group = new Group(where);
      if (groups.size() < MOST) {
        groups.put(key, group);
      } else {
        notTold++;
      }
    }
    group.count++;
    return group;
  }

  /** What there was no room for. */
  List<String> left() {
    return notTold == 0
        ? List.of()
        : List.of(
            "which " + notTold + " more acts differ how: " + MOST + " changes are told apart");
  }

  /**
   * All of them, in the order of operations; what is gone or new stands with the operation that
   * answers its own.
   */
  List<Change> all(Map<Integer, Integer> operationsAfter, Map<Integer, Integer> operationsBefore) {
    List<Change> all = new ArrayList<>();
    groups.forEach(
        (key, group) ->
            all.add(
                new Change(
                    key.kind(),
                    key.before() == 0
                        ? operationsBefore.getOrDefault(key.after(), 0)
                        : key.before(),
                    key.after() == 0 ? operationsAfter.getOrDefault(key.before(), 0) : key.after(),
                    key.kind() == Change.Kind.PATH ? group.was : key.was(),
                    key.kind() == Change.Kind.PATH ? group.is : key.is(),
                    group.count,
                    group.first,
                    group.largest,
                    group.farMm,
                    "")));
    all.sort(
        Comparator.comparingInt((Change c) -> Math.max(c.operationAfter(), c.operationBefore()))
            .thenComparing(Change::operationAfter)
            .thenComparing(Change::kind));
    return all;
  }
}
