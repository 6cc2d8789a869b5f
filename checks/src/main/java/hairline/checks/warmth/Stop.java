package hairline.checks.warmth;

import hairline.checks.motion.Place;
import hairline.checks.timing.TimeTaken;

/**
 * A stop of the spindle.
 *
 * @param from where it begins to count
 * @param time how long it lasts, within bounds
 */
public record Stop(Place from, TimeTaken time) {}
