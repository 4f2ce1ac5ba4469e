package rondure.stars;

import java.util.Arrays;
import rondure.base.PixelPlane;

/**
 * How much of a source's light lies in the photosites next to its highest one.
 *
 * @param neighbourShare sum of the four nearest photosites of the same colour over the highest
 * @param noiseShare noise (1 σ) of that sum over the highest
 * @param sharpestStarShare the neighbourShare of the sharpest star that a lens can make, centred on
 *     its highest photosite: no star has less
 * @param contrastSigmas highest photosite above the median of the four, in σ
 */
record PeakSpread(
    double neighbourShare, double noiseShare, double sharpestStarShare, double contrastSigmas) {

  /**
   * Light one pixel aside over light in the centre, along one side, of a Gaussian of σ = 0.38 px
   * (pixel box not included): ½ (erf(1.5/s) − erf(0.5/s)) / erf(0.5/s), s = √2 · 0.38. Second
   * moments of real stars, pixel box included, are 0.2 px² and more (common practice).
   */
  private static final double ASIDE = 0.1159;

  private static final int REACH_PX = 2;
  private static final int NEIGHBOURS = 4;

  /** Looks at the photosites around (x, y); photosites outside the frame count as empty sky. */
  static PeakSpread of(PixelPlane plane, int x, int y, double level, double noise) {
    double[] values = new double[NEIGHBOURS];
    int[] distances = new int[NEIGHBOURS];
    Arrays.fill(distances, Integer.MAX_VALUE);
    for (int j = -REACH_PX; j <= REACH_PX; j++) {
      for (int i = -REACH_PX; i <= REACH_PX; i++) {
        boolean inside =
            x + i >= 0 && y + j >= 0 && x + i < plane.widthPx() && y + j < plane.heightPx();
        if (inside && (i != 0 || j != 0) && !Float.isNaN(plane.at(x + i, y + j))) {
          insert(plane.at(x + i, y + j) - level, i * i + j * j, values, distances);
        }
      }
    }
    double peak = plane.at(x, y) - level;
    double sum = Arrays.stream(values).sum();
    double sharpest = Arrays.stream(distances).mapToDouble(PeakSpread::lightAt).sum();
    Arrays.sort(values);
    double contrast = (peak - (values[1] + values[2]) / 2) / noise;
    return new PeakSpread(sum / peak, Math.sqrt(NEIGHBOURS) * noise / peak, sharpest, contrast);
  }

  /** Keeps the nearest photosites, nearest first. */
  private static void insert(double value, int distance, double[] values, int[] distances) {
    int i = NEIGHBOURS - 1;
    if (distance >= distances[i]) {
      return;
    }
    for (; i > 0 && distance < distances[i - 1]; i--) {
      values[i] = values[i - 1];
      distances[i] = distances[i - 1];
    }
    values[i] = value;
    distances[i] = distance;
  }

  /** Light of the sharpest star at a squared distance over that in its central photosite. */
  private static double lightAt(int squaredDistance) {
    return squaredDistance == 1 ? ASIDE : squaredDistance == 2 ? ASIDE * ASIDE : 0;
  }
}
