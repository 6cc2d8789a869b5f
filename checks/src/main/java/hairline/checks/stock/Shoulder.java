package hairline.checks.stock;

import hairline.checks.cutting.ToolBody;
import hairline.checks.setup.Length;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import java.util.Optional;

/**
 * The part of a tool's body that is wider than its cutting end, in picometres: a cone, or a plain
 * shoulder, and the shank behind it.
 *
 * <p>The cone begins where the reach ends, with the neck's diameter, or without a neck with the
 * diameter that the flute counts with ({@link ToolBody#FLUTE_SHARE}).
 *
 * @param reachPm from the tip to where it begins: LU, without a neck APMX
 * @param coneRadiusPm radius with which it begins
 * @param conePm length of the cone; 0 for a plain shoulder
 * @param shankRadiusPm half of DMM
 */
record Shoulder(long reachPm, double coneRadiusPm, long conePm, double shankRadiusPm) {

  /** The shoulder of a tool; empty where the sheet does not tell it, or the shank is as thin. */
  static Optional<Shoulder> of(Tool tool) {
    Optional<Length> diameter = tool.get(ToolKeys.DIAMETER);
    Optional<Length> shank = tool.get(ToolKeys.SHANK_DIAMETER);
    Optional<Length> neck = tool.get(ToolKeys.NECK_DIAMETER);
    Optional<Length> reach =
        neck.isPresent() ? tool.get(ToolKeys.NECK_LENGTH) : tool.get(ToolKeys.CUTTING_LENGTH);
    if (diameter.isEmpty()
        || shank.isEmpty()
        || reach.isEmpty()
        || shank.get().pm() <= diameter.get().pm()) {
      return Optional.empty();
    }
    double begin =
        neck.map(n -> n.pm() / 2.0).orElse(ToolBody.FLUTE_SHARE * diameter.get().pm() / 2);
    return Optional.of(
        new Shoulder(
            reach.get().pm(),
            begin,
            tool.get(ToolKeys.TAPER_LENGTH).orElse(Length.ZERO).pm(),
            shank.get().pm() / 2.0));
  }

  /** Height above the tip from which on the body reaches this far from the axis. */
  double heightPm(double distancePm) {
    return conePm == 0 || distancePm <= coneRadiusPm
        ? reachPm
        : reachPm + conePm * (distancePm - coneRadiusPm) / (shankRadiusPm - coneRadiusPm);
  }
}
