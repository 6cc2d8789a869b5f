package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;

/**
 * What a move does to the part is not known. Each reason comes once.
 *
 * @param at the first move concerned
 * @param contact whether not even contact is known; else contact is, and the surface is not, from
 *     here on
 * @param reason why; "KEY is not on the sheet" where a key of the sheet would tell
 */
public record PartNotKnown(Place at, boolean contact, String reason) implements Event {}
