package rondure.stars;

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

  private BackgroundMesh(BackgroundCells cells, PixelContext context) {
    this.cellLevel = cells.level();
    this.cellNoise = cells.noise();
    this.roughness = cells.roughness();
    this.clippedShare = cells.clippedShare();
    this.level = cellLevel.medianFilteredKeepingSlopes().withHolesFilled(0);
    MeshGrid measured =
        withoutSlope(cellNoise.withHolesFilled(0), cellLevel.withHolesFilled(0)).medianFiltered();
    this.noise = aboveCodeSteps(measured, level, clippedShare, context);
    this.holes = cells.hasHoles();
  }

  /** Measures a plane in cells of {@code meshPx}. */
  static BackgroundMesh measure(PixelPlane plane, PixelContext context, int meshPx) {
    return new BackgroundMesh(BackgroundCells.measure(plane, context, meshPx), context);
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
    return noise.with(floored).flatAtBorder();
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
}
