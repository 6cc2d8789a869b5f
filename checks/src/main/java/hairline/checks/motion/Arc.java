package hairline.checks.motion;

/**
 * The geometry of a circular or helical move, in the plane of its modes, from stored values.
 *
 * <p>Centre and angles are doubles: with coordinates below 1 m their error stays below 1 pm · 10^3.
 *
 * @param centreFirstMm centre on the plane's first axis, work coordinates
 * @param centreSecondMm centre on its second axis
 * @param startRadiusMm distance of the start from the centre
 * @param endRadiusMm distance of the end from the centre
 * @param sweepRad signed sweep, positive counter-clockwise seen from the positive normal axis; a
 *     full circle is ±2π, more turns add
 * @param radiusForm whether it was written with R
 */
public record Arc(
    double centreFirstMm,
    double centreSecondMm,
    double startRadiusMm,
    double endRadiusMm,
    double sweepRad,
    boolean radiusForm) {}
