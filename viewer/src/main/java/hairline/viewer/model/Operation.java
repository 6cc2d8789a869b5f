package hairline.viewer.model;

import java.util.Optional;

/**
 * An operation: what one tool does at one commanded speed.
 *
 * @param number counted from 1
 * @param firstMove its first move
 * @param tool the tool, where known
 * @param rpm the speed of the spindle at its first move, where known
 * @param offset the work offset of its first move, where known
 */
public record Operation(
    int number,
    long firstMove,
    Optional<Integer> tool,
    Optional<Double> rpm,
    Optional<String> offset) {}
