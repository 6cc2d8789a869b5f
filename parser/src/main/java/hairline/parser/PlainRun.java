package hairline.parser;

/**
 * Plain blocks one behind the other, in sum: lines of nothing but words with plain numbers, without
 * N, O and M words, without G4, G10, G65 and G66, without block delete, and comments that do not
 * {@link Comment#speaksToChecker speak to the checker}. The reader fills the same instance again.
 */
public final class PlainRun {
  private static final Span NOWHERE = new Span(1, 1);

  /** Without a line, to which none is added. */
  static final PlainRun NONE = new PlainRun();

  private int firstLineWithWords;
  private Span firstWords = NOWHERE;
  private int lastLine;
  private long endByteOffset;
  private boolean withPoint;
  private boolean withoutPoint;

  PlainRun() {}

  void clear() {
    firstLineWithWords = 0;
    firstWords = NOWHERE;
    lastLine = 0;
    withPoint = false;
    withoutPoint = false;
  }

  /**
   * Adds the line that the scanner has read last, which {@link LineScanner#isPlainButForNumber}.
   *
   * @param endOffset where it ends in its file
   */
  void add(int line, long endOffset, LineScanner scanner) {
    if (firstLineWithWords == 0 && scanner.hasWords()) {
      firstLineWithWords = line;
      firstWords = scanner.spanOfWords();
    }
    lastLine = line;
    endByteOffset = endOffset;
    withPoint |= scanner.hasLengthWithPoint();
    withoutPoint |= scanner.hasLengthWithoutPoint();
  }

  /**
   * Adds the lines that were passed over last.
   *
   * @param first the first of them
   * @param endOffset where the last of them ends in its file
   */
  void add(int first, long endOffset, LineSkimmer skimmer) {
    if (firstLineWithWords == 0 && skimmer.worded() >= 0) {
      firstLineWithWords = first + skimmer.worded();
      firstWords = skimmer.wordedSpan();
    }
    lastLine = first + skimmer.lines() - 1;
    endByteOffset = endOffset;
    withPoint |= skimmer.hasLengthWithPoint();
    withoutPoint |= skimmer.hasLengthWithoutPoint();
  }

  /** Adds those of another run behind these, whose lines are counted from a line of this file. */
  void add(PlainRun behind, int linesBefore) {
    if (behind.isEmpty()) {
      return;
    }
    if (firstLineWithWords == 0 && behind.firstLineWithWords != 0) {
      firstLineWithWords = behind.firstLineWithWords + linesBefore;
      firstWords = behind.firstWords;
    }
    lastLine = behind.lastLine + linesBefore;
    endByteOffset = behind.endByteOffset;
    withPoint |= behind.withPoint;
    withoutPoint |= behind.withoutPoint;
  }

  /** Whether there is none. */
  public boolean isEmpty() {
    return lastLine == 0;
  }

  /** The first of their lines that has a word; 0 where none has. */
  public int firstLineWithWords() {
    return firstLineWithWords;
  }

  /** Where the words of that line stand. */
  public Span firstWords() {
    return firstWords;
  }

  /** The last of their lines. */
  public int lastLine() {
    return lastLine;
  }

  /** Where the last of them ends in its file, the line end left out. */
  public long endByteOffset() {
    return endByteOffset;
  }

  /** Whether a length other than zero (X, Y, Z, U, V, W, I, J, R, Q) has a decimal point. */
  public boolean withPoint() {
    return withPoint;
  }

  /** Whether such a length has none. */
  public boolean withoutPoint() {
    return withoutPoint;
  }
}
