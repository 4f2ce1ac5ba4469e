package rondure.stars;

import java.util.Arrays;

/** Which of some places are neighbours, on a raster just large enough. */
final class PlaceMap {
  /** Neighbours of a place, corners too. */
  static final int SIDES = 8;

  private final int[] at;
  private final int[] placeAt;
  private final int[] steps;

  /** Maps the places at columns {@code x} and rows {@code y}. */
  PlaceMap(int[] x, int[] y) {
    int minX = Integer.MAX_VALUE;
    int maxX = Integer.MIN_VALUE;
    int minY = Integer.MAX_VALUE;
    int maxY = Integer.MIN_VALUE;
    for (int i = 0; i < x.length; i++) {
      minX = Math.min(minX, x[i]);
      maxX = Math.max(maxX, x[i]);
      minY = Math.min(minY, y[i]);
      maxY = Math.max(maxY, y[i]);
    }
    int width = maxX - minX + 3;
    this.at = new int[x.length];
    this.placeAt = new int[x.length == 0 ? 0 : width * (maxY - minY + 3)];
    this.steps = new int[] {-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1};
    for (int i = 0; i < x.length; i++) {
      at[i] = (y[i] - minY + 1) * width + x[i] - minX + 1;
      placeAt[at[i]] = i + 1;
    }
  }

  int size() {
    return at.length;
  }

  /** The place beside another, sides numbered 0 to 7; −1 when there is none. */
  int beside(int place, int side) {
    return placeAt[at[place] + steps[side]] - 1;
  }

  /** Marks the places that hang together with {@code start} over marked ones. */
  boolean[] connected(boolean[] marked, int start) {
    boolean[] reached = new boolean[at.length];
    int[] stack = new int[at.length];
    int depth = 0;
    stack[depth++] = start;
    reached[start] = true;
    while (depth > 0) {
      int place = stack[--depth];
      for (int side = 0; side < SIDES; side++) {
        int other = beside(place, side);
        if (other >= 0 && marked[other] && !reached[other]) {
          reached[other] = true;
          stack[depth++] = other;
        }
      }
    }
    return reached;
  }

  /** All places, in groups of equal number, each in rising order. */
  static int[][] grouped(int[] number) {
    long[] keys = new long[number.length];
    for (int i = 0; i < keys.length; i++) {
      keys[i] = (long) number[i] << 32 | i;
    }
    Arrays.sort(keys);
    int groups = 0;
    for (int i = 0; i < keys.length; i++) {
      groups += i == 0 || keys[i] >> 32 != keys[i - 1] >> 32 ? 1 : 0;
    }
    int[][] grouped = new int[groups][];
    int start = 0;
    for (int group = 0; group < groups; group++) {
      int end = start;
      while (end < keys.length && keys[end] >> 32 == keys[start] >> 32) {
        end++;
      }
      grouped[group] = new int[end - start];
      for (int i = start; i < end; i++) {
        grouped[group][i - start] = (int) keys[i];
      }
      start = end;
    }
    return grouped;
  }
}
