package rondure.blur;

import java.util.Arrays;
import rondure.base.RobustStats;

/**
 * Medians of a quantity over the cells of a frame: what a smooth model should follow, single stars
 * left aside.
 */
final class ZoneMedians {
  private static final int STARS_PER_ZONE = 6;
  private static final int MOST_ALONG = 8;

  /** √(π/2): error of a median over that of a mean, for Gaussian scatter. */
  private static final double MEDIAN_ERROR = Math.sqrt(Math.PI / 2);

  private ZoneMedians() {}

  /** Cells along the long side, 3/4 of them across: 6 stars a cell, at most 8 cells. */
  private static int along(int stars) {
    int along = (int) Math.floor(Math.sqrt(stars / (0.75 * STARS_PER_ZONE)));
    return Math.max(1, Math.min(MOST_ALONG, along));
  }

  private static int across(int along) {
    return Math.max(1, (int) Math.rint(0.75 * along));
  }

  /** Stars of each cell, cells with fewer than 3 stars left out. */
  static int[][] zones(FrameStars stars) {
    int along = along(stars.count);
    int cells = along * across(along);
    int[] cellOf = stars.cells(along, across(along));
    int[] sizes = new int[cells];
    for (int cell : cellOf) {
      sizes[cell]++;
    }
    int[][] zones = new int[cells][];
    for (int cell = 0; cell < cells; cell++) {
      zones[cell] = new int[sizes[cell]];
    }
    int[] next = new int[cells];
    for (int i = 0; i < cellOf.length; i++) {
      zones[cellOf[i]][next[cellOf[i]]++] = i;
    }
    return Arrays.stream(zones).filter(zone -> zone.length >= 3).toArray(int[][]::new);
  }

  /** Median of one component of a tensor list over a zone. */
  static double median(double[] tensors, int[] zone, int part) {
    double[] values = new double[zone.length];
    for (int k = 0; k < zone.length; k++) {
      values[k] = tensors[3 * zone[k] + part];
    }
    return RobustStats.median(values);
  }

  /** Standard error of that median from errors of the stars. */
  static double medianError(double[] errors, int[] zone, int part) {
    double inverse = 0;
    for (int i : zone) {
      inverse += 1 / Math.max(1e-6, errors[3 * i + part]);
    }
    // The median of unequal errors: √(π/2) √n over the sum of 1/σ.
    return MEDIAN_ERROR * Math.sqrt(zone.length) / inverse;
  }
}
