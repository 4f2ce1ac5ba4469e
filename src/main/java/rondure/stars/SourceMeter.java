package rondure.stars;

import java.util.Optional;
import rondure.base.Moments;
import rondure.base.PixelPlane;

/** Measures one basin of light on the plane's own pixels. */
final class SourceMeter {
  /** A scale is good enough for a source when it gives this share of its best significance. */
  static final double SCALE_SHARE = 0.85;

  private static final double PLATEAU_SHARE = 0.995;

  /** Over so many σ above the low level the isophote's edge fades in. */
  private static final double SOFT_EDGE = 1;

  private final PixelPlane plane;
  private final BackgroundMesh background;
  private final ScaleSpace space;

  SourceMeter(PixelPlane plane, BackgroundMesh background, ScaleSpace space) {
    this.plane = plane;
    this.background = background;
    this.space = space;
  }

  /**
   * Measures the places of one basin.
   *
   * @param basin places on the finest grid
   * @param widestScale the widest scale to look at: a basin beside a brighter one must not take its
   *     neighbour's light at wide scales for its own
   * @param detectionSnr least significance; below it the basin is no source
   */
  Optional<Source> measure(Places basin, int widestScale, double detectionSnr) {
    double[] best = basin.highest(space, widestScale);
    int scale = characteristicScale(best);
    double snr = java.util.Arrays.stream(best).max().orElse(0);
    if (!(snr >= detectionSnr)) {
      return Optional.empty();
    }
    Sums sums = new Sums();
    boolean[] inside = basin.isophote(space, scale);
    float[] weights = basin.significances(space, scale);
    for (int i = 0; i < basin.size(); i++) {
      if (inside[i]) {
        sums.addBin(basin.x(i), basin.y(i), weights[i]);
      }
    }
    return sums.samples > 0 && sums.flux > 0 && sums.weighted > 0 && sums.peak > 0
        ? Optional.of(sums.source(snr, scale))
        : Optional.empty();
  }

  /** The finest scale with at least {@link #SCALE_SHARE} of the best significance. */
  static int characteristicScale(double[] significances) {
    double best = java.util.Arrays.stream(significances).max().orElse(0);
    int scale = 0;
    while (significances[scale] < SCALE_SHARE * best) {
      scale++;
    }
    return scale;
  }

  /**
   * Sums over the pixels of one source, about the first pixel met. The centroid weighs light with
   * the filtered significance, which calms the noise of faint sources and moves no symmetric one.
   */
  private final class Sums {
    private int originX;
    private int originY;
    private int samples;
    private double inside;
    private double insideWithValue;
    private double flux;
    private double weighted;
    private double weightedX;
    private double weightedY;
    private double sumX;
    private double sumY;
    private double sumXX;
    private double sumXY;
    private double sumYY;
    private double peak = Double.NEGATIVE_INFINITY;
    private int peakX;
    private int peakY;
    private boolean edge;
    private final float[] highest = new float[16];
    private int plateau;

    void addBin(int binX, int binY, double weight) {
      int bin = space.binPx();
      if (samples == 0) {
        originX = binX * bin;
        originY = binY * bin;
      }
      double share = Math.min(1, (weight - FootprintRuns.LOW) / SOFT_EDGE);
      inside += share * bin * bin;
      edge |= binX == 0 || binY == 0 || binX == space.width() - 1 || binY == space.height() - 1;
      for (int y = binY * bin; y < Math.min(plane.heightPx(), (binY + 1) * bin); y++) {
        for (int x = binX * bin; x < Math.min(plane.widthPx(), (binX + 1) * bin); x++) {
          float value = plane.at(x, y);
          if (value == value) {
            addPixel(x, y, value, share, weight);
          }
        }
      }
    }

    private void addPixel(int x, int y, float value, double share, double weight) {
      double above = value - background.levelAt(x, y);
      double light = share * above;
      int dx = x - originX;
      int dy = y - originY;
      samples++;
      insideWithValue += share;
      flux += light;
      weighted += weight * light;
      weightedX += weight * light * dx;
      weightedY += weight * light * dy;
      sumX += light * dx;
      sumY += light * dy;
      sumXX += light * dx * dx;
      sumXY += light * dx * dy;
      sumYY += light * dy * dy;
      countPlateau(value);
      if (above > peak) {
        peak = above;
        peakX = x;
        peakY = y;
      }
    }

    /** Keeps the highest values to see how many are nearly the same. */
    private void countPlateau(float value) {
      int i = highest.length - 1;
      if (plateau == highest.length && value <= highest[i]) {
        return;
      }
      plateau = Math.min(plateau + 1, highest.length);
      i = plateau - 1;
      for (; i > 0 && highest[i - 1] < value; i--) {
        highest[i] = highest[i - 1];
      }
      highest[i] = value;
    }

    private int plateauPixels() {
      int count = 0;
      while (count < plateau && highest[count] >= PLATEAU_SHARE * highest[0]) {
        count++;
      }
      return count;
    }

    Source source(double snr, int scale) {
      double meanX = weightedX / weighted;
      double meanY = weightedY / weighted;
      Moments moments =
          new Moments(
              sumXX / flux - 2 * meanX * sumX / flux + meanX * meanX,
              (sumXY - meanX * sumY - meanY * sumX) / flux + meanX * meanY,
              sumYY / flux - 2 * meanY * sumY / flux + meanY * meanY);
      double level = background.levelAt(peakX, peakY);
      PeakSpread spread =
          PeakSpread.of(plane, peakX, peakY, level, background.noiseAt(peakX, peakY));
      return new Source(
          originX + meanX,
          originY + meanY,
          peakX,
          peakY,
          peak,
          peak + level,
          plateauPixels(),
          flux * inside / insideWithValue,
          snr,
          scale,
          moments.isPositive() ? moments : Moments.round(1.0 / 12),
          edge,
          spread);
    }
  }
}
