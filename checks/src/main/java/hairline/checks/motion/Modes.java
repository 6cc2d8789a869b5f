package hairline.checks.motion;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The modal state in which a move is made: immutable, and the same object for all moves until a
 * block changes something, so that a rule can compare by identity.
 *
 * @param units G20, G21 (and G70, G71)
 * @param plane G17 to G19
 * @param distance G90, G91
 * @param arcDistance G90.1, G91.1: how I, J, K are read
 * @param feedMode G93 to G95
 * @param pathMode G61, G61.1, G64
 * @param workOffset "G54" to "G59.3"
 * @param compensation G40 to G42
 * @param compensationNumber D in force with G41, G42
 * @param lengthOffset the H number of G43 or G44; 0 after G49; empty while nothing was said
 * @param cycleReturn G98, G99
 * @param spindle M3 to M5
 * @param speedRpm S, in revolutions a minute (under G96: see {@code surfaceSpeed})
 * @param surfaceSpeed whether S is a surface speed (G96)
 * @param feed F as commanded: mm/min under {@link FeedMode#PER_MINUTE}, mm/rev under
 *     PER_REVOLUTION, 1/min under INVERSE_TIME
 * @param tool the tool in the spindle; empty number where none was called
 * @param coolant which coolants are on
 * @param operation counts from 1; a tool change or a change of commanded speed begins the next
 */
public record Modes(
    Modal<Units> units,
    Modal<Plane> plane,
    Modal<Distance> distance,
    Modal<Distance> arcDistance,
    Modal<FeedMode> feedMode,
    Modal<PathMode> pathMode,
    Modal<String> workOffset,
    Modal<Compensation> compensation,
    Modal<Integer> compensationNumber,
    Modal<Integer> lengthOffset,
    Modal<CycleReturn> cycleReturn,
    Modal<Spindle> spindle,
    Modal<Double> speedRpm,
    boolean surfaceSpeed,
    Modal<Double> feed,
    Modal<Integer> tool,
    Modal<Coolant> coolant,
    int operation) {

  /** G20, G21. */
  public enum Units {
    INCH,
    MM
  }

  /** G17, G18, G19. */
  public enum Plane {
    XY(Axis.X, Axis.Y, Axis.Z),
    ZX(Axis.Z, Axis.X, Axis.Y),
    YZ(Axis.Y, Axis.Z, Axis.X);

    private final Axis first;
    private final Axis second;
    private final Axis normal;

    Plane(Axis first, Axis second, Axis normal) {
      this.first = first;
      this.second = second;
      this.normal = normal;
    }

    /** First axis of the plane: counter-clockwise turns first towards second. */
    public Axis first() {
      return first;
    }

    /** Second axis of the plane. */
    public Axis second() {
      return second;
    }

    /** The axis normal to the plane: helix and cycle axis. */
    public Axis normal() {
      return normal;
    }
  }

  /** G90, G91. */
  public enum Distance {
    ABSOLUTE,
    INCREMENTAL
  }

  /** G93, G94, G95. */
  public enum FeedMode {
    INVERSE_TIME,
    PER_MINUTE,
    PER_REVOLUTION
  }

  /** G61, G61.1, G64. */
  public enum PathMode {
    EXACT_PATH,
    EXACT_STOP,
    CONTINUOUS
  }

  /** G40, G41, G42. */
  public enum Compensation {
    OFF,
    LEFT,
    RIGHT
  }

  /** G98, G99. */
  public enum CycleReturn {
    INITIAL_LEVEL,
    R_LEVEL
  }

  /** M3, M4, M5. */
  public enum Spindle {
    STOPPED,
    CLOCKWISE,
    COUNTER_CLOCKWISE
  }

  /** M7, M8, M9. */
  public record Coolant(boolean mist, boolean flood) {
    /** Nothing on. */
    public static final Coolant OFF = new Coolant(false, false);

    /** Whether anything is on. */
    public boolean on() {
      return mist || flood;
    }
  }

  /**
   * Whether this is the very same object as another, as it is for all moves until a block changes
   * something; quicker than to compare all items.
   */
  @SuppressWarnings("ReferenceEquality")
  public boolean isSame(@Nullable Modes other) {
    return this == other;
  }

  /** The speed at which the spindle turns now: 0 when stopped, empty when not known. */
  public Optional<Double> turningRpm() {
    if (spindle.is(Spindle.STOPPED)) {
      return Optional.of(0.0);
    }
    if (spindle.value().isEmpty() || surfaceSpeed) {
      return Optional.empty();
    }
    return speedRpm.value();
  }
}
