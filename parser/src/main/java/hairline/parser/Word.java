package hairline.parser;

/**
 * An address letter and its value.
 *
 * @param letter the address in upper case; a program number written with a colon has the letter O
 * @param value the value
 * @param span where the whole word stands
 */
public record Word(char letter, Value value, Span span) {}
