package hairline.checks.motion;

import hairline.checks.motion.Event.MachineCode.Meaning;
import hairline.parser.Span;
import hairline.parser.Word;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalLong;

/** M98, M99 and G65: calls of subprograms and returns from them. */
final class Calls {
  private static final String ARGUMENTS = "ABCDEFHIJKQRSTUVWXYZ";

  private final Control control;
  private final BlockFlow flow;
  private final ModalCodes codes;
  private final Forgetting forgetting;

  Calls(Control control, BlockFlow flow, ModalCodes codes, Forgetting forgetting) {
    this.control = control;
    this.flow = flow;
    this.codes = codes;
    this.forgetting = forgetting;
  }

  /** Calls the subprogram that a block names, if it names one. */
  void execute(BlockWords words) throws IOException {
    boolean macro = words.has(Code.G65);
    if (!macro && !words.has(Code.M98)) {
      return;
    }
    String code = macro ? "G65" : "M98";
    Span span =
        words.span(
            macro ? CodeGroup.ONE_SHOT.bit() : CodeGroup.CALL.bit(),
            macro ? ARGUMENTS + "PL" : "PL");
    Word which = words.word('P');
    OptionalLong number = which == null ? OptionalLong.empty() : whole(which);
    if (which == null) {
      control.refuse(span, code, "a P word is due beside it");
    }
    if (number.isEmpty()) {
      lose(span);
      return;
    }
    Optional<Meaning> meaning = control.codes.callOnSheet(number.getAsLong());
    if (meaning.isPresent()) {
      codes.machineCode("P" + number.getAsLong(), meaning.get(), span);
    } else if (macro && words.hasAny(ARGUMENTS)) {
      control.emit(new Event.CodeUnknown(control.at(span), "G65 P" + number.getAsLong()));
      lose(span);
    } else {
      call(words, span, number.getAsLong());
    }
  }

  /**
   * M99 with P returns to a sequence number (common practice, no source). It is followed as a plain
   * return, so that nothing is certain behind it.
   */
  void noteJump(BlockWords words) {
    if (words.has(Code.M99) && (words.word('P') != null || words.isDoubled('P'))) {
      Span span = words.span(CodeGroup.CALL.bit(), "P");
      control.emit(new Event.CodeUnknown(control.at(span), "M99 P"));
      lose(span);
    }
  }

  private void call(BlockWords words, Span span, long number) throws IOException {
    Word times = words.word('L');
    OptionalLong repeats = OptionalLong.empty();
    if (times != null || words.isDoubled('L')) {
      repeats = times == null ? OptionalLong.empty() : whole(times);
      if (repeats.isEmpty()) {
        lose(span);
        return;
      }
      if (repeats.getAsLong() == 0) {
        return;
      }
    }
    if (!flow.call(control.at(span), number, repeats)) {
      lose(span);
    }
  }

  private void lose(Span span) {
    forgetting.call();
    forgetting.tell(span);
  }

  private OptionalLong whole(Word word) {
    Optional<BigDecimal> exact = control.numbers.exact(word);
    if (exact.isEmpty()) {
      return OptionalLong.empty();
    }
    Optional<Long> whole = Evaluator.whole(exact.get());
    if (whole.isPresent() && whole.get() >= 0) {
      return OptionalLong.of(whole.get());
    }
    control.refuse(word.span(), BlockWords.text(word), WordNumbers.WHOLE_DUE);
    return OptionalLong.empty();
  }
}
