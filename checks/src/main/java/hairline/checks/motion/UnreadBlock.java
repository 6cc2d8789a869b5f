package hairline.checks.motion;

import hairline.checks.motion.Event.BecameUnknown.Cause;
import hairline.parser.Block;
import hairline.parser.Problem;

/**
 * Makes unknown what a block may have changed that the grammar could not read. Its text tells what
 * it is about: an address letter with a number behind it, or, in a block with a mere slip, any
 * address letter.
 */
final class UnreadBlock {
  private static final String NUMBERS = "0123456789.+-#[";

  private final Control control;
  private final Forgetting forgetting;

  UnreadBlock(Control control, Forgetting forgetting) {
    this.control = control;
    this.forgetting = forgetting;
  }

  /** Whether a problem keeps a block from being read. */
  static boolean isUnread(Problem problem) {
    return problem.kind() != Problem.Kind.SPACE_INSIDE_NUMBER;
  }

  /** Forgets what an unread block may have changed. */
  void forget(Block block) {
    Problem problem =
        block.problems().stream().filter(UnreadBlock::isUnread).findFirst().orElseThrow();
    if (problem.kind() == Problem.Kind.SYNTAX) {
      forgetAddresses(block.text(), true);
    } else {
      forgetMacro(block, problem.expected());
    }
    if (problem.kind() == Problem.Kind.MACRO) {
      forgetting.tell(problem.span(), Cause.MACRO);
    } else if (!forgetting.tell(problem.span(), Cause.NOT_UNDERSTOOD)) {
      // Where nothing was known before, nothing became unknown, and still it is not understood.
      control.becameUnknown(problem.span(), "what this block does", Cause.NOT_UNDERSTOOD);
    }
  }

  private void forgetMacro(Block block, String kind) {
    switch (kind) {
      case "text output" -> {
        // It writes, and changes nothing.
      }
      case "corner rounding or chamfer", "a line given by its angle" ->
          forgetAddresses(block.text(), false);
      case "a condition", "a loop", "a jump", "a comparison", "an assignment", "a name" -> {
        forgetAddresses(block.text(), false);
        forgetting.parameters();
        forgetting.axes();
      }
      case "a function" -> {
        forgetAddresses(block.text(), false);
        forgetting.parameters();
      }
      default -> forgetting.call();
    }
  }

  private void forgetAddresses(String text, boolean bareLetters) {
    boolean found = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '(') {
        int close = text.indexOf(')', i);
        i = close < 0 ? text.length() : close;
      } else if (c == ';') {
        break;
      } else {
        char letter = upper(c);
        if (letter != 0 && (bareLetters || isNumberDue(text, i + 1))) {
          found |= forget(letter, text, i + 1);
        }
      }
    }
    if (!found) {
      forgetting.motion();
      forgetting.axes();
    }
  }

  private static char upper(char c) {
    if (c >= 'a' && c <= 'z') {
      return (char) (c - 'a' + 'A');
    }
    return c >= 'A' && c <= 'Z' ? c : 0;
  }

  private static boolean isNumberDue(String text, int from) {
    int i = from;
    while (i < text.length() && text.charAt(i) == ' ') {
      i++;
    }
    return i < text.length() && NUMBERS.indexOf(text.charAt(i)) >= 0;
  }

  /** Forgets what a word with this letter may change; returns whether it is anything. */
  private boolean forget(char letter, String text, int from) {
    switch (letter) {
      case 'X', 'Y', 'Z', 'A', 'B', 'C' -> forgetting.axis(Axis.valueOf(String.valueOf(letter)));
      case 'F' -> forgetting.feed();
      case 'S' -> forgetting.speed();
      case 'T' -> forgetting.nextTool();
      case 'H' -> forgetting.lengthOffset();
      case 'D' -> control.modal.forgetCompensationNumber(control.line());
      case 'G', 'M' -> code(letter, text, from);
      default -> {
        return false;
      }
    }
    return true;
  }

  private void code(char letter, String text, int from) {
    int i = from;
    int tenths = 0;
    int digits = 0;
    while (i < text.length() && (isDigit(text.charAt(i)) || text.charAt(i) == ' ')) {
      if (text.charAt(i) != ' ') {
        tenths = Math.min(10 * tenths + 10 * (text.charAt(i) - '0'), 1_000_000);
        digits++;
      }
      i++;
    }
    if (i + 1 < text.length() && text.charAt(i) == '.' && isDigit(text.charAt(i + 1))) {
      tenths += text.charAt(i + 1) - '0';
    }
    Code known = digits == 0 ? null : control.codes.find(letter, tenths);
    if (known != null) {
      forgetting.group(known.group());
    } else if (letter == 'G') {
      forgetting.motion();
      forgetting.axes();
    } else {
      forgetting.group(CodeGroup.SPINDLE);
      forgetting.group(CodeGroup.COOLANT);
    }
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
