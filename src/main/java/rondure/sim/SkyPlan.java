package rondure.sim;

/**
 * The sky behind the stars.
 *
 * @param latitudeDeg of the site, north positive
 * @param zenithMagPerArcsec2 surface brightness at the zenith
 * @param horizonGlow brightness added towards the horizon, as a multiple of the zenith's
 * @param domeAzimuthDeg direction of a light dome over the horizon
 * @param domeGlow brightness of that dome at the horizon, as a multiple of the zenith's
 * @param bandGlow brightness of a star band across the sky, as a multiple of the zenith's
 * @param bandPoleRightAscensionDeg pole of the band's great circle
 * @param bandPoleDeclinationDeg pole of the band's great circle
 * @param extinctionMagPerAirmass light lost in clear air
 */
public record SkyPlan(
    double latitudeDeg,
    double zenithMagPerArcsec2,
    double horizonGlow,
    double domeAzimuthDeg,
    double domeGlow,
    double bandGlow,
    double bandPoleRightAscensionDeg,
    double bandPoleDeclinationDeg,
    double extinctionMagPerAirmass) {

  public SkyPlan {
    Checks.within("latitudeDeg", latitudeDeg, -90, 90);
    Checks.within("zenithMagPerArcsec2", zenithMagPerArcsec2, 5, 40);
    Checks.notNegative("horizonGlow", horizonGlow);
    Checks.finite("domeAzimuthDeg", domeAzimuthDeg);
    Checks.notNegative("domeGlow", domeGlow);
    Checks.notNegative("bandGlow", bandGlow);
    Checks.finite("bandPoleRightAscensionDeg", bandPoleRightAscensionDeg);
    Checks.within("bandPoleDeclinationDeg", bandPoleDeclinationDeg, -90, 90);
    Checks.within("extinctionMagPerAirmass", extinctionMagPerAirmass, 0, 2);
  }
}
