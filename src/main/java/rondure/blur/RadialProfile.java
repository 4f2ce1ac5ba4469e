package rondure.blur;

import rondure.stars.AverageStar;

/** Mean light of an average star at radii 0, 1, 2 … stamp pixels; the peak of the stamp is 1. */
final class RadialProfile {
  private final double[] means;
  private final int[] counts;
  private final double samplesPerPx;

  RadialProfile(AverageStar average) {
    int middle = average.stamp().sidePx() / 2;
    samplesPerPx = average.samplesPerPx();
    means = new double[middle + 1];
    counts = new int[middle + 1];
    for (int y = -middle; y <= middle; y++) {
      for (int x = -middle; x <= middle; x++) {
        int radius = (int) Math.rint(Math.hypot(x, y));
        float value = average.stamp().at(middle + x, middle + y);
        if (radius <= middle && !Float.isNaN(value)) {
          means[radius] += value;
          counts[radius]++;
        }
      }
    }
    for (int i = 0; i <= middle; i++) {
      means[i] = counts[i] == 0 ? 0 : means[i] / counts[i];
    }
  }

  int size() {
    return means.length;
  }

  /** Mean at a whole radius. */
  double at(int radius) {
    return means[radius];
  }

  /** Values averaged at a whole radius. */
  int count(int radius) {
    return counts[radius];
  }

  /** Linear between whole radii, the last one beyond. */
  double at(double radius) {
    int below = (int) Math.min(radius, means.length - 1.0);
    int above = Math.min(below + 1, means.length - 1);
    return means[below] + Math.min(1, radius - below) * (means[above] - means[below]);
  }

  /** The radius of the most light, whole stamp pixels. */
  int peak() {
    int peak = 0;
    for (int i = 1; i < means.length; i++) {
      peak = means[i] > means[peak] ? i : peak;
    }
    return peak;
  }

  /** Where light first falls below half the most, stamp pixels; NaN when it never does. */
  double halfRadius() {
    int peak = peak();
    double half = means[peak] / 2;
    for (int i = peak; i + 1 < means.length; i++) {
      if (means[i + 1] < half) {
        return i + (means[i] - half) / (means[i] - means[i + 1]);
      }
    }
    return Double.NaN;
  }

  double samplesPerPx() {
    return samplesPerPx;
  }
}
