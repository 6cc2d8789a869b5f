package hairline.checks.motion;

import hairline.checks.motion.Event.MachineCode.Meaning;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Finds what a G or M word means: on the sheet first, then among the known codes. */
final class CodeTable {
  /** G0 to G99.9 and M0 to M999.9; the sheet may name codes beyond, the language has none. */
  private static final int LIMIT = 10_000;

  private static final @Nullable Code[] G_CODES = byTenths('G');
  private static final @Nullable Code[] M_CODES = byTenths('M');

  private final Map<String, Meaning> sheet;
  private final boolean[] gOnSheet = new boolean[LIMIT];
  private final boolean[] mOnSheet = new boolean[LIMIT];

  /**
   * @param sheet the codes of this machine, e.g. "M71", "G5.1", "P9001"
   */
  CodeTable(Map<String, Meaning> sheet) {
    this.sheet = new HashMap<>(sheet);
    for (String code : sheet.keySet()) {
      int tenths = tenths(code);
      if (tenths >= 0 && code.equals(text('G', tenths))) {
        gOnSheet[tenths] = true;
      } else if (tenths >= 0 && code.equals(text('M', tenths))) {
        mOnSheet[tenths] = true;
      }
    }
  }

  /** Ten times the number behind the letter, its point left out; -1 for anything else. */
  private static int tenths(String code) {
    int tenths = 0;
    boolean point = false;
    for (int i = 1; i < code.length(); i++) {
      char c = code.charAt(i);
      if (c == '.' && !point) {
        point = true;
      } else if (c >= '0' && c <= '9' && tenths < LIMIT) {
        tenths = 10 * tenths + c - '0';
      } else {
        return -1;
      }
    }
    tenths = point ? tenths : 10 * tenths;
    return tenths < LIMIT ? tenths : -1;
  }

  private static @Nullable Code[] byTenths(char letter) {
    @Nullable Code[] codes = new @Nullable Code[LIMIT];
    for (Code code : Code.values()) {
      if (code.text().charAt(0) == letter) {
        codes[code.tenths()] = code;
      }
    }
    return codes;
  }

  private static String number(int tenths) {
    return tenths % 10 == 0 ? "" + tenths / 10 : tenths / 10 + "." + tenths % 10;
  }

  /** The text of a code, e.g. "G59.1". */
  static String text(char letter, int tenths) {
    return letter + number(tenths);
  }

  /** The known code, or nothing. */
  @Nullable Code find(char letter, int tenths) {
    if (tenths < 0 || tenths >= LIMIT) {
      return null;
    }
    return letter == 'G' ? G_CODES[tenths] : M_CODES[tenths];
  }

  /** What the sheet says of a G or M code. */
  Optional<Meaning> onSheet(char letter, int tenths) {
    if (tenths < 0 || tenths >= LIMIT || !(letter == 'G' ? gOnSheet : mOnSheet)[tenths]) {
      return Optional.empty();
    }
    return Optional.ofNullable(sheet.get(text(letter, tenths)));
  }

  /** What the sheet says of the call of a program, e.g. "P9001". */
  Optional<Meaning> callOnSheet(long program) {
    return Optional.ofNullable(sheet.get("P" + program));
  }
}
