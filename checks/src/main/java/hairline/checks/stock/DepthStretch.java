package hairline.checks.stock;

import java.util.OptionalLong;

/**
 * A stretch of a path over which a move takes one depth: the largest across the path, at each place
 * along it.
 *
 * @param fromMm where it begins, along the path; good to a cell
 * @param toMm where it ends
 * @param depthPm the depth, exact where floors are; 0 where nothing is taken; empty where the top
 *     of the material is not known
 */
public record DepthStretch(double fromMm, double toMm, OptionalLong depthPm) {}
