package rondure.stars;

import rondure.base.Moments;

/**
 * A star whose shape was measured, in stored (sensor) pixel coordinates.
 *
 * @param xPx centroid, centre of the first pixel at 0
 * @param yPx centroid
 * @param fluxCounts light above sky, counts
 * @param snr flux over its error from local noise and photon statistics
 * @param moments second moments of the light (pixel box included), px²: the r.m.s. shape that the
 *     blur budget splits
 * @param xxErrorPx2 standard error of moments.xx
 * @param xyErrorPx2 standard error of moments.xy
 * @param yyErrorPx2 standard error of moments.yy
 * @param fwhmMajorPx full width at half maximum of the fitted star model along its long axis
 * @param fwhmMinorPx the same across
 * @param skewXPx third-moment vector ⟨r² x⟩ / ⟨r²⟩, px: points to the longer tail, 0 for symmetric
 *     stars
 * @param skewYPx the same along y
 * @param wingRatio flux in a wide over flux in a narrow aperture (see StarSettings), ≥ about 1
 * @param peakFraction highest pixel as a fraction of the white level
 */
public record Star(
    double xPx,
    double yPx,
    double fluxCounts,
    double snr,
    Moments moments,
    double xxErrorPx2,
    double xyErrorPx2,
    double yyErrorPx2,
    double fwhmMajorPx,
    double fwhmMinorPx,
    double skewXPx,
    double skewYPx,
    double wingRatio,
    double peakFraction) {

  public Star {
    requireFinite("xPx", xPx);
    requireFinite("yPx", yPx);
    requireFinite("fluxCounts", fluxCounts);
    requireFinite("snr", snr);
    requireError("xxErrorPx2", xxErrorPx2);
    requireError("xyErrorPx2", xyErrorPx2);
    requireError("yyErrorPx2", yyErrorPx2);
    requireFinite("fwhmMajorPx", fwhmMajorPx);
    requireFinite("fwhmMinorPx", fwhmMinorPx);
    requireFinite("skewXPx", skewXPx);
    requireFinite("skewYPx", skewYPx);
    requireFinite("wingRatio", wingRatio);
    requireFinite("peakFraction", peakFraction);
    if (!moments.isPositive()) {
      throw new IllegalArgumentException("moments must be positive, were " + moments);
    }
    if (!(fwhmMajorPx > 0 && fwhmMinorPx > 0)) {
      throw new IllegalArgumentException(
          "FWHM must be > 0 px, was " + fwhmMajorPx + " x " + fwhmMinorPx);
    }
    if (!(snr > 0)) {
      throw new IllegalArgumentException("snr must be > 0, was " + snr);
    }
  }

  private static void requireFinite(String name, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " must be finite, was " + value);
    }
  }

  private static void requireError(String name, double value) {
    if (!(value >= 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(name + " must be finite and >= 0, was " + value);
    }
  }

  /** Half-maximum width √(major · minor), px. */
  public double fwhmPx() {
    return Math.sqrt(fwhmMajorPx * fwhmMinorPx);
  }
}
