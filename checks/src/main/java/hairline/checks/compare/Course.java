package hairline.checks.compare;

import hairline.checks.motion.Move;
import java.util.List;
import java.util.Optional;

/** A straight way or a circle, which one move or several, one behind the other, can follow. */
sealed interface Course permits StraightCourse, CircleCourse {
  /**
   * How far along it each move ends, the last at 1.
   *
   * @param moves each beginning where the one before ends, the first and the last at the ends of
   *     the course
   * @param roomPm how far from it in each linear axis a point may lie
   * @return empty where a move leaves the course or goes back on it
   */
  Optional<double[]> shares(List<Move> moves, double roomPm);
}
