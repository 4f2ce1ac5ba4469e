package rondure.stars;

import java.util.Arrays;
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
  private final PixelPlane plane;
  private final boolean holes;
  private final int binPx;
  private final int width;
  private final int height;
  private final MeshRamp level;
  private final MeshRamp noise;

  WhitenedRows(PixelPlane plane, BackgroundMesh background) {
    this.plane = plane;
    this.holes = background.hasHoles();
    this.binPx = plane.lattice() == PixelPlane.Lattice.EVERY_PIXEL ? 1 : 2;
    this.width = Math.max(1, plane.widthPx() / binPx);
    this.height = Math.max(1, plane.heightPx() / binPx);
    this.level = new MeshRamp(background.level(), binPx, width);
    this.noise = new MeshRamp(background.noise(), binPx, width);
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

  /** True for a Bayer checkerboard, to be read by {@link #readGreens}. */
  boolean hasGreens() {
    return plane.lattice() == PixelPlane.Lattice.CHECKERBOARD;
  }

  /** +1 when a bin's upper green is left of its lower one, else −1. */
  int greenSide() {
    return plane.parity() == 0 ? 1 : -1;
  }

  /**
   * Reads the two greens of each bin of a row, each whitened.
   *
   * @param upper receives the greens of the upper pixel row
   * @param lower receives those of the lower pixel row
   */
  void readGreens(int row, float[] upper, float[] lower) {
    if (row < 0 || row >= height) {
      Arrays.fill(upper, 0);
      Arrays.fill(lower, 0);
      return;
    }
    float[] sky = level.row(row);
    float[] sigma = noise.row(row);
    int bottom = Math.min(2 * row + 1, plane.heightPx() - 1);
    readGreens(2 * row * plane.widthPx() + plane.parity(), sky, sigma, upper);
    readGreens(bottom * plane.widthPx() + 1 - plane.parity(), sky, sigma, lower);
  }

  private void readGreens(int start, float[] sky, float[] sigma, float[] out) {
    float[] samples = plane.samples();
    int last = samples.length - 1;
    for (int i = 0; i < width; i++) {
      out[i] = samples[Math.min(start + 2 * i, last)];
    }
    for (int i = 0; i < width; i++) {
      out[i] = (out[i] - sky[i]) / sigma[i];
    }
    if (holes) {
      holesToSky(out);
    }
  }

  private void holesToSky(float[] out) {
    for (int i = 0; i < width; i++) {
      out[i] = out[i] == out[i] ? out[i] : 0;
    }
  }

  /** Reads a row of the grid into {@code out}; rows outside the grid are sky. */
  void read(int row, float[] out) {
    if (row < 0 || row >= height) {
      Arrays.fill(out, 0, width, 0);
      return;
    }
    if (binPx == 1) {
      readPixels(row, out);
    } else {
      readBins(row, level.row(row), noise.row(row), out);
    }
  }

  private void readPixels(int row, float[] out) {
    float[] samples = plane.samples();
    int start = row * plane.widthPx();
    float skyShare = level.shareAt(row);
    float[] sky = level.from();
    float[] skyRise = level.rise();
    float sigmaShare = noise.shareAt(row);
    float[] sigma = noise.from();
    float[] sigmaRise = noise.rise();
    for (int i = 0; i < width; i++) {
      out[i] =
          (samples[start + i] - (sky[i] + skyShare * skyRise[i]))
              / (sigma[i] + sigmaShare * sigmaRise[i]);
    }
    if (holes) {
      holesToSky(out);
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
}
