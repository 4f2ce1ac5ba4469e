package rondure.stars;

import java.util.Arrays;

/**
 * Splits one footprint into the basins of its distinct peaks.
 *
 * <p>Places are taken from the highest down and joined to their neighbours. Where two basins meet,
 * the lower peak stays a source of its own only if it stands clear of the saddle: by more than
 * {@link #CLEAR_SIGMAS} (noise along a long faint trail or on a wide disc makes bumps too), by more
 * than {@link #CLEAR_SHARE} of its height (the bright rim of a defocused star) and by {@link
 * #CLEAR_CONTRAST} of the higher peak. Otherwise it belongs to its neighbour: one star.
 */
final class PeakBasins {
  static final float CLEAR_SIGMAS = 4.5f;
  static final float CLEAR_SHARE = 0.3f;
  static final float CLEAR_CONTRAST = 0.005f;

  private static final float LOWEST_HEIGHT = 0.125f;

  /** Bits of a float below its sign, exponent and six bits of mantissa. */
  private static final int SORTED_BITS = 17;

  private PeakBasins() {}

  /**
   * Finds the basins.
   *
   * @param x columns of the places
   * @param y rows of the places
   * @param height what to climb, in units of its noise
   * @return for each place the index of the place at its basin's peak
   */
  static int[] split(int[] x, int[] y, float[] height) {
    int count = x.length;
    int[] order = highestFirst(height);
    Neighbourhood near = new Neighbourhood(x, y);
    int[] parent = new int[count];
    Arrays.fill(parent, -1);
    int[] touching = new int[8];
    for (int place : order) {
      int touched = near.roots(place, parent, touching);
      parent[place] = touched == 0 ? place : touching[highest(touching, touched, height)];
      for (int i = 0; i < touched; i++) {
        int other = touching[i];
        int winner = parent[place];
        if (other != winner && !clear(height[other], height[place], height[winner])) {
          parent[other] = winner;
        }
      }
    }
    for (int place : order) {
      parent[place] = root(place, parent);
    }
    return parent;
  }

  /** Marks the places that hang together with {@code start} over marked ones, corners too. */
  static boolean[] connected(int[] x, int[] y, boolean[] marked, int start) {
    Neighbourhood near = new Neighbourhood(x, y);
    boolean[] reached = new boolean[x.length];
    int[] stack = new int[x.length];
    int depth = 0;
    stack[depth++] = start;
    reached[start] = true;
    while (depth > 0) {
      int place = stack[--depth];
      for (int side = 0; side < 9; side++) {
        int other = near.at(place, side % 3 - 1, side / 3 - 1);
        if (other >= 0 && marked[other] && !reached[other]) {
          reached[other] = true;
          stack[depth++] = other;
        }
      }
    }
    return reached;
  }

  private static boolean clear(float peak, float saddle, float higherPeak) {
    float needed = Math.max(CLEAR_SIGMAS, CLEAR_SHARE * peak);
    return peak - saddle >= needed && peak >= CLEAR_CONTRAST * higherPeak;
  }

  private static int highest(int[] roots, int count, float[] height) {
    int best = 0;
    for (int i = 1; i < count; i++) {
      if (height[roots[i]] > height[roots[best]]) {
        best = i;
      }
    }
    return best;
  }

  /**
   * The places from the highest down, exact to 1.6 % of their height (all below {@link
   * #LOWEST_HEIGHT} count as equal), by counting.
   */
  private static int[] highestFirst(float[] height) {
    int lowest = Float.floatToIntBits(LOWEST_HEIGHT) >>> SORTED_BITS;
    int highest = lowest;
    int[] level = new int[height.length];
    for (int i = 0; i < level.length; i++) {
      level[i] = Float.floatToIntBits(Math.max(height[i], LOWEST_HEIGHT)) >>> SORTED_BITS;
      highest = Math.max(highest, level[i]);
    }
    int[] next = new int[highest - lowest + 2];
    for (int value : level) {
      next[highest - value + 1]++;
    }
    for (int i = 1; i < next.length; i++) {
      next[i] += next[i - 1];
    }
    int[] order = new int[level.length];
    for (int i = 0; i < order.length; i++) {
      order[next[highest - level[i]]++] = i;
    }
    return order;
  }

  private static int root(int place, int[] parent) {
    int at = place;
    while (parent[at] != at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }

  /** Looks up which places are neighbours, on a raster just large enough. */
  private static final class Neighbourhood {
    private final int[] x;
    private final int[] y;
    private final int left;
    private final int top;
    private final int width;
    private final int[] placeAt;

    Neighbourhood(int[] x, int[] y) {
      this.x = x;
      this.y = y;
      int minX = Arrays.stream(x).min().orElse(0);
      int maxX = Arrays.stream(x).max().orElse(0);
      int minY = Arrays.stream(y).min().orElse(0);
      int maxY = Arrays.stream(y).max().orElse(0);
      this.left = minX - 1;
      this.top = minY - 1;
      this.width = maxX - minX + 3;
      this.placeAt = new int[width * (maxY - minY + 3)];
      for (int i = 0; i < x.length; i++) {
        placeAt[(y[i] - top) * width + x[i] - left] = i + 1;
      }
    }

    /** The place beside another, −1 when there is none. */
    int at(int place, int stepX, int stepY) {
      return placeAt[(y[place] - top + stepY) * width + x[place] - left + stepX] - 1;
    }

    /** Distinct roots of the already joined neighbours of a place; how many there are. */
    int roots(int place, int[] parent, int[] out) {
      int count = 0;
      for (int j = -1; j <= 1; j++) {
        for (int i = -1; i <= 1; i++) {
          int neighbour = at(place, i, j);
          if (neighbour >= 0 && neighbour != place && parent[neighbour] >= 0) {
            count = addDistinct(root(neighbour, parent), out, count);
          }
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
  }
}
