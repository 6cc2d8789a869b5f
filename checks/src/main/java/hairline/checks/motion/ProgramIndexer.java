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
import hairline.parser.Words;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
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

  /**
   * A look through a file that somebody else reads.
   *
   * @param file its index for places
   * @param sink takes what is noticed
   */
  ProgramIndexer(int file, EventSink sink) {
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

  /** Takes the next block. */
  void take(Block block) {
    switch (block.kind()) {
      case LEADER -> {}
      case TAPE_MARK -> takeTapeMark(block);
      case BLOCK -> takeBlock(block);
    }
  }

  /** Does for plain blocks, in sum, what {@link #takeBlock} does for one. */
  void takePlain(PlainRun run) {
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

  /** Takes the sequence number of a block that is told of among plain ones. */
  void takeNumber(int at, long sequence) {
    if (open) {
      noteSequenceNumber(sequence, LINE_START, at);
    }
  }

  /** Whether the program goes on whose text was read last. */
  boolean isOpen() {
    return open;
  }

  /** The number of the program that goes on. */
  OptionalLong numberSoFar() {
    return number;
  }

  /**
   * Whether what was taken is one program at most, with nothing behind its end, without deletable
   * blocks and comments to the checker, its lengths all with a decimal point or all without.
   */
  boolean isUsual() {
    return programs.size() == (open ? 0 : 1)
        && behind.isEmpty()
        && !deletableBlocks
        && remarks.isEmpty()
        && !(withPoint && withoutPoint);
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
    Words words = Words.of(block.words());
    OptionalLong opens = programNumber(words);
    if (opens.isPresent()) {
      startProgram(opens.getAsLong(), block);
    }
    lastLine = block.line();
    end = block.byteOffset() + block.byteLength() + 1L;
    deletableBlocks |= block.deletable();
    boolean content = hasContent(block, words);
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
      noteBehindEnd(place(block, spanOf(words)));
    }
    noteWords(words, block.line());
    noteSureEnd(block, words);
  }

  private static Span spanOf(Words words) {
    return words.isEmpty()
        ? LINE_START
        : new Span(words.column(0), words.endColumn(words.size() - 1));
  }

  private void noteBehindEnd(Place at) {
    if (sureEnd.isPresent() && behind.isEmpty()) {
      behind = Optional.of(new Event.BlocksBehindEnd(at, sureEnd.get(), sureEndCode));
    }
  }

  /** An end in a block that runs whatever the switch says; a macro may jump, and so may M99 P. */
  private void noteSureEnd(Block block, Words words) {
    for (Problem problem : block.problems()) {
      jumps |= problem.kind() == Problem.Kind.MACRO;
    }
    if (sureEnd.isPresent() || block.deletable() || !block.problems().isEmpty()) {
      return;
    }
    for (int i = 0; i < words.size(); i++) {
      if (words.letter(i) == 'M' && isOneOf(words, i, 2, 30, 99)) {
        sureEnd = Optional.of(place(block, words.span(i)));
        sureEndCode = "M" + wholeLiteral(words, i).getAsLong();
        jumps |= has(words, 'P');
        return;
      }
    }
  }

  private static boolean has(Words words, char letter) {
    for (int i = 0; i < words.size(); i++) {
      if (words.letter(i) == letter) {
        return true;
      }
    }
    return false;
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

  /** What was found, at the end of the file. */
  ProgramIndex finish() {
    if (open) {
      close(Math.max(end, byteOffset));
    }
    return new ProgramIndex(programs, deletableBlocks, withPoint && withoutPoint, remarks);
  }

  private void noteRemarks(Block block) {
    for (Comment comment : block.comments()) {
      if (!comment.speaksToChecker()) {
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

  private void noteWords(Words words, int at) {
    boolean lengths = true;
    for (int i = 0; i < words.size(); i++) {
      switch (words.letter(i)) {
        case 'N' -> noteSequenceNumber(words, i, at);
        case 'M' -> noteEndCode(words, i);
        // Words of a dwell, of data setting and of calls are no lengths, or of another kind.
        case 'G' -> lengths &= !isOneOf(words, i, 4, 10, 65, 66);
        default -> {}
      }
    }
    if (lengths && !(withPoint && withoutPoint)) {
      for (int i = 0; i < words.size(); i++) {
        notePoint(words, i);
      }
    }
  }

  private void noteSequenceNumber(Words words, int i, int at) {
    OptionalLong value = wholeLiteral(words, i);
    if (value.isPresent()) {
      noteSequenceNumber(value.getAsLong(), words.span(i), at);
    }
  }

  private void noteSequenceNumber(long sequence, Span span, int at) {
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
              new Place(file, at, span),
              Long.toString(sequence),
              new Place(file, before, LINE_START)));
    }
  }

  private void noteEndCode(Words words, int i) {
    if (endCode.isEmpty() && isOneOf(words, i, 2, 30, 99)) {
      endCode = Optional.of("M" + wholeLiteral(words, i).getAsLong());
    }
  }

  private void notePoint(Words words, int i) {
    if ("XYZUVWIJRQ".indexOf(words.letter(i)) >= 0 && isNumberButZero(words, i)) {
      boolean point =
          words.isPlain(i) ? words.hasPoint(i) : ((Value.Literal) words.get(i).value()).hasPoint();
      withPoint |= point;
      withoutPoint |= !point;
    }
  }

  private static boolean isNumberButZero(Words words, int i) {
    return words.isPlain(i)
        ? words.unscaled(i) != 0
        : words.get(i).value() instanceof Value.Literal literal
            && literal.toBigDecimal().signum() != 0;
  }

  private static boolean hasContent(Block block, Words words) {
    for (int i = 0; i < words.size(); i++) {
      if (words.letter(i) != 'N' && words.letter(i) != 'O') {
        return true;
      }
    }
    if (!block.settings().isEmpty()) {
      return true;
    }
    for (Problem problem : block.problems()) {
      if (problem.kind() != Problem.Kind.SPACE_INSIDE_NUMBER) {
        return true;
      }
    }
    return false;
  }

  private static OptionalLong programNumber(Words words) {
    for (int i = 0; i < words.size(); i++) {
      if (words.letter(i) == 'O') {
        return wholeLiteral(words, i);
      }
    }
    return OptionalLong.empty();
  }

  private static boolean isOneOf(Words words, int i, long... numbers) {
    OptionalLong value = wholeLiteral(words, i);
    if (value.isPresent()) {
      for (long candidate : numbers) {
        if (candidate == value.getAsLong()) {
          return true;
        }
      }
    }
    return false;
  }

  private static OptionalLong wholeLiteral(Words words, int i) {
    if (words.isPlain(i) && words.scale(i) == 0) {
      return OptionalLong.of(words.unscaled(i));
    }
    if (!(words.get(i).value() instanceof Value.Literal literal)) {
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
