package rondure.sky;

import java.util.Optional;
import rondure.base.RobustStats;

/**
 * Two frames seen through one camera.
 *
 * @param camera that took both
 * @param from the first
 * @param to the second
 */
record FramePair(Camera camera, FrameStars from, FrameStars to) {
  /** Two parameters of a guessed rotation are fixed by a pair of stars each. */
  private static final int FREE_PAIRS = 2;

  /** Where the stars of the first frame should be in the second. */
  Pairing.Foretold foretell(Rotation turn) {
    Pairing.Foretold places = new Pairing.Foretold(from.count);
    for (int i = 0; i < from.count; i++) {
      places.set(i, camera.project(turn.apply(from.direction(i))));
    }
    return places;
  }

  /** The rotation from the pairs. */
  Optional<TurnFit> fit(Pairing pairing, Rotation guess) {
    TurnFit.Pairs pairs = new TurnFit.Pairs(pairing.count);
    for (int i = 0; i < from.count; i++) {
      int j = pairing.partner[i];
      if (j >= 0) {
        double error = Math.sqrt(from.errorPx[i] * from.errorPx[i] + to.errorPx[j] * to.errorPx[j]);
        pairs.add(from.direction(i), to.x[j], to.y[j], error);
      }
    }
    return TurnFit.of(camera, pairs, guess);
  }

  /** What the rotation leaves, smoothed. */
  SmoothShift leftOver(Pairing pairing, Pairing.Foretold places) {
    double[][] left = new double[4][pairing.count];
    int k = 0;
    for (int i = 0; i < from.count; i++) {
      int j = pairing.partner[i];
      if (j >= 0 && !Double.isNaN(places.x[i])) {
        left[0][k] = places.x[i];
        left[1][k] = places.y[i];
        left[2][k] = to.x[j] - places.x[i];
        left[3][k++] = to.y[j] - places.y[i];
      }
    }
    int used = k;
    for (int row = 0; row < left.length; row++) {
      left[row] = java.util.Arrays.copyOf(left[row], used);
    }
    return SmoothShift.fit(left[0], left[1], left[2], left[3]);
  }

  /** Robust scatter about the foretold places, per axis. */
  double misfitPx(Pairing pairing, Pairing.Foretold places) {
    double[] off = new double[from.count];
    for (int i = 0; i < from.count; i++) {
      int j = pairing.partner[i];
      off[i] = j < 0 ? Double.NaN : places.distancePx(i, to, j);
    }
    return RobustStats.median(off) / 1.1774;
  }

  /** R.m.s. distance between the places of a star in the two frames. */
  double motionPx(Pairing pairing) {
    double sum = 0;
    for (int i = 0; i < from.count; i++) {
      int j = pairing.partner[i];
      if (j >= 0) {
        sum += Math.pow(to.x[j] - from.x[i], 2) + Math.pow(to.y[j] - from.y[i], 2);
      }
    }
    return Math.sqrt(sum / Math.max(1, pairing.count));
  }

  /** Chance to match as many within a radius, the pairs that fixed the rotation left out. */
  double logChance(Pairing pairing, double radiusPx) {
    return ChanceLevel.logTail(
        Math.max(0, pairing.inside - FREE_PAIRS),
        Math.max(0, pairing.count - FREE_PAIRS),
        to.chance(to.count, radiusPx));
  }
}
