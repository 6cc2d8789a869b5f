package hairline.checks.cli;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Reads the usual command lines of {@code check} without the machinery of annotations, which takes
 * longer than checking a short program: paths, and options whose words leave no doubt. Whatever it
 * does not know for sure is left to {@link Main#line}, which defines the command line; what it
 * reads comes out the same.
 */
final class UsualLine {
  /** What a command takes from its line. */
  interface Taker {
    /** Takes a path. */
    void path(String path);

    /** Takes an option that stands alone; false where there is none of this name. */
    boolean flag(String option);

    /** Takes an option with its value; false where there is none of this name. */
    boolean option(String name, String value);
  }

  private UsualLine() {}

  /** The check that a command line asks for; empty where the line is none of the usual ones. */
  static Optional<CheckCommand> check(String... args) {
    if (args.length < 2 || !args[0].equals("check")) {
      return Optional.empty();
    }
    CheckCommand command = new CheckCommand();
    return read(args, command.taker()) ? Optional.of(command) : Optional.empty();
  }

  private static boolean read(String[] args, Taker taker) {
    Set<String> seen = new HashSet<>();
    int i = 1;
    while (i < args.length) {
      String word = args[i++];
      if (word.isEmpty() || word.equals("--")) {
        return false;
      }
      if (word.charAt(0) != '-' || word.equals(Inputs.STANDARD_INPUT)) {
        taker.path(word);
        continue;
      }
      // An option given twice may be a slip.
      if (!seen.add(word)) {
        return false;
      }
      if (taker.flag(word)) {
        continue;
      }
      if (i == args.length || !isPlain(args[i]) || !taker.option(word, args[i])) {
        return false;
      }
      i++;
    }
    return true;
  }

  /** Whether a value is nothing but letters, digits, dots, slashes, commas, = and inner hyphens. */
  private static boolean isPlain(String value) {
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      boolean plain =
          (c >= 'a' && c <= 'z')
              || (c >= 'A' && c <= 'Z')
              || (c >= '0' && c <= '9')
              || "./_=".indexOf(c) >= 0
              || (i > 0 && i < value.length() - 1 && (c == '-' || c == ','));
      if (!plain) {
        return false;
      }
    }
    return !value.isEmpty() && !value.contains(",,");
  }

  /** The names in a list. */
  static List<String> names(String value) {
    return Arrays.asList(value.split(",", -1));
  }
}
