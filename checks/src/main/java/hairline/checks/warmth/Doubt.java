package hairline.checks.warmth;

import hairline.checks.motion.Place;
import java.util.Optional;

/**
 * Why something about the spindle is not known.
 *
 * @param reason as a clause, such as "the speed of the spindle is not known"
 * @param key the key of the sheet that would settle it, where one would
 * @param at the block it comes from; empty where it comes from the sheet alone
 */
public record Doubt(String reason, Optional<String> key, Optional<Place> at) {}
