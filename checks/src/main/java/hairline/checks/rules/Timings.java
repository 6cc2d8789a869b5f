package hairline.checks.rules;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;

/**
 * How long stages and rules take, by a clock of its own for each thread; of what calls another, the
 * time of the other is left out. Looking at the clock takes time too, some tens of nanoseconds for
 * each event and each part it passes, so that the shares of what is quick are too high.
 */
public final class Timings {
  /** Reads no clock. */
  public static final Timings NONE = new Timings(false);

  private final boolean on;
  private final Map<String, Integer> numbers = new ConcurrentHashMap<>();
  private final List<String> names = new ArrayList<>();
  private final List<Clock> clocks = new ArrayList<>();
  private final ThreadLocal<Clock> clock = ThreadLocal.withInitial(this::newClock);

  /** The clock of one thread. */
  private static final class Clock {
    private static final int DEEP = 64;
    private long[] nanos = {};
    private final int[] parts = new int[DEEP];
    private int depth;
    private long since;

    void enter(int part) {
      charge();
      parts[depth++] = part;
    }

    void leave() {
      charge();
      depth--;
    }

    private void charge() {
      long now = System.nanoTime();
      if (depth > 0) {
        int part = parts[depth - 1];
        if (part >= nanos.length) {
          nanos = Arrays.copyOf(nanos, 2 * part + 1);
        }
        nanos[part] += now - since;
      }
      since = now;
    }
  }

  private Timings(boolean on) {
    this.on = on;
  }

  /** Fresh clocks. */
  public static Timings measured() {
    return new Timings(true);
  }

  private synchronized Clock newClock() {
    Clock fresh = new Clock();
    clocks.add(fresh);
    return fresh;
  }

  private synchronized int number(String name) {
    return numbers.computeIfAbsent(
        name,
        key -> {
          names.add(key);
          return names.size() - 1;
        });
  }

  /** The stage, timed under this name. */
  EventSink stage(String name, EventSink stage) {
    Consumer<Event> timed = part(name, stage::accept);
    return on ? timed::accept : stage;
  }

  /** What takes things, timed under this name. */
  <T> Consumer<T> part(String name, Consumer<T> taker) {
    if (!on) {
      return taker;
    }
    int number = number(name);
    return thing -> {
      Clock now = clock.get();
      now.enter(number);
      try {
        taker.accept(thing);
      } finally {
        now.leave();
      }
    };
  }

  /** Begins a part that {@link #end} ends. */
  void begin(String name) {
    if (on) {
      clock.get().enter(number(name));
    }
  }

  void end() {
    if (on) {
      clock.get().leave();
    }
  }

  /**
   * The time of each part in nanoseconds, in the order in which they were first met; to be asked
   * once the threads have come to rest.
   */
  public synchronized Map<String, Long> nanos() {
    Map<String, Long> sums = new LinkedHashMap<>();
    for (int part = 0; part < names.size(); part++) {
      long sum = 0;
      for (Clock one : clocks) {
        sum += part < one.nanos.length ? one.nanos[part] : 0;
      }
      sums.put(names.get(part), sum);
    }
    return sums;
  }
}
