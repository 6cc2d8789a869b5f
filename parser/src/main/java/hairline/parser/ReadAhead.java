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
  private static final int BATCHES = 4;

  /** Blocks, and what went wrong behind them; none is the end. */
  private record Batch(BlockBatch blocks, @Nullable Throwable fault) {}

  private final BatchSource source;
  private final BlockingQueue<Batch> filled = new ArrayBlockingQueue<>(BATCHES);
  private final Thread reader;
  private Batch batch = new Batch(BlockBatch.empty(), null);
  private BlockBatch blocks = batch.blocks;
  private boolean ended;

  /** Begins to read. */
  public ReadAhead(BlockSource source) {
    this.source = source instanceof BatchSource batches ? batches : new OneByOne(source);
    this.reader = new Thread(this::read, "read-ahead");
    reader.setDaemon(true);
    reader.start();
  }

  private void read() {
    BlockBatch.Builder builder = new BlockBatch.Builder();
    try {
      boolean more = true;
      while (more) {
        Batch next = fill(builder);
        more = next.fault == null && !next.blocks.isEmpty();
        filled.put(next);
      }
    } catch (InterruptedException e) {
      // Nobody wants the rest.
      Thread.currentThread().interrupt();
    }
  }

  private Batch fill(BlockBatch.Builder builder) {
    try {
      source.fill(builder);
      return new Batch(builder.build(), null);
    } catch (IOException | RuntimeException | Error e) {
      return new Batch(builder.build(), e);
    }
  }

  @Override
  public Optional<Block> next() throws IOException {
    if (blocks.isUsedUp() && !refill()) {
      return Optional.empty();
    }
    return Optional.of(blocks.take());
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
    blocks = batch.blocks;
    if (blocks.isEmpty()) {
      rethrow(batch.fault);
      ended = true;
    }
    return !blocks.isEmpty();
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

  /** Any source, by the batch. */
  private record OneByOne(BlockSource source) implements BatchSource {
    @Override
    public void fill(BlockBatch.Builder batch) throws IOException {
      while (!batch.isFull()) {
        Optional<Block> block = source.next();
        if (block.isEmpty()) {
          return;
        }
        batch.add(block.get());
      }
    }

    @Override
    public Optional<Block> next() throws IOException {
      return source.next();
    }

    @Override
    public void close() throws IOException {
      source.close();
    }
  }
}
