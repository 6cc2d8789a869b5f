package hairline.parser;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;

/**
 * A first look at a file, stretch by stretch. The first stretch is looked at by who asks; those of
 * a longer file by several threads at once, a bounded number of them ahead. What comes out is the
 * same whatever their number.
 */
final class SkimAhead implements SkimmedBlocks {
  /** So short a stretch holds few blocks: they die young. Four times as much takes 230 MB more. */
  static final int STRETCH_BYTES = 65_536;

  private static final int MOST_THREADS = 4;

  private final StoredProgram.Opener opener;
  private final long leaderEnd;
  private final long stretchBytes;
  private final int threads;
  private final Deque<Future<SkimmedStretch>> underWay = new ArrayDeque<>();
  private final PlainRun plain = new PlainRun();
  private @Nullable ExecutorService workers;
  private @Nullable SkimmedStretch stretch;
  private long nextByte;
  private int taken;
  private int linesBefore;

  SkimAhead(StoredProgram.Opener opener, long leaderEnd) {
    this(
        opener,
        leaderEnd,
        STRETCH_BYTES,
        Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors()));
  }

  SkimAhead(StoredProgram.Opener opener, long leaderEnd, long stretchBytes, int threads) {
    this.opener = opener;
    this.leaderEnd = leaderEnd;
    this.stretchBytes = stretchBytes;
    this.threads = threads;
  }

  @Override
  public Optional<Block> next() throws IOException {
    plain.clear();
    SkimmedStretch now = stretch;
    if (now == null) {
      now = look(0);
      nextByte = stretchBytes;
      stretch = now;
    }
    while (true) {
      if (taken < now.plain().size()) {
        plain.add(now.plain().get(taken), linesBefore);
      }
      if (taken < now.blocks().size()) {
        return Optional.of(now.blocks().get(taken++).behind(linesBefore));
      }
      if (now.ended()) {
        taken = now.plain().size();
        return Optional.empty();
      }
      linesBefore += now.lines();
      taken = 0;
      now = following();
      stretch = now;
    }
  }

  private SkimmedStretch look(long from) throws IOException {
    return SkimmedStretch.of(opener, from, from + stretchBytes, leaderEnd);
  }

  private SkimmedStretch following() throws IOException {
    if (threads == 1) {
      SkimmedStretch next = look(nextByte);
      nextByte += stretchBytes;
      return next;
    }
    ExecutorService pool = workers;
    if (pool == null) {
      pool = Executors.newFixedThreadPool(threads, SkimAhead::daemon);
      workers = pool;
    }
    while (underWay.size() <= threads) {
      long from = nextByte;
      underWay.add(pool.submit(() -> look(from)));
      nextByte += stretchBytes;
    }
    return result(underWay.remove());
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "first look");
    thread.setDaemon(true);
    return thread;
  }

  private static SkimmedStretch result(Future<SkimmedStretch> due) throws IOException {
    try {
      return due.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while a file was looked at", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException cause) {
        throw cause;
      }
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      if (e.getCause() instanceof Error cause) {
        throw cause;
      }
      throw new IllegalStateException(e);
    }
  }

  @Override
  public PlainRun plain() {
    return plain;
  }

  @Override
  public void close() {
    if (workers != null) {
      workers.shutdownNow();
    }
  }
}
