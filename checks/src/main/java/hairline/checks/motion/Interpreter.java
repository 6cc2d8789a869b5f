package hairline.checks.motion;

import hairline.parser.Block;
import hairline.parser.PartProgram;
import hairline.parser.Span;
import hairline.parser.Words;
import java.io.IOException;
import java.util.Optional;

/**
 * Executes a part program: blocks become moves and other events, in their order of execution.
 *
 * <p>Within a block the order is that of NISTIR 6556 table 8, but M5 and M9 act after the motion of
 * their block, as today's controls have it (common practice, no source). What is not understood
 * makes the state it may touch unknown; nothing of a program ever makes it throw.
 */
public final class Interpreter {
  /** Opens the files of the program; the first look at them tells what it notices. */
  private interface Opener {
    ProgramFiles open(EventSink sink) throws IOException;
  }

  private final ControlProfile profile;
  private final Opener opener;
  private boolean longWayOnly;

  /** An interpreter of the first program of these files, for this control. */
  public Interpreter(ControlProfile profile, ProgramFiles files) {
    this.profile = profile;
    this.opener = sink -> files;
  }

  /**
   * An interpreter of a program that stands in no folder. What the first look at it notices goes to
   * the sink of each run, before the run.
   */
  public Interpreter(ControlProfile profile, PartProgram program) {
    this.profile = profile;
    this.opener = sink -> ProgramFiles.alone(program, sink);
  }

  /** Has no block executed by {@link PlainBlocks}; what is told is the same. */
  Interpreter longWayOnly() {
    longWayOnly = true;
    return this;
  }

  /**
   * Runs the program from its start to its end. The last event is {@link Event.Ended}, or {@link
   * Event.StepBudgetReached}.
   *
   * @param sink takes the events
   * @param blockDeleteOn whether blocks with a {@code /} before them are left out
   * @throws IOException if the program cannot be read
   */
  public void run(EventSink sink, boolean blockDeleteOn) throws IOException {
    ProgramFiles files = opener.open(sink);
    try (BlockFlow flow =
        new BlockFlow(files, profile.callDepth(), profile.stepBudget(), blockDeleteOn, sink)) {
      Run run = new Run(new Control(profile, sink), flow, longWayOnly);
      for (Optional<Block> next = flow.next(); next.isPresent(); next = flow.next()) {
        run.execute(next.get(), flow.file());
      }
      run.finish();
    }
  }

  /** One run of the program. */
  private static final class Run {
    private final Control control;
    private final BlockFlow flow;
    private final Forgetting forgetting;
    private final UnreadBlock unread;
    private final BlockWords words;
    private final ModalCodes codes;
    private final Motions motions;
    private final Calls calls;
    private final PlainBlocks plain;
    private final boolean longWayOnly;
    private boolean ended;

    Run(Control control, BlockFlow flow, boolean longWayOnly) {
      this.control = control;
      this.flow = flow;
      control.limit(flow);
      Assumptions assumptions = new Assumptions(control);
      forgetting = new Forgetting(control);
      unread = new UnreadBlock(control, forgetting);
      words = new BlockWords(control);
      codes = new ModalCodes(control, assumptions, forgetting);
      motions = new Motions(control, assumptions, forgetting);
      calls = new Calls(control, flow, codes, forgetting);
      plain = new PlainBlocks(control, assumptions, motions);
      this.longWayOnly = longWayOnly;
    }

    void execute(Block block, int file) throws IOException {
      Modes before = control.modal.snapshot();
      if (file != control.at().file()) {
        control.parameters.enterFile(file == 0 ? "" : flow.fileName(file));
      }
      control.startBlock(new Place(file, block.line(), span(block)));
      control.emit(new Event.BlockStarted(control.at(), block, before));
      if (longWayOnly || !plain.execute(block)) {
        executeTheLongWay(block, before);
      }
    }

    private void executeTheLongWay(Block block, Modes before) throws IOException {
      if (!block.problems().isEmpty()
          && block.problems().stream().anyMatch(UnreadBlock::isUnread)) {
        unread.forget(block);
        tellModes(before);
        return;
      }
      words.read(block);
      forgetting.conflicts(words);
      codes.beforeMotion(words);
      Modes now = tellModes(before);
      motions.execute(words);
      codes.afterMotion(words);
      tellModes(now);
      for (Evaluator.Refusal refusal : control.evaluator.apply(block.settings(), block.line())) {
        control.refuse(refusal.span(), "#", refusal.why());
      }
      stopOrCall();
    }

    /** Tells where the modal state is no longer this one; returns what it is. */
    private Modes tellModes(Modes before) {
      Modes now = control.modal.snapshot();
      if (!now.isSame(before) && !now.equals(before)) {
        control.emit(new Event.ModesChanged(control.at(), before, now));
      }
      return now;
    }

    private void stopOrCall() throws IOException {
      Code stop = words.code(CodeGroup.STOPPING);
      if (stop == Code.M2 || stop == Code.M30) {
        end(Optional.of(stop.text()));
        return;
      }
      if (stop != null) {
        Span span = words.span(CodeGroup.STOPPING);
        control.emit(new Event.Stopped(control.at(span), stop.text(), control.modal.snapshot()));
      }
      Modes before = control.modal.snapshot();
      calls.execute(words);
      calls.noteJump(words);
      tellModes(before);
      if (words.has(Code.M99)
          && !flow.returnFromSubprogram(control.at(words.span(CodeGroup.CALL)))) {
        end(Optional.of("M99"));
      }
    }

    private void end(Optional<String> code) throws IOException {
      ended = true;
      flow.end();
      control.emit(new Event.Ended(control.at(), code, control.modal.snapshot()));
    }

    /** Nothing is left to execute. */
    void finish() throws IOException {
      if (!ended && !flow.isBudgetReached()) {
        end(Optional.empty());
      }
    }

    /** The columns of a block: those of its words, else of what else stands there. */
    private static Span span(Block block) {
      Words words = Words.of(block.words());
      if (!words.isEmpty()) {
        return new Span(words.column(0), words.endColumn(words.size() - 1));
      }
      if (!block.problems().isEmpty()) {
        return block.problems().get(0).span();
      }
      if (!block.settings().isEmpty()) {
        return block.settings().get(0).span();
      }
      return block.comments().isEmpty() ? new Span(1, 1) : block.comments().get(0).span();
    }
  }
}
