package rondure.stars;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import rondure.base.Moments;

/**
 * Which profile suits a star. Models are compared by ν ln(Σ residual²), ν the degrees of freedom:
 * the likelihood with the noise left free (integrated over 1/σ and the linear parameters), so that
 * very bright stars, which no model fits to the last photon, do not shout the others down. Pixels
 * in place of degrees of freedom would overstate the evidence of sharp stars by a third.
 */
final class ProfileChoice {
  /** A gain in ν ln(Σ residual²) that one star must show to leave the profile of its neighbours. */
  static final double STAR_EVIDENCE = 14;

  /**
   * Frames choose the Gaussian or the trail unless others are better by this in sum: 3.2 σ, since
   * noise has some twenty other profiles to pick from.
   */
  private static final double FRAME_EVIDENCE = 10;

  /**
   * Frames of stars drawn out in one direction choose the trail unless the Gaussian ellipse is
   * better by this: faint stars cannot tell them apart, an ellipse takes a short trail for up to 7
   * % longer than it is, and a sky that turns is the first reason for one common direction.
   */
  private static final double ELLIPSE_EVIDENCE = 6;

  /** Pilots that see all profiles; the others see only the best few. */
  private static final int FIRST_LOOK = 8;

  private static final int SHORTLIST = 5;
  private static final int CLIMBS_MAX = 8;

  private ProfileChoice() {}

  /** One star, ready to be fitted with any profile. */
  interface Fitting {
    ShapeFit with(int profileIndex, Placed start);
  }

  /** A fit and the index of its profile. */
  record Chosen(int profileIndex, ShapeFit fit) {}

  /** ν ln(χ²/ν), carried on as a straight line below 0: the lower, the better the model. */
  static double score(ShapeFit fit) {
    int freedom = freedom(fit);
    double share = fit.residual().chiSquare() / freedom;
    return freedom * (share > 1 ? Math.log(share) : share - 1);
  }

  private static int freedom(ShapeFit fit) {
    return Math.max(1, fit.residual().pixelCount() - ShapeFitter.SIZE);
  }

  /**
   * Whether a star is further from its model than the noise explains, so that another profile could
   * suit it better.
   */
  static boolean isWorthClimbing(ShapeFit fit) {
    return score(fit) > STAR_EVIDENCE / 2;
  }

  static Placed startOf(ShapeFit fit) {
    return new Placed(fit.xPx(), fit.yPx(), fit.fluxCounts(), fit.moments());
  }

  /**
   * What a frame's bright stars have in common.
   *
   * @param profileIndex the profile that suits most of them
   * @param fits the bright stars fitted with it
   */
  record Common(int profileIndex, List<ShapeFit> fits) {}

  /**
   * The profile that suits most of a frame's bright stars.
   *
   * @param pilots bright stars with a Gaussian fit each
   * @return the Gaussian when there are no pilots
   */
  static Common forFrame(List<Fitting> pilots, List<ShapeFit> gaussians) {
    List<Integer> all = IntStream.range(0, ShapeFamilies.count()).boxed().toList();
    int first = Math.min(FIRST_LOOK, pilots.size());
    List<Common> ranked = ranked(all, pilots.subList(0, first), gaussians.subList(0, first));
    if (pilots.size() > first) {
      List<Integer> shortlist = ranked.stream().limit(SHORTLIST).map(Common::profileIndex).toList();
      ranked = ranked(shortlist, pilots, gaussians);
    }
    return ranked.get(0);
  }

  /** Profiles, best first. */
  private static List<Common> ranked(
      List<Integer> profiles, List<Fitting> pilots, List<ShapeFit> gaussians) {
    double[] sums = new double[ShapeFamilies.count()];
    ShapeFit[][] fits = new ShapeFit[ShapeFamilies.count()][pilots.size()];
    for (int i = 0; i < pilots.size(); i++) {
      double[] scores = new double[ShapeFamilies.count()];
      double best = Double.POSITIVE_INFINITY;
      for (int index : profiles) {
        ShapeFit fit = pilots.get(i).with(index, startOf(gaussians.get(i)));
        scores[index] = score(fit);
        best = Math.min(best, scores[index]);
        fits[index][i] = fit;
      }
      // one odd star must not decide for all
      double most = 0.7 * gaussians.get(i).residual().pixelCount();
      for (int index : profiles) {
        sums[index] += Math.min(most, scores[index] - best);
      }
    }
    favour(profiles, gaussians, sums);
    return profiles.stream()
        .sorted(Comparator.comparingDouble(index -> sums[index]))
        .map(index -> new Common(index, List.of(fits[index])))
        .toList();
  }

  /** Puts what is known beforehand into the sums. */
  private static void favour(List<Integer> profiles, List<ShapeFit> gaussians, double[] sums) {
    sums[ShapeFamilies.GAUSSIAN] -= FRAME_EVIDENCE;
    sums[ShapeFamilies.TRAIL] -= FRAME_EVIDENCE;
    double ellipse = sums[ShapeFamilies.GAUSSIAN];
    boolean close = sums[ShapeFamilies.TRAIL] < ellipse + ELLIPSE_EVIDENCE;
    if (close && profiles.contains(ShapeFamilies.GAUSSIAN) && areDrawnOut(gaussians)) {
      sums[ShapeFamilies.TRAIL] = Math.min(sums[ShapeFamilies.TRAIL], Math.nextDown(ellipse));
    }
  }

  /** Whether the mean tensor is that of a line which can be told from a point. */
  private static boolean areDrawnOut(List<ShapeFit> gaussians) {
    Moments sum = Moments.round(0);
    for (ShapeFit fit : gaussians) {
      sum = sum.plus(fit.moments());
    }
    return !TrailProfile.isShort(sum);
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
