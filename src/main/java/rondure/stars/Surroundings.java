package rondure.stars;

import java.util.List;

/**
 * Light about stars that stand alone, far beyond where their shapes are measured: what haze, dew
 * and lenses scatter.
 *
 * @param starCount stars asked; 0 where too few stand alone
 * @param rings from the inside out
 */
public record Surroundings(int starCount, List<Ring> rings) {

  /** The outermost ring, each star's own ground, px. */
  public static final double GROUND_FROM_PX = 23;

  public static final double GROUND_TO_PX = 28;

  /** Nothing told. */
  public static final Surroundings NONE = new Surroundings(0, List.of());

  public Surroundings {
    rings = List.copyOf(rings);
    if (starCount < 0) {
      throw new IllegalArgumentException("starCount must be >= 0, was " + starCount);
    }
  }

  /**
   * One ring about all these stars.
   *
   * @param fromPx inner radius
   * @param toPx outer radius
   * @param lightPerPx2 mean light of a pixel over the star's flux, that of the ground taken off
   * @param errorPerPx2 its standard error
   */
  public record Ring(double fromPx, double toPx, double lightPerPx2, double errorPerPx2) {
    public Ring {
      if (!(fromPx >= 0 && toPx > fromPx && errorPerPx2 >= 0 && Double.isFinite(lightPerPx2))) {
        throw new IllegalArgumentException(
            "radii must grow from 0, errors be >= 0, light finite, were "
                + List.of(fromPx, toPx, lightPerPx2, errorPerPx2));
      }
    }
  }
}
