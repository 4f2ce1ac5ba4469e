package rondure.stars;

import rondure.base.PixelPlane;

/**
 * A plane read row by row as (value − sky level) / noise on the finest grid used for detection.
 *
 * <p>On that grid every place carries a value of unit variance: single pixels where the plane has
 * all of them, else bins of 2 x 2 pixels (of a Bayer checkerboard each holds exactly two greens):
 * the sum of the bin's values over the square root of their number. Places without a value hold 0,
 * the sky. A last odd column or row is left out.
 */
final class WhitenedRows {
  private static final int RAMP_ROWS = 16;

  private final PixelPlane plane;
  private final boolean holes;
  private final int binPx;
  private final int width;
  private final int height;
  private final Ramp level;
  private final Ramp noise;

  WhitenedRows(PixelPlane plane, BackgroundMesh background) {
    this.plane = plane;
    this.holes = background.hasHoles();
    this.binPx = plane.lattice() == PixelPlane.Lattice.EVERY_PIXEL ? 1 : 2;
    this.width = Math.max(1, plane.widthPx() / binPx);
    this.height = Math.max(1, plane.heightPx() / binPx);
    this.level = new Ramp(background.level(), binPx, width, RAMP_ROWS);
    this.noise = new Ramp(background.noise(), binPx, width, RAMP_ROWS);
  }

  int binPx() {
    return binPx;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** Reads a row of the grid into {@code out}; rows outside the grid are sky. */
  void read(int row, float[] out) {
    if (row < 0 || row >= height) {
      java.util.Arrays.fill(out, 0, width, 0);
      return;
    }
    float[] sky = level.row(row);
    float[] sigma = noise.row(row);
    if (binPx == 1) {
      readPixels(row, sky, sigma, out);
    } else if (plane.lattice() == PixelPlane.Lattice.CHECKERBOARD && !holes) {
      readGreens(row, sky, sigma, out);
    } else {
      readBins(row, sky, sigma, out);
    }
  }

  private void readPixels(int row, float[] sky, float[] sigma, float[] out) {
    float[] samples = plane.samples();
    int start = row * plane.widthPx();
    for (int i = 0; i < width; i++) {
      out[i] = (samples[start + i] - sky[i]) / sigma[i];
    }
    if (holes) {
      for (int i = 0; i < width; i++) {
        out[i] = out[i] == out[i] ? out[i] : 0;
      }
    }
  }

  private void readGreens(int row, float[] sky, float[] sigma, float[] out) {
    float[] samples = plane.samples();
    int upper = 2 * row * plane.widthPx() + plane.parity();
    int lower = (2 * row + 1) * plane.widthPx() + 1 - plane.parity();
    for (int i = 0; i < width; i++) {
      out[i] = samples[upper + 2 * i] + samples[lower + 2 * i];
    }
    float scale = (float) Math.sqrt(0.5);
    for (int i = 0; i < width; i++) {
      out[i] = scale * (out[i] - 2 * sky[i]) / sigma[i];
    }
  }

  private void readBins(int row, float[] sky, float[] sigma, float[] out) {
    float[] samples = plane.samples();
    for (int i = 0; i < width; i++) {
      float sum = 0;
      int count = 0;
      for (int corner = 0; corner < 4; corner++) {
        int x = Math.min(2 * i + (corner & 1), plane.widthPx() - 1);
        int y = Math.min(2 * row + (corner >> 1), plane.heightPx() - 1);
        float value = samples[y * plane.widthPx() + x];
        if (value == value) {
          sum += value - sky[i];
          count++;
        }
      }
      out[i] = count == 0 ? 0 : (float) (sum / (sigma[i] * Math.sqrt(count)));
    }
  }

  /** Rows of a mesh grid at grid places, exact every few rows and straight between. */
  static final class Ramp {
    private final MeshGrid grid;
    private final double binPx;
    private final int rowsPerRamp;
    private final float[] from;
    private final float[] to;
    private final float[] now;
    private int ramp = -1;

    Ramp(MeshGrid grid, double binPx, int width, int rowsPerRamp) {
      this.grid = grid;
      this.binPx = binPx;
      this.rowsPerRamp = rowsPerRamp;
      this.from = new float[width];
      this.to = new float[width];
      this.now = new float[width];
    }

    float[] row(int row) {
      if (row / rowsPerRamp != ramp) {
        ramp = row / rowsPerRamp;
        double first = (binPx - 1) / 2;
        grid.fillRow(ramp * rowsPerRamp * binPx + first, first, binPx, from);
        grid.fillRow((ramp + 1) * rowsPerRamp * binPx + first, first, binPx, to);
      }
      float share = (float) (row % rowsPerRamp) / rowsPerRamp;
      for (int i = 0; i < now.length; i++) {
        now[i] = from[i] + share * (to[i] - from[i]);
      }
      return now;
    }
  }
}
