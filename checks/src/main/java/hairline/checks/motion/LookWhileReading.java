package hairline.checks.motion;

import hairline.checks.motion.ProgramIndex.Program;
import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.Comment;
import hairline.parser.Onlooker;
import hairline.parser.PartProgram;
import hairline.parser.PlainRun;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Looks through a long file while it is read to be run, so that it need not be read twice. Until
 * then it is assumed what holds of most long files: one program from its first line to its end, of
 * which a first look notices nothing, without deletable blocks and without comments to the checker.
 * Where that proves wrong, who reads is told so ({@link NotAsAssumedException}).
 */
final class LookWhileReading implements Onlooker {
  /** So many blocks are looked at before anything is assumed. */
  static final int HEAD_BLOCKS = 500;

  /** And so much of the end of the file. */
  static final int TAIL_BYTES = 65_536;

  private static final String UNUSUAL = "the file holds what is to be known before it is run";

  private final ProgramIndexer indexer = new ProgramIndexer(0, event -> noticed = true);
  private final PartProgram text;
  private OptionalLong number = OptionalLong.empty();
  private boolean noticed;
  private boolean ended;

  /** What a look through all of the file has found. */
  private Optional<ProgramIndex> whole = Optional.empty();

  private boolean wholeNoticed;

  private LookWhileReading(PartProgram text) {
    this.text = text;
  }

  /**
   * A look at a program, or nothing where its head or its tail holds what is not assumed.
   *
   * @param bytes how long it is
   * @throws IOException if it cannot be read
   */
  static Optional<LookWhileReading> at(PartProgram text, long bytes) throws IOException {
    LookWhileReading head = new LookWhileReading(text);
    long behindHead = 0;
    long numbered = 0;
    try (BlockSource blocks = text.blocks()) {
      Optional<Block> next = blocks.next();
      for (int i = 0; i < HEAD_BLOCKS && next.isPresent(); i++) {
        head.indexer.take(next.get());
        numbered += isNumbered(next.get()) ? 1 : 0;
        behindHead = next.get().byteOffset() + next.get().byteLength() + 1L;
        next = blocks.next();
      }
    }
    head.number = head.indexer.numberSoFar();
    // If the rest is numbered like the head, it would be told that not all numbers are kept.
    boolean tooManyNumbers = numbered > 0 && numbered * bytes >= SequenceNumbers.CAP * behindHead;
    if (!head.isAsAssumed()
        || tooManyNumbers
        || !isTailUsual(text, Math.max(behindHead, bytes - TAIL_BYTES))) {
      return Optional.empty();
    }
    LookWhileReading look = new LookWhileReading(text);
    look.number = head.number;
    return Optional.of(look);
  }

  private static boolean isNumbered(Block block) {
    return block.words().stream().anyMatch(word -> word.letter() == 'N');
  }

  private static boolean isTailUsual(PartProgram text, long from) throws IOException {
    try (BlockSource blocks = text.blocksFrom(from, 1)) {
      // The first may be but the rest of one.
      blocks.next();
      for (Optional<Block> next = blocks.next(); next.isPresent(); next = blocks.next()) {
        if (!isUsual(next.get())) {
          return false;
        }
      }
    }
    return true;
  }

  private static boolean isUsual(Block block) {
    return !block.deletable()
        && block.problems().isEmpty()
        && block.words().stream().noneMatch(word -> word.letter() == 'O')
        && block.comments().stream().noneMatch(Comment::speaksToChecker);
  }

  /**
   * What is assumed of the file.
   *
   * @param bytes how long it is
   */
  ProgramIndex assumed(long bytes) {
    Program all =
        new Program(number, 1, 0, bytes, Integer.MAX_VALUE, OptionalInt.empty(), Optional.empty());
    return new ProgramIndex(List.of(all), false, false, List.of());
  }

  /** The blocks of the program, which are looked through as they are read; to be asked for once. */
  BlockSource blocks() throws IOException {
    return text.blocksSeenBy(this);
  }

  @Override
  public void plain(PlainRun run) throws IOException {
    indexer.takePlain(run);
    requireAsAssumed();
  }

  @Override
  public void numbered(int line, long sequence) throws IOException {
    indexer.takeNumber(line, sequence);
    if (noticed) {
      requireAsAssumed();
    }
  }

  @Override
  public boolean other(Block block) throws IOException {
    indexer.take(block);
    requireAsAssumed();
    return indexer.isOpen();
  }

  @Override
  public void ended() {
    ended = true;
  }

  private boolean isAsAssumed() {
    OptionalLong soFar = indexer.numberSoFar();
    return !noticed && indexer.isUsual() && (soFar.isEmpty() || soFar.equals(number));
  }

  private void requireAsAssumed() throws NotAsAssumedException {
    if (!isAsAssumed()) {
      throw new NotAsAssumedException(UNUSUAL);
    }
  }

  /**
   * Looks through all of the file at once, because somebody has to know before it is read to its
   * end.
   *
   * @throws NotAsAssumedException if it holds what is not assumed
   */
  void requireWhole() throws IOException {
    if (whole.isEmpty()) {
      ProgramIndex index = ProgramIndexer.index(text, 0, event -> wholeNoticed = true);
      requireAsAssumed(index, wholeNoticed);
      whole = Optional.of(index);
    }
  }

  /**
   * What the look has found, once the program has been run. Where that ended before its text did,
   * the file is looked through once more.
   *
   * @throws NotAsAssumedException if that is not what was assumed
   */
  ProgramIndex found() throws IOException {
    if (whole.isEmpty() && ended) {
      ProgramIndex index = indexer.finish();
      requireAsAssumed(index, noticed);
      return index;
    }
    requireWhole();
    return whole.orElseThrow();
  }

  private void requireAsAssumed(ProgramIndex index, boolean events) throws NotAsAssumedException {
    if (events
        || index.programs().size() != 1
        || !index.first().number().equals(number)
        || index.deletableBlocks()
        || index.mixesDecimalPoints()
        || !index.remarks().isEmpty()) {
      throw new NotAsAssumedException(UNUSUAL);
    }
  }
}
