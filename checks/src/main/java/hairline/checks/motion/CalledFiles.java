package hairline.checks.motion;

import hairline.checks.motion.ProgramFiles.Found;
import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.PartPrograms;
import hairline.parser.Value;
import hairline.parser.Word;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Which files hold the subprograms of a program, told from its text without running it. Only calls
 * with a plain number count (M98 P100), and only those that stand before the end of their program;
 * so a file may be left out that a run would call, and none is named that it could not.
 */
public final class CalledFiles {
  /** The names by which a call looks for a file, see {@link ProgramFiles}. */
  private static final Pattern NAME = Pattern.compile("O?\\d+(\\.[^.]*)?");

  private CalledFiles() {}

  /**
   * Whether a file can be nothing but subprograms: a call would find it by its name, and no program
   * in it ends the run, but M99 ends the first.
   *
   * @throws IOException if it cannot be read
   */
  public static boolean isSubprogramFile(Path file) throws IOException {
    Path name = file.getFileName();
    if (name == null || !NAME.matcher(name.toString()).matches()) {
      return false;
    }
    ProgramIndex index = ProgramIndexer.index(PartPrograms.of(file), 0, event -> {});
    return index.first().endCode().equals(Optional.of("M99"))
        && index.programs().stream()
            .allMatch(program -> program.endCode().orElse("M99").equals("M99"));
  }

  /**
   * The files beside a program that its calls lead to, by their real paths, itself not among them.
   *
   * @param program the file of the program
   * @param sheetCodes what its sheet gives a meaning; a call that stands there is no call
   * @throws IOException if one of them cannot be read
   */
  public static Set<Path> of(Path program, Map<String, Event.MachineCode.Meaning> sheetCodes)
      throws IOException {
    CodeTable codes = new CodeTable(sheetCodes);
    ProgramFiles files = ProgramFiles.of(program, event -> {});
    ArrayDeque<Found> waiting = new ArrayDeque<>();
    Set<Found> seen = new HashSet<>();
    waiting.add(files.main());
    seen.add(files.main());
    while (!waiting.isEmpty()) {
      Found calling = waiting.remove();
      try (BlockSource blocks = files.open(calling)) {
        for (Optional<Block> next = blocks.next();
            next.isPresent() && !ends(next.get());
            next = blocks.next()) {
          called(next.get())
              .filter(number -> codes.callOnSheet(number).isEmpty())
              .flatMap(number -> files.find(calling.file(), number))
              .filter(seen::add)
              .ifPresent(waiting::add);
        }
      }
    }
    return files.realPathsBeside();
  }

  private static boolean ends(Block block) {
    return !block.deletable() && (has(block, 'M', 2) || has(block, 'M', 30) || has(block, 'M', 99));
  }

  /** The number of the program that a block calls; empty where it calls none or by expression. */
  private static Optional<Long> called(Block block) {
    if (!has(block, 'M', 98) || block.words().stream().anyMatch(word -> is(word, 'L', 0))) {
      return Optional.empty();
    }
    return block.words().stream()
        .filter(word -> word.letter() == 'P')
        .findFirst()
        .filter(word -> word.value() instanceof Value.Literal)
        .flatMap(word -> Evaluator.whole(((Value.Literal) word.value()).toBigDecimal()));
  }

  private static boolean has(Block block, char letter, long number) {
    return block.words().stream().anyMatch(word -> is(word, letter, number));
  }

  private static boolean is(Word word, char letter, long number) {
    return word.letter() == letter
        && word.value() instanceof Value.Literal literal
        && Evaluator.whole(literal.toBigDecimal()).equals(Optional.of(number));
  }
}
