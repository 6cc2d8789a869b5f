package hairline.checks.finding;

/**
 * A default that was used because nothing gives the value.
 *
 * @param what the key or the state item
 * @param value what was used
 * @param because where that value comes from
 */
public record Assumption(String what, String value, String because) {}
