package rondure.base;

/**
 * Central second moments of a light distribution, px², a symmetric 2 x 2 tensor.
 *
 * <p>Moments of blurs that convolve add. Angles run from +x (right) towards +y (down), so clockwise
 * as displayed. Formulas for axes and angle: Bertin &amp; Arnouts 1996, A&amp;AS 117, 393.
 *
 * @param xxPx2 mean of (x - x̄)²
 * @param xyPx2 mean of (x - x̄)(y - ȳ)
 * @param yyPx2 mean of (y - ȳ)²
 */
public record Moments(double xxPx2, double xyPx2, double yyPx2) {

  /** FWHM of a Gaussian over its sigma, 2 √(2 ln 2). */
  public static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));

  public Moments {
    if (!(Double.isFinite(xxPx2) && Double.isFinite(xyPx2) && Double.isFinite(yyPx2))) {
      throw new IllegalArgumentException(
          "moments must be finite, were " + xxPx2 + ", " + xyPx2 + ", " + yyPx2);
    }
  }

  /** The moments of a round blur with this variance per axis. */
  public static Moments round(double variancePx2) {
    return new Moments(variancePx2, 0, variancePx2);
  }

  /**
   * The moments with the given variances along the axes of an ellipse.
   *
   * @param angleRad position angle of the major axis, from +x towards +y
   */
  public static Moments ofAxes(double majorPx2, double minorPx2, double angleRad) {
    double half = (majorPx2 + minorPx2) / 2;
    double spread = (majorPx2 - minorPx2) / 2;
    double cos = Math.cos(2 * angleRad);
    double sin = Math.sin(2 * angleRad);
    return new Moments(half + spread * cos, spread * sin, half - spread * cos);
  }

  /** A straight line of uniform light: L²/12 along, nothing across. */
  public static Moments line(double lengthPx, double angleRad) {
    return ofAxes(lengthPx * lengthPx / 12, 0, angleRad);
  }

  public Moments plus(Moments other) {
    return new Moments(xxPx2 + other.xxPx2, xyPx2 + other.xyPx2, yyPx2 + other.yyPx2);
  }

  public Moments minus(Moments other) {
    return new Moments(xxPx2 - other.xxPx2, xyPx2 - other.xyPx2, yyPx2 - other.yyPx2);
  }

  public Moments times(double factor) {
    return new Moments(xxPx2 * factor, xyPx2 * factor, yyPx2 * factor);
  }

  /** Mean second moment per axis, (Mxx + Myy) / 2, px². */
  public double meanPx2() {
    return (xxPx2 + yyPx2) / 2;
  }

  /** Length of the spin-2 part, √(((Mxx - Myy)/2)² + Mxy²), px². */
  public double spin2Px2() {
    return Math.hypot((xxPx2 - yyPx2) / 2, xyPx2);
  }

  /** Variance along the major axis, px². */
  public double majorPx2() {
    return meanPx2() + spin2Px2();
  }

  /** Variance along the minor axis, px²; negative when the tensor is not positive. */
  public double minorPx2() {
    return meanPx2() - spin2Px2();
  }

  /** True when both axes have positive variance. */
  public boolean isPositive() {
    return minorPx2() > 0;
  }

  /** Root-mean-square width per axis, √((Mxx + Myy)/2), px; 0 when the mean is negative. */
  public double rmsWidthPx() {
    return Math.sqrt(Math.max(0, meanPx2()));
  }

  /** Axis ratio b/a of the r.m.s. ellipse, 1 = round; 0 when not positive. */
  public double roundness() {
    return isPositive() ? Math.sqrt(minorPx2() / majorPx2()) : 0;
  }

  /** Position angle of the major axis in [0, π), from +x towards +y. */
  public double positionAngleRad() {
    double angle = 0.5 * Math.atan2(2 * xyPx2, xxPx2 - yyPx2);
    return angle < 0 ? Math.min(angle + Math.PI, Math.nextDown(Math.PI)) : angle;
  }
}
