package hairline.checks.compare;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * The acts of a program one by one, while another thread interprets it; a few thousand are under
 * way at most.
 */
final class ActStream implements AutoCloseable {
  private static final int BATCH = 512;
  private static final int BATCHES = 8;

  /** Runs a program and hands its acts on. */
  interface Program {
    void run(Consumer<Act> sink) throws IOException;
  }

  /** The end of the stream, and why there is no more. */
  private record Batch(List<Act> acts, boolean last, Optional<Throwable> failure) {}

  /** Somebody closed the stream. */
  private static final class Closed extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  private final BlockingQueue<Batch> queue = new ArrayBlockingQueue<>(BATCHES);
  private final Thread worker;
  private @Nullable Batch batch;
  private int at;

  ActStream(Program program) {
    worker = new Thread(() -> work(program), "compare");
    worker.setDaemon(true);
    worker.start();
  }

  private void work(Program program) {
    List<Act> acts = new ArrayList<>(BATCH);
    Optional<Throwable> failure = Optional.empty();
    try {
      program.run(
          act -> {
            acts.add(act);
            if (acts.size() == BATCH) {
              put(new Batch(List.copyOf(acts), false, Optional.empty()));
              acts.clear();
            }
          });
    } catch (Closed e) {
      return;
    } catch (IOException | RuntimeException | StackOverflowError | OutOfMemoryError e) {
      failure = Optional.of(e);
    }
    try {
      queue.put(new Batch(List.copyOf(acts), true, failure));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void put(Batch next) {
    try {
      queue.put(next);
    } catch (InterruptedException e) {
      throw new Closed();
    }
  }

  /**
   * The next act.
   *
   * @throws IOException if the program can't be read
   */
  Act next() throws IOException {
    Batch now = batch;
    while (now == null || at == now.acts().size()) {
      if (now != null && now.last()) {
        throw new IOException("the program changed while it was compared");
      }
      try {
        now = queue.take();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IOException("interrupted while programs were compared", e);
      }
      if (now.failure().isPresent()) {
        Throwable cause = now.failure().get();
        if (cause instanceof IOException e) {
          throw e;
        }
        throw new IllegalStateException(cause);
      }
      batch = now;
      at = 0;
    }
    return now.acts().get(at++);
  }

  @Override
  public void close() {
    worker.interrupt();
  }
}
