package hairline.checks.stock;

/**
 * A narrow strip of one height that stands between two lower levels on the finished part.
 *
 * @param widthPm how wide it is on the average; good to a cell
 * @param lengthPm how long; good to a cell
 * @param heightPm its height
 * @param oneLevelId the level on one side
 * @param otherLevelId the level on the other side
 * @param xPm a place in its middle
 * @param yPm the same
 */
public record Sliver(
    double widthPm,
    double lengthPm,
    long heightPm,
    int oneLevelId,
    int otherLevelId,
    long xPm,
    long yPm) {}
