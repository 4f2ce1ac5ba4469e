package rondure.sky;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealVector;
import rondure.base.RobustStats;

/**
 * A smooth displacement over the frame: a polynomial of low degree in the place, for each axis. It
 * takes up what a rotation leaves when the lens is not quite the camera it is taken for.
 */
final class SmoothShift {
  static final SmoothShift NONE = new SmoothShift(0, 1, 0, 0, new double[0], new double[0]);

  private static final int LINEAR_FROM = 12;
  private static final int QUADRATIC_FROM = 30;
  private static final int CUBIC_FROM = 90;
  private static final int PASSES = 3;
  private static final double TUKEY = 4.685;

  private final int terms;
  private final double scalePx;
  private final double middleX;
  private final double middleY;
  private final double[] coefficientsX;
  private final double[] coefficientsY;

  private SmoothShift(
      int terms,
      double scalePx,
      double middleX,
      double middleY,
      double[] coefficientsX,
      double[] coefficientsY) {
    this.terms = terms;
    this.scalePx = scalePx;
    this.middleX = middleX;
    this.middleY = middleY;
    this.coefficientsX = coefficientsX;
    this.coefficientsY = coefficientsY;
  }

  /** Robust fit (Tukey's biweight) to displacements at places; none when there are too few. */
  static SmoothShift fit(double[] x, double[] y, double[] shiftX, double[] shiftY) {
    int terms = terms(x.length);
    if (terms == 0) {
      return NONE;
    }
    double middleX = Arrays.stream(x).average().orElse(0);
    double middleY = Arrays.stream(y).average().orElse(0);
    double scale = 1;
    for (int i = 0; i < x.length; i++) {
      scale = Math.max(scale, Math.max(Math.abs(x[i] - middleX), Math.abs(y[i] - middleY)));
    }
    double[] weights = new double[x.length];
    Arrays.fill(weights, 1);
    SmoothShift fit = NONE;
    for (int pass = 0; pass < PASSES; pass++) {
      SmoothShift empty = new SmoothShift(terms, scale, middleX, middleY, null, null);
      fit = empty.solved(x, y, shiftX, shiftY, weights);
      fit.reweigh(x, y, shiftX, shiftY, weights);
    }
    return fit;
  }

  private static int terms(int points) {
    if (points >= CUBIC_FROM) {
      return 10;
    }
    if (points >= QUADRATIC_FROM) {
      return 6;
    }
    return points >= LINEAR_FROM ? 3 : 0;
  }

  private SmoothShift solved(
      double[] x, double[] y, double[] shiftX, double[] shiftY, double[] weights) {
    double[][] normal = new double[terms][terms];
    double[] rightX = new double[terms];
    double[] rightY = new double[terms];
    double[] basis = new double[terms];
    for (int i = 0; i < x.length; i++) {
      basis(x[i], y[i], basis);
      for (int row = 0; row < terms; row++) {
        double weighted = weights[i] * basis[row];
        rightX[row] += weighted * shiftX[i];
        rightY[row] += weighted * shiftY[i];
        for (int column = 0; column <= row; column++) {
          normal[row][column] += weighted * basis[column];
        }
      }
    }
    for (int row = 0; row < terms; row++) {
      normal[row][row] += 1e-9 * x.length;
      for (int column = 0; column < row; column++) {
        normal[column][row] = normal[row][column];
      }
    }
    var solver = new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false)).getSolver();
    RealVector solvedX = solver.solve(new ArrayRealVector(rightX, false));
    RealVector solvedY = solver.solve(new ArrayRealVector(rightY, false));
    return new SmoothShift(terms, scalePx, middleX, middleY, solvedX.toArray(), solvedY.toArray());
  }

  private void reweigh(double[] x, double[] y, double[] shiftX, double[] shiftY, double[] weights) {
    double[] off = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      ImagePoint moved = moved(new ImagePoint(x[i], y[i]));
      double leftX = x[i] + shiftX[i] - moved.xPx();
      double leftY = y[i] + shiftY[i] - moved.yPx();
      off[i] = Math.sqrt(leftX * leftX + leftY * leftY);
    }
    double sigma = Math.max(0.02, RobustStats.median(off) / 1.1774);
    for (int i = 0; i < x.length; i++) {
      double share = off[i] / (TUKEY * sigma);
      weights[i] = share < 1 ? Math.pow(1 - share * share, 2) : 0;
    }
  }

  private void basis(double px, double py, double[] basis) {
    double u = (px - middleX) / scalePx;
    double v = (py - middleY) / scalePx;
    basis[0] = 1;
    basis[1] = u;
    basis[2] = v;
    if (terms > 3) {
      basis[3] = u * u;
      basis[4] = u * v;
      basis[5] = v * v;
    }
    if (terms > 6) {
      basis[6] = u * u * u;
      basis[7] = u * u * v;
      basis[8] = u * v * v;
      basis[9] = v * v * v;
    }
  }

  /** A place with its displacement. */
  ImagePoint moved(ImagePoint at) {
    if (terms == 0) {
      return at;
    }
    double[] basis = new double[terms];
    basis(at.xPx(), at.yPx(), basis);
    double right = 0;
    double down = 0;
    for (int i = 0; i < terms; i++) {
      right += coefficientsX[i] * basis[i];
      down += coefficientsY[i] * basis[i];
    }
    return new ImagePoint(at.xPx() + right, at.yPx() + down);
  }
}
