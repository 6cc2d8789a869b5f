package hairline.checks.stock;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a move truly takes, by the height field. Seen from above every border is good to a cell;
 * heights are exact.
 *
 * @param areaMm2 area that it lowers
 * @param volumeMm3 volume that it removes; empty where it meets material whose top is not known
 * @param deepestPm the largest height taken off a place; 0 where nothing is, or it is not known
 * @param contactShare part of the path on which it removes something, 0 to 1; good to a cell, or a
 *     128th of the path, at each end of a stretch. 1 where the tool moves straight down
 * @param widest the widest part of the tool's rim that cuts anywhere along the path, of a ball on
 *     the diameter on which it meets the material; empty where the path is too short to tell
 */
public record Removal(
    double areaMm2,
    OptionalDouble volumeMm3,
    long deepestPm,
    double contactShare,
    Optional<EngagedArc> widest) {

  /** Nothing removed. */
  public static final Removal NONE = new Removal(0, OptionalDouble.of(0), 0, 0, Optional.empty());

  /** Contact in a strip narrower than a cell, or with a surface that is not known. */
  static final Removal NOT_MEASURED =
      new Removal(0, OptionalDouble.empty(), 0, 1, Optional.empty());

  /** Volume over area: the depth taken on the average, in picometres. */
  public OptionalDouble meanDepthPm() {
    return volumeMm3.isEmpty() || areaMm2 == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(volumeMm3.getAsDouble() / areaMm2 * 1e9);
  }
}
