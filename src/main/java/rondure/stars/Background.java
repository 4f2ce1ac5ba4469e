package rondure.stars;

/** The sky background of one plane: level and noise at every pixel, smooth over the mesh. */
public interface Background {

  /** Sky level in counts above black at pixel (x, y) inside the plane. */
  float levelAt(int xPx, int yPx);

  /** Pixel noise (1 σ, counts) at pixel (x, y) inside the plane. */
  float noiseAt(int xPx, int yPx);
}
