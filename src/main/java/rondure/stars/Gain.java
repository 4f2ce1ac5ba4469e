package rondure.stars;

import java.util.ArrayList;
import java.util.List;
import rondure.base.RobustStats;

/**
 * Photon noise of a frame, from how its stars scatter about their models.
 *
 * <p>Photon noise adds a variance in proportion to the light, misfit one in proportion to its
 * square. So a star's variance per count is g + s · light; g is found by a straight line through
 * all stars (Theil 1950, Sen 1968: the median of the slopes of all pairs).
 */
final class Gain {
  private static final int STARS_MAX = 60;
  private static final double SKY_MARGIN = 1.3;

  private Gain() {}

  /**
   * Variance per count of starlight, at least 0; 0 for no stars.
   *
   * @param sky its noise bounds the gain: the sky's own photons make at most all of it
   */
  static double of(List<ShapeFit> fits, SkyState sky) {
    List<ShapeFit> some = fits.subList(0, Math.min(STARS_MAX, fits.size()));
    if (some.isEmpty()) {
      return 0;
    }
    double slope = some.size() > 2 ? Math.max(0, medianSlope(some)) : 0;
    double[] rest = some.stream().mapToDouble(fit -> gain(fit) - slope * light(fit)).toArray();
    return Math.max(0, Math.min(largest(sky), RobustStats.median(rest)));
  }

  /** Noise² over level, with a margin of 1.3; no bound for a sky at black. */
  private static double largest(SkyState sky) {
    double variance = sky.noiseCounts() * sky.noiseCounts();
    return sky.levelCounts() > 0 && variance > 0
        ? SKY_MARGIN * variance / sky.levelCounts()
        : Double.POSITIVE_INFINITY;
  }

  private static double medianSlope(List<ShapeFit> fits) {
    List<Double> slopes = new ArrayList<>();
    for (int i = 0; i < fits.size(); i++) {
      for (int j = 0; j < i; j++) {
        double apart = light(fits.get(i)) - light(fits.get(j));
        // stars of like brightness say nothing about the slope
        if (Math.abs(apart) > 0.2 * light(fits.get(i))) {
          slopes.add((gain(fits.get(i)) - gain(fits.get(j))) / apart);
        }
      }
    }
    return slopes.isEmpty()
        ? 0
        : RobustStats.median(slopes.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private static double gain(ShapeFit fit) {
    return fit.residual().gain();
  }

  /** Light of the bright pixels: mean of the model weighted by itself. */
  private static double light(ShapeFit fit) {
    return fit.fluxCounts() > 0 ? fit.residual().signalSquares() / fit.fluxCounts() : 0;
  }
}
