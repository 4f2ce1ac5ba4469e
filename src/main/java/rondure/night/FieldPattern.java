package rondure.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * How star shapes change over one frame: numbers that turn their signs with the defocus. A tilted,
 * curved or astigmatic field has the disc D + t · x + c r², so that the second moment D²/16 changes
 * over the field by products D t, D c, and the radial stretch by D times the astigmatism.
 *
 * @param values slope to the right, slope down, growth with r², radial stretch with r², px² at one
 *     half diagonal from the centre
 * @param errors standard errors
 */
record FieldPattern(List<Double> values, List<Double> errors) {
  static final int SIZE = 4;

  private static final int LEAST_STARS = 20;
  private static final int ROUNDS = 3;
  private static final double CLIP_SIGMAS = 4;

  FieldPattern {
    values = List.copyOf(values);
    errors = List.copyOf(errors);
  }

  /** Empty for a frame with too few stars. */
  static Optional<FieldPattern> of(StarField field) {
    if (field.stars().size() < LEAST_STARS) {
      return Optional.empty();
    }
    List<double[]> widths = new ArrayList<>();
    List<double[]> stretches = new ArrayList<>();
    double half = Math.hypot(field.widthPx(), field.heightPx()) / 2;
    for (Star star : field.stars()) {
      double x = (star.xPx() - (field.widthPx() - 1) / 2.0) / half;
      double y = (star.yPx() - (field.heightPx() - 1) / 2.0) / half;
      widths.add(new double[] {1, x, y, x * x + y * y, star.moments().meanPx2()});
      double along = (star.moments().xxPx2() - star.moments().yyPx2()) / 2;
      stretches.add(new double[] {1, 0, x * x - y * y, along});
      stretches.add(new double[] {0, 1, 2 * x * y, star.moments().xyPx2()});
    }
    return fit(widths)
        .flatMap(
            width ->
                fit(stretches)
                    .map(
                        stretch ->
                            new FieldPattern(
                                List.of(
                                    width.value(1),
                                    width.value(2),
                                    width.value(3),
                                    stretch.value(2)),
                                List.of(
                                    width.error(1),
                                    width.error(2),
                                    width.error(3),
                                    stretch.error(2)))));
  }

  private record Fitted(RealVector terms, RealMatrix inverse, double scatter) {
    double value(int k) {
      return terms.getEntry(k);
    }

    double error(int k) {
      return Math.max(1e-6, scatter * Math.sqrt(inverse.getEntry(k, k)));
    }
  }

  /** Least squares of the last entry of each row by the others, far ones left out in turn. */
  private static Optional<Fitted> fit(List<double[]> all) {
    int terms = all.get(0).length - 1;
    List<double[]> rows = all;
    Optional<Fitted> fitted = Optional.empty();
    for (int round = 0; round < ROUNDS; round++) {
      double[][] design = new double[rows.size()][];
      double[] right = new double[rows.size()];
      for (int i = 0; i < right.length; i++) {
        design[i] = java.util.Arrays.copyOf(rows.get(i), terms);
        right[i] = rows.get(i)[terms];
      }
      RealMatrix matrix = MatrixUtils.createRealMatrix(design);
      QRDecomposition solver = new QRDecomposition(matrix, 1e-9);
      if (right.length <= terms || !solver.getSolver().isNonSingular()) {
        return Optional.empty();
      }
      RealVector solved = solver.getSolver().solve(MatrixUtils.createRealVector(right));
      double scatter = RobustStats.madSigma(residuals(rows, solved));
      RealMatrix inverse = MatrixUtils.inverse(matrix.transposeMultiply(matrix));
      fitted = Optional.of(new Fitted(solved, inverse, scatter));
      double[] off = residuals(all, solved);
      List<double[]> near = new ArrayList<>();
      for (int i = 0; i < off.length; i++) {
        if (Math.abs(off[i]) <= CLIP_SIGMAS * scatter + 1e-12) {
          near.add(all.get(i));
        }
      }
      rows = near;
    }
    return fitted;
  }

  private static double[] residuals(List<double[]> rows, RealVector terms) {
    double[] off = new double[rows.size()];
    for (int i = 0; i < off.length; i++) {
      double[] row = rows.get(i);
      off[i] = row[row.length - 1];
      for (int k = 0; k < terms.getDimension(); k++) {
        off[i] -= row[k] * terms.getEntry(k);
      }
    }
    return off;
  }
}
