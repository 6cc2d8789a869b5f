package hairline.checks.stock;

import hairline.checks.motion.Place;
import hairline.checks.setup.Tool;

/**
 * A cusp that two neighbouring passes of a rounded tool leave on the finished part.
 *
 * @param at the block of the later pass
 * @param operation its operation
 * @param tool the tool
 * @param radiusMm radius of ball or corner
 * @param heightUm its height across the surface
 * @param apartMm distance of the passes along the surface, less the flat of a corner radius' end
 * @param apartAboveMm the same, seen from above
 * @param flatMm the flat of the end, 0 for a ball
 */
public record CuspLeft(
    Place at,
    int operation,
    Tool tool,
    double radiusMm,
    double heightUm,
    double apartMm,
    double apartAboveMm,
    double flatMm) {}
