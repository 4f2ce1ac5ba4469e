package rondure.blur;

/**
 * Counts of offsets in squares of 1 px, and the densest place among them.
 *
 * <p>Chance spreads offsets evenly, so what a square would hold by chance follows from its area.
 */
final class OffsetHistogram {
  private final int farthestPx;
  private final int side;
  private final int[] counts;
  private int total;

  OffsetHistogram(int farthestPx) {
    this.farthestPx = farthestPx;
    this.side = 2 * farthestPx + 1;
    this.counts = new int[side * side];
  }

  /** Counts an offset of at most the farthest along either axis. */
  void add(double xPx, double yPx) {
    counts[bin(yPx) * side + bin(xPx)]++;
    total++;
  }

  private int bin(double offsetPx) {
    return (int) Math.rint(offsetPx) + farthestPx;
  }

  /**
   * A square that holds more than its area gives by chance.
   *
   * @param xPx its middle
   * @param yPx its middle
   * @param halfPx reach from the middle, in whole squares
   * @param surplus count over chance, in standard deviations
   */
  record Place(int xPx, int yPx, int halfPx, double surplus) {}

  /**
   * The square with the largest surplus.
   *
   * @param nearestPx middles nearer than this are left out
   * @param share reach of a square as a share of its distance, on top of 1 px
   */
  Place densest(double nearestPx, double share) {
    double chance = total / (Math.PI * farthestPx * farthestPx);
    int[] sums = sums();
    Place best = new Place(0, 0, 0, 0);
    for (int y = -farthestPx; y <= farthestPx; y++) {
      for (int x = -farthestPx; x <= farthestPx; x++) {
        double distance = Math.sqrt(x * x + y * y);
        if (distance >= nearestPx && distance <= farthestPx) {
          int half = (int) Math.rint(1 + share * distance);
          double expected = chance * (2 * half + 1) * (2 * half + 1);
          double surplus = (sum(sums, x, y, half) - expected) / Math.sqrt(1 + expected);
          best = surplus > best.surplus() ? new Place(x, y, half, surplus) : best;
        }
      }
    }
    return best;
  }

  /** Counts of all squares above and left of each corner: rows of one more than {@link #side}. */
  private int[] sums() {
    int wide = side + 1;
    int[] sums = new int[wide * wide];
    for (int row = 0; row < side; row++) {
      int ofRow = 0;
      for (int column = 0; column < side; column++) {
        ofRow += counts[row * side + column];
        sums[(row + 1) * wide + column + 1] = sums[row * wide + column + 1] + ofRow;
      }
    }
    return sums;
  }

  private int sum(int[] sums, int x, int y, int half) {
    int wide = side + 1;
    int left = Math.max(0, x - half + farthestPx);
    int right = Math.min(side, x + half + farthestPx + 1);
    int top = wide * Math.max(0, y - half + farthestPx);
    int bottom = wide * Math.min(side, y + half + farthestPx + 1);
    return sums[bottom + right] - sums[bottom + left] - sums[top + right] + sums[top + left];
  }
}
