package hairline.parser;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.jspecify.annotations.Nullable;

/**
 * Blocks that a thread of its own reads before they are asked for, a bounded number of them. What
 * comes out is the same as without it, a fault of the reader at the same place.
 */
public final class ReadAhead implements BlockSource {
  /** So many that threads are seldom woken, so few that most die before they are collected. */
  private static final int BLOCKS_A_BATCH = 512;

  private static final int BATCHES = 4;

  /** Blocks, or what went wrong behind them; an empty one is the end. */
  private static final class Batch {
    private final Block[] blocks = new Block[BLOCKS_A_BATCH];
    private int count;
    private @Nullable Throwable fault;
  }

  private final BlockSource source;
  private final BlockingQueue<Batch> filled = new ArrayBlockingQueue<>(BATCHES);
  private final Thread reader;
  private Batch batch = new Batch();
  private int taken;
  private boolean ended;

  /** Begins to read. */
  public ReadAhead(BlockSource source) {
    this.source = source;
    this.reader = new Thread(this::read, "read-ahead");
    reader.setDaemon(true);
    reader.start();
  }

  private void read() {
    try {
      boolean more = true;
      while (more) {
        Batch next = new Batch();
        more = fill(next) && next.count > 0;
        filled.put(next);
      }
    } catch (InterruptedException e) {
      // Nobody wants the rest.
      Thread.currentThread().interrupt();
    }
  }

  /** Fills a batch; false behind a fault. */
  private boolean fill(Batch next) {
    try {
      while (next.count < BLOCKS_A_BATCH) {
        Optional<Block> block = source.next();
        if (block.isEmpty()) {
          return true;
        }
        next.blocks[next.count++] = block.get();
      }
      return true;
    } catch (IOException | RuntimeException | Error e) {
      next.fault = e;
      return false;
    }
  }

  @Override
  public Optional<Block> next() throws IOException {
    if (taken == batch.count && !refill()) {
      return Optional.empty();
    }
    return Optional.of(batch.blocks[taken++]);
  }

  private boolean refill() throws IOException {
    if (ended) {
      return false;
    }
    rethrow(batch.fault);
    try {
      batch = filled.take();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while blocks were read", e);
    }
    taken = 0;
    if (batch.count == 0) {
      rethrow(batch.fault);
      ended = true;
    }
    return batch.count > 0;
  }

  private static void rethrow(@Nullable Throwable fault) throws IOException {
    if (fault instanceof IOException e) {
      throw e;
    }
    if (fault instanceof RuntimeException e) {
      throw e;
    }
    if (fault instanceof Error e) {
      throw e;
    }
  }

  @Override
  public void close() throws IOException {
    reader.interrupt();
    boolean interrupted = false;
    while (reader.isAlive()) {
      try {
        reader.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
    source.close();
  }
}
