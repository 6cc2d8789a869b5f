package hairline.checks.motion;

import hairline.checks.motion.Event.MachineCode.Meaning;
import hairline.parser.Block;
import hairline.parser.Span;
import hairline.parser.Value;
import hairline.parser.Word;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The words of one block, sorted: one of each letter, one code of each group. Reused from block to
 * block. What stands twice is told as a conflict and counts as standing nowhere.
 */
final class BlockWords {
  private static final int LETTERS = 26;
  private static final CodeGroup[] GROUPS = CodeGroup.values();
  private static final int NOT_A_CODE = -1;

  /** A code that the sheet gives a meaning. */
  record SheetCode(Word word, String text, Meaning meaning) {}

  private final Control control;
  private final @Nullable Word[] words = new @Nullable Word[LETTERS];
  private final @Nullable Code[] codes = new @Nullable Code[GROUPS.length];
  private final @Nullable Word[] codeWords = new @Nullable Word[GROUPS.length];
  private final List<SheetCode> sheetCodes = new ArrayList<>();
  private final List<Word> unknownCodes = new ArrayList<>();
  private int letterSet;
  private int groupSet;
  private int doubledLetters;
  private int doubledGroups;
  private boolean secondCoolant;
  private boolean shiftInConflict;

  BlockWords(Control control) {
    this.control = control;
  }

  /** Sorts the words of a block and tells its conflicts. */
  void read(Block block) {
    clear();
    int numberEnd = 0;
    for (Word word : block.words()) {
      if (word.letter() == 'E' && word.span().column() == numberEnd) {
        control.refuse(
            word.span(), text(word), "no exponent, but a word of its own, of an unknown letter");
      }
      numberEnd = word.span().endColumn();
      switch (word.letter()) {
        case 'G', 'M' -> addCode(word);
        case 'N', 'O' -> {
          // Numbers of blocks and programs; they do nothing.
        }
        default -> addWord(word);
      }
    }
    Code motion = code(CodeGroup.MOTION);
    if (motion != null && motion.isCycle() && has(Code.G80)) {
      Span span = span(CodeGroup.MOTION).cover(span(CodeGroup.CYCLE_CANCEL));
      conflict(span, motion.text(), "G80", "a cycle and its end");
      codes[CodeGroup.MOTION.index()] = null;
      codes[CodeGroup.CYCLE_CANCEL.index()] = null;
      doubledGroups |= CodeGroup.MOTION.bit();
    }
  }

  private void clear() {
    if (letterSet != 0) {
      java.util.Arrays.fill(words, null);
    }
    if (groupSet != 0) {
      java.util.Arrays.fill(codes, null);
      java.util.Arrays.fill(codeWords, null);
    }
    letterSet = 0;
    groupSet = 0;
    doubledLetters = 0;
    doubledGroups = 0;
    secondCoolant = false;
    shiftInConflict = false;
    sheetCodes.clear();
    unknownCodes.clear();
  }

  private void addWord(Word word) {
    int index = word.letter() - 'A';
    int bit = 1 << index;
    Word first = words[index];
    if (first != null) {
      conflict(word.span(), text(first), text(word), "two words of one letter");
    }
    if (first != null || (doubledLetters & bit) != 0) {
      words[index] = null;
      doubledLetters |= bit;
      return;
    }
    words[index] = word;
    letterSet |= bit;
  }

  private void addCode(Word word) {
    int tenths = tenths(word);
    Optional<Meaning> meaning = control.codes.onSheet(word.letter(), tenths);
    if (meaning.isPresent()) {
      sheetCodes.add(new SheetCode(word, CodeTable.text(word.letter(), tenths), meaning.get()));
      return;
    }
    Code code = control.codes.find(word.letter(), tenths);
    if (code == null) {
      unknownCodes.add(word);
    } else {
      add(code, word);
    }
  }

  private void add(Code code, Word word) {
    int index = code.group().index();
    Code first = codes[index];
    if (first == code) {
      return;
    }
    groupSet |= code.group().bit();
    if (first == null && (doubledGroups & code.group().bit()) == 0) {
      codes[index] = code;
      codeWords[index] = word;
    } else if (isMistAndFlood(first, code)) {
      secondCoolant = true;
    } else {
      shiftInConflict |= ShiftCodes.shifts(code) || (first != null && ShiftCodes.shifts(first));
      String why = "two codes for " + code.group().title();
      conflict(word.span(), first == null ? code.text() : first.text(), code.text(), why);
      codes[index] = null;
      codeWords[index] = null;
      doubledGroups |= code.group().bit();
    }
  }

  /** M7 and M8 may be on together (NISTIR 6556 §2.1.2.7). */
  private static boolean isMistAndFlood(@Nullable Code a, Code b) {
    return (a == Code.M7 && b == Code.M8) || (a == Code.M8 && b == Code.M7);
  }

  /** Ten times the number of a G or M word, or a negative number where that is no code. */
  private int tenths(Word word) {
    if (word.value() instanceof Value.Literal literal && literal.big().isEmpty()) {
      long number = literal.unscaled();
      if (literal.scale() == 0 && number >= 0 && number < 1000) {
        return (int) number * 10;
      }
      if (literal.scale() == 1 && number >= 0 && number < 10_000) {
        return (int) number;
      }
    }
    Evaluated value = control.evaluator.evaluate(word.value());
    if (!(value instanceof Evaluated.Known known)) {
      return NOT_A_CODE;
    }
    // "A decimal number which is supposed be close to an integer": G codes multiplied by ten
    // (NISTIR 6556 §3.3.2.1).
    return Evaluator.whole(known.number().multiply(BigDecimal.TEN))
        .filter(tenths -> tenths >= 0 && tenths < Integer.MAX_VALUE)
        .map(Math::toIntExact)
        .orElse(NOT_A_CODE);
  }

  private void conflict(Span span, String first, String second, String why) {
    control.emit(new Event.CodesConflict(control.at(span), first, second, why));
  }

  /** A word as a message shows it. */
  static String text(Word word) {
    return word.value() instanceof Value.Literal literal
        ? word.letter() + literal.toBigDecimal().toPlainString()
        : word.letter() + "[...]";
  }

  /** The word of this letter, where the block has just one. */
  @Nullable Word word(char letter) {
    return words[letter - 'A'];
  }

  /** The word of an axis. */
  @Nullable Word word(Axis axis) {
    return words[axis.letter() - 'A'];
  }

  /** Whether the block has this letter twice. */
  boolean isDoubled(char letter) {
    return (doubledLetters & 1 << (letter - 'A')) != 0;
  }

  /** A set of letters, for {@link #hasAny(int)}. */
  static int set(String letters) {
    int set = 0;
    for (int i = 0; i < letters.length(); i++) {
      set |= 1 << (letters.charAt(i) - 'A');
    }
    return set;
  }

  /** Whether the block has a word, or conflicting words, of any letter of a set. */
  boolean hasAny(int set) {
    return ((letterSet | doubledLetters) & set) != 0;
  }

  /** Whether the block has a word, or conflicting words, of any of these letters. */
  boolean hasAny(String letters) {
    return hasAny(set(letters));
  }

  /** The code of this group, where the block has just one. */
  @Nullable Code code(CodeGroup group) {
    return codes[group.index()];
  }

  /** The word of the code of this group. */
  @Nullable Word codeWord(CodeGroup group) {
    return codeWords[group.index()];
  }

  /** The columns of the code of this group; the whole block where there is none. */
  Span span(CodeGroup group) {
    Word word = codeWords[group.index()];
    return word == null ? control.at().span() : word.span();
  }

  /** The columns of the code of this group and the word of this letter, as far as they stand. */
  Span span(CodeGroup group, char letter) {
    Word code = codeWords[group.index()];
    Word word = words[letter - 'A'];
    if (code == null) {
      return word == null ? control.at().span() : word.span();
    }
    return word == null ? code.span() : code.span().cover(word.span());
  }

  /**
   * The columns of all words of these letters and codes of these groups; the whole block where
   * there are none.
   */
  Span span(int groups, String letters) {
    int from = Integer.MAX_VALUE;
    int to = 0;
    for (int left = groups & groupSet; left != 0; left &= left - 1) {
      Word word = codeWords[Integer.numberOfTrailingZeros(left)];
      if (word != null) {
        from = Math.min(from, word.span().column());
        to = Math.max(to, word.span().endColumn());
      }
    }
    for (int i = 0; i < letters.length(); i++) {
      Word word = words[letters.charAt(i) - 'A'];
      if (word != null) {
        from = Math.min(from, word.span().column());
        to = Math.max(to, word.span().endColumn());
      }
    }
    Span block = control.at().span();
    boolean whole = to == 0 || (from == block.column() && to == block.endColumn());
    return whole ? block : new Span(from, to);
  }

  /** Whether this code stands in the block. */
  boolean has(Code code) {
    return codes[code.group().index()] == code;
  }

  /** The groups of which a code stands in the block, as the sum of their bits. */
  int groups() {
    return groupSet;
  }

  /** The groups with conflicting codes, as the sum of their bits. */
  int doubledGroups() {
    return doubledGroups;
  }

  /** Whether both M7 and M8 stand in the block. */
  boolean mistAndFlood() {
    return secondCoolant;
  }

  /** Whether a code that shifts zero stands in a conflict. */
  boolean shiftsInConflict() {
    return shiftInConflict;
  }

  List<SheetCode> sheetCodes() {
    return sheetCodes;
  }

  List<Word> unknownCodes() {
    return unknownCodes;
  }
}
