package rondure.sky;

import java.util.Arrays;
import java.util.List;
import rondure.base.RobustStats;

/** How uncertain the places of a camera's path are, and the slopes of its pieces. */
final class PathNoise {
  /** Air, lens and pixels let the mean of the stars wander by about this, px. */
  private static final double WANDER_PX = 0.01;

  private static final int ENOUGH_FOR_SCATTER = 8;

  private final double[] times;
  private final Vec[] path;
  private final Vec stated;
  private final Vec clock;

  /**
   * Shares the arrays.
   *
   * @param times increasing, s
   * @param path small rotations about the camera's axes, rad
   * @param stated standard errors of each
   * @param clock how far the sky turns within a standard error of the times, rad
   */
  PathNoise(double[] times, Vec[] path, Vec stated, Vec clock) {
    this.times = times;
    this.path = path;
    this.stated = stated;
    this.clock = clock;
  }

  /** Formal errors of the frames' attitudes, the middle one about each of the camera's axes. */
  static Vec stated(List<Pose> poses) {
    double[] stated = new double[3];
    for (int k = 0; k < 3; k++) {
      int component = k;
      stated[k] =
          RobustStats.median(poses.stream().mapToDouble(p -> p.errors().at(component)).toArray());
    }
    return Vec.of(stated);
  }

  /** No place of a path is better known than this. */
  static double leastRad(double focalLengthPx) {
    return WANDER_PX / focalLengthPx;
  }

  /** Of a single place, for telling jumps: what is stated, or the scatter where larger. */
  Vec ofPlace(double focalLengthPx) {
    double[] noise = new double[3];
    for (int k = 0; k < 3; k++) {
      double told = Math.hypot(stated.at(k), clock.at(k));
      double least = Math.hypot(told, leastRad(focalLengthPx));
      noise[k] = Math.max(least, orZero(scatter(k)));
    }
    return Vec.of(noise);
  }

  private static double orZero(double value) {
    return Double.isNaN(value) ? 0 : value;
  }

  /** Errors of a piece's slope about the camera's axes, by its own scatter. */
  SpinError slopeErrors(PathPieces.Piece piece) {
    double[] seconds = Arrays.copyOfRange(times, piece.from(), piece.until());
    double[][] values = new double[3][seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      Vec place = withoutClock(path[piece.from() + i].minus(piece.at(times[piece.from() + i])));
      for (int k = 0; k < 3; k++) {
        values[k][i] = place.at(k);
      }
    }
    Vec errors = WanderNoise.slopeErrors(seconds, values, stated);
    return new SpinError(errors, clock.times(1 / Math.sqrt(Math.max(1e-300, piece.spread()))));
  }

  /** What the clock's steps made of a place is taken out where they are coarser than the place. */
  private Vec withoutClock(Vec place) {
    double pull = 0;
    double power = 1;
    for (int k = 0; k < 3; k++) {
      double variance = stated.at(k) * stated.at(k);
      pull += clock.at(k) * place.at(k) / variance;
      power += clock.at(k) * clock.at(k) / variance;
    }
    return place.minus(clock.times(pull / power));
  }

  /** From what each point is off the line between its neighbours; NaN when too few. */
  private double scatter(int axis) {
    if (times.length < ENOUGH_FOR_SCATTER) {
      return Double.NaN;
    }
    double[] off = new double[times.length - 2];
    for (int i = 1; i + 1 < times.length; i++) {
      double span = times[i + 1] - times[i - 1];
      double share = span > 0 ? (times[i] - times[i - 1]) / span : 0.5;
      double between = (1 - share) * path[i - 1].at(axis) + share * path[i + 1].at(axis);
      double factor = Math.sqrt(1 + share * share + (1 - share) * (1 - share));
      off[i - 1] = (path[i].at(axis) - between) / factor;
    }
    return RobustStats.SIGMA_PER_MAD
        * RobustStats.median(Arrays.stream(off).map(Math::abs).toArray());
  }
}
