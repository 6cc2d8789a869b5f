package hairline.checks.report;

/**
 * Where the parts of a drawing lie, in pixels of its own.
 *
 * @param width its whole width; letters are 11 tall, so that a narrower drawing has larger ones on
 *     the same paper
 * @param above room above the drawing's first scale
 * @param headed whether it names program and sheet, as a drawing does that stands alone
 * @param planWidth largest width of a plan
 * @param planHeight largest height of a plan
 * @param legend left edge of the plan's legend
 * @param legendRow height of a row of it
 * @param sectionTall height of a section's profile
 * @param sectionGap from a profile's foot to what stands below
 * @param sectionsInRow how many sections stand side by side
 * @param speedTall height of the spindle's speed along the time
 * @param growthTall height of its growth along the time
 */
record Canvas(
    double width,
    double above,
    boolean headed,
    double planWidth,
    double planHeight,
    double legend,
    double legendRow,
    double sectionTall,
    double sectionGap,
    int sectionsInRow,
    double speedTall,
    double growthTall) {

  /** A drawing that stands alone. */
  static final Canvas ALONE = new Canvas(1060, 0, true, 690, 520, 800, 19, 150, 50, 1, 48, 150);

  /**
   * A drawing in a brief: on the 190 mm between the margins of A4 its letters are 7.1 points tall,
   * and drawings and text together fit on two pages.
   */
  static final Canvas BRIEF = new Canvas(830, 8, false, 430, 220, 560, 16, 60, 38, 2, 26, 60);
}
