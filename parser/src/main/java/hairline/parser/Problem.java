package hairline.parser;

/**
 * What is wrong with, or beyond, a block.
 *
 * @param kind what sort of problem
 * @param span where
 * @param found what stands there, shortened, e.g. {@code "'G' with no number behind it"} or the
 *     first word of a macro statement
 * @param expected for {@link Kind#SYNTAX} what was expected there; for {@link
 *     Kind#SPACE_INSIDE_NUMBER} the number as read; for {@link Kind#MACRO} the kind of statement,
 *     e.g. {@code "a condition"}
 */
public record Problem(Kind kind, Span span, String found, String expected) {
  /** The sorts of problem. */
  public enum Kind {
    /** The block is not ISO 6983 as the grammar has it; its words are not to be used. */
    SYNTAX,
    /** Blanks stand inside a number; the block is read all the same. */
    SPACE_INSIDE_NUMBER,
    /** A statement of a macro language beyond the grammar; the block is not to be used. */
    MACRO
  }
}
