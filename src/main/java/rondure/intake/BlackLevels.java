package rondure.intake;

/** Black level of each photosite, in counts: a table that repeats like a {@link Mosaic}. */
final class BlackLevels {
  private final float[][] rows;

  /** Tells the level at column x and row y. */
  @FunctionalInterface
  interface Level {
    double at(int x, int y);
  }

  private BlackLevels(float[][] rows) {
    this.rows = rows;
  }

  static BlackLevels of(Level level) {
    float[][] rows = new float[Mosaic.SIDE][Mosaic.SIDE];
    for (int y = 0; y < Mosaic.SIDE; y++) {
      for (int x = 0; x < Mosaic.SIDE; x++) {
        rows[y][x] = (float) level.at(x, y);
      }
    }
    return new BlackLevels(rows);
  }

  /** The levels of row y, from column 0 on; {@value Mosaic#SIDE} of them. Read only. */
  float[] row(int y) {
    return rows[y % Mosaic.SIDE];
  }

  /** Mean level of the green sites. */
  double green(Mosaic mosaic) {
    double sum = 0;
    int count = 0;
    for (int y = 0; y < Mosaic.SIDE; y++) {
      for (int x = 0; x < Mosaic.SIDE; x++) {
        if (mosaic.at(x, y) == 'G') {
          sum += rows[y][x];
          count++;
        }
      }
    }
    return count == 0 ? 0 : sum / count;
  }
}
