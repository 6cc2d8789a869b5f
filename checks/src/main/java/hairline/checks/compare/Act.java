package hairline.checks.compare;

import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.parser.Block;
import hairline.parser.Word;
import java.util.Optional;

/**
 * One thing that a program makes the machine do, whatever the text that says so.
 *
 * @param kind what sort of thing
 * @param at the block behind it
 * @param block that block as read
 * @param modes the state in which it is done
 * @param move the move, where it is one
 * @param what what is done, where it is no move: a code, seconds, words; same text, same thing. Of
 *     an arc whose circle can't be told, the words that give it
 */
record Act(Kind kind, Place at, Block block, Modes modes, Optional<Move> move, String what) {

  /** The sorts of things. */
  enum Kind {
    MOVE('m'),
    TOOL_CHANGE('t'),
    SPINDLE('s'),
    COOLANT('c'),
    DWELL('d'),
    STOP('0'),
    WARM_UP('w'),
    MEASURING('l'),
    OTHER_CODE('o'),
    SHIFT('z'),
    NOT_UNDERSTOOD('?'),
    END('e');

    private final char letter;

    Kind(char letter) {
      this.letter = letter;
    }

    /** A letter for it, below 128. */
    char letter() {
      return letter;
    }
  }

  /** Its place, at the word with this address where the block has one. */
  Place at(char letter) {
    for (Word word : block.words()) {
      if (word.letter() == letter) {
        return at.at(word.span());
      }
    }
    return at;
  }
}
