package hairline.checks.report;

/**
 * Why a program could not be checked.
 *
 * @param code the failure's name in the catalogue, e.g. "input-missing"
 * @param sentence what is wrong; lower case, no final full stop
 * @param cure what to do
 */
public record Trouble(String code, String sentence, String cure) {}
