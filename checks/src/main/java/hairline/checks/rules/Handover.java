package hairline.checks.rules;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import java.io.IOException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.jspecify.annotations.Nullable;

/**
 * Hands events on; once it is told to part, from the thread that makes them to another, in their
 * order, so that both go on at once. What is behind it sees the very same events in the very same
 * order either way; a bounded number of them is under way.
 */
final class Handover implements EventSink {
  /** So many that threads are seldom woken, so few that most die before they are collected. */
  static final int EVENTS_A_BATCH = 2_048;

  private static final int BATCHES = 4;

  /** Events, some of which go to the sink for direct ones. */
  private static final class Batch {
    private final Event[] events;
    private final boolean[] direct;
    private int count;

    Batch(int most) {
      events = new Event[most];
      direct = new boolean[most];
    }
  }

  private final EventSink directly;
  private EventSink next = event -> {};
  private boolean used;
  private final int eventsABatch;
  private final BlockingQueue<Batch> underWay = new ArrayBlockingQueue<>(BATCHES);
  private @Nullable Thread taker;
  private Batch batch;
  private volatile @Nullable Throwable fault;

  /**
   * A handover to nobody yet.
   *
   * @param eventsABatch how many are handed over at a time
   * @param directly takes the events of {@link #acceptDirectly}
   */
  Handover(int eventsABatch, EventSink directly) {
    this.eventsABatch = eventsABatch;
    this.batch = new Batch(eventsABatch);
    this.directly = directly;
  }

  /** Hands over to this one from now on. */
  Handover to(EventSink taking) {
    next = taking;
    used = true;
    return this;
  }

  /** Whether there is somebody to hand over to. */
  boolean isUsed() {
    return used;
  }

  /**
   * From now on the events are taken on another thread.
   *
   * @param name of that thread
   */
  void part(String name) {
    Thread thread = new Thread(this::take, name);
    thread.setDaemon(true);
    taker = thread;
    thread.start();
  }

  @Override
  public void accept(Event event) {
    if (taker == null) {
      next.accept(event);
    } else {
      put(event, false);
    }
  }

  /** Hands over an event that goes around the stages between, in its turn. */
  void acceptDirectly(Event event) {
    if (taker == null) {
      directly.accept(event);
    } else {
      put(event, true);
    }
  }

  private void put(Event event, boolean isDirect) {
    batch.direct[batch.count] = isDirect;
    batch.events[batch.count++] = event;
    if (batch.count == eventsABatch) {
      send();
    }
  }

  private void send() {
    try {
      underWay.put(batch);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while a program was checked", e);
    }
    batch = new Batch(eventsABatch);
    rethrow();
  }

  private void take() {
    try {
      for (Batch due = underWay.take(); due.count > 0; due = underWay.take()) {
        if (fault == null) {
          handOn(due);
        }
      }
    } catch (InterruptedException e) {
      // Nobody wants the rest.
      Thread.currentThread().interrupt();
    }
  }

  private void handOn(Batch due) {
    try {
      for (int i = 0; i < due.count; i++) {
        (due.direct[i] ? directly : next).accept(due.events[i]);
      }
    } catch (RuntimeException | Error e) {
      fault = e;
    }
  }

  /**
   * Waits until every event has been taken; from now on they are taken on this thread.
   *
   * @throws IOException if the wait is interrupted
   */
  void join() throws IOException {
    Thread other = taker;
    if (other == null) {
      return;
    }
    if (batch.count > 0) {
      send();
    }
    send();
    try {
      other.join();
      taker = null;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while a program was checked", e);
    }
    rethrow();
  }

  /** Gives up: what has not been taken is lost. Nothing goes on over there afterwards. */
  void abandon() {
    Thread other = taker;
    if (other == null) {
      return;
    }
    other.interrupt();
    boolean interrupted = false;
    while (other.isAlive()) {
      try {
        other.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  /** What went wrong over there goes wrong here too. */
  private void rethrow() {
    Throwable wrong = fault;
    if (wrong instanceof RuntimeException e) {
      throw e;
    }
    if (wrong instanceof Error e) {
      throw e;
    }
  }
}
