package hairline.viewer.model;

import hairline.checks.motion.Place;
import java.util.OptionalInt;

/**
 * A level of the part at the place where it was cut first.
 *
 * @param id its number
 * @param zPm its height as stored
 * @param at the first block
 * @param move the first move
 * @param tool the tool, where known
 */
public record LevelMark(int id, long zPm, Place at, long move, OptionalInt tool) {}
