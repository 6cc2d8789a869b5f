package hairline.checks.motion;

import hairline.checks.motion.Event.BecameUnknown.Cause;
import hairline.parser.Span;
import hairline.parser.Word;
import java.io.IOException;
import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The control while a program runs: what its parts share. Holds the state, the position, the block
 * being executed and where events go.
 */
final class Control {
  final ControlProfile profile;
  final CodeTable codes;
  final Rounding rounding;
  final ModalState modal;
  final TipPosition tip = new TipPosition();
  final Shifts shifts;
  final Parameters parameters = new Parameters();
  final Evaluator evaluator = new Evaluator(parameters);
  final SpindleWatch spindle;
  final WordNumbers numbers;
  final LengthWords lengths;
  private final EventSink sink;

  /** How many reasons are remembered, so as not to be told again. */
  private static final int TOLD_CAP = 1_000;

  private final Set<String> told = new HashSet<>();

  private @Nullable BlockFlow flow;
  private Place at = new Place(0, 1, new Span(1, 1));

  Control(ControlProfile profile, EventSink sink) {
    this.profile = profile;
    this.sink = sink;
    codes = new CodeTable(profile.codes());
    shifts = new Shifts(profile.offsets());
    rounding = new Rounding(profile);
    modal = new ModalState(profile);
    spindle = new SpindleWatch(this);
    numbers = new WordNumbers(this);
    lengths = new LengthWords(this);
  }

  void limit(BlockFlow steps) {
    flow = steps;
  }

  /** Takes a step of the budget for what a single block does. */
  boolean takeStep(Span span) throws IOException {
    return flow == null || flow.step(at(span));
  }

  /** Whether so many repeats of what a single block does are more than the budget still holds. */
  boolean isTooMany(long repeats) {
    return flow != null && flow.isTooMany(repeats);
  }

  /** Ends the program behind the first of repeats that are too many. */
  void endBehind(Span span, long repeats) throws IOException {
    if (flow != null) {
      flow.endBehind(at(span), repeats);
    }
  }

  void startBlock(Place place) {
    at = place;
    modal.enterFile(place.file());
  }

  /** The block being executed. */
  Place at() {
    return at;
  }

  /** A stretch of the block being executed. */
  Place at(Span span) {
    return span.equals(at.span()) ? at : at.at(span);
  }

  int line() {
    return at.line();
  }

  void emit(Event event) {
    sink.accept(event);
  }

  void becameUnknown(Span span, String what, Cause cause) {
    emit(new Event.BecameUnknown(at(span), what, cause));
  }

  /** Tells that a word is not understood; each reason once. */
  void wordUnknown(Span span, String what) {
    wordUnknown(span, what, Cause.NOT_UNDERSTOOD);
  }

  /** Tells that a word has no known value; each reason once. */
  void wordUnknown(Span span, String what, Cause cause) {
    if (told.size() == TOLD_CAP) {
      told.clear();
    }
    if (told.add(what)) {
      becameUnknown(span, what, cause);
    }
  }

  /** Tells that a word takes an axis farther than a position can say. */
  void tooFar(Axis axis, Word word) {
    emit(new Event.CoordinateTooLarge(at(word.span()), axis, BlockWords.text(word)));
  }

  void refuse(Span span, String word, String why) {
    emit(new Event.WordRefused(at(span), word, why));
  }
}
