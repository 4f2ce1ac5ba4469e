package rondure.stars;

import java.util.function.DoubleUnaryOperator;
import rondure.base.Moments;

/**
 * Star images whose contours are similar ellipses: light = f(q), q = dᵀ M⁻¹ d, with f kept in a
 * table.
 *
 * <p>The tensor M of a Moffat profile is that of the Gaussian of the same half-maximum width
 * (Moffat 1969, A&amp;A 3, 455: FWHM = 2α√(2^(1/β) − 1)), because the second moment of a Moffat
 * wing has no useful value; the light inside the window is wider by {@link #widening}. A disc or
 * ring blurred by a Gaussian counts with its true second moments, D²(1 + ε²)/16 + σ².
 */
final class EllipticalProfile implements Profile {
  private static final double REACH = 40;
  private static final int STEPS_PER_UNIT = 32;
  private static final int ENTRIES = (int) REACH * STEPS_PER_UNIT + 2;

  private final double[] values = new double[ENTRIES];
  private final double[] slopes = new double[ENTRIES];
  private final double fluxPerAreaUnit;
  private final double halfMaximumReach;
  private final boolean endless;

  /** Light and its second moment, summed from the centre outwards. */
  private final double[] lights = new double[ENTRIES];

  private final double[] seconds = new double[ENTRIES];

  /**
   * @param radial light over reduced radius √q, any scale
   */
  private EllipticalProfile(DoubleUnaryOperator radial, boolean endless) {
    double peak = 0;
    for (int i = 0; i < ENTRIES; i++) {
      values[i] = radial.applyAsDouble(Math.sqrt((double) i / STEPS_PER_UNIT));
      peak = Math.max(peak, values[i]);
    }
    double sum = 0;
    for (int i = 0; i < ENTRIES; i++) {
      values[i] /= peak;
      sum += values[i] * (i == 0 ? 0.5 : 1);
    }
    for (int i = 0; i + 1 < ENTRIES; i++) {
      slopes[i] = (values[i + 1] - values[i]) * STEPS_PER_UNIT;
    }
    // ∫ f d²z over reduced coordinates = π ∫ f dq
    fluxPerAreaUnit = Math.PI * sum / STEPS_PER_UNIT;
    halfMaximumReach = Math.sqrt(outermostHalf(values));
    this.endless = endless;
    for (int i = 0; i < ENTRIES; i++) {
      lights[i] = values[i] + (i == 0 ? 0 : lights[i - 1]);
      seconds[i] = values[i] * i / STEPS_PER_UNIT / 2 + (i == 0 ? 0 : seconds[i - 1]);
    }
  }

  /** The Gaussian. */
  static EllipticalProfile gaussian() {
    return new EllipticalProfile(radius -> Math.exp(-radius * radius / 2), false);
  }

  /** A Moffat profile; moments are those of the Gaussian with equal half-maximum width. */
  static EllipticalProfile moffat(double beta) {
    double halfMaximumRadius = Moments.FWHM_PER_SIGMA / 2;
    double alphaSquared = halfMaximumRadius * halfMaximumRadius / (Math.pow(2, 1 / beta) - 1);
    return new EllipticalProfile(
        radius -> Math.pow(1 + radius * radius / alphaSquared, -beta), true);
  }

  /**
   * A uniform ring blurred by a Gaussian, as out-of-focus stars are.
   *
   * @param flatShare share of the second moment that the ring makes, in (0, 1)
   * @param hole inner over outer diameter, 0 for a disc
   */
  static EllipticalProfile disc(double flatShare, double hole) {
    double outerRadius = 2 * Math.sqrt(flatShare / (1 + hole * hole));
    double sigma = Math.sqrt(1 - flatShare);
    return new EllipticalProfile(
        radius -> RingBlur.lightAt(radius, hole * outerRadius, outerRadius, sigma), false);
  }

  /**
   * Second moments of the light inside a window over those of the Gaussian of equal FWHM; 1 for
   * profiles whose light ends.
   */
  double widening(double windowSigmas) {
    if (!endless) {
      return 1;
    }
    int end = (int) Math.min(ENTRIES - 1.0, windowSigmas * windowSigmas * STEPS_PER_UNIT);
    // closed form for the Gaussian, h = w²/2: 1 − h/(eʰ − 1)
    double half = windowSigmas * windowSigmas / 2;
    return seconds[end] / lights[end] / (1 - half / Math.expm1(half));
  }

  private static double outermostHalf(double[] table) {
    for (int i = table.length - 1; i > 0; i--) {
      if (table[i - 1] >= 0.5) {
        double part = (table[i - 1] - 0.5) / (table[i - 1] - table[i]);
        return (i - 1 + part) / STEPS_PER_UNIT;
      }
    }
    throw new IllegalArgumentException("profile has no half maximum inside its table");
  }

  @Override
  public void evaluate(FitPixels pixels, double xPx, double yPx, Moments moments, double[] out) {
    double determinant = moments.majorPx2() * moments.minorPx2();
    double inverseXx = moments.yyPx2() / determinant;
    double inverseXy = -moments.xyPx2() / determinant;
    double inverseYy = moments.xxPx2() / determinant;
    double perFlux = 1 / (fluxPerAreaUnit * Math.sqrt(determinant));
    for (int i = 0, at = 0; i < pixels.count(); i++, at += STRIDE) {
      double dx = pixels.x(i) - xPx;
      double dy = pixels.y(i) - yPx;
      double reducedX = inverseXx * dx + inverseXy * dy;
      double reducedY = inverseXy * dx + inverseYy * dy;
      double place = (dx * reducedX + dy * reducedY) * STEPS_PER_UNIT;
      int entry = (int) Math.min(place, ENTRIES - 2.0);
      double fraction = Math.min(place - entry, 1);
      double bend = slopes[entry + 1] - slopes[entry];
      double value = (values[entry] + fraction * slopes[entry] / STEPS_PER_UNIT) * perFlux;
      // slopes belong to the middle of a step
      double slope = (slopes[entry] + (fraction - 0.5) * bend) * perFlux;
      out[at] = value;
      out[at + 1] = -2 * slope * reducedX;
      out[at + 2] = -2 * slope * reducedY;
      out[at + 3] = -slope * reducedX * reducedX - inverseXx / 2 * value;
      out[at + 4] = -2 * slope * reducedX * reducedY - inverseXy * value;
      out[at + 5] = -slope * reducedY * reducedY - inverseYy / 2 * value;
    }
  }

  @Override
  public Moments lightMoments(Moments fitted, double windowSigmas) {
    return fitted.times(widening(windowSigmas));
  }

  @Override
  public double fwhmMajorPx(Moments moments) {
    return 2 * halfMaximumReach * Math.sqrt(moments.majorPx2());
  }

  @Override
  public double fwhmMinorPx(Moments moments) {
    return 2 * halfMaximumReach * Math.sqrt(moments.minorPx2());
  }
}
