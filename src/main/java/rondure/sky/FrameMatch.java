package rondure.sky;

import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Two frames whose stars were matched.
 *
 * @param pairing which star of the first frame is which of the second
 * @param turn from the first camera's axes to the second's
 * @param motionPx r.m.s. distance between the places of a star in the two frames
 * @param logChance logarithm of an upper bound of the probability that chance makes such a match
 */
record FrameMatch(Pairing pairing, Rotation turn, double motionPx, double logChance) {
  /** A false match must be less likely than this in one attempt. */
  static final double LARGEST_LOG_CHANCE = Math.log(1e-4);

  private static final int ROUNDS = 4;
  private static final int LEAST_PAIRS = 3;
  private static final double FINEST_RADIUS_PX = 1.5;
  private static final double LARGEST_SHARE_BY_CHANCE = 0.15;
  private static final double KEPT_SIGMAS = 4.5;
  private static final double LARGEST_KEPT_PX = 2;

  boolean isCertain() {
    return logChance < LARGEST_LOG_CHANCE;
  }

  /** Pairs over the stars that could have found one. */
  double share(FrameStars from, FrameStars to) {
    return (double) pairing.count / Math.max(1, Math.min(pairing.inside, to.count));
  }

  /**
   * Refines a first guess of the rotation: pairs within a shrinking radius, the rotation from them,
   * and a smooth displacement for what the camera model leaves.
   *
   * @param radiusPx how far a star may be from where the guess puts it
   * @param logAttempts logarithm of how many guesses were tried
   * @return empty when fewer than three pairs remain
   */
  static Optional<FrameMatch> refined(
      FramePair pair, Rotation guess, double radiusPx, double logAttempts) {
    Rotation turn = guess;
    Pairing.Foretold places = pair.foretell(turn);
    double radius = Math.min(radiusPx, crowdingRadius(pair.to()));
    Pairing pairing = null;
    double misfit = 0;
    for (int round = 0; round < ROUNDS; round++) {
      pairing = Pairing.nearest(places, pair.to(), radius);
      Optional<TurnFit> fit = pair.fit(pairing, turn);
      if (pairing.count < LEAST_PAIRS || fit.isEmpty()) {
        return Optional.empty();
      }
      turn = fit.get().turn();
      Pairing.Foretold turned = pair.foretell(turn);
      places = turned.moved(pair.leftOver(pairing, turned));
      misfit = pair.misfitPx(pairing, places);
      radius = Math.max(FINEST_RADIUS_PX, Math.min(radius / 2, 6 * misfit));
    }
    double keptPx = Math.min(LARGEST_KEPT_PX, Math.max(0.5, KEPT_SIGMAS * misfit));
    Pairing kept = Pairing.nearest(places, pair.to(), keptPx);
    return Optional.of(
        new FrameMatch(
            kept, turn, pair.motionPx(kept), logAttempts + pair.logChance(kept, keptPx)));
  }

  private static double crowdingRadius(FrameStars to) {
    double area = LARGEST_SHARE_BY_CHANCE * to.areaPx2 / Math.max(1, to.count);
    return Math.max(2, Math.sqrt(area / Math.PI));
  }

  /** Index pairs, first frame's star then second's. */
  int[][] pairs() {
    return IntStream.range(0, pairing.partner.length)
        .filter(i -> pairing.partner[i] >= 0)
        .mapToObj(i -> new int[] {i, pairing.partner[i]})
        .toArray(int[][]::new);
  }
}
