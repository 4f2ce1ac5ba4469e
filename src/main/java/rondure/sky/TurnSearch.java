package rondure.sky;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds the rotation between two frames without any guess: two stars of one frame and two of the
 * other with the same angle between them fix a rotation, the other bright stars vote for or against
 * it (random sample consensus over all samples: Fischler &amp; Bolles 1981, Commun. ACM 24, 381;
 * from memory).
 */
final class TurnSearch {
  private static final int BRIGHTEST = 36;
  private static final int VOTERS = 90;
  private static final int FIRST_VOTERS = 14;
  private static final double SHORTEST_SIDE_SHARE = 0.06;
  private static final double SIDE_ERROR_PX = 2.5;
  private static final double SIDE_ERROR_SHARE = 0.008;
  private static final double VOTE_RADIUS_PX = 5;
  private static final double VOTE_RADIUS_SHARE = 0.002;
  private static final double OVERWHELMING_SHARE = 0.6;
  private static final int OVERWHELMING_VOTES = 12;

  private final FramePair pair;
  private final double standingPx;
  private final double voteRadiusPx;
  private final int voters;
  private final VoteMap near;
  private final Candidate[] best = new Candidate[2];
  private long tried;

  private record Side(int i, int j, double angleRad) {}

  private record Candidate(Rotation turn, int votes) {}

  private TurnSearch(FramePair pair, double standingPx) {
    this.pair = pair;
    this.standingPx = standingPx;
    this.voteRadiusPx = VOTE_RADIUS_PX + VOTE_RADIUS_SHARE * pair.from().diagonalPx();
    this.voters = Math.min(VOTERS, pair.from().count);
    this.near = new VoteMap(pair.to(), 2 * VOTERS, pair.camera().focalLengthPx(), voteRadiusPx);
  }

  /**
   * The best rotations, refined and certain.
   *
   * @param standingPx rotations that move the stars by less are told apart from those that move
   *     them: the best of each kind is returned, moving ones first
   */
  static List<FrameMatch> matches(FramePair pair, double standingPx) {
    TurnSearch search = new TurnSearch(pair, standingPx);
    search.run();
    List<FrameMatch> found = new ArrayList<>();
    for (Candidate candidate : search.best) {
      if (candidate != null) {
        double attempts = Math.log(Math.max(1, search.tried));
        Optional<FrameMatch> match =
            FrameMatch.refined(pair, candidate.turn(), search.voteRadiusPx, attempts);
        match.filter(FrameMatch::isCertain).ifPresent(found::add);
      }
    }
    return found;
  }

  private void run() {
    List<Side> sides = sides(pair.from());
    Side[] others = sides(pair.to()).toArray(Side[]::new);
    Arrays.sort(others, Comparator.comparingDouble(Side::angleRad));
    double[] angles = Arrays.stream(others).mapToDouble(Side::angleRad).toArray();
    double focal = pair.camera().focalLengthPx();
    for (Side side : sides) {
      double slack = SIDE_ERROR_PX / focal + SIDE_ERROR_SHARE * side.angleRad();
      int at = Arrays.binarySearch(angles, side.angleRad() - slack);
      for (int k = at < 0 ? -at - 1 : at;
          k < angles.length && angles[k] <= side.angleRad() + slack;
          k++) {
        attempt(side, others[k].i(), others[k].j());
        attempt(side, others[k].j(), others[k].i());
      }
      if (isOverwhelming(best[0])) {
        return;
      }
    }
  }

  private boolean isOverwhelming(Candidate candidate) {
    int possible = Math.min(voters, pair.to().count);
    return candidate != null
        && candidate.votes() >= OVERWHELMING_VOTES
        && candidate.votes() >= OVERWHELMING_SHARE * possible;
  }

  private static List<Side> sides(FrameStars stars) {
    int count = Math.min(BRIGHTEST, stars.count);
    double shortest = SHORTEST_SIDE_SHARE * stars.diagonalPx();
    List<Side> sides = new ArrayList<>();
    for (int j = 1; j < count; j++) {
      for (int i = 0; i < j; i++) {
        if (Math.hypot(stars.x[i] - stars.x[j], stars.y[i] - stars.y[j]) >= shortest) {
          sides.add(new Side(i, j, angle(stars, i, j)));
        }
      }
    }
    sides.sort(Comparator.comparingInt(s -> s.i() + s.j()));
    return sides;
  }

  private static double angle(FrameStars s, int i, int j) {
    double chord =
        Math.sqrt(
            square(s.dx[i] - s.dx[j]) + square(s.dy[i] - s.dy[j]) + square(s.dz[i] - s.dz[j]));
    return 2 * Math.asin(Math.min(1, chord / 2));
  }

  private static double square(double value) {
    return value * value;
  }

  private void attempt(Side side, int i, int j) {
    tried++;
    Rotation turn =
        Rotation.ofPairs(
            pair.from().direction(side.i()),
            pair.from().direction(side.j()),
            pair.to().direction(i),
            pair.to().direction(j));
    int first = votes(turn, 0, Math.min(FIRST_VOTERS, voters));
    if (first < Math.min(3, voters - 1)) {
      return;
    }
    int votes = first + votes(turn, Math.min(FIRST_VOTERS, voters), voters);
    int kind = motionPx(turn) < standingPx ? 1 : 0;
    if (best[kind] == null || votes > best[kind].votes()) {
      best[kind] = new Candidate(turn, votes);
    }
  }

  private int votes(Rotation q, int fromStar, int untilStar) {
    FrameStars from = pair.from();
    int votes = 0;
    for (int i = fromStar; i < untilStar; i++) {
      // The rotation written out: these few lines take nearly all the time of a search.
      double tx = 2 * (q.y() * from.dz[i] - q.z() * from.dy[i]);
      double ty = 2 * (q.z() * from.dx[i] - q.x() * from.dz[i]);
      double tz = 2 * (q.x() * from.dy[i] - q.y() * from.dx[i]);
      double x = from.dx[i] + q.w() * tx + q.y() * tz - q.z() * ty;
      double y = from.dy[i] + q.w() * ty + q.z() * tx - q.x() * tz;
      double z = from.dz[i] + q.w() * tz + q.x() * ty - q.y() * tx;
      votes += near.isNear(x, y, z) ? 1 : 0;
    }
    return votes;
  }

  /** Largest motion of the frame's centre and corners. */
  private double motionPx(Rotation turn) {
    Camera camera = pair.camera();
    double most = 0;
    for (double shareX : new double[] {-0.5, 0, 0.5}) {
      for (double shareY : new double[] {-0.5, 0, 0.5}) {
        double x = camera.centreXPx() + shareX * 2 * camera.centreXPx();
        double y = camera.centreYPx() + shareY * 2 * camera.centreYPx();
        if (camera.sees(x, y)) {
          Optional<ImagePoint> at = camera.project(turn.apply(camera.direction(x, y)));
          most =
              Math.max(
                  most,
                  at.map(p -> Math.hypot(p.xPx() - x, p.yPx() - y))
                      .orElse(Double.POSITIVE_INFINITY));
        }
      }
    }
    return most;
  }
}
