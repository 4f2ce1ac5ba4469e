package rondure.stars;

import java.util.Arrays;

/** Places of the finest grid that belong together, with the finest scale's significance. */
final class Places {
  private final int[] x;
  private final int[] y;
  private final float[] finest;

  private Places(int[] x, int[] y, float[] finest) {
    this.x = x;
    this.y = y;
    this.finest = finest;
  }

  /** All places of a footprint, raster order. */
  static Places of(FootprintRuns footprints, int index) {
    int count = 0;
    for (int run = 0; run < footprints.runsOf(index); run++) {
      count += footprints.endX(index, run) - footprints.firstX(index, run);
    }
    Places places = new Places(new int[count], new int[count], new float[count]);
    int next = 0;
    for (int run = 0; run < footprints.runsOf(index); run++) {
      for (int x = footprints.firstX(index, run); x < footprints.endX(index, run); x++) {
        places.x[next] = x;
        places.y[next] = footprints.y(index, run);
        places.finest[next++] = footprints.finest(index, run, x);
      }
    }
    return places;
  }

  int size() {
    return x.length;
  }

  int x(int i) {
    return x[i];
  }

  int y(int i) {
    return y[i];
  }

  float significance(ScaleSpace space, int scale, int i) {
    return scale == 0 ? finest[i] : space.at(scale, x[i], y[i]);
  }

  /**
   * Which places make up the source at a scale: those above the low level there, as far as they
   * hang together with the highest one.
   */
  boolean[] isophote(ScaleSpace space, int scale) {
    boolean[] above = new boolean[x.length];
    int highest = 0;
    for (int i = 0; i < x.length; i++) {
      float here = significance(space, scale, i);
      above[i] = here > FootprintRuns.LOW;
      highest = here > significance(space, scale, highest) ? i : highest;
    }
    return PeakBasins.connected(x, y, above, highest);
  }

  /** Highest significance over the places, for each scale up to the widest asked for. */
  double[] highest(ScaleSpace space, int widestScale) {
    double[] highest = new double[widestScale + 1];
    Arrays.fill(highest, Double.NEGATIVE_INFINITY);
    for (int scale = 0; scale < highest.length; scale++) {
      for (int i = 0; i < x.length; i++) {
        highest[scale] = Math.max(highest[scale], significance(space, scale, i));
      }
    }
    return highest;
  }

  /** The basins of the distinct peaks at one scale. */
  Places[] basins(ScaleSpace space, int scale) {
    float[] height = new float[x.length];
    for (int i = 0; i < height.length; i++) {
      height[i] = significance(space, scale, i);
    }
    int[] peaks = PeakBasins.split(x, y, height);
    if (Arrays.stream(peaks).allMatch(peak -> peak == peaks[0])) {
      return new Places[] {this};
    }
    long[] keys = new long[peaks.length];
    for (int i = 0; i < keys.length; i++) {
      keys[i] = (long) peaks[i] << 32 | i;
    }
    Arrays.sort(keys);
    int basins = 0;
    for (int i = 0; i < keys.length; i++) {
      basins += i == 0 || keys[i] >> 32 != keys[i - 1] >> 32 ? 1 : 0;
    }
    Places[] split = new Places[basins];
    int start = 0;
    for (int basin = 0; basin < basins; basin++) {
      int end = start;
      while (end < keys.length && keys[end] >> 32 == keys[start] >> 32) {
        end++;
      }
      split[basin] = subset(keys, start, end);
      start = end;
    }
    return split;
  }

  private Places subset(long[] keys, int start, int end) {
    Places part = new Places(new int[end - start], new int[end - start], new float[end - start]);
    for (int i = start; i < end; i++) {
      int place = (int) keys[i];
      part.x[i - start] = x[place];
      part.y[i - start] = y[place];
      part.finest[i - start] = finest[place];
    }
    return part;
  }
}
