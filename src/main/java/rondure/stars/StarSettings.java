package rondure.stars;

/**
 * Settings of finding and measuring stars.
 *
 * @param meshPx side of a background mesh cell [64]: small against clouds and vignetting, large
 *     against the widest star
 * @param detectionSnr least matched-filter signal-to-noise of a detection [5]: about one false
 *     detection in a million pixels of Gaussian noise
 * @param shapeSnr least flux signal-to-noise for a shape [18]: second moments good to about 15 %
 * @param shapeStarsMax measured stars kept per frame, brightest first [400]
 * @param otherStarsMax other detections kept per frame, brightest first [400]
 * @param groundLightsMax lamps outside the sky measured per frame, brightest first [40]: a few tell
 *     the camera's motion from the sky's
 * @param wingNarrowFwhms reach of the narrow aperture of the wing ratio, in median widths (FWHM
 *     across) around the line of a star [1]: holds 94 % of a Gaussian star
 * @param wingWideFwhms reach of the wide aperture [2.5]: dew and haze spread light out there
 */
public record StarSettings(
    int meshPx,
    double detectionSnr,
    double shapeSnr,
    int shapeStarsMax,
    int otherStarsMax,
    int groundLightsMax,
    double wingNarrowFwhms,
    double wingWideFwhms) {
  public StarSettings {
    if (meshPx < 16) {
      throw new IllegalArgumentException("meshPx must be >= 16, was " + meshPx);
    }
    if (!(detectionSnr >= 3)) {
      throw new IllegalArgumentException("detectionSnr must be >= 3, was " + detectionSnr);
    }
    if (!(shapeSnr >= detectionSnr)) {
      throw new IllegalArgumentException("shapeSnr must be >= detectionSnr, was " + shapeSnr);
    }
    if (shapeStarsMax < 1 || otherStarsMax < 0 || groundLightsMax < 0) {
      throw new IllegalArgumentException("star limits must be positive");
    }
    if (!(wingNarrowFwhms > 0 && wingWideFwhms > wingNarrowFwhms)) {
      throw new IllegalArgumentException(
          "wing apertures must be 0 < narrow < wide, were "
              + wingNarrowFwhms
              + " and "
              + wingWideFwhms);
    }
  }

  public static StarSettings defaults() {
    return new StarSettings(64, 5, 18, 400, 400, 40, 1, 2.5);
  }
}
