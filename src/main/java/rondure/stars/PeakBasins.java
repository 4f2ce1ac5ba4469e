package rondure.stars;

import java.util.Arrays;

/**
 * Splits one footprint into the basins of its distinct peaks.
 *
 * <p>Places are taken from the highest down and joined to their neighbours. Where two basins meet,
 * the lower peak stays a source of its own only if it stands clear of the saddle, or of the sky
 * where that is higher: by more than {@link #CLEAR_SIGMAS} (noise along a long faint trail or on a
 * wide disc makes bumps too), by more than {@link #CLEAR_SHARE} of its height (the bright rim of a
 * defocused star) and by {@link #CLEAR_CONTRAST} of the higher peak. Otherwise it belongs to its
 * neighbour: one star.
 */
final class PeakBasins {
  static final float CLEAR_SIGMAS = 4.5f;
  static final float CLEAR_SHARE = 0.3f;
  static final float CLEAR_CONTRAST = 0.005f;

  private final PlaceMap map;
  private final float[] height;
  private final int[] parent;

  private PeakBasins(PlaceMap map, float[] height) {
    this.map = map;
    this.height = height;
    this.parent = new int[height.length];
  }

  /**
   * Finds the basins.
   *
   * @param map the places, which hang together
   * @param height what to climb, in units of its noise
   * @return for each place the index of the place at its basin's peak; empty for a single basin
   */
  static int[] split(PlaceMap map, float[] height) {
    PeakBasins basins = new PeakBasins(map, height);
    return basins.peaksHighEnough() <= 1 ? new int[0] : basins.split();
  }

  /** Peaks that might stand clear; of places of equal height side by side the first is the peak. */
  private int peaksHighEnough() {
    int count = 0;
    for (int place = 0; place < height.length; place++) {
      count += height[place] >= CLEAR_SIGMAS && isPeak(place) ? 1 : 0;
    }
    return count;
  }

  private boolean isPeak(int place) {
    for (int side = 0; side < PlaceMap.SIDES; side++) {
      int other = map.beside(place, side);
      boolean higher =
          other >= 0
              && (height[other] > height[place] || height[other] == height[place] && other < place);
      if (higher) {
        return false;
      }
    }
    return true;
  }

  private int[] split() {
    int[] order = highestFirst();
    Arrays.fill(parent, -1);
    int[] touching = new int[PlaceMap.SIDES];
    for (int place : order) {
      int touched = roots(place, touching);
      parent[place] = touched == 0 ? place : touching[highest(touching, touched)];
      for (int i = 0; i < touched; i++) {
        int other = touching[i];
        int winner = parent[place];
        if (other != winner && !clear(height[other], height[place], height[winner])) {
          parent[other] = winner;
        }
      }
    }
    for (int place : order) {
      parent[place] = root(place);
    }
    return parent;
  }

  private static boolean clear(float peak, float saddle, float higherPeak) {
    float needed = Math.max(CLEAR_SIGMAS, CLEAR_SHARE * peak);
    return peak - Math.max(0, saddle) >= needed && peak >= CLEAR_CONTRAST * higherPeak;
  }

  private int highest(int[] roots, int count) {
    int best = 0;
    for (int i = 1; i < count; i++) {
      if (height[roots[i]] > height[roots[best]]) {
        best = i;
      }
    }
    return best;
  }

  /** The places from the highest down; all below the sky count as equal. */
  private int[] highestFirst() {
    long[] keys = new long[height.length];
    for (int i = 0; i < keys.length; i++) {
      // bits of floats that are not negative rise with them
      long depth = Integer.MAX_VALUE - Float.floatToIntBits(Math.max(height[i], 0f));
      keys[i] = depth << 32 | i;
    }
    Arrays.sort(keys);
    int[] order = new int[keys.length];
    for (int i = 0; i < order.length; i++) {
      order[i] = (int) keys[i];
    }
    return order;
  }

  /** Distinct roots of the already joined neighbours of a place; how many there are. */
  private int roots(int place, int[] out) {
    int count = 0;
    for (int side = 0; side < PlaceMap.SIDES; side++) {
      int neighbour = map.beside(place, side);
      if (neighbour >= 0 && parent[neighbour] >= 0) {
        count = addDistinct(root(neighbour), out, count);
      }
    }
    return count;
  }

  private static int addDistinct(int root, int[] out, int count) {
    for (int i = 0; i < count; i++) {
      if (out[i] == root) {
        return count;
      }
    }
    out[count] = root;
    return count + 1;
  }

  private int root(int place) {
    int at = place;
    while (parent[at] != at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }
}
