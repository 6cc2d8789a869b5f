package hairline.checks.motion;

import hairline.parser.PartPrograms;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Runs programs written in a test and keeps their events. */
final class Runs {
  /** A control with a tenth of a micron as its increment, else nothing known. */
  static final ControlProfile TENTH_UM = ControlProfile.UNKNOWN.withResolution(100_000);

  private Runs() {}

  /** The events of a program. */
  static List<Event> events(ControlProfile profile, String... lines) {
    return events(profile, false, lines);
  }

  static List<Event> events(ControlProfile profile, boolean blockDeleteOn, String... lines) {
    return events(
        profile, blockDeleteOn, String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
  }

  /** The events of a program that lies beside the tests. */
  static List<Event> resource(ControlProfile profile, String name) {
    try (InputStream in = Runs.class.getResourceAsStream(name)) {
      return events(profile, false, Objects.requireNonNull(in, name).readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static List<Event> events(ControlProfile profile, boolean blockDeleteOn, byte[] bytes) {
    List<Event> events = new ArrayList<>();
    try {
      ProgramFiles files = ProgramFiles.alone(PartPrograms.of("test.nc", bytes), events::add);
      new Interpreter(profile, files).run(events::add, blockDeleteOn);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return events;
  }

  /** The events of one kind. */
  static <E extends Event> List<E> of(Class<E> kind, List<Event> events) {
    return events.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  /** The events of one kind of a program under {@link #TENTH_UM}. */
  static <E extends Event> List<E> of(Class<E> kind, String... lines) {
    return of(kind, events(TENTH_UM, lines));
  }

  /** The only event of its kind. */
  static <E extends Event> E only(Class<E> kind, List<Event> events) {
    List<E> found = of(kind, events);
    if (found.size() != 1) {
      throw new AssertionError("one " + kind.getSimpleName() + " expected: " + found);
    }
    return found.get(0);
  }

  static <E extends Event> E only(Class<E> kind, String... lines) {
    return only(kind, events(TENTH_UM, lines));
  }

  /** The moves of a program, each as text such as "line X1.5 Y2 Z3 F100". */
  static List<String> moves(ControlProfile profile, String... lines) {
    return of(Move.class, events(profile, lines)).stream().map(Runs::text).toList();
  }

  static List<String> moves(String... lines) {
    return moves(TENTH_UM, lines);
  }

  /** Where a move goes, known axes only: "LINE X1.5 Z3". */
  static String text(Move move) {
    StringBuilder text = new StringBuilder(move.kind().name());
    for (Axis axis : Axis.values()) {
      if (move.to().knows(axis)) {
        text.append(' ').append(axis).append(coordinate(axis, move.to()));
      }
    }
    return text.toString();
  }

  private static String coordinate(Axis axis, Position position) {
    int digits = axis.linear() ? 9 : 6;
    String plain =
        java.math.BigDecimal.valueOf(position.get(axis), digits)
            .stripTrailingZeros()
            .toPlainString();
    return plain;
  }
}
