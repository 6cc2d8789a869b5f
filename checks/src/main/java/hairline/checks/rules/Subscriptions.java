package hairline.checks.rules;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Move;
import hairline.checks.stock.Cut;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Who wants which events. Handlers of one kind are called in the order they subscribed. */
public final class Subscriptions implements EventSink {
  private final IdentityHashMap<Class<?>, Handlers> handlers = new IdentityHashMap<>();

  // Cuts are the most of what comes where many handlers listen; of those in contact a list of its
  // own spares every handler that looks at no others the same question.
  private final Handlers cuts = new Handlers();
  private final Handlers contacts = new Handlers();
  private final Map<Class<?>, Object> shared = new HashMap<>();
  private final Timings timings;
  private String subscriber = "";
  private final List<BiConsumer<? super Move, ? super Arc>> arcHandlers = new ArrayList<>();

  /** Those that one kind of event goes to. */
  private static final class Handlers {
    private Consumer<?>[] each = {};

    void add(Consumer<?> handler) {
      each = Arrays.copyOf(each, each.length + 1);
      each[each.length - 1] = handler;
    }

    // Only events of the class that they subscribed for come to them.
    @SuppressWarnings("unchecked")
    void accept(Event event) {
      for (Consumer<?> handler : each) {
        ((Consumer<Event>) handler).accept(event);
      }
    }
  }

  Subscriptions(Timings timings) {
    this.timings = timings;
  }

  /** Who subscribes from here on, for the timings. */
  void speakFor(String rule) {
    subscriber = rule;
  }

  /** What all who subscribe here share, made by the first who asks for it. */
  <T> T shared(Class<T> kind, Supplier<T> maker) {
    return kind.cast(shared.computeIfAbsent(kind, k -> maker.get()));
  }

  /** Calls the handler for every event of exactly this class. */
  public <E extends Event> void event(Class<E> kind, Consumer<? super E> handler) {
    Consumer<? super E> timed = timings.part(subscriber, handler);
    if (kind == Cut.class) {
      cuts.add(timed);
      contacts.add(timed);
    } else {
      handlers.computeIfAbsent(kind, k -> new Handlers()).add(timed);
    }
  }

  /** Calls the handler for every cut in contact, in its turn among those for all cuts. */
  public void contact(Consumer<? super Cut> handler) {
    contacts.add(timings.part(subscriber, handler));
  }

  /**
   * Calls the handler for every move, whether or not a stage before has found out what it does to
   * the part.
   */
  public void move(Consumer<? super Move> handler) {
    event(Move.class, handler);
    event(Cut.class, cut -> handler.accept(cut.move()));
  }

  /** Calls the handler for every move along an arc. */
  public void arc(BiConsumer<? super Move, ? super Arc> handler) {
    if (arcHandlers.isEmpty()) {
      String rule = subscriber;
      subscriber = "rules, called";
      move(this::acceptArc);
      subscriber = rule;
    }
    Consumer<Runnable> timed = timings.part(subscriber, Runnable::run);
    arcHandlers.add((move, arc) -> timed.accept(() -> handler.accept(move, arc)));
  }

  private void acceptArc(Move move) {
    if (move.arc().isPresent()) {
      arcHandlers.forEach(handler -> handler.accept(move, move.arc().get()));
    }
  }

  @Override
  public void accept(Event event) {
    if (event instanceof Cut cut) {
      (cut.inContact() ? contacts : cuts).accept(event);
      return;
    }
    Handlers wanted = handlers.get(event.getClass());
    if (wanted != null) {
      wanted.accept(event);
    }
  }
}
