package rondure.blur;

import java.util.Optional;
import rondure.stars.AverageStar;
import rondure.stars.StarField;

/**
 * How flat the top of the average star is: out of focus, a star is a disc or a ring.
 *
 * <p>Flatness = light at 0.7 of the half-maximum radius over the most light at any radius, averaged
 * around the star: a Gaussian gives 2^-0.49 = 0.712, a Moffat star 0.70, a disc or ring nearly 1.
 */
final class FlatTop {
  /** Between a core ⊗ disc of twice its width (0.80) and a Gaussian. */
  static final double FLAT_FROM = 0.8;

  private static final double LEAST_FWHM_PX = 4;
  private static final double PROBE = 0.7;

  private FlatTop() {}

  /** The flatness of the frame's average star, when it is wide enough to have a shape. */
  static Optional<Double> of(StarField field) {
    return field.averageStars().stream()
        .filter(average -> average.zone() == AverageStar.Zone.WHOLE)
        .findFirst()
        .flatMap(FlatTop::of);
  }

  static Optional<Double> of(AverageStar average) {
    double[] profile = profile(average);
    double most = 0;
    int peak = 0;
    for (int i = 0; i < profile.length; i++) {
      if (profile[i] > most) {
        most = profile[i];
        peak = i;
      }
    }
    for (int i = peak; i + 1 < profile.length; i++) {
      if (profile[i + 1] < most / 2) {
        double half = i + (profile[i] - most / 2) / (profile[i] - profile[i + 1]);
        boolean wide = 2 * half / average.samplesPerPx() >= LEAST_FWHM_PX;
        return wide ? Optional.of(at(profile, PROBE * half) / most) : Optional.empty();
      }
    }
    return Optional.empty();
  }

  /** Mean light at radii 0, 1, 2 … stamp pixels. */
  private static double[] profile(AverageStar average) {
    int middle = average.stamp().sidePx() / 2;
    double[] sums = new double[middle + 1];
    int[] counts = new int[middle + 1];
    for (int y = -middle; y <= middle; y++) {
      for (int x = -middle; x <= middle; x++) {
        int radius = (int) Math.rint(Math.hypot(x, y));
        float value = average.stamp().at(middle + x, middle + y);
        if (radius <= middle && !Float.isNaN(value)) {
          sums[radius] += value;
          counts[radius]++;
        }
      }
    }
    for (int i = 0; i <= middle; i++) {
      sums[i] = counts[i] == 0 ? 0 : sums[i] / counts[i];
    }
    return sums;
  }

  private static double at(double[] profile, double radius) {
    int below = (int) radius;
    int above = Math.min(below + 1, profile.length - 1);
    return profile[below] + (radius - below) * (profile[above] - profile[below]);
  }
}
