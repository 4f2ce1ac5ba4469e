package rondure.sky;

import java.util.ArrayList;
import java.util.List;
import rondure.base.RobustStats;

/**
 * The camera's own motion while it was aimed at one place: what is left of the frames' attitudes
 * when the sky is turned back, as small rotation vectors about the camera's axes.
 */
final class AimPath {
  /** Larger steps are new aims. */
  static final double LARGEST_STEP_RAD = 0.03;

  private static final double PRICE = 45;
  private static final double STEEP_SIGMAS = 4.5;
  private static final double JUMP_SIGMAS = 5;
  private static final int MEETING_PLACES = 8;
  private static final int ENOUGH_FOR_SCATTER = 8;

  /** Air, lens and pixels let the mean of the stars wander by about this, px. */
  private static final double WANDER_PX = 0.01;

  final List<Pose> poses;
  final double[] times;
  final Vec[] path;
  final Vec noise;
  final List<PathPieces.Piece> pieces;

  private AimPath(List<Pose> poses, Vec sky, double stepSeconds, double focalLengthPx) {
    this.poses = List.copyOf(poses);
    double start = poses.get(0).seconds();
    Rotation back = poses.get(0).withoutSky(sky, start).inverse();
    times = new double[poses.size()];
    path = new Vec[poses.size()];
    for (int i = 0; i < times.length; i++) {
      times[i] = poses.get(i).seconds() - start;
      path[i] = Vec.log(back.then(poses.get(i).withoutSky(sky, start)));
    }
    noise = noise(sky, stepSeconds, focalLengthPx);
    pieces = withoutSteepPairs(PathPieces.of(times, path, noise, PRICE));
  }

  /**
   * Cuts the frames of a block where the camera was aimed anew.
   *
   * @param sky spin of the sky in its own axes, rad/s
   */
  static List<AimPath> of(List<Pose> poses, Vec sky, double stepSeconds, double focalLengthPx) {
    List<AimPath> aims = new ArrayList<>();
    int from = 0;
    double start = poses.get(0).seconds();
    for (int i = 1; i <= poses.size(); i++) {
      boolean ends = i == poses.size();
      if (!ends) {
        Rotation before = poses.get(i - 1).withoutSky(sky, start);
        Rotation step = before.inverse().then(poses.get(i).withoutSky(sky, start));
        ends = step.angleRad() > LARGEST_STEP_RAD;
      }
      if (ends) {
        aims.add(new AimPath(poses.subList(from, i), sky, stepSeconds, focalLengthPx));
        from = i;
      }
    }
    return aims;
  }

  /** Two points always lie on a line: when it is steep they are two places, not a motion. */
  private List<PathPieces.Piece> withoutSteepPairs(List<PathPieces.Piece> found) {
    List<PathPieces.Piece> kept = new ArrayList<>();
    for (PathPieces.Piece piece : found) {
      boolean pair = piece.count() == 2 && times.length > 2;
      if (pair && isSteep(piece)) {
        kept.add(single(piece.from()));
        kept.add(single(piece.from() + 1));
      } else {
        kept.add(piece);
      }
    }
    return kept;
  }

  private boolean isSteep(PathPieces.Piece piece) {
    double seconds = times[piece.until() - 1] - times[piece.from()];
    boolean steep = false;
    for (int k = 0; k < 3; k++) {
      steep |= Math.abs(piece.slope().at(k)) * seconds > STEEP_SIGMAS * noise.at(k);
    }
    return steep;
  }

  private PathPieces.Piece single(int i) {
    return new PathPieces.Piece(i, i + 1, times[i], path[i], Vec.ZERO, 0);
  }

  /** Noise of a piece: its own scatter about its line where that is larger. */
  private Vec noise(PathPieces.Piece piece) {
    int freedom = piece.count() - 2;
    if (freedom < 1) {
      return noise;
    }
    double[] own = new double[3];
    for (int k = 0; k < 3; k++) {
      double squares = 0;
      for (int i = piece.from(); i < piece.until(); i++) {
        double off = path[i].at(k) - piece.at(times[i]).at(k);
        squares += off * off;
      }
      // Few points tell their scatter badly: Student's t at 1 σ (84 %) for 1, 2, 3 ... is 1.84,
      // 1.32, 1.20 ...
      double student = 1 + 0.84 / Math.pow(freedom, 1.4);
      own[k] = Math.max(noise.at(k), student * Math.sqrt(squares / freedom));
    }
    return Vec.of(own);
  }

  /** Formal errors with the clock's steps, or the scatter from frame to frame where larger. */
  private Vec noise(Vec sky, double stepSeconds, double focalLengthPx) {
    Vec axis = sky.turned(poses.get(0).turn());
    double[] noise = new double[3];
    for (int k = 0; k < 3; k++) {
      int component = k;
      double formal =
          RobustStats.median(poses.stream().mapToDouble(p -> p.errors().at(component)).toArray());
      double clock = Math.abs(axis.at(k)) * stepSeconds / Math.sqrt(12);
      double least = Math.hypot(Math.hypot(formal, clock), WANDER_PX / focalLengthPx);
      noise[k] = Math.max(least, orZero(scatter(k)));
    }
    return Vec.of(noise);
  }

  private static double orZero(double value) {
    return Double.isNaN(value) ? 0 : value;
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
        * RobustStats.median(java.util.Arrays.stream(off).map(Math::abs).toArray());
  }

  /** The step between two pieces, 0 when their lines may meet between them. */
  double jump(PathPieces.Piece before, PathPieces.Piece after) {
    double begin = times[before.until() - 1];
    double end = times[after.from()];
    double least = Double.POSITIVE_INFINITY;
    double length = 0;
    for (int i = 0; i <= MEETING_PLACES; i++) {
      double when = begin + (end - begin) * i / MEETING_PLACES;
      Vec step = after.at(when).minus(before.at(when));
      double chi2 = 0;
      for (int k = 0; k < 3; k++) {
        double error = noise.at(k) * Math.hypot(endError(before, when), endError(after, when));
        chi2 += step.at(k) * step.at(k) / (error * error);
      }
      if (chi2 < least) {
        least = chi2;
        length = step.length();
      }
    }
    return least > JUMP_SIGMAS * JUMP_SIGMAS ? length : 0;
  }

  private static double endError(PathPieces.Piece piece, double when) {
    double away = when - piece.middle();
    double bySlope = piece.spread() > 0 ? away * away / piece.spread() : 0;
    return Math.sqrt(1.0 / piece.count() + bySlope);
  }

  /** Rates of the pieces of at least two frames. */
  List<PieceRate> rates(Vec sky) {
    List<PieceRate> rates = new ArrayList<>();
    for (PathPieces.Piece piece : pieces) {
      if (piece.count() >= 2 && piece.spread() > 0) {
        Rotation turn = poses.get((piece.from() + piece.until() - 1) / 2).turn();
        Vec errors = noise(piece).times(1 / Math.sqrt(piece.spread()));
        Vec rate = sky.plus(piece.slope().turned(turn.inverse()));
        double seconds = times[piece.until() - 1] - times[piece.from()];
        rates.add(new PieceRate(piece, rate, errors, turn, seconds));
      }
    }
    return rates;
  }
}
