package rondure.stars;

import java.util.ArrayList;
import java.util.List;

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

  static double score(ShapeFit fit) {
    ShapeFit.Residual residual = fit.residual();
    double worst = 2 * residual.pixelCount() * Math.log(1e300);
    boolean usable = fit.settled() && residual.squares() > 0;
    return usable ? residual.pixelCount() * Math.log(residual.squares()) : worst;
  }

  static Placed startOf(ShapeFit fit) {
    return new Placed(fit.xPx(), fit.yPx(), fit.fluxCounts(), fit.moments());
  }

  /**
   * The profile that suits most of a frame's bright stars.
   *
   * @param pilots bright stars with a settled Gaussian fit each
   * @return index into {@link ShapeFamilies}; the Gaussian for no pilots
   */
  static int forFrame(List<Fitting> pilots, List<ShapeFit> gaussians) {
    int best = ShapeFamilies.GAUSSIAN;
    double bestScore = Double.POSITIVE_INFINITY;
    for (int index = 0; index < ShapeFamilies.count(); index++) {
      double sum =
          index == ShapeFamilies.GAUSSIAN || index == ShapeFamilies.TRAIL ? -FRAME_EVIDENCE : 0;
      for (int i = 0; i < pilots.size(); i++) {
        ShapeFit gaussian = gaussians.get(i);
        double own =
            index == ShapeFamilies.GAUSSIAN
                ? score(gaussian)
                : score(pilots.get(i).with(index, startOf(gaussian)));
        // one odd star must not decide for all
        double spread = 0.7 * gaussian.residual().pixelCount();
        sum += Math.max(-spread, Math.min(spread, own - score(gaussian)));
      }
      if (sum < bestScore) {
        bestScore = sum;
        best = index;
      }
    }
    return best;
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
