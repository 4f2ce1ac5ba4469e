package rondure.blur;

import java.util.Arrays;
import java.util.List;
import rondure.stars.Star;

/**
 * The wing ratio that a star by itself has, told from that of stars among others.
 *
 * <p>Wings and halos are the star's own light scattered: the same share in every star, and there
 * where it stands alone. Neighbours and faint stars only add, differently from star to star. So the
 * wing ratio of star i less 1 is w + u + noise, w one number and u ≥ 0 drawn from an exponential
 * law of the mean m + k / flux: m for neighbours, which stars are let keep by their share of the
 * star's own light, k for the ground of faint ones. w, m and k are averaged over a grid by their
 * likelihood (exponentially modified normal law: Grushka 1972, Analytical Chemistry 44, 1733; from
 * memory), one star in twenty being anything.
 *
 * @param wings w, over the light in the narrow aperture
 * @param error standard error of that
 * @param neighbours m
 * @param groundCounts k
 */
record OwnWings(double wings, double error, double neighbours, double groundCounts) {
  /** Brightest stars that are asked. */
  private static final int MOST_STARS = 60;

  /** Stars differ in their wing ratio by more than noise: sampling, lens. */
  private static final double LEAST_ERROR = 0.02;

  private static final double STEP = 0.0125;
  private static final int STEPS = 60;
  private static final double[] NEIGHBOURS = {0.003, 0.02, 0.07, 0.15, 0.3, 0.6};

  /** Ground over the sky's noise between the apertures. */
  private static final double[] GROUNDS = {0, 0.1, 0.3, 0.7, 1.5, 3};

  private static final double ASTRAY = 0.05;
  private static final double ASTRAY_DENSITY = ASTRAY / 2;

  /**
   * @param brightest stars, brightest first
   * @param noiseCounts of the sky in the area between the apertures
   */
  static OwnWings of(List<Star> brightest, double noiseCounts) {
    List<Star> stars = brightest.stream().limit(MOST_STARS).toList();
    double[] seen = stars.stream().mapToDouble(s -> s.wingRatio() - 1).toArray();
    double[] noise = stars.stream().mapToDouble(s -> noiseCounts / s.fluxCounts()).toArray();
    double[] logs = new double[NEIGHBOURS.length * GROUNDS.length * STEPS];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = logLikelihood(seen, noise, wings(i), neighbours(i), ground(i));
    }
    double best = Arrays.stream(logs).max().orElse(0);
    double sum = 0;
    double[] means = new double[4];
    for (int i = 0; i < logs.length; i++) {
      double p = Math.exp(logs[i] - best);
      sum += p;
      means[0] += p * wings(i);
      means[1] += p * wings(i) * wings(i);
      means[2] += p * neighbours(i);
      means[3] += p * ground(i);
    }
    double wings = means[0] / sum;
    double variance = means[1] / sum - wings * wings + STEP * STEP / 12;
    return new OwnWings(
        wings, Math.sqrt(Math.max(0, variance)), means[2] / sum, noiseCounts * means[3] / sum);
  }

  private static double wings(int at) {
    return STEP * (at % STEPS);
  }

  private static double neighbours(int at) {
    return NEIGHBOURS[at / STEPS % NEIGHBOURS.length];
  }

  private static double ground(int at) {
    return GROUNDS[at / STEPS / NEIGHBOURS.length];
  }

  private static double logLikelihood(
      double[] seen, double[] noise, double wings, double neighbours, double ground) {
    double sum = 0;
    for (int i = 0; i < seen.length; i++) {
      double sigma = Math.hypot(noise[i], LEAST_ERROR);
      double density = density(seen[i] - wings, sigma, neighbours + ground * noise[i]);
      sum += Math.log((1 - ASTRAY) * density + ASTRAY_DENSITY);
    }
    return sum;
  }

  /** Density of a normal number of this σ and mean 0 plus an exponential one of this mean. */
  static double density(double x, double sigma, double mean) {
    double z = sigma / mean - x / sigma;
    double t = 1 / (1 + P * Math.abs(z) / Math.sqrt(2));
    double scaled = t * (A[0] + t * (A[1] + t * (A[2] + t * (A[3] + t * A[4])))) / 2;
    return z > 0
        ? scaled * Math.exp(-x * x / (2 * sigma * sigma)) / mean
        : (1 - scaled * Math.exp(-z * z / 2))
            * Math.exp(sigma * sigma / (2 * mean * mean) - x / mean)
            / mean;
  }

  /** Of erfc x ≈ (a₁t + … + a₅t⁵) exp(−x²), t = 1/(1 + p x): Abramowitz &amp; Stegun 7.1.26. */
  private static final double P = 0.3275911;

  private static final double[] A = {
    0.254829592, -0.284496736, 1.421413741, -1.453152027, 1.061405429
  };

  /** Light of others between a star's apertures, over its own in the narrow one. */
  double ofOthers(double fluxCounts) {
    return neighbours + groundCounts / fluxCounts;
  }
}
