package rondure.stars;

import java.util.Arrays;
import rondure.base.PixelPlane;

/**
 * Sky level and noise on a mesh, cleaned by a 3 x 3 median over the cells and read linearly between
 * them.
 *
 * <p>Method: Bertin &amp; Arnouts 1996, A&amp;AS 117, 393. The noise is never below half a code
 * step, because stored numbers know no better, and not below a whole one where the sky is clipped
 * to black, because then its lower half is lost; where an sRGB curve was undone the steps grow with
 * the level.
 */
final class BackgroundMesh implements Background {
  private static final int FEWEST_VALUES = 16;
  private static final int ROUGHNESS_ROW_STEP = 8;
  private static final double LEAST_NOISE_SHARE = 0.3;

  /** From this share of pixels at the lowest value on, a cell's own scatter means nothing. */
  private static final double FULLY_CLIPPED_SHARE = 0.2;

  private final MeshGrid level;
  private final MeshGrid noise;
  private final MeshGrid cellLevel;
  private final MeshGrid cellNoise;
  private final MeshGrid roughness;
  private final MeshGrid clippedShare;
  private final boolean holes;

  private BackgroundMesh(Cells cells, PixelContext context, boolean holes) {
    this.cellLevel = cells.grid(cells.level);
    this.cellNoise = cells.grid(cells.noise);
    this.roughness = cells.grid(cells.roughness);
    this.clippedShare = cells.grid(cells.clippedShare());
    this.level = cellLevel.medianFilteredKeepingSlopes().withHolesFilled(0);
    MeshGrid measured =
        withoutSlope(cellNoise.withHolesFilled(0), cellLevel.withHolesFilled(0)).medianFiltered();
    this.noise = aboveCodeSteps(measured, level, clippedShare, context);
    this.holes = holes;
  }

  /** Measures a plane in cells of {@code meshPx}. */
  static BackgroundMesh measure(PixelPlane plane, PixelContext context, int meshPx) {
    Cells cells = new Cells(plane, meshPx);
    boolean holes = false;
    for (int row = 0; row < cells.rows; row++) {
      for (int column = 0; column < cells.columns; column++) {
        holes |= cells.measure(column, row, context);
      }
    }
    return new BackgroundMesh(cells, context, holes);
  }

  /**
   * Takes out of the noise what a sloping level adds to the scatter inside a cell: slope² · side² /
   * 12 along each side.
   */
  private static MeshGrid withoutSlope(MeshGrid noise, MeshGrid level) {
    float[] cleaned = new float[noise.size()];
    for (int row = 0; row < noise.rows(); row++) {
      for (int column = 0; column < noise.columns(); column++) {
        double across = level.steadyStep(column, row, 1, 0);
        double down = level.steadyStep(column, row, 0, 1);
        double scatter = noise.cell(column, row);
        double slope = (across * across + down * down) / 12;
        double least = LEAST_NOISE_SHARE * scatter;
        cleaned[row * noise.columns() + column] =
            (float) Math.sqrt(Math.max(scatter * scatter - slope, least * least));
      }
    }
    return noise.with(cleaned);
  }

  private static MeshGrid aboveCodeSteps(
      MeshGrid noise, MeshGrid level, MeshGrid clippedShare, PixelContext context) {
    float[] floored = new float[noise.size()];
    for (int i = 0; i < floored.length; i++) {
      double lost = Math.min(1, clippedShare.cell(i) / FULLY_CLIPPED_SHARE);
      double floor = Math.max(CodeSteps.at(context, level.cell(i)) * (1 + lost) / 2, 1e-30);
      floored[i] = (float) Math.max(noise.cell(i), floor);
    }
    return noise.with(floored);
  }

  @Override
  public float levelAt(int xPx, int yPx) {
    return level.at(xPx, yPx);
  }

  @Override
  public float noiseAt(int xPx, int yPx) {
    return noise.at(xPx, yPx);
  }

  /** Smoothed level, counts. */
  MeshGrid level() {
    return level;
  }

  /** Smoothed noise, counts, at least half a code step. */
  MeshGrid noise() {
    return noise;
  }

  /** Level cell by cell as measured; NaN where a cell holds too few values. */
  MeshGrid cellLevel() {
    return cellLevel;
  }

  /** Noise cell by cell as measured; NaN where a cell holds too few values. */
  MeshGrid cellNoise() {
    return cellNoise;
  }

  /** Noise from differences of near pixels, blind to slopes: counts per pixel; NaN as above. */
  MeshGrid roughness() {
    return roughness;
  }

  /** Share of a cell's values that are the lowest value of the whole plane. */
  MeshGrid clippedShare() {
    return clippedShare;
  }

  /** True when a pixel that the lattice promises carries no value. */
  boolean hasHoles() {
    return holes;
  }

  /** The cells while they are being measured. */
  private static final class Cells {
    private final PixelPlane plane;
    private final int meshPx;
    private final int columns;
    private final int rows;
    private final float[] level;
    private final float[] noise;
    private final float[] roughness;
    private final float[] minimum;
    private final float[] atMinimum;
    private final float[] values;
    private final float[] differences;
    private final CellStatistics statistics = new CellStatistics();

    Cells(PixelPlane plane, int meshPx) {
      this.plane = plane;
      this.meshPx = meshPx;
      this.columns = MeshGrid.cellsAlong(plane.widthPx(), meshPx);
      this.rows = MeshGrid.cellsAlong(plane.heightPx(), meshPx);
      this.level = new float[columns * rows];
      this.noise = new float[columns * rows];
      this.roughness = new float[columns * rows];
      this.minimum = new float[columns * rows];
      this.atMinimum = new float[columns * rows];
      this.values = new float[meshPx * meshPx];
      this.differences = new float[meshPx * meshPx];
    }

    MeshGrid grid(float[] cells) {
      return new MeshGrid(plane.widthPx(), plane.heightPx(), meshPx, cells);
    }

    /** Measures one cell; true when it misses values that its lattice promises. */
    boolean measure(int column, int row, PixelContext context) {
      int x0 = column * meshPx;
      int y0 = row * meshPx;
      int x1 = Math.min(plane.widthPx(), x0 + meshPx);
      int y1 = Math.min(plane.heightPx(), y0 + meshPx);
      int promised = 0;
      int count = 0;
      int step = plane.lattice() == PixelPlane.Lattice.CHECKERBOARD ? 2 : 1;
      float[] samples = plane.samples();
      for (int y = y0; y < y1; y++) {
        int from = y * plane.widthPx() + x0 + (step == 2 ? (x0 + y + plane.parity()) & 1 : 0);
        int to = y * plane.widthPx() + x1;
        for (int i = from; i < to; i += step) {
          float value = samples[i];
          promised++;
          if (value == value) {
            values[count++] = value;
          }
        }
      }
      keep(row * columns + column, count, context);
      if (count >= FEWEST_VALUES) {
        roughness[row * columns + column] = roughness(x0, y0, x1, y1);
      }
      return count < promised;
    }

    private void keep(int cell, int count, PixelContext context) {
      if (count < FEWEST_VALUES) {
        level[cell] = Float.NaN;
        noise[cell] = Float.NaN;
        roughness[cell] = Float.NaN;
        minimum[cell] = Float.NaN;
        return;
      }
      statistics.measure(values, count, context.codeStepCounts() / 2);
      level[cell] = (float) statistics.level();
      noise[cell] = (float) statistics.noise();
      minimum[cell] = (float) statistics.minimum();
      atMinimum[cell] = (float) statistics.atMinimum() / count;
    }

    /** Median |difference| of pixels two apart in a row, scaled to the σ of one pixel. */
    private float roughness(int x0, int y0, int x1, int y1) {
      int count = 0;
      float[] samples = plane.samples();
      for (int y = y0 + 2; y < y1; y += ROUGHNESS_ROW_STEP) {
        for (int x = x0 + ((x0 + y + plane.parity()) & 1); x + 2 < x1; x += 4) {
          int i = y * plane.widthPx() + x;
          float difference = Math.abs(samples[i + 2] - samples[i]);
          if (difference == difference) {
            differences[count++] = difference;
          }
        }
      }
      if (count < FEWEST_VALUES / 2) {
        return Float.NaN;
      }
      Arrays.sort(differences, 0, count);
      return (float) (1.482602 / Math.sqrt(2) * differences[count / 2]);
    }

    /** Share of each cell's values at the plane's lowest value; 0 for cells that stay above it. */
    float[] clippedShare() {
      float lowest = Float.POSITIVE_INFINITY;
      for (float value : minimum) {
        lowest = value < lowest ? value : lowest;
      }
      float[] shares = new float[minimum.length];
      for (int i = 0; i < shares.length; i++) {
        shares[i] = minimum[i] == lowest ? atMinimum[i] : 0;
      }
      return shares;
    }
  }
}
