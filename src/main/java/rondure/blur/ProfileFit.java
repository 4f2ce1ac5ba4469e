package rondure.blur;

import rondure.base.Moments;

/**
 * How well a core behind a disc of defocus describes an average star, for discs of growing share.
 *
 * <p>Model: core ⊗ disc ⊗ line of the star's own stretch ⊗ pixel ⊗ the average's own box, averaged
 * around the star; light at radius r is ∫ k J0(kr) C(k) dk of the product C of the transforms. The
 * core's width and form, the amplitude and a rest of the sky's level are free.
 */
final class ProfileFit {
  private static final int WAVES = 160;
  private static final double HIGHEST_WAVE_PER_FWHM = 25;
  private static final int DIRECTIONS = 8;
  private static final int ROUNDS = 22;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
  private static final double NARROWEST = 0.12;
  private static final double WIDEST = 1.2;
  private static final double LEVEL_ERROR = 0.002;

  private final AverageProfile star;
  private final double[] errors;
  private final double fwhmPx;
  private final double[] waves = new double[WAVES];
  private final double[] besides = new double[WAVES];
  private final double[][] toLight;

  /**
   * @param star average star
   * @param fwhmPx about its half-maximum width
   * @param stretchPx2 spin-2 length of its second moments
   * @param floor error of the model, share of the peak
   */
  ProfileFit(AverageProfile star, double fwhmPx, double stretchPx2, double floor) {
    this.star = star;
    this.fwhmPx = fwhmPx;
    errors = new double[star.light.length];
    for (int i = 0; i < errors.length; i++) {
      errors[i] = Math.hypot(star.errors[i], floor);
    }
    double step = HIGHEST_WAVE_PER_FWHM / fwhmPx / WAVES;
    double linePx = Math.sqrt(24 * stretchPx2);
    toLight = new double[errors.length][WAVES];
    for (int j = 0; j < WAVES; j++) {
      waves[j] = (j + 0.5) * step;
      besides[j] = line(waves[j], linePx) * squares(waves[j], star.boxPx);
      for (int i = 0; i < errors.length; i++) {
        toLight[i][j] = waves[j] * step * RoundWaves.j0(star.radiiPx[i] * waves[j]);
      }
    }
  }

  private static double sinc(double x) {
    return Math.abs(x) < 1e-6 ? 1 : Math.sin(x) / x;
  }

  private static double line(double k, double lengthPx) {
    double sum = 0;
    for (int d = 0; d < DIRECTIONS; d++) {
      sum += sinc(k * lengthPx / 2 * Math.cos((d + 0.5) / DIRECTIONS * Math.PI / 2));
    }
    return sum / DIRECTIONS;
  }

  /** The pixel and the average's box. */
  private static double squares(double k, double boxPx) {
    double sum = 0;
    for (int d = 0; d < DIRECTIONS; d++) {
      double x = k / 2 * Math.cos((d + 0.5) / DIRECTIONS * Math.PI / 2);
      double y = k / 2 * Math.sin((d + 0.5) / DIRECTIONS * Math.PI / 2);
      sum += sinc(x) * sinc(y) * sinc(x * boxPx) * sinc(y * boxPx);
    }
    return sum / DIRECTIONS;
  }

  int points() {
    return errors.length;
  }

  /**
   * A fit.
   *
   * @param chi2 sum of squares over errors
   * @param core its form
   * @param coreFwhmPx half-maximum width of the core, pixel not included
   */
  record Best(double chi2, CoreWaves core, double coreFwhmPx) {}

  /**
   * The best core behind a disc.
   *
   * @param share D²/16 over that and the second moment of the Gaussian as wide as the core
   */
  Best behind(double share) {
    Best best = new Best(Double.POSITIVE_INFINITY, CoreWaves.GAUSSIAN, fwhmPx);
    for (CoreWaves core : CoreWaves.values()) {
      Best one = behind(core, share);
      best = one.chi2() < best.chi2() ? one : best;
    }
    return best;
  }

  /** Golden section search over the core's width. */
  private Best behind(CoreWaves core, double share) {
    double low = NARROWEST * fwhmPx;
    double high = WIDEST * fwhmPx;
    double left = high - GOLDEN * (high - low);
    double right = low + GOLDEN * (high - low);
    double atLeft = chi2(core, share, left);
    double atRight = chi2(core, share, right);
    for (int round = 0; round < ROUNDS; round++) {
      if (atLeft < atRight) {
        high = right;
        right = left;
        atRight = atLeft;
        left = high - GOLDEN * (high - low);
        atLeft = chi2(core, share, left);
      } else {
        low = left;
        left = right;
        atLeft = atRight;
        right = low + GOLDEN * (high - low);
        atRight = chi2(core, share, right);
      }
    }
    return atLeft < atRight ? new Best(atLeft, core, left) : new Best(atRight, core, right);
  }

  /** Diameter of the disc of a share behind a core. */
  static double discPx(double share, double coreFwhmPx) {
    return 4 * coreFwhmPx / Moments.FWHM_PER_SIGMA * Math.sqrt(share / (1 - share));
  }

  private double chi2(CoreWaves core, double share, double coreFwhmPx) {
    double radius = discPx(share, coreFwhmPx) / 2;
    double[] product = new double[WAVES];
    for (int j = 0; j < WAVES; j++) {
      product[j] = besides[j] * core.at(waves[j], coreFwhmPx) * RoundWaves.disc(waves[j] * radius);
    }
    double[] model = new double[errors.length];
    for (int i = 0; i < model.length; i++) {
      double sum = 0;
      for (int j = 0; j < WAVES; j++) {
        sum += toLight[i][j] * product[j];
      }
      model[i] = sum;
    }
    return chi2(model);
  }

  /** Amplitude and level by least squares, the level expected to be 0. */
  private double chi2(double[] model) {
    double mm = 0;
    double m = 0;
    double one = 1 / (LEVEL_ERROR * LEVEL_ERROR);
    double my = 0;
    double y = 0;
    for (int i = 0; i < model.length; i++) {
      double weight = 1 / (errors[i] * errors[i]);
      mm += weight * model[i] * model[i];
      m += weight * model[i];
      one += weight;
      my += weight * model[i] * star.light[i];
      y += weight * star.light[i];
    }
    double determinant = mm * one - m * m;
    double amplitude = (my * one - y * m) / determinant;
    double level = (mm * y - m * my) / determinant;
    double chi2 = level * level / (LEVEL_ERROR * LEVEL_ERROR);
    for (int i = 0; i < model.length; i++) {
      double off = (star.light[i] - amplitude * model[i] - level) / errors[i];
      chi2 += off * off;
    }
    return chi2;
  }
}
