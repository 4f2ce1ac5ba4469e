package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.LUDecomposition;

/**
 * A level that holds until one point of a series and grows or falls from there, evenly or along a
 * parabola: weighted least squares for each point that can be the hinge. Each parameter more (the
 * place of the hinge, the bend) must better the misfit by 2 σ, in units of the scatter that the
 * richest leaves.
 *
 * @param start index of the last value of the level; 0 for growth over the whole series
 * @param earliest first index at which the hinge may be as well, within 2 σ (Δχ² = 4)
 * @param latest last such index
 * @param level value until there
 * @param slope per unit of x after it, from there to the end
 * @param misfit sum of squared residuals over variance
 */
record Hinge(int start, int earliest, int latest, double level, double slope, double misfit) {
  /** Δχ² of 2 σ for one parameter. */
  private static final double TWO_SIGMA = 4;

  /** Level, slope, bend and place of the hinge. */
  private static final int MOST_PARAMETERS = 4;

  /** Fewest values after the hinge that show a bend. */
  private static final int LEAST_BENT = 5;

  /** One way to draw it. */
  private record Fit(int start, int parameters, double level, double slope, double misfit) {
    double score(double scatter) {
      return misfit / scatter + TWO_SIGMA * parameters;
    }
  }

  /**
   * Even growth or along a parabola, whichever serves.
   *
   * @param x strictly growing
   * @param sigma standard error of each y, > 0
   * @param leastAfter fewest values after the hinge
   */
  static Hinge of(double[] x, double[] y, double[] sigma, int leastAfter) {
    return of(x, new double[][] {y, sigma}, leastAfter, true);
  }

  /** Even growth alone. */
  static Hinge straight(double[] x, double[] y, double[] sigma, int leastAfter) {
    return of(x, new double[][] {y, sigma}, leastAfter, false);
  }

  private static Hinge of(double[] x, double[][] series, int leastAfter, boolean mayBend) {
    List<Fit> fits = new ArrayList<>();
    for (int start = 0; start < Math.max(1, x.length - leastAfter); start++) {
      fits.add(at(start, 2, x, series));
      if (mayBend && x.length - start > Math.max(LEAST_BENT, leastAfter)) {
        fits.add(at(start, 3, x, series));
      }
    }
    double least = fits.stream().mapToDouble(Fit::misfit).min().orElseThrow();
    double scatter = Math.max(1e-12, least / Math.max(1, x.length - MOST_PARAMETERS));
    Fit best =
        fits.stream().min(Comparator.comparingDouble(fit -> fit.score(scatter))).orElseThrow();
    double limit = best.score(scatter) + TWO_SIGMA;
    int[] may =
        fits.stream().filter(fit -> fit.score(scatter) <= limit).mapToInt(Fit::start).toArray();
    int earliest = Arrays.stream(may).min().orElseThrow();
    int latest = Arrays.stream(may).max().orElseThrow();
    return new Hinge(best.start, earliest, latest, best.level, best.slope, best.misfit);
  }

  /**
   * @param terms level and slope, or these and a bend
   * @param series values and their standard errors
   */
  private static Fit at(int start, int terms, double[] x, double[][] series) {
    double[][] design = new double[x.length][terms];
    double[] right = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double u = Math.max(0, x[i] - x[start]);
      for (int k = 0; k < terms; k++) {
        design[i][k] = Math.pow(u, k) / series[1][i];
      }
      right[i] = series[0][i] / series[1][i];
    }
    Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(design, false);
    ArrayRealVector values = new ArrayRealVector(right, false);
    DecompositionSolver solver =
        new LUDecomposition(matrix.transposeMultiply(matrix), 0).getSolver();
    double[] found = solver.solve(matrix.transpose().operate(values)).toArray();
    double misfit =
        Math.pow(values.subtract(matrix.operate(new ArrayRealVector(found))).getNorm(), 2);
    double whole = x[x.length - 1] - x[start];
    double slope = found[1] + (terms > 2 ? found[2] * whole : 0);
    int parameters = terms + (start > 0 ? 1 : 0);
    return new Fit(start, parameters, found[0], slope, misfit);
  }
}
