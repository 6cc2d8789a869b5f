package hairline.parser;

/**
 * {@code #index = value}; it acts after the whole block was read (NISTIR 6556 §3.3.3).
 *
 * @param index which parameter
 * @param value what it becomes
 * @param span where the setting stands
 */
public record Setting(Value index, Value value, Span span) {}
