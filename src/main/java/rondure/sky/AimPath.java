package rondure.sky;

import java.util.ArrayList;
import java.util.List;

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
  private static final double BEND_SIGMAS = 4;
  private static final int MEETING_PLACES = 8;
  private static final int LEAST_RESTLESS = 4;

  final List<Pose> poses;
  final double[] times;
  final Vec[] path;
  final Vec noise;
  private final PathNoise scatter;
  final List<PathPieces.Piece> pieces;

  private AimPath(List<Pose> poses, Vec sky, Sight sight) {
    this.poses = List.copyOf(poses);
    double start = poses.get(0).seconds();
    Rotation back = poses.get(0).withoutSky(sky, start).inverse();
    times = new double[poses.size()];
    path = new Vec[poses.size()];
    for (int i = 0; i < times.length; i++) {
      times[i] = poses.get(i).seconds() - start;
      path[i] = Vec.log(back.then(poses.get(i).withoutSky(sky, start)));
    }
    Vec clock = sky.turned(poses.get(0).turn()).times(sight.stepSeconds() / Math.sqrt(12));
    scatter = new PathNoise(times, path, PathNoise.stated(poses), clock);
    noise = scatter.ofPlace(sight.camera().focalLengthPx());
    pieces = joined(withoutSteepPairs(PathPieces.of(times, path, noise, PRICE)));
  }

  /**
   * Cuts the frames of a block where the camera was aimed anew.
   *
   * @param sky spin of the sky in its own axes, rad/s
   */
  static List<AimPath> of(List<Pose> poses, Vec sky, Sight sight) {
    List<AimPath> aims = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= poses.size(); i++) {
      boolean ends = i == poses.size();
      if (!ends) {
        ends = poses.get(i - 1).stepTo(poses.get(i), sky) > LARGEST_STEP_RAD;
      }
      if (ends) {
        aims.add(new AimPath(poses.subList(from, i), sky, sight));
        from = i;
      }
    }
    return aims;
  }

  /** The turn from the end of this aim to the beginning of a later one, rad. */
  double stepTo(AimPath later, Vec sky) {
    Pose end = poses.get(poses.size() - 1);
    return end.stepTo(later.poses.get(0), sky);
  }

  /** Takes cuts back that a path which wanders would make as well. */
  private List<PathPieces.Piece> joined(List<PathPieces.Piece> found) {
    List<PathPieces.Piece> kept = new ArrayList<>(found);
    int p = 0;
    while (p + 1 < kept.size()) {
      if (isOneMotion(kept.get(p), kept.get(p + 1))) {
        int until = kept.remove(p + 1).until();
        kept.set(p, PathPieces.piece(times, path, kept.get(p).from(), until));
        p = Math.max(0, p - 1);
      } else {
        p++;
      }
    }
    return kept;
  }

  private boolean isOneMotion(PathPieces.Piece before, PathPieces.Piece after) {
    if (before.count() < 2 || after.count() < 2 || jump(before, after) > 0) {
      return false;
    }
    SpinError errors = scatter.slopeErrors(before).and(scatter.slopeErrors(after));
    Vec change = after.slope().minus(before.slope());
    return errors.chi2(change, 0) < BEND_SIGMAS * BEND_SIGMAS;
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

  /** Rates of the pieces of at least two frames; of the whole path where no two are of one. */
  List<PieceRate> rates(Vec sky) {
    List<PieceRate> rates = new ArrayList<>();
    for (PathPieces.Piece piece : pieces) {
      if (piece.count() >= 2 && piece.spread() > 0) {
        rates.add(rate(piece, sky));
      }
    }
    if (rates.isEmpty() && times.length >= LEAST_RESTLESS) {
      // Wind moved every frame: the sky shows in the mean of many places, as well as they scatter.
      rates.add(rate(PathPieces.piece(times, path, 0, times.length), sky));
    }
    return rates;
  }

  private PieceRate rate(PathPieces.Piece piece, Vec sky) {
    Rotation turn = poses.get((piece.from() + piece.until() - 1) / 2).turn();
    Vec rate = sky.plus(piece.slope().turned(turn.inverse()));
    double seconds = times[piece.until() - 1] - times[piece.from()];
    return new PieceRate(piece, rate, scatter.slopeErrors(piece), turn, seconds);
  }
}
