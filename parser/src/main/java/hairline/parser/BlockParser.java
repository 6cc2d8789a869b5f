package hairline.parser;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Reads one line: a plain one by the scanner, any other with the grammar, whose machinery is made
 * when the first such line comes. One instance serves one thread.
 */
final class BlockParser {
  /** System property by which tests have every line read with the grammar. */
  static final String GRAMMAR_ONLY = "hairline.grammarOnly";

  private final LineScanner scanner = new LineScanner();
  private final boolean scans;
  private final SharedTables shared;
  private @Nullable GrammarReader grammar;

  BlockParser() {
    this(SharedTables.ALL);
  }

  BlockParser(SharedTables shared) {
    this(shared, !Boolean.getBoolean(GRAMMAR_ONLY));
  }

  /**
   * A parser.
   *
   * @param scans whether plain lines are read without the grammar's machinery
   */
  BlockParser(SharedTables shared, boolean scans) {
    this.shared = shared;
    this.scans = scans;
  }

  /** The block that a line makes, its kind apart: never a leader. */
  Block parse(Line line) {
    return scan(line) ? scanner.block(line) : parseUnscanned(line);
  }

  private Block parseUnscanned(Line line) {
    return scans && line.isBareTapeMark() ? tapeMark(line) : grammar().read(line);
  }

  /** Whether the line is plain, so that {@link #scanner} holds its words. */
  boolean scan(Line line) {
    return scans && !line.tooLong && scanner.scan(line);
  }

  /** Whether plain lines are read without the grammar's machinery. */
  boolean scans() {
    return scans;
  }

  /**
   * The block that a line makes, or nothing where it is plain; then it is added to the plain ones.
   *
   * @param leaderEnd where the leader of the file ends
   */
  Optional<Block> unlessPlain(Line line, long leaderEnd, PlainRun plain) {
    if (line.byteOffset < leaderEnd) {
      return Optional.of(Leader.block(line));
    }
    if (!scan(line)) {
      return Optional.of(parseUnscanned(line));
    }
    if (!scanner.isPlainButForNumber(line.bytes, line.to) || scanner.isNumbered()) {
      return Optional.of(scanner.block(line));
    }
    plain.add(line.number, line.byteOffset + line.byteLength, scanner);
    return Optional.empty();
  }

  /** Where a plain line has been read to. */
  LineScanner scanner() {
    return scanner;
  }

  private GrammarReader grammar() {
    GrammarReader made = grammar;
    if (made == null) {
      made = new GrammarReader(shared);
      grammar = made;
    }
    return made;
  }

  private static Block tapeMark(Line line) {
    return new Block(
        line.number,
        line.byteOffset,
        line.byteLength,
        line.shortAscii(),
        Block.Kind.TAPE_MARK,
        false,
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }
}
