package hairline.checks.timing;

import hairline.checks.motion.Place;

/**
 * Something whose duration is known only within bounds.
 *
 * @param at the block that takes the time
 * @param cause why its duration is not known
 */
public record Gap(Place at, Cause cause) {}
