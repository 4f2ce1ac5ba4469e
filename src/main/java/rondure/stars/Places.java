package rondure.stars;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/** Places of the finest grid that belong together, with the finest scale's significance. */
final class Places {
  private final int[] x;
  private final int[] y;
  private final float[] finest;
  private final PlaceMap map;

  /** Significances scale by scale, as far as they were asked for. */
  private final Map<Integer, float[]> known = new HashMap<>();

  private Places(int[] x, int[] y, float[] finest) {
    this.x = x;
    this.y = y;
    this.finest = finest;
    this.map = new PlaceMap(x, y);
  }

  /** All places of a footprint, raster order. */
  static Places of(FootprintRuns footprints, int index) {
    int count = 0;
    for (int run = 0; run < footprints.runsOf(index); run++) {
      count += footprints.endX(index, run) - footprints.firstX(index, run);
    }
    int[] x = new int[count];
    int[] y = new int[count];
    float[] finest = new float[count];
    int next = 0;
    for (int run = 0; run < footprints.runsOf(index); run++) {
      int first = footprints.firstX(index, run);
      int length = footprints.endX(index, run) - first;
      footprints.copyFinest(index, run, finest, next);
      Arrays.fill(y, next, next + length, footprints.y(index, run));
      for (int i = 0; i < length; i++) {
        x[next++] = first + i;
      }
    }
    return new Places(x, y, finest);
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

  /** The significance of every place at a scale. */
  float[] significances(ScaleSpace space, int scale) {
    return scale == 0 ? finest : known.computeIfAbsent(scale, k -> read(space, k));
  }

  private float[] read(ScaleSpace space, int scale) {
    float[] all = new float[x.length];
    for (int i = 0; i < all.length; i++) {
      boolean sameBin = i > 0 && x[i] == x[i - 1] + 1 && x[i] >> scale == x[i - 1] >> scale;
      all[i] = sameBin ? all[i - 1] : space.at(scale, x[i], y[i]);
    }
    return all;
  }

  /**
   * Which places make up the source at a scale: those above the low level there, as far as they
   * hang together with the highest one.
   */
  boolean[] isophote(ScaleSpace space, int scale) {
    float[] here = significances(space, scale);
    boolean[] above = new boolean[x.length];
    int highest = 0;
    for (int i = 0; i < x.length; i++) {
      above[i] = here[i] > FootprintRuns.LOW;
      highest = here[i] > here[highest] ? i : highest;
    }
    return map.connected(above, highest);
  }

  /** Highest significance over the places, for each scale up to the widest asked for. */
  double[] highest(ScaleSpace space, int widestScale) {
    double[] highest = new double[widestScale + 1];
    for (int scale = 0; scale < highest.length; scale++) {
      float best = Float.NEGATIVE_INFINITY;
      for (float value : significances(space, scale)) {
        best = value > best ? value : best;
      }
      highest[scale] = best;
    }
    return highest;
  }

  /** The basins of the distinct peaks at one scale. */
  Places[] basins(ScaleSpace space, int scale) {
    int[] peaks = PeakBasins.split(map, significances(space, scale));
    int[][] groups = PlaceMap.grouped(peaks);
    if (groups.length <= 1) {
      return new Places[] {this};
    }
    return Arrays.stream(groups).map(this::subset).toArray(Places[]::new);
  }

  private Places subset(int[] places) {
    int[] partX = new int[places.length];
    int[] partY = new int[places.length];
    float[] part = new float[places.length];
    for (int i = 0; i < places.length; i++) {
      partX[i] = x[places[i]];
      partY[i] = y[places[i]];
      part[i] = finest[places[i]];
    }
    return new Places(partX, partY, part);
  }
}
