package rondure.sky;

/**
 * One star seen in one frame.
 *
 * @param frame number of the frame, from 0
 * @param track number of the star, the same in every frame, from 0
 * @param xPx where it was seen, stored coordinates
 * @param yPx the same, down
 * @param errorPx standard error of the place, per axis
 */
public record Sighting(int frame, int track, double xPx, double yPx, double errorPx) {

  public Sighting {
    if (frame < 0 || track < 0) {
      throw new IllegalArgumentException(
          "frame and track must be >= 0, were " + frame + ", " + track);
    }
    if (!(Double.isFinite(xPx) && Double.isFinite(yPx))) {
      throw new IllegalArgumentException("place must be finite, was " + xPx + ", " + yPx);
    }
    if (!(errorPx > 0 && Double.isFinite(errorPx))) {
      throw new IllegalArgumentException("errorPx must be > 0, was " + errorPx);
    }
  }
}
