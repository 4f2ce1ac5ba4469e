package rondure.stars;

import java.util.Arrays;
import rondure.base.PixelPlane;

/**
 * Level, noise and roughness of a plane in square cells, one after another.
 *
 * <p>Where every pixel carries a value, half of them are enough, as on a Bayer checkerboard. Which
 * ones are looked at does not change when the plane is flipped or turned by whole cells.
 */
final class BackgroundCells {
  private static final int FEWEST_VALUES = 16;
  private static final int PLACES_OF_EVERY_PIXEL = 6;
  private static final int PLACES_OF_PATTERNS = 8;

  private final PixelPlane plane;
  private final float[] samples;
  private final int meshPx;
  private final int columns;
  private final int rows;
  private final float[] level;
  private final float[] noise;
  private final float[] roughness;
  private final float[] minimum;
  private final float[] atMinimum;
  private final float[] values;
  private final float[] some = new float[2 * PLACES_OF_PATTERNS * PLACES_OF_PATTERNS];
  private final CellStatistics statistics = new CellStatistics();
  private boolean holes;

  private BackgroundCells(PixelPlane plane, int meshPx) {
    this.plane = plane;
    this.samples = plane.samples();
    this.meshPx = meshPx;
    this.columns = MeshGrid.cellsAlong(plane.widthPx(), meshPx);
    this.rows = MeshGrid.cellsAlong(plane.heightPx(), meshPx);
    this.level = new float[columns * rows];
    this.noise = new float[columns * rows];
    this.roughness = new float[columns * rows];
    this.minimum = new float[columns * rows];
    this.atMinimum = new float[columns * rows];
    this.values = new float[meshPx * meshPx];
  }

  /** Measures all cells of {@code meshPx}; NaN where a cell holds fewer than 16 values. */
  static BackgroundCells measure(PixelPlane plane, PixelContext context, int meshPx) {
    BackgroundCells cells = new BackgroundCells(plane, meshPx);
    for (int cell = 0; cell < cells.level.length; cell++) {
      int x0 = cell % cells.columns * meshPx;
      int y0 = cell / cells.columns * meshPx;
      int x1 = Math.min(plane.widthPx(), x0 + meshPx);
      int y1 = Math.min(plane.heightPx(), y0 + meshPx);
      cells.measure(cell, new Box(x0, y0, x1, y1), context);
    }
    return cells;
  }

  /** Pixels x0 to x1 − 1, y0 to y1 − 1. */
  private record Box(int x0, int y0, int x1, int y1) {}

  MeshGrid level() {
    return grid(level);
  }

  MeshGrid noise() {
    return grid(noise);
  }

  /** Noise from differences of pixels two apart, blind to slopes: counts per pixel. */
  MeshGrid roughness() {
    return grid(roughness);
  }

  /** True when a pixel that the lattice promises carries no value. */
  boolean hasHoles() {
    return holes;
  }

  /** Share of each cell's values at the plane's lowest value; 0 for cells that stay above it. */
  MeshGrid clippedShare() {
    float lowest = Float.POSITIVE_INFINITY;
    for (float value : minimum) {
      lowest = value < lowest ? value : lowest;
    }
    float[] shares = new float[minimum.length];
    for (int i = 0; i < shares.length; i++) {
      shares[i] = minimum[i] == lowest ? atMinimum[i] : 0;
    }
    return grid(shares);
  }

  private MeshGrid grid(float[] cells) {
    return new MeshGrid(plane.widthPx(), plane.heightPx(), meshPx, cells);
  }

  private void measure(int cell, Box box, PixelContext context) {
    int count =
        switch (plane.lattice()) {
          case EVERY_PIXEL -> gatherHalf(box);
          case CHECKERBOARD -> gather(box, 2);
          case SCATTERED -> gather(box, 1);
        };
    if (count < FEWEST_VALUES) {
      level[cell] = Float.NaN;
      noise[cell] = Float.NaN;
      roughness[cell] = Float.NaN;
      minimum[cell] = Float.NaN;
      return;
    }
    statistics.measure(values, count, gatherSome(box), context.codeStepCounts() / 2);
    level[cell] = (float) statistics.level();
    noise[cell] = (float) statistics.noise();
    minimum[cell] = (float) statistics.minimum();
    atMinimum[cell] = (float) statistics.atMinimum() / count;
    roughness[cell] = roughness(box);
  }

  /** All values of a lattice of every pixel (step 1) or every second (step 2). */
  private int gather(Box box, int step) {
    int count = 0;
    int promised = 0;
    for (int y = box.y0; y < box.y1; y++) {
      int shift = step == 2 ? (box.x0 + y + plane.parity()) & 1 : 0;
      int end = y * plane.widthPx() + box.x1;
      for (int i = y * plane.widthPx() + box.x0 + shift; i < end; i += step) {
        float value = samples[i];
        promised++;
        if (value == value) {
          values[count++] = value;
        }
      }
    }
    holes |= count < promised;
    return count;
  }

  /** Half the values: of four in a row the inner or the outer two, in rows by the same measure. */
  private int gatherHalf(Box box) {
    int count = 0;
    for (int y = box.y0; y < box.y1; y++) {
      int inner = (y - box.y0 + 1) >> 1 & 1;
      int end = y * plane.widthPx() + box.x1;
      int i = y * plane.widthPx() + box.x0;
      for (; i + 3 < end; i += 4) {
        float sum = samples[i] + samples[i + 1] + samples[i + 2] + samples[i + 3];
        if (sum == sum) {
          values[count++] = samples[i + inner];
          values[count++] = samples[i + 3 - inner];
        } else {
          count = addValid(i, i + 4, count);
        }
      }
      count = addValid(i, end, count);
    }
    return count;
  }

  private int addValid(int from, int to, int count) {
    int next = count;
    for (int i = from; i < to; i++) {
      float value = samples[i];
      holes |= value != value;
      if (value == value) {
        values[next++] = value;
      }
    }
    return next;
  }

  private int places() {
    return plane.lattice() == PixelPlane.Lattice.EVERY_PIXEL
        ? PLACES_OF_EVERY_PIXEL
        : PLACES_OF_PATTERNS;
  }

  /** A few values from all over the cell. */
  private float[] gatherSome(Box box) {
    int count = 0;
    for (int y : CellPlaces.along(box.y1 - box.y0, places())) {
      for (int x : CellPlaces.along(box.x1 - box.x0, places())) {
        float value = plane.at(box.x0 + x, box.y0 + y);
        if (value == value) {
          some[count++] = value;
        }
      }
    }
    return Arrays.copyOf(some, count);
  }

  /** Median |difference| of pixels two apart, across and down, scaled to the σ of one pixel. */
  private float roughness(Box box) {
    int count = 0;
    int[] across = CellPlaces.along(box.x1 - box.x0, places());
    for (int dy : CellPlaces.along(box.y1 - box.y0, places())) {
      for (int dx : across) {
        int x = box.x0 + dx;
        int y = box.y0 + dy;
        if (x > 0 && y > 0 && x + 1 < plane.widthPx() && y + 1 < plane.heightPx()) {
          count = addDifference(plane.at(x + 1, y) - plane.at(x - 1, y), count);
          count = addDifference(plane.at(x, y + 1) - plane.at(x, y - 1), count);
        }
      }
    }
    if (count < FEWEST_VALUES / 2) {
      return Float.NaN;
    }
    return (float) (1.482602 / Math.sqrt(2) * ranked(some, count, count / 2));
  }

  /** The value of a rank from 0 among the first {@code count}, which are reordered: Hoare 1961. */
  private static float ranked(float[] values, int count, int rank) {
    int low = 0;
    int high = count - 1;
    while (low < high) {
      float pivot = values[rank];
      int i = low;
      int j = high;
      while (i <= j) {
        while (values[i] < pivot) {
          i++;
        }
        while (values[j] > pivot) {
          j--;
        }
        if (i <= j) {
          float swap = values[i];
          values[i++] = values[j];
          values[j--] = swap;
        }
      }
      low = j < rank ? i : low;
      high = rank < i ? j : high;
    }
    return values[rank];
  }

  private int addDifference(float difference, int count) {
    if (difference == difference) {
      some[count] = Math.abs(difference);
      return count + 1;
    }
    return count;
  }
}
