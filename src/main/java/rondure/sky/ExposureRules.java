package rondure.sky;

/** Rules of thumb for the longest exposure that keeps stars points, and the trail they allow. */
public final class ExposureRules {

  /** The customary constant of the rule T = K / f. */
  public static final double CUSTOMARY_K = 500;

  private ExposureRules() {}

  /**
   * T = K / f, the "500 rule" for K = 500 (common practice).
   *
   * @param constant K, customarily 300 to 600
   * @param focalLength35Mm focal length as 35 mm equivalent, by convention of the rule
   */
  public static double constantRuleSeconds(double constant, double focalLength35Mm) {
    return positive("constant", constant) / positive("focalLength35Mm", focalLength35Mm);
  }

  /**
   * The simple NPF rule, t = (35 N + 30 p) / f (F. Michaud, Société Astronomique du Havre).
   *
   * @param fNumber N
   * @param pixelPitchMicrons p, µm
   * @param focalLengthMm f, the actual focal length
   */
  public static double npfSimpleSeconds(
      double fNumber, double pixelPitchMicrons, double focalLengthMm) {
    positive("fNumber", fNumber);
    positive("pixelPitchMicrons", pixelPitchMicrons);
    return (35 * fNumber + 30 * pixelPitchMicrons) / positive("focalLengthMm", focalLengthMm);
  }

  /**
   * The full NPF rule, t = k (16.856 N + 0.0997 f + 13.713 p) / (f cos δ) (F. Michaud, Société
   * Astronomique du Havre; his page prints 16.9, 0.10 and 13.7, which agree to 0.3 %).
   *
   * @param factor k: 1 = round stars, 3 = slightly elongated
   * @param fNumber N
   * @param pixelPitchMicrons p, µm
   * @param focalLengthMm f, the actual focal length
   * @param declinationDeg δ: least absolute declination in the field, degrees, below 90
   */
  public static double npfSeconds(
      double factor,
      double fNumber,
      double pixelPitchMicrons,
      double focalLengthMm,
      double declinationDeg) {
    positive("factor", factor);
    positive("fNumber", fNumber);
    positive("pixelPitchMicrons", pixelPitchMicrons);
    positive("focalLengthMm", focalLengthMm);
    if (!(Math.abs(declinationDeg) < 90)) {
      throw new IllegalArgumentException(
          "declinationDeg must be between -90 and 90, was " + declinationDeg);
    }
    double numerator = 16.856 * fNumber + 0.0997 * focalLengthMm + 13.713 * pixelPitchMicrons;
    return factor * numerator / (focalLengthMm * Math.cos(Math.toRadians(declinationDeg)));
  }

  /**
   * The trail in the middle of the frame, ω T (f/p) cos δ, px.
   *
   * @param declinationDeg of the middle of the frame; 0 gives the longest
   */
  public static double trailPx(
      double exposureSeconds,
      double focalLengthMm,
      double pixelPitchMicrons,
      double declinationDeg) {
    positive("focalLengthMm", focalLengthMm);
    positive("pixelPitchMicrons", pixelPitchMicrons);
    return SkyMotion.smallFieldTrailPx(
        1000 * focalLengthMm / pixelPitchMicrons, declinationDeg, exposureSeconds);
  }

  private static double positive(String name, double value) {
    if (!(value > 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(name + " must be > 0, was " + value);
    }
    return value;
  }
}
