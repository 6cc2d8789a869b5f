package hairline.checks.motion;

import hairline.checks.motion.ProgramIndex.Program;
import hairline.checks.motion.ProgramIndex.Remark;
import hairline.parser.Block;
import hairline.parser.Comment;
import hairline.parser.PartProgram;
import hairline.parser.PlainRun;
import hairline.parser.Problem;
import hairline.parser.SkimmedBlocks;
import hairline.parser.Span;
import hairline.parser.Value;
import hairline.parser.Word;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Reads a file once and tells where its programs stand. What it notices on the way goes to a sink
 * as events: lines that the grammar could not read, sequence numbers that repeat, text that no
 * control would reach, caps.
 *
 * <p>A program begins with a program number (O or a colon). One that leads names the program that
 * runs; one behind blocks opens a subprogram. A tape mark ends the program before it.
 */
public final class ProgramIndexer {
  /** How many programs of a file are followed. */
  static final int PROGRAMS_CAP = 10_000;

  /** How many comments to the checker are kept. */
  static final int REMARKS_CAP = 10_000;

  /** How many repeated sequence numbers of a program are told. */
  static final int REPEATED_CAP = 1_000;

  private static final Span LINE_START = new Span(1, 1);
  private static final String MARK = "hairline";

  private final int file;
  private final EventSink sink;
  private final List<Program> programs = new ArrayList<>();
  private final List<Remark> remarks = new ArrayList<>();
  private int aimedRemarks;
  private final SequenceNumbers sequenceNumbers = new SequenceNumbers();
  private final Set<Long> repeated = new HashSet<>();
  private final Set<String> capsTold = new HashSet<>();
  private boolean deletableBlocks;
  private boolean withPoint;
  private boolean withoutPoint;

  // The program whose text is being read; closed after a tape mark that ends it.
  private boolean open = true;
  private boolean ended;
  private boolean unreachedTold;
  private OptionalLong number = OptionalLong.empty();
  private int line = 1;
  private long byteOffset;
  private OptionalInt firstBlockLine = OptionalInt.empty();
  private Optional<String> endCode = Optional.empty();

  // The first end that nothing leaves out, the first block behind it, and whether there is a jump.
  private Optional<Event.BlocksBehindEnd> behind = Optional.empty();
  private Optional<Place> sureEnd = Optional.empty();
  private String sureEndCode = "";
  private boolean jumps;
  private int lastLine = 1;
  private long end;

  private ProgramIndexer(int file, EventSink sink) {
    this.file = file;
    this.sink = sink;
  }

  /**
   * Looks through a file.
   *
   * @param file its index for places
   * @param sink takes what is noticed
   * @throws IOException if it cannot be read
   */
  public static ProgramIndex index(PartProgram program, int file, EventSink sink)
      throws IOException {
    ProgramIndexer indexer = new ProgramIndexer(file, sink);
    try (SkimmedBlocks blocks = program.skim()) {
      for (Optional<Block> block = blocks.next(); block.isPresent(); block = blocks.next()) {
        indexer.takePlain(blocks.plain());
        indexer.take(block.get());
      }
      indexer.takePlain(blocks.plain());
    }
    return indexer.finish();
  }

  private void take(Block block) {
    switch (block.kind()) {
      case LEADER -> {}
      case TAPE_MARK -> takeTapeMark(block);
      case BLOCK -> takeBlock(block);
    }
  }

  /** Does for plain blocks, in sum, what {@link #takeBlock} does for one. */
  private void takePlain(PlainRun run) {
    if (run.isEmpty()) {
      return;
    }
    lastLine = run.lastLine();
    end = run.endByteOffset() + 1L;
    int first = run.firstLineWithWords();
    if (first != 0) {
      aimRemarks(first);
    }
    if (!open) {
      if (first != 0) {
        tellUnreached(first);
      }
      return;
    }
    if (first != 0 && firstBlockLine.isEmpty()) {
      firstBlockLine = OptionalInt.of(first);
    }
    if (first != 0) {
      noteBehindEnd(new Place(file, first, run.firstWords()));
    }
    withPoint |= run.withPoint();
    withoutPoint |= run.withoutPoint();
  }

  private void tellUnreached(int at) {
    if (!ended && !unreachedTold) {
      unreachedTold = true;
      sink.accept(
          new Event.BecameUnknown(
              new Place(file, at, LINE_START),
              "what stands behind the tape mark that ends the program",
              Event.BecameUnknown.Cause.NOT_UNDERSTOOD));
    }
  }

  private void takeTapeMark(Block block) {
    if (open && (number.isPresent() || firstBlockLine.isPresent())) {
      close(block.byteOffset());
    }
  }

  private void takeBlock(Block block) {
    OptionalLong opens = programNumber(block);
    if (opens.isPresent()) {
      startProgram(opens.getAsLong(), block);
    }
    lastLine = block.line();
    end = block.byteOffset() + block.byteLength() + 1L;
    deletableBlocks |= block.deletable();
    boolean content = hasContent(block);
    if (content) {
      aimRemarks(block.line());
    }
    noteRemarks(block);
    for (Problem problem : block.problems()) {
      sink.accept(new Event.BlockProblem(place(block, problem.span()), problem));
    }
    if (!open) {
      if (content) {
        tellUnreached(block.line());
      }
      return;
    }
    if (content && firstBlockLine.isEmpty()) {
      firstBlockLine = OptionalInt.of(block.line());
    }
    if (content) {
      noteBehindEnd(place(block, spanOf(block)));
    }
    noteWords(block);
    noteSureEnd(block);
  }

  private static Span spanOf(Block block) {
    List<Word> words = block.words();
    return words.isEmpty()
        ? LINE_START
        : new Span(words.get(0).span().column(), words.get(words.size() - 1).span().endColumn());
  }

  private void noteBehindEnd(Place at) {
    if (sureEnd.isPresent() && behind.isEmpty()) {
      behind = Optional.of(new Event.BlocksBehindEnd(at, sureEnd.get(), sureEndCode));
    }
  }

  /** An end in a block that runs whatever the switch says; a macro may jump, and so may M99 P. */
  private void noteSureEnd(Block block) {
    jumps |= block.problems().stream().anyMatch(p -> p.kind() == Problem.Kind.MACRO);
    if (sureEnd.isPresent() || block.deletable() || !block.problems().isEmpty()) {
      return;
    }
    for (Word word : block.words()) {
      if (word.letter() == 'M' && isOneOf(word, 2, 30, 99)) {
        sureEnd = Optional.of(place(block, word.span()));
        sureEndCode = "M" + wholeLiteral(word).getAsLong();
        jumps |= block.words().stream().anyMatch(w -> w.letter() == 'P');
        return;
      }
    }
  }

  private void startProgram(long next, Block block) {
    boolean leads = programs.isEmpty() && number.isEmpty() && firstBlockLine.isEmpty() && open;
    if (!leads) {
      if (open) {
        close(block.byteOffset());
      }
      open = true;
      unreachedTold = false;
      line = block.line();
      byteOffset = block.byteOffset();
    }
    number = OptionalLong.of(next);
  }

  private void close(long at) {
    if (programs.size() < PROGRAMS_CAP) {
      programs.add(new Program(number, line, byteOffset, at, lastLine, firstBlockLine, endCode));
    } else {
      tellCap(line, "programs in a file", PROGRAMS_CAP);
    }
    if (!jumps) {
      behind.ifPresent(sink::accept);
    }
    behind = Optional.empty();
    sureEnd = Optional.empty();
    jumps = false;
    ended = endCode.isPresent();
    open = false;
    number = OptionalLong.empty();
    firstBlockLine = OptionalInt.empty();
    endCode = Optional.empty();
    sequenceNumbers.clear();
    repeated.clear();
  }

  private ProgramIndex finish() {
    if (open) {
      close(Math.max(end, byteOffset));
    }
    return new ProgramIndex(programs, deletableBlocks, withPoint && withoutPoint, remarks);
  }

  private void noteRemarks(Block block) {
    for (Comment comment : block.comments()) {
      if (!comment.text().strip().toLowerCase(Locale.ROOT).startsWith(MARK)) {
        continue;
      }
      if (remarks.size() == REMARKS_CAP) {
        tellCap(block.line(), "comments to the checker in a file", REMARKS_CAP);
        return;
      }
      boolean alone =
          block.settings().isEmpty()
              && block.problems().isEmpty()
              && block.words().stream().allMatch(word -> word.letter() == 'N');
      remarks.add(new Remark(block.line(), comment.span(), comment.text(), alone, block.line()));
    }
  }

  /** Remarks that stand alone before a block with content speak of that block. */
  private void aimRemarks(int blockLine) {
    while (aimedRemarks < remarks.size()) {
      Remark remark = remarks.get(aimedRemarks);
      if (remark.standsAlone()) {
        remarks.set(
            aimedRemarks, new Remark(remark.line(), remark.span(), remark.text(), true, blockLine));
      }
      aimedRemarks++;
    }
  }

  private void noteWords(Block block) {
    boolean lengths = true;
    for (Word word : block.words()) {
      switch (word.letter()) {
        case 'N' -> noteSequenceNumber(word, block.line());
        case 'M' -> noteEndCode(word);
        // Words of a dwell, of data setting and of calls are no lengths, or of another kind.
        case 'G' -> lengths &= !isOneOf(word, 4, 10, 65, 66);
        default -> {}
      }
    }
    if (lengths && !(withPoint && withoutPoint)) {
      block.words().forEach(this::notePoint);
    }
  }

  private void noteSequenceNumber(Word word, int at) {
    OptionalLong value = wholeLiteral(word);
    if (value.isEmpty()) {
      return;
    }
    long sequence = value.getAsLong();
    int before = sequenceNumbers.put(sequence, at);
    if (before == SequenceNumbers.FULL) {
      tellCap(at, "sequence numbers in a program", SequenceNumbers.CAP);
    } else if (before != SequenceNumbers.NEW && !repeated.contains(sequence)) {
      if (repeated.size() == REPEATED_CAP) {
        tellCap(at, "repeated sequence numbers in a program", REPEATED_CAP);
        return;
      }
      repeated.add(sequence);
      sink.accept(
          new Event.SequenceRepeated(
              new Place(file, at, word.span()),
              Long.toString(sequence),
              new Place(file, before, LINE_START)));
    }
  }

  private void noteEndCode(Word word) {
    if (endCode.isEmpty() && isOneOf(word, 2, 30, 99)) {
      endCode = Optional.of("M" + wholeLiteral(word).getAsLong());
    }
  }

  private void notePoint(Word word) {
    if ("XYZUVWIJRQ".indexOf(word.letter()) >= 0
        && word.value() instanceof Value.Literal literal
        && literal.toBigDecimal().signum() != 0) {
      withPoint |= literal.hasPoint();
      withoutPoint |= !literal.hasPoint();
    }
  }

  private static boolean hasContent(Block block) {
    for (Word word : block.words()) {
      if (word.letter() != 'N' && word.letter() != 'O') {
        return true;
      }
    }
    return !block.settings().isEmpty()
        || block.problems().stream().anyMatch(p -> p.kind() != Problem.Kind.SPACE_INSIDE_NUMBER);
  }

  private static OptionalLong programNumber(Block block) {
    for (Word word : block.words()) {
      if (word.letter() == 'O') {
        return wholeLiteral(word);
      }
    }
    return OptionalLong.empty();
  }

  private static boolean isOneOf(Word word, long... numbers) {
    OptionalLong value = wholeLiteral(word);
    if (value.isPresent()) {
      for (long candidate : numbers) {
        if (candidate == value.getAsLong()) {
          return true;
        }
      }
    }
    return false;
  }

  private static OptionalLong wholeLiteral(Word word) {
    if (!(word.value() instanceof Value.Literal literal)) {
      return OptionalLong.empty();
    }
    if (literal.scale() == 0 && literal.big().isEmpty()) {
      return OptionalLong.of(literal.unscaled());
    }
    return Evaluator.whole(literal.toBigDecimal())
        .map(OptionalLong::of)
        .orElse(OptionalLong.empty());
  }

  private void tellCap(int at, String what, long cap) {
    if (capsTold.add(what)) {
      sink.accept(new Event.CapReached(new Place(file, at, LINE_START), what, cap));
    }
  }

  private Place place(Block block, Span span) {
    return new Place(file, block.line(), span);
  }
}
