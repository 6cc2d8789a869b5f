package hairline.checks.motion;

import hairline.checks.motion.Modes.FeedMode;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** The feed along the path, from F and the feed mode. */
final class Feeds {
  private @Nullable Modes last;
  private boolean inverseTime;
  private OptionalDouble lastPerMinute = OptionalDouble.empty();

  /** The feed of a move in mm/min; empty where it is missing or not known. */
  OptionalDouble along(Modes modes, double lengthMm) {
    if (!modes.isSame(last)) {
      last = modes;
      inverseTime = modes.feedMode().is(FeedMode.INVERSE_TIME);
      lastPerMinute = inverseTime ? OptionalDouble.empty() : perMinute(modes);
    }
    return inverseTime ? inverseTime(modes, lengthMm) : lastPerMinute;
  }

  private static OptionalDouble inverseTime(Modes modes, double lengthMm) {
    Optional<Double> perMinute = modes.feed().value();
    return perMinute.isPresent() && lengthMm > 0
        ? OptionalDouble.of(perMinute.get() * lengthMm)
        : OptionalDouble.empty();
  }

  private static OptionalDouble perMinute(Modes modes) {
    Optional<Double> feed = modes.feed().value();
    if (feed.isEmpty() || modes.feedMode().value().isEmpty()) {
      return OptionalDouble.empty();
    }
    if (modes.feedMode().is(FeedMode.PER_MINUTE)) {
      return OptionalDouble.of(feed.get());
    }
    Optional<Double> rpm = modes.turningRpm();
    return rpm.isPresent() ? OptionalDouble.of(feed.get() * rpm.get()) : OptionalDouble.empty();
  }
}
