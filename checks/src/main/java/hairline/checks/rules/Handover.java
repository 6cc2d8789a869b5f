package hairline.checks.rules;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import java.io.IOException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.jspecify.annotations.Nullable;

/**
 * Hands events on; once it is told to part, from the thread that makes them to one that judges
 * them, in their order, so that both go on at once. What is behind it sees the very same events in
 * the very same order either way; a bounded number of them is under way.
 */
final class Handover implements EventSink {
  /** So many that threads are seldom woken, so few that most die before they are collected. */
  private static final int EVENTS_A_BATCH = 1_024;

  private static final int BATCHES = 4;

  /** Events, some of which go to the sink for direct ones. */
  private static final class Batch {
    private final Event[] events = new Event[EVENTS_A_BATCH];
    private final boolean[] direct = new boolean[EVENTS_A_BATCH];
    private int count;
  }

  private final EventSink directly;
  private EventSink next = event -> {};
  private final BlockingQueue<Batch> underWay = new ArrayBlockingQueue<>(BATCHES);
  private @Nullable Thread taker;
  private Batch batch = new Batch();
  private volatile @Nullable Throwable fault;

  /**
   * A handover to nobody yet.
   *
   * @param directly takes the events of {@link #acceptDirectly}
   */
  Handover(EventSink directly) {
    this.directly = directly;
  }

  /** Hands over to this one from now on. */
  Handover to(EventSink taking) {
    next = taking;
    return this;
  }

  /** From now on the events are taken on another thread. */
  void part() {
    Thread thread = new Thread(this::take, "judge");
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
    if (batch.count == EVENTS_A_BATCH) {
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
    batch = new Batch();
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
    Thread judge = taker;
    if (judge == null) {
      return;
    }
    if (batch.count > 0) {
      send();
    }
    send();
    try {
      judge.join();
      taker = null;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while a program was checked", e);
    }
    rethrow();
  }

  /** Gives up: what has not been taken is lost. Nothing goes on over there afterwards. */
  void abandon() {
    Thread judge = taker;
    if (judge == null) {
      return;
    }
    judge.interrupt();
    boolean interrupted = false;
    while (judge.isAlive()) {
      try {
        judge.join();
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
