package hairline.checks.finding;

/**
 * A number that a finding rests on, for readers that are programs.
 *
 * @param name what it is, in lower camel case without its unit, e.g. "chip"
 * @param value the number
 * @param unit its unit, e.g. "µm"; empty for a bare count or ratio
 */
public record Figure(String name, double value, String unit) {}
