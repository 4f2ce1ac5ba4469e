package rondure.stars;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rondure.base.RobustStats;

/**
 * Which profile suits a star. Models are compared by N ln(Σ residual²), the likelihood with the
 * noise left free, so that very bright stars, which no model fits to the last photon, do not shout
 * the others down.
 */
final class ProfileChoice {
  /** A gain in N ln(Σ residual²) that one star must show to leave the profile of its neighbours. */
  static final double STAR_EVIDENCE = 9;

  /** Frames choose the Gaussian or the trail unless others are better by this in sum. */
  private static final double FRAME_EVIDENCE = 6;

  private static final int CLIMBS_MAX = 8;

  private ProfileChoice() {}

  /** One star, ready to be fitted with any profile. */
  interface Fitting {
    ShapeFit with(int profileIndex, Placed start);
  }

  /** A fit and the index of its profile. */
  record Chosen(int profileIndex, ShapeFit fit) {}

  /** N ln(Σ residual²): the lower, the better the model. */
  static double score(ShapeFit fit) {
    return fit.residual().pixelCount() * Math.log(fit.residual().squares() + Double.MIN_NORMAL);
  }

  /**
   * Whether a star is further from its model than its noise and the frame's usual misfit explain,
   * so that another profile could suit it better.
   *
   * @param noiseCounts pixel noise of the sky
   * @param gain the frame's variance per count of starlight
   */
  static boolean isWorthClimbing(ShapeFit fit, double noiseCounts, double gain) {
    ShapeFit.Residual residual = fit.residual();
    double expected =
        residual.pixelCount() * noiseCounts * noiseCounts + gain * Math.max(0, fit.fluxCounts());
    double needed = Math.exp(STAR_EVIDENCE / 2 / residual.pixelCount());
    return residual.squares() > expected * needed;
  }

  static Placed startOf(ShapeFit fit) {
    return new Placed(fit.xPx(), fit.yPx(), fit.fluxCounts(), fit.moments());
  }

  /**
   * What a frame's bright stars have in common.
   *
   * @param profileIndex the profile that suits most of them
   * @param gain median variance per count of starlight about that profile
   */
  record Common(int profileIndex, double gain) {}

  /**
   * The profile that suits most of a frame's bright stars.
   *
   * @param pilots bright stars with a Gaussian fit each
   * @return the Gaussian and no gain when there are no pilots
   */
  static Common forFrame(List<Fitting> pilots, List<ShapeFit> gaussians) {
    int profiles = ShapeFamilies.count();
    double[] sums = new double[profiles];
    double[][] gains = new double[profiles][pilots.size()];
    for (int i = 0; i < pilots.size(); i++) {
      double[] scores = new double[profiles];
      for (int index = 0; index < profiles; index++) {
        ShapeFit fit = pilots.get(i).with(index, startOf(gaussians.get(i)));
        scores[index] = score(fit);
        gains[index][i] = fit.residual().gain();
      }
      // one odd star must not decide for all
      double most = 0.7 * gaussians.get(i).residual().pixelCount();
      double best = Arrays.stream(scores).min().orElse(0);
      for (int index = 0; index < profiles; index++) {
        sums[index] += Math.min(most, scores[index] - best);
      }
    }
    sums[ShapeFamilies.GAUSSIAN] -= FRAME_EVIDENCE;
    sums[ShapeFamilies.TRAIL] -= FRAME_EVIDENCE;
    int chosen = ShapeFamilies.GAUSSIAN;
    for (int index = 0; index < profiles; index++) {
      chosen = sums[index] < sums[chosen] ? index : chosen;
    }
    double gain = pilots.isEmpty() ? 0 : RobustStats.median(gains[chosen]);
    return new Common(chosen, gain);
  }

  /** Climbs from profile to like profile as long as the star's own light asks for it. */
  static Chosen climb(Fitting fitting, Chosen start) {
    Chosen best = start;
    List<Integer> tried = new ArrayList<>(List.of(start.profileIndex()));
    for (int i = 0; i < CLIMBS_MAX; i++) {
      Chosen next = best;
      for (int index : ShapeFamilies.alike(best.profileIndex())) {
        if (!tried.contains(index)) {
          tried.add(index);
          Chosen trial = new Chosen(index, fitting.with(index, startOf(best.fit())));
          next = score(trial.fit()) < score(next.fit()) ? trial : next;
        }
      }
      double needed = i == 0 ? STAR_EVIDENCE : STAR_EVIDENCE / 3;
      if (score(best.fit()) - score(next.fit()) < needed) {
        return best;
      }
      best = next;
    }
    return best;
  }
}
