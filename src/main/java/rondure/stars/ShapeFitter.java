package rondure.stars;

import java.util.Arrays;
import rondure.base.Moments;

/**
 * Least-squares fit of one {@link Profile} to the pixels of one star (Levenberg 1944, Marquardt
 * 1963), each pixel weighted by its noise.
 *
 * <p>Free: flux, centre, three moments and a small sky correction, held near 0 by a prior of 0.15 σ
 * of the pixel noise, since the mesh has found the sky already. Holds scratch arrays: one fitter
 * per thread; answers depend on the arguments alone.
 */
final class ShapeFitter {
  /** Free parameters of a fit. */
  static final int SIZE = 7;

  private static final int OFFSET = 6;
  private static final double OFFSET_PRIOR_SIGMAS = 0.15;

  /** Two steps in a row that gain less than this in χ² end the fit: far inside its errors. */
  private static final double IDLE_SHARE = 1e-3;

  /** Pixels above this share of the peak tell of photon noise. */
  private static final double BRIGHT_SHARE = 0.05;

  private final double[] normal = new double[SIZE * SIZE];
  private final double[] damped = new double[SIZE * SIZE];
  private final double[] factor = new double[SIZE * SIZE];
  private final double[] gradient = new double[SIZE];
  private final double[] step = new double[SIZE];
  private double[] slopes = new double[1024 * Profile.STRIDE];
  private double[] trialSlopes = new double[1024 * Profile.STRIDE];
  private double[] weights = new double[1024];

  /** A point in the space of parameters. */
  private record Point(double flux, double x, double y, Moments moments, double offset) {
    Point moved(double[] by, double part) {
      Moments change = new Moments(by[3], by[4], by[5]).times(part);
      return new Point(
          flux + part * by[0],
          x + part * by[1],
          y + part * by[2],
          moments.plus(change),
          offset + part * by[OFFSET]);
    }

    boolean allowed(double smallestPx2, double largestPx2) {
      return moments.minorPx2() > smallestPx2 && moments.majorPx2() < largestPx2;
    }
  }

  /**
   * Fits a profile.
   *
   * @param pixels the star's window, at least 8 pixels
   * @param noise of the pixels; those with much starlight weigh less
   * @param profile the family of models
   * @param start centre, rough flux and moments to start from
   * @param stepsMax steps after which the fit stops, settled or not
   */
  ShapeFit fit(FitPixels pixels, PixelNoise noise, Profile profile, Placed start, int stepsMax) {
    reserve(pixels.count() * Profile.STRIDE);
    double largestPx2 = 9 * start.moments().majorPx2() + 4;
    Point point =
        new Point(start.fluxCounts(), start.xPx(), start.yPx(), floored(start.moments()), 0);
    double prior = 1 / (OFFSET_PRIOR_SIGMAS * OFFSET_PRIOR_SIGMAS);
    evaluate(profile, pixels, point, slopes);
    point = withBestFlux(pixels, point);
    weigh(pixels.count(), noise, point.flux());
    double cost = cost(pixels, point, prior, slopes);
    double damping = 1e-3;
    boolean settled = false;
    int idle = 0;
    for (int i = 0; i < stepsMax && !settled; i++) {
      accumulate(pixels, point, prior);
      if (!solveDamped(damping)) {
        damping = damping * 10 + 1e-6;
        continue;
      }
      double part = allowedPart(point, profile.smallestPx2(), largestPx2);
      if (part == 0) {
        damping = damping * 10 + 1e-6;
        continue;
      }
      Point trial = point.moved(step, part);
      evaluate(profile, pixels, trial, trialSlopes);
      double trialCost = cost(pixels, trial, prior, trialSlopes);
      if (trialCost <= cost) {
        idle = cost - trialCost < IDLE_SHARE * noise.skyCounts() * noise.skyCounts() ? idle + 1 : 0;
        settled = damping < 1 && (part == 1 && isSmall(point) || idle >= 2);
        swap();
        point = trial;
        cost = trialCost;
        damping = Math.max(1e-9, damping / 10);
      } else {
        settled = isSmall(point);
        damping = Math.min(1e6, damping * 8);
      }
    }
    return answer(pixels, noise, profile, point, settled && point.flux() > 0);
  }

  private static Moments floored(Moments moments) {
    double lacking = Math.max(0, 0.15 - moments.minorPx2());
    return moments.plus(Moments.round(lacking));
  }

  private void reserve(int size) {
    if (size > slopes.length) {
      slopes = new double[2 * size];
      trialSlopes = new double[2 * size];
      weights = new double[2 * size / Profile.STRIDE + 1];
    }
  }

  private void swap() {
    double[] kept = slopes;
    slopes = trialSlopes;
    trialSlopes = kept;
  }

  private static void evaluate(Profile profile, FitPixels pixels, Point point, double[] out) {
    profile.evaluate(pixels, point.x(), point.y(), point.moments(), out);
  }

  private Point withBestFlux(FitPixels pixels, Point point) {
    double products = 0;
    double squares = 0;
    for (int i = 0, at = 0; i < pixels.count(); i++, at += Profile.STRIDE) {
      products += pixels.value(i) * slopes[at];
      squares += slopes[at] * slopes[at];
    }
    double flux = squares > 0 ? products / squares : point.flux();
    return new Point(flux, point.x(), point.y(), point.moments(), point.offset());
  }

  private double cost(FitPixels pixels, Point point, double prior, double[] model) {
    double sum = prior * point.offset() * point.offset();
    for (int i = 0, at = 0; i < pixels.count(); i++, at += Profile.STRIDE) {
      double gap = pixels.value(i) - point.flux() * model[at] - point.offset();
      sum += weights[i] * gap * gap;
    }
    return sum;
  }

  /** Normal matrix (lower triangle) and gradient at a point whose slopes are in place. */
  private void accumulate(FitPixels pixels, Point point, double prior) {
    Arrays.fill(normal, 0);
    Arrays.fill(gradient, 0);
    double[] row = new double[SIZE];
    for (int i = 0, at = 0; i < pixels.count(); i++, at += Profile.STRIDE) {
      fillRow(row, at, point.flux());
      double gap = pixels.value(i) - point.flux() * slopes[at] - point.offset();
      addProducts(normal, row, weights[i]);
      for (int k = 0; k < SIZE; k++) {
        gradient[k] += weights[i] * row[k] * gap;
      }
    }
    normal[OFFSET * SIZE + OFFSET] += prior;
    gradient[OFFSET] -= prior * point.offset();
  }

  private void fillRow(double[] row, int at, double flux) {
    row[0] = slopes[at];
    for (int k = 1; k < OFFSET; k++) {
      row[k] = flux * slopes[at + k];
    }
    row[OFFSET] = 1;
  }

  private static void addProducts(double[] matrix, double[] row, double weight) {
    for (int k = 0; k < SIZE; k++) {
      double weighted = weight * row[k];
      for (int other = 0; other <= k; other++) {
        matrix[k * SIZE + other] += weighted * row[other];
      }
    }
  }

  private boolean solveDamped(double damping) {
    System.arraycopy(normal, 0, damped, 0, normal.length);
    for (int k = 0; k < SIZE; k++) {
      damped[k * SIZE + k] *= 1 + damping;
    }
    if (!SmallMatrix.factorise(damped, factor, SIZE)) {
      return false;
    }
    System.arraycopy(gradient, 0, step, 0, SIZE);
    SmallMatrix.solve(factor, step, SIZE);
    return true;
  }

  /** The largest of 1, ½, ¼ … of the step that stays inside the bounds; 0 when none does. */
  private double allowedPart(Point point, double smallestPx2, double largestPx2) {
    double part = 1;
    for (int i = 0; i < 12; i++) {
      if (point.moved(step, part).allowed(smallestPx2, largestPx2)) {
        return part;
      }
      part /= 2;
    }
    return 0;
  }

  private boolean isSmall(Point point) {
    double scale = point.moments().meanPx2();
    double largest = 0;
    for (int k = 3; k < OFFSET; k++) {
      largest = Math.max(largest, Math.abs(step[k]));
    }
    double shift = Math.hypot(step[1], step[2]);
    return largest < 5e-4 * scale && shift < 5e-4 * Math.sqrt(scale) + 1e-5;
  }

  private void weigh(int count, PixelNoise noise, double flux) {
    for (int i = 0; i < count; i++) {
      weights[i] = noise.weight(flux * slopes[i * Profile.STRIDE]);
    }
  }

  private ShapeFit answer(
      FitPixels pixels, PixelNoise noise, Profile profile, Point point, boolean settled) {
    accumulate(pixels, point, 1 / (OFFSET_PRIOR_SIGMAS * OFFSET_PRIOR_SIGMAS));
    ShapeFit.Errors errors = errors(pixels.count(), noise, point);
    return new ShapeFit(
        settled && errors.decide(point.moments()),
        point.x(),
        point.y(),
        point.flux(),
        point.offset(),
        point.moments(),
        profile,
        residual(pixels, noise, point),
        errors);
  }

  private ShapeFit.Residual residual(FitPixels pixels, PixelNoise noise, Point point) {
    double squares = 0;
    double weighted = 0;
    double signalSquares = 0;
    for (int i = 0, at = 0; i < pixels.count(); i++, at += Profile.STRIDE) {
      double model = point.flux() * slopes[at];
      double gap = pixels.value(i) - model - point.offset();
      squares += gap * gap;
      weighted += weights[i] * gap * gap;
      signalSquares += model * model;
    }
    double gain = gain(pixels, noise, point);
    double chiSquare = weighted / (noise.skyCounts() * noise.skyCounts());
    return new ShapeFit.Residual(pixels.count(), squares, chiSquare, signalSquares, gain);
  }

  /**
   * Variance per count of starlight, from the bright pixels: the mean of (residual²/(1 − h) − sky²)
   * over the light, each pixel counted by its light; h is the pixel's leverage on the fit.
   */
  private double gain(FitPixels pixels, PixelNoise noise, Point point) {
    if (!SmallMatrix.factorise(normal, factor, SIZE)) {
      return 0;
    }
    double sky = noise.skyCounts() * noise.skyCounts();
    double least = BRIGHT_SHARE * Math.max(0, pixels.peak());
    double excess = 0;
    double light = 0;
    double[] row = new double[SIZE];
    double[] solved = new double[SIZE];
    for (int i = 0, at = 0; i < pixels.count(); i++, at += Profile.STRIDE) {
      double model = point.flux() * slopes[at];
      if (model > least) {
        fillRow(row, at, point.flux());
        System.arraycopy(row, 0, solved, 0, SIZE);
        SmallMatrix.solve(factor, solved, SIZE);
        double leverage = 0;
        for (int k = 0; k < SIZE; k++) {
          leverage += weights[i] * row[k] * solved[k];
        }
        double gap = pixels.value(i) - model - point.offset();
        excess += (gap * gap / Math.max(0.15, 1 - leverage) - sky) * model;
        light += model * model;
      }
    }
    return light > 0 ? excess / light : 0;
  }

  /** Covariance A⁻¹ B A⁻¹ with A = Σ w j jᵀ and B = Σ w² variance j jᵀ, B in its two parts. */
  private ShapeFit.Errors errors(int count, PixelNoise noise, Point point) {
    double[] skyPart = new double[SIZE * SIZE];
    double[] starPart = new double[SIZE * SIZE];
    double[] row = new double[SIZE];
    double matched = 0;
    double matchedSky = 0;
    double matchedStar = 0;
    double sky = noise.skyCounts() * noise.skyCounts();
    for (int i = 0, at = 0; i < count; i++, at += Profile.STRIDE) {
      double model = Math.max(0, point.flux() * slopes[at]);
      double square = weights[i] * weights[i];
      fillRow(row, at, point.flux());
      addProducts(skyPart, row, square * sky);
      addProducts(starPart, row, square * model);
      double shape = slopes[at] * slopes[at];
      matched += weights[i] * shape;
      matchedSky += square * shape * sky;
      matchedStar += square * shape * model;
    }
    double[] skies = variances(skyPart);
    double[] stars = variances(starPart);
    return new ShapeFit.Errors(
        skies[0],
        skies[1],
        skies[2],
        stars[0],
        stars[1],
        stars[2],
        matchedSky / (matched * matched),
        matchedStar / (matched * matched));
  }

  /** Variances of the three moments, infinite when the fit left them open. */
  private double[] variances(double[] part) {
    double[] found = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    if (SmallMatrix.factorise(normal, factor, SIZE)) {
      for (int k = 0; k < 3; k++) {
        double[] row = new double[SIZE];
        row[3 + k] = 1;
        SmallMatrix.solve(factor, row, SIZE);
        found[k] = SmallMatrix.form(part, row, row, SIZE);
      }
    }
    return found;
  }
}
