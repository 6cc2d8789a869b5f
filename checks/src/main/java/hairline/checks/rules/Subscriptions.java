package hairline.checks.rules;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Move;
import hairline.checks.stock.Cut;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.function.Consumer;

/** Who wants which events. Handlers of one kind are called in the order they subscribed. */
public final class Subscriptions implements EventSink {
  private final IdentityHashMap<Class<?>, List<Consumer<Event>>> handlers = new IdentityHashMap<>();

  /** Calls the handler for every event of exactly this class. */
  public <E extends Event> void event(Class<E> kind, Consumer<? super E> handler) {
    handlers
        .computeIfAbsent(kind, k -> new ArrayList<>())
        .add(event -> handler.accept(kind.cast(event)));
  }

  /**
   * Calls the handler for every move, whether or not a stage before has found out what it does to
   * the part.
   */
  public void move(Consumer<? super Move> handler) {
    event(Move.class, handler);
    event(Cut.class, cut -> handler.accept(cut.move()));
  }

  @Override
  public void accept(Event event) {
    List<Consumer<Event>> wanted = handlers.get(event.getClass());
    if (wanted != null) {
      for (Consumer<Event> handler : wanted) {
        handler.accept(event);
      }
    }
  }
}
