package hairline.checks.setup;

/**
 * One thing wrong with a setup sheet.
 *
 * @param position where
 * @param sentence what is wrong
 * @param cure what would put it right
 */
public record SheetProblem(SourcePosition position, String sentence, String cure) {
  @Override
  public String toString() {
    return position + ": " + sentence + "; " + cure;
  }
}
