package rondure.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the camera did at each frame of a block, when the sky's spin is known. */
final class BlockMotions {
  private static final double CREEP_SIGMAS = 4;

  private final SkyVote vote;
  private final boolean byClock;
  private final double leastPlaceErrorRad;
  private final List<Motion> motions = new ArrayList<>();

  /** The motion at one frame: what the stars do besides the sky, its error, a jump before it. */
  record Motion(Vec creep, double errorRadPerS, double jumpRad) {}

  private BlockMotions(SkyVote vote, Sight sight) {
    this.vote = vote;
    this.byClock = sight.byClock();
    this.leastPlaceErrorRad = PathNoise.leastRad(sight.camera().focalLengthPx());
  }

  /** One for each pose of the aims. */
  static List<Motion> of(List<AimPath> aims, SkyVote vote, Sight sight) {
    BlockMotions told = new BlockMotions(vote, sight);
    Optional<AimPath> before = Optional.empty();
    for (AimPath aim : aims) {
      double step = before.map(b -> b.stepTo(aim, vote.sky())).orElse(0.0);
      told.tell(aim, step);
      before = Optional.of(aim);
    }
    return List.copyOf(told.motions);
  }

  private void tell(AimPath aim, double firstStep) {
    List<PieceRate> rates = aim.rates(vote.sky());
    for (int p = 0; p < aim.pieces.size(); p++) {
      PathPieces.Piece piece = aim.pieces.get(p);
      Optional<PieceRate> rate = rates.stream().filter(r -> r.piece().equals(piece)).findFirst();
      double jump = p > 0 ? aim.jump(aim.pieces.get(p - 1), piece) : firstStep;
      for (int i = piece.from(); i < piece.until(); i++) {
        motions.add(motion(rate, i == piece.from() ? jump : 0));
      }
    }
  }

  private Motion motion(Optional<PieceRate> rate, double jump) {
    double poleError = vote.poleErrorRadPerS() / Math.sqrt(3);
    if (rate.isEmpty()) {
      return new Motion(Vec.ZERO, turns() ? poleError : 0, jump);
    }
    Vec creep = rate.get().rate().minus(vote.sky());
    if (isProven(rate.get(), creep) || (!vote.settled() && turns() && byClock)) {
      return new Motion(creep.turned(rate.get().turn()), rate.get().rmsError(), jump);
    }
    return new Motion(Vec.ZERO, turns() ? poleError : rate.get().rmsError(), jump);
  }

  private boolean isProven(PieceRate rate, Vec creep) {
    double least = CreepProof.LEAST_SHARE / 4 * SkyMotion.SIDEREAL_RATE_RAD_PER_S;
    double ofSky = turns() ? vote.statisticalErrorRadPerS() / Math.sqrt(3) : 0;
    double error = Math.hypot(ofSky, leastPlaceErrorRad / Math.sqrt(rate.piece().spread()));
    return rate.chi2(vote.sky(), error) > CREEP_SIGMAS * CREEP_SIGMAS && creep.length() > least;
  }

  private boolean turns() {
    return vote.kind() == SkyVote.Kind.TURNS;
  }
}
