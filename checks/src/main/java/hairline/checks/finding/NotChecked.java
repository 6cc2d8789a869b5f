package hairline.checks.finding;

import hairline.checks.motion.Place;
import java.util.Optional;

/**
 * A rule that could not decide, and what would let it.
 *
 * @param rule name of the rule
 * @param reason what is missing or unknown: a key of the sheet, or a block
 * @param first where it would have been needed first; empty where no line is concerned
 * @param count how often it was needed
 */
public record NotChecked(String rule, String reason, Optional<Place> first, long count) {}
