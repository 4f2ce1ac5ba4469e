package rondure.base;

/**
 * One plane of linear pixel values: the only image type of the program.
 *
 * <p>Row-major, origin top-left, x to the right, y down; the centre of the first pixel is at (0,
 * 0). Values are linear counts above black level. NaN means: do not use (no photosite of this
 * colour here, or damaged). The plane is frozen once made: nobody writes to {@link #samples()}.
 */
public final class PixelPlane {

  /** Which pixels of the raster carry a value. */
  public enum Lattice {
    /** Every pixel. */
    EVERY_PIXEL,
    /** The two green photosites of a Bayer cell, where (x + y) mod 2 equals {@link #parity()}. */
    CHECKERBOARD,
    /** Any other pattern; NaN marks the holes. */
    SCATTERED
  }

  private final int widthPx;
  private final int heightPx;
  private final float[] samples;
  private final Lattice lattice;
  private final int parity;

  private PixelPlane(int widthPx, int heightPx, float[] samples, Lattice lattice, int parity) {
    if (widthPx <= 0 || heightPx <= 0) {
      throw new IllegalArgumentException(
          "plane size must be positive, was " + widthPx + " x " + heightPx);
    }
    if (samples.length != (long) widthPx * heightPx) {
      throw new IllegalArgumentException(
          "samples.length " + samples.length + " does not fit " + widthPx + " x " + heightPx);
    }
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.samples = samples;
    this.lattice = lattice;
    this.parity = parity;
  }

  /** A plane with a value at every pixel; takes ownership of {@code samples}. */
  public static PixelPlane full(int widthPx, int heightPx, float[] samples) {
    return new PixelPlane(widthPx, heightPx, samples, Lattice.EVERY_PIXEL, 0);
  }

  /**
   * A plane of green photosites, valid where (x + y) mod 2 == {@code parity}; the caller has set
   * the other pixels to NaN. Takes ownership of {@code samples}.
   */
  public static PixelPlane checkerboard(int widthPx, int heightPx, float[] samples, int parity) {
    if (parity != 0 && parity != 1) {
      throw new IllegalArgumentException("parity must be 0 or 1, was " + parity);
    }
    return new PixelPlane(widthPx, heightPx, samples, Lattice.CHECKERBOARD, parity);
  }

  /** A plane with holes marked by NaN in no simple pattern; takes ownership of {@code samples}. */
  public static PixelPlane scattered(int widthPx, int heightPx, float[] samples) {
    return new PixelPlane(widthPx, heightPx, samples, Lattice.SCATTERED, 0);
  }

  public int widthPx() {
    return widthPx;
  }

  public int heightPx() {
    return heightPx;
  }

  public Lattice lattice() {
    return lattice;
  }

  /** For {@link Lattice#CHECKERBOARD}: (x + y) mod 2 of the valid pixels; else 0. */
  public int parity() {
    return parity;
  }

  /** The value at column {@code x}, row {@code y}; NaN where there is none. */
  public float at(int x, int y) {
    return samples[y * widthPx + x];
  }

  /** The raster itself, index y * widthPx + x. Shared, not a copy: read only. */
  public float[] samples() {
    return samples;
  }
}
