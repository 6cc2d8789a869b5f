package hairline.checks.motion;

import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.PartProgram;
import hairline.parser.Problem;
import hairline.parser.Span;
import hairline.parser.Word;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * Executes a part program: blocks become moves and other events, in their order of execution.
 *
 * <p>Within a block the order is that of NISTIR 6556 table 8, but M5 and M9 act after the motion of
 * their block, as today's controls have it (common practice, no source). What is not understood
 * makes the state it may touch unknown; nothing of a program ever makes it throw.
 */
public final class Interpreter {
  private final ControlProfile profile;
  private final PartProgram program;

  /** An interpreter of this program for this control. */
  public Interpreter(ControlProfile profile, PartProgram program) {
    this.profile = profile;
    this.program = program;
  }

  /**
   * Runs the program from its start to its end.
   *
   * @param sink takes the events
   * @param blockDeleteOn whether blocks with a {@code /} before them are left out
   * @throws IOException if the program cannot be read
   */
  public void run(EventSink sink, boolean blockDeleteOn) throws IOException {
    Run run = new Run(new Control(profile, sink));
    try (BlockSource source = program.blocks()) {
      Optional<Block> next = source.next();
      boolean ended = false;
      while (next.isPresent() && !ended) {
        Block block = next.get();
        if (block.kind() == Block.Kind.BLOCK && !(blockDeleteOn && block.deletable())) {
          ended = run.execute(block);
        }
        next = source.next();
      }
      if (!ended) {
        run.end(Optional.empty());
      }
    }
  }

  /** One run of the program. */
  private static final class Run {
    private final Control control;
    private final Forgetting forgetting;
    private final BlockWords words;
    private final ModalCodes codes;
    private final Motions motions;

    Run(Control control) {
      this.control = control;
      Assumptions assumptions = new Assumptions(control);
      forgetting = new Forgetting(control);
      words = new BlockWords(control);
      codes = new ModalCodes(control, assumptions);
      motions = new Motions(control, assumptions, forgetting);
    }

    /** Executes a block; returns whether the program ends with it. */
    boolean execute(Block block) {
      Modes before = control.modal.snapshot();
      control.startBlock(new Place(0, block.line(), span(block)));
      control.emit(new Event.BlockStarted(control.at(), block, before));
      if (!isReadable(block)) {
        return false;
      }
      words.read(block);
      forgetting.conflicts(words);
      codes.beforeMotion(words);
      Modes now = control.modal.snapshot();
      if (!now.equals(before)) {
        control.emit(new Event.ModesChanged(control.at(), before, now));
      }
      motions.execute(words);
      codes.afterMotion(words);
      Modes after = control.modal.snapshot();
      if (!after.equals(now)) {
        control.emit(new Event.ModesChanged(control.at(), now, after));
      }
      for (Evaluator.Refusal refusal : control.evaluator.apply(block.settings(), block.line())) {
        control.refuse(refusal.span(), "#", refusal.why());
      }
      return stop();
    }

    private boolean isReadable(Block block) {
      boolean readable = true;
      for (Problem problem : block.problems()) {
        control.emit(new Event.BlockProblem(control.at(problem.span()), problem));
        readable &= problem.kind() == Problem.Kind.SPACE_INSIDE_NUMBER;
      }
      if (!readable) {
        forgetting.axes(control.at().span());
      }
      return readable;
    }

    private boolean stop() {
      Code code = words.code(CodeGroup.STOPPING);
      if (code == null) {
        return false;
      }
      if (code == Code.M2 || code == Code.M30) {
        end(Optional.of(code.text()));
        return true;
      }
      Span span = words.span(CodeGroup.STOPPING);
      control.emit(new Event.Stopped(control.at(span), code.text(), control.modal.snapshot()));
      return false;
    }

    void end(Optional<String> code) {
      control.emit(new Event.Ended(control.at(), code, control.modal.snapshot()));
    }

    /** The columns of a block: those of its words, else of what else stands there. */
    private static Span span(Block block) {
      List<Word> words = block.words();
      if (!words.isEmpty()) {
        Span first = words.get(0).span();
        Span last = words.get(words.size() - 1).span();
        return new Span(first.column(), last.endColumn());
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
