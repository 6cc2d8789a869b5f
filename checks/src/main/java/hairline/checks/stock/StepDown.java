package hairline.checks.stock;

import java.util.OptionalLong;

/**
 * A height that a move takes over one of the surfaces it crosses.
 *
 * @param overLevelId the level that left this surface: 0 the uncut top, {@link Cut#NO_LEVEL} a
 *     surface that is no level
 * @param storedPm the height, from stored values
 * @param writtenPm the same from values as written, where the surface is a level or the top
 * @param lengthMm how much of the path lies over this surface; an estimate, good to a cell
 * @param exact whether {@code storedPm} is the exact difference of two stored values; otherwise it
 *     is an estimate over a surface without one height
 */
public record StepDown(
    int overLevelId, long storedPm, OptionalLong writtenPm, double lengthMm, boolean exact) {}
