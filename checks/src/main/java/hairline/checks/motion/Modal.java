package hairline.checks.motion;

import java.util.Optional;

/**
 * One item of the modal state: its value, and where the value comes from.
 *
 * @param value the value in force; empty when unknown or never given
 * @param origin where it comes from
 * @param file index of the file of that line, as in {@link Place#file()}
 * @param line the line that stated it, or made it unknown; 0 where no line did
 */
public record Modal<T>(Optional<T> value, Origin origin, int file, int line) {

  /** Where a value comes from. */
  public enum Origin {
    /** A block of the program states it. */
    STATED,
    /** The sheet's {@code control.start} gives it. */
    SHEET,
    /** Nothing gives it; the usual power-on state of the trade is assumed. */
    ASSUMED,
    /** Nothing has given it yet, and nothing is assumed. */
    UNSET,
    /** A block that was not understood may have changed it. */
    UNKNOWN
  }

  /** A value that a block of the program's own file states. */
  public static <T> Modal<T> stated(T value, int line) {
    return stated(value, 0, line);
  }

  /** A value that a block states. */
  public static <T> Modal<T> stated(T value, int file, int line) {
    return new Modal<>(Optional.of(value), Origin.STATED, file, line);
  }

  /** A value that the sheet gives for the start. */
  public static <T> Modal<T> fromSheet(T value) {
    return new Modal<>(Optional.of(value), Origin.SHEET, 0, 0);
  }

  /** A value that is assumed because nothing gives one. */
  public static <T> Modal<T> assumed(T value) {
    return new Modal<>(Optional.of(value), Origin.ASSUMED, 0, 0);
  }

  /** No value yet. */
  public static <T> Modal<T> unset() {
    return new Modal<>(Optional.empty(), Origin.UNSET, 0, 0);
  }

  /** A value that the block at this line of the program's own file may have changed. */
  public static <T> Modal<T> unknown(int line) {
    return unknown(0, line);
  }

  /** A value that the block at this line may have changed. */
  public static <T> Modal<T> unknown(int file, int line) {
    return new Modal<>(Optional.empty(), Origin.UNKNOWN, file, line);
  }

  /** Whether a value is in force, and it is this one. */
  public boolean is(T wanted) {
    return value.isPresent() && value.get().equals(wanted);
  }

  /** Whether a block made it unknown. */
  public boolean isUnknown() {
    return origin == Origin.UNKNOWN;
  }

  /** Whether the program itself states it. */
  public boolean isStated() {
    return origin == Origin.STATED;
  }
}
