package rondure.sky;

import java.util.Objects;

/**
 * One thing seen from two attitudes.
 *
 * @param from its direction in the first axes
 * @param to its direction in the second axes
 * @param errorRad standard error of their misfit, per axis across the line of sight
 */
public record DirectionPair(Direction from, Direction to, double errorRad) {

  public DirectionPair {
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    if (!(errorRad > 0 && Double.isFinite(errorRad))) {
      throw new IllegalArgumentException("errorRad must be > 0, was " + errorRad);
    }
  }

  /** Distance between {@code to} and the turned {@code from}, rad (a chord: exact to its cube). */
  double misfitRad(Rotation rotation) {
    Direction turned = rotation.apply(from);
    double x = turned.x() - to.x();
    double y = turned.y() - to.y();
    double z = turned.z() - to.z();
    return Math.sqrt(x * x + y * y + z * z);
  }
}
