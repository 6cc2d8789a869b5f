package hairline.checks.motion;

import hairline.checks.motion.Event.MachineCode.Meaning;
import hairline.parser.Block;
import hairline.parser.Span;
import hairline.parser.Value;
import hairline.parser.Word;
import hairline.parser.Words;
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

  /** The words of the block. */
  private Words words = Words.of(List.of());

  /** Which of them has a letter, for those of {@link #letterSet}. */
  private final int[] places = new int[LETTERS];

  private final @Nullable Code[] codes = new @Nullable Code[GROUPS.length];

  /** Which of the words has the code of a group, for those of {@link #codeSet}. */
  private final int[] codePlaces = new int[GROUPS.length];

  private final List<SheetCode> sheetCodes = new ArrayList<>();
  private final List<Word> unknownCodes = new ArrayList<>();
  private int letterSet;
  private int groupSet;
  private int codeSet;
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
    words = Words.of(block.words());
    int numberEnd = 0;
    for (int i = 0; i < words.size(); i++) {
      char letter = words.letter(i);
      if (letter == 'E' && words.column(i) == numberEnd) {
        control.refuse(
            words.span(i),
            text(words.get(i)),
            "no exponent, but a word of its own, of an unknown letter");
      }
      numberEnd = words.endColumn(i);
      switch (letter) {
        case 'G', 'M' -> addCode(i);
        case 'N', 'O' -> {
          // Numbers of blocks and programs; they do nothing.
        }
        default -> addWord(i, letter);
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
    if (groupSet != 0) {
      java.util.Arrays.fill(codes, null);
    }
    letterSet = 0;
    groupSet = 0;
    codeSet = 0;
    doubledLetters = 0;
    doubledGroups = 0;
    secondCoolant = false;
    shiftInConflict = false;
    sheetCodes.clear();
    unknownCodes.clear();
  }

  private void addWord(int i, char letter) {
    int index = letter - 'A';
    int bit = 1 << index;
    if ((letterSet & bit) == 0) {
      places[index] = i;
      letterSet |= bit;
      return;
    }
    if ((doubledLetters & bit) == 0) {
      Word first = words.get(places[index]);
      conflict(words.span(i), text(first), text(words.get(i)), "two words of one letter");
    }
    doubledLetters |= bit;
  }

  private void addCode(int i) {
    char letter = words.letter(i);
    int tenths = tenths(i);
    Optional<Meaning> meaning = control.codes.onSheet(letter, tenths);
    if (meaning.isPresent()) {
      String text = CodeTable.text(letter, tenths);
      sheetCodes.add(new SheetCode(words.get(i), text, meaning.get()));
      return;
    }
    Code code = control.codes.find(letter, tenths);
    if (code == null) {
      unknownCodes.add(words.get(i));
    } else {
      add(code, i);
    }
  }

  private void add(Code code, int i) {
    int index = code.group().index();
    Code first = codes[index];
    if (first == code) {
      return;
    }
    groupSet |= code.group().bit();
    if (first == null && (doubledGroups & code.group().bit()) == 0) {
      codes[index] = code;
      codePlaces[index] = i;
      codeSet |= code.group().bit();
    } else if (isMistAndFlood(first, code)) {
      secondCoolant = true;
    } else {
      shiftInConflict |= ShiftCodes.shifts(code) || (first != null && ShiftCodes.shifts(first));
      String why = "two codes for " + code.group().title();
      conflict(words.span(i), first == null ? code.text() : first.text(), code.text(), why);
      codes[index] = null;
      codeSet &= ~code.group().bit();
      doubledGroups |= code.group().bit();
    }
  }

  /** M7 and M8 may be on together (NISTIR 6556 §2.1.2.7). */
  private static boolean isMistAndFlood(@Nullable Code a, Code b) {
    return (a == Code.M7 && b == Code.M8) || (a == Code.M8 && b == Code.M7);
  }

  /** Ten times the number of a G or M word, or a negative number where that is no code. */
  private int tenths(int i) {
    if (words.isPlain(i)) {
      long number = words.unscaled(i);
      if (words.scale(i) == 0 && number >= 0 && number < 1000) {
        return (int) number * 10;
      }
      if (words.scale(i) == 1 && number >= 0 && number < 10_000) {
        return (int) number;
      }
    }
    Evaluated value = control.evaluator.evaluate(words.get(i).value());
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

  /** The words of the block, in the order written. */
  Words all() {
    return words;
  }

  /** Whether the block has just one word of this letter. */
  boolean hasOne(char letter) {
    return (letterSet & ~doubledLetters & 1 << (letter - 'A')) != 0;
  }

  /** Which of the words has a letter, where {@link #hasOne} holds. */
  int place(char letter) {
    return places[letter - 'A'];
  }

  /** The word of this letter, where the block has just one. */
  @Nullable Word word(char letter) {
    return hasOne(letter) ? words.get(place(letter)) : null;
  }

  /** The word of an axis. */
  @Nullable Word word(Axis axis) {
    return word(axis.letter());
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
    return hasWord(group) ? words.get(codePlaces[group.index()]) : null;
  }

  private boolean hasWord(CodeGroup group) {
    return (codeSet & group.bit()) != 0;
  }

  /** The columns of the code of this group; the whole block where there is none. */
  Span span(CodeGroup group) {
    return hasWord(group) ? words.span(codePlaces[group.index()]) : control.at().span();
  }

  /** The columns of the code of this group and the word of this letter, as far as they stand. */
  Span span(CodeGroup group, char letter) {
    if (!hasWord(group)) {
      return hasOne(letter) ? words.span(place(letter)) : control.at().span();
    }
    Span code = words.span(codePlaces[group.index()]);
    return hasOne(letter) ? code.cover(words.span(place(letter))) : code;
  }

  /**
   * The columns of all words of these letters, a {@link #set}, and codes of these groups; the whole
   * block where there are none.
   */
  Span span(int groups, int letters) {
    int from = Integer.MAX_VALUE;
    int to = 0;
    for (int left = groups & codeSet; left != 0; left &= left - 1) {
      int i = codePlaces[Integer.numberOfTrailingZeros(left)];
      from = Math.min(from, words.column(i));
      to = Math.max(to, words.endColumn(i));
    }
    for (int left = letters & letterSet & ~doubledLetters; left != 0; left &= left - 1) {
      int i = places[Integer.numberOfTrailingZeros(left)];
      from = Math.min(from, words.column(i));
      to = Math.max(to, words.endColumn(i));
    }
    Span block = control.at().span();
    boolean whole = to == 0 || (from == block.column() && to == block.endColumn());
    return whole ? block : new Span(from, to);
  }

  /** The same for letters one by one. */
  Span span(int groups, String letters) {
    return span(groups, set(letters));
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
