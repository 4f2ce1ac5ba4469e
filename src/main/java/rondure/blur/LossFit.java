package rondure.blur;

import java.util.Arrays;
import rondure.base.RobustStats;

/**
 * Solves for the light that each frame lost, from stars that come and go.
 *
 * <p>m(star, frame) = M(star) + z(frame) + c · P(place): every star has its own magnitude, every
 * frame its loss, and what stays with the camera (vignetting, the air's extinction towards the
 * horizon) is a surface P = (x, y, x², xy, y², (x² + y²)²) over the frame. Least squares with the
 * stars' magnitudes eliminated; weights by measuring error, then by Tukey's function of the
 * residual. Where all stars drift alike, a linear surface and a steady loss look the same: a prior
 * on the surface holds it down there, and the errors say so.
 */
final class LossFit {
  private static final int SURFACE = 6;

  /** Vignetting of a few stops; the first two, the air's extinction, are given. */
  private static final double[] PRIOR_MAG = {Double.NaN, Double.NaN, 1.5, 1, 1.5, 1.5};

  /** Holds the sum of the losses near zero: only differences are known. */
  private static final double GAUGE = 1e-6;

  private static final int STEPS = 5;
  private static final int HUBER_STEPS = 2;
  private static final double HUBER = 1.345;
  private static final double TUKEY = 4.685;
  private static final double LEAST_SCALE = 0.3;

  /** A star of which one entry holds nearly all weight tells nothing about that entry. */
  private static final double LEAST_OTHERS = 0.02;

  /** Fewer entries do not tell a frame's own scatter. */
  private static final int LEAST_FOR_SCALE = 6;

  private final StarLight light;
  private final LinkedFrames links;
  private final int[][] byStar;
  private final int[][] byFrame;
  private final int[] first;
  private final double[] weights;
  private final double[] residuals;
  private final double[][] surface;
  private double[] solution;
  private SkylineCholesky decomposition;
  private final double[] priors;
  private final double[] scales;

  private LossFit(StarLight light, LinkedFrames links, double slopePriorMag) {
    this.light = light;
    this.links = links;
    this.byStar = light.byStar();
    this.byFrame = light.byFrame();
    this.first = first();
    this.priors = PRIOR_MAG.clone();
    this.priors[0] = slopePriorMag;
    this.priors[1] = slopePriorMag;
    this.scales = new double[light.frames];
    Arrays.fill(scales, 1);
    this.weights = new double[light.size()];
    this.residuals = new double[light.size()];
    this.surface = new double[light.size()][];
    for (int i = 0; i < light.size(); i++) {
      weights[i] = 1 / (light.error[i] * light.error[i]);
      surface[i] = surfaceAt(light.x[i], light.y[i]);
    }
  }

  /**
   * z, their errors beside the mean of the frames linked, and for each entry m - M - z - c · P,
   * with M as the star's other entries give it.
   */
  static final class Solved {
    private final double[] lossMag;
    private final double[] errorMag;
    private final double[] residualMag;

    private Solved(double[] lossMag, double[] errorMag, double[] residualMag) {
      this.lossMag = lossMag;
      this.errorMag = errorMag;
      this.residualMag = residualMag;
    }

    double[] lossMag() {
      return lossMag;
    }

    double[] errorMag() {
      return errorMag;
    }

    double[] residualMag() {
      return residualMag;
    }
  }

  /**
   * Solves; entries of stars seen once have residual 0.
   *
   * @param slopePriorMag how much light may be lost, steadily, over half a diagonal
   */
  static Solved of(StarLight light, LinkedFrames links, double slopePriorMag) {
    LossFit fit = new LossFit(light, links, slopePriorMag);
    for (int step = 0; step < STEPS; step++) {
      fit.solve();
      fit.reweigh(step < HUBER_STEPS);
    }
    fit.solve();
    return new Solved(
        Arrays.copyOf(fit.solution, light.frames), fit.errors(), fit.residuals.clone());
  }

  private static double[] surfaceAt(double x, double y) {
    double square = x * x + y * y;
    return new double[] {x, y, x * x, x * y, y * y, square * square};
  }

  private void solve() {
    int size = light.frames + SURFACE;
    double[][] matrix = new double[size][];
    for (int i = 0; i < size; i++) {
      matrix[i] = new double[i - first[i] + 1];
      matrix[i][i - first[i]] = i < light.frames ? GAUGE : precision(i - light.frames);
    }
    double[] right = new double[size];
    for (int[] entries : byStar) {
      addStar(entries, matrix, right);
    }
    decomposition = new SkylineCholesky(first, matrix);
    solution = decomposition.solve(right);
    for (int[] entries : byStar) {
      updateResiduals(entries);
    }
  }

  private double precision(int ofSurface) {
    return 1 / (priors[ofSurface] * priors[ofSurface]);
  }

  /** The first unknown that each meets: frames meet those with which they share a star. */
  private int[] first() {
    int[] first = new int[light.frames + SURFACE];
    for (int f = 0; f < light.frames; f++) {
      first[f] = f;
    }
    for (int[] entries : byStar) {
      int earliest = Arrays.stream(entries).map(i -> light.frame[i]).min().orElse(0);
      for (int i : entries) {
        first[light.frame[i]] = Math.min(first[light.frame[i]], earliest);
      }
    }
    return first;
  }

  /** Adds a star's normal equations, its own magnitude eliminated, to the lower triangle. */
  private void addStar(int[] entries, double[][] matrix, double[] right) {
    double sum = 0;
    double mean = 0;
    double[] meanSurface = new double[SURFACE];
    for (int i : entries) {
      sum += weights[i];
      mean += weights[i] * light.magnitude[i];
      for (int k = 0; k < SURFACE; k++) {
        meanSurface[k] += weights[i] * surface[i][k];
      }
    }
    if (!(sum > 0) || entries.length < 2) {
      return;
    }
    mean /= sum;
    for (int k = 0; k < SURFACE; k++) {
      meanSurface[k] /= sum;
    }
    for (int i : entries) {
      addEntry(i, mean, meanSurface, matrix, right);
      double share = weights[i] / sum;
      int at = light.frame[i];
      for (int j : entries) {
        if (light.frame[j] <= at) {
          matrix[at][light.frame[j] - first[at]] -= share * weights[j];
        }
      }
    }
  }

  private void addEntry(
      int i, double mean, double[] meanSurface, double[][] matrix, double[] right) {
    int at = light.frame[i];
    double gap = light.magnitude[i] - mean;
    matrix[at][at - first[at]] += weights[i];
    right[at] += weights[i] * gap;
    for (int k = 0; k < SURFACE; k++) {
      double centred = surface[i][k] - meanSurface[k];
      double[] row = matrix[light.frames + k];
      row[at] += weights[i] * centred;
      right[light.frames + k] += weights[i] * centred * gap;
      for (int l = 0; l <= k; l++) {
        row[light.frames + l] += weights[i] * centred * (surface[i][l] - meanSurface[l]);
      }
    }
  }

  private void updateResiduals(int[] entries) {
    double sum = 0;
    double mean = 0;
    for (int i : entries) {
      residuals[i] = light.magnitude[i] - solution[light.frame[i]];
      for (int k = 0; k < SURFACE; k++) {
        residuals[i] -= solution[light.frames + k] * surface[i][k];
      }
      sum += weights[i];
      mean += weights[i] * residuals[i];
    }
    mean = sum > 0 ? mean / sum : 0;
    for (int i : entries) {
      double others = sum > 0 ? 1 - weights[i] / sum : 0;
      residuals[i] = others > LEAST_OTHERS ? (residuals[i] - mean) / others : 0;
    }
  }

  /**
   * Weights of Huber, which finds its way from anywhere, then of Tukey; each frame on its own
   * scale, so that behind patches of cloud the mean counts and not the largest patch.
   */
  private void reweigh(boolean huber) {
    double[] sigmas = new double[residuals.length];
    for (int i = 0; i < sigmas.length; i++) {
      sigmas[i] = residuals[i] == 0 ? Double.NaN : residuals[i] / light.error[i];
    }
    double common = scale(sigmas, LEAST_SCALE);
    for (int f = 0; f < byFrame.length; f++) {
      double[] own = Arrays.stream(byFrame[f]).mapToDouble(i -> sigmas[i]).toArray();
      scales[f] = own.length < LEAST_FOR_SCALE ? common : scale(own, common);
      for (int i : byFrame[f]) {
        double sigma = light.error[i] * scales[f];
        double u = Math.abs(residuals[i]) / sigma;
        double down = huber ? Math.min(1, HUBER / u) : tukey(u / TUKEY);
        weights[i] = Math.max(1e-6, down) / (sigma * sigma);
      }
    }
  }

  private static double scale(double[] sigmas, double least) {
    double measured = RobustStats.madSigma(sigmas);
    return Double.isNaN(measured) ? Math.max(1, least) : Math.max(least, measured);
  }

  private static double tukey(double share) {
    return share < 1 ? (1 - share * share) * (1 - share * share) : 0;
  }

  /** Of z beside the mean of its group: variance of own, less twice the shared, plus the mean's. */
  private double[] errors() {
    double[] own = decomposition.inverseDiagonal();
    double[] errors = new double[light.frames];
    for (int group : links.groups()) {
      int[] members = links.members(group);
      double[] mean = new double[light.frames + SURFACE];
      Arrays.stream(members).forEach(i -> mean[i] = 1.0 / members.length);
      double[] shared = decomposition.solve(mean);
      double ofMean = Arrays.stream(members).mapToDouble(i -> shared[i]).average().orElse(0);
      for (int i : members) {
        errors[i] = Math.sqrt(Math.max(0, own[i] - 2 * shared[i] + ofMean));
      }
    }
    return errors;
  }
}
