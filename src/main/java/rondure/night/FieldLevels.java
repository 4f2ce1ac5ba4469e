package rondure.night;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import rondure.base.RobustStats;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * Second moment of each frame of a series, mean over the field of the stars, not over the stars.
 *
 * <p>The mean over a field of the second moment is an exact parabola in the position of the focus
 * with its minimum where the field's mean signed disc is none, however tilted or curved the field:
 * mean (d + g)² = (d + mean g)² + var g. Its median is not, and few stars sample the field
 * unevenly: what grows with x, y and r² from the centre, as the products of d with tilt and
 * curvature do, is fitted and taken at the field's own mean.
 *
 * @param px2 of each frame, mean of both axes
 * @param errorPx2 their standard errors from the noise of the pixels
 */
record FieldLevels(List<Double> px2, List<Double> errorPx2) {
  /** Fewer stars give their plain mean. */
  private static final int LEAST_STARS = 20;

  private static final int TERMS = 4;
  private static final int ROUNDS = 3;

  /** Stars farther off than this are no stars; a tilted field draws many of them far apart. */
  private static final double CLIP_SIGMAS = 10;

  /** The field is where stars are: cells of it that hold one in any frame. */
  private static final int ROWS = 2;

  private static final int COLUMNS = 3;

  /** So many stars fill cells of half the size. */
  private static final int FINE_FROM = 120;

  FieldLevels {
    px2 = List.copyOf(px2);
    errorPx2 = List.copyOf(errorPx2);
  }

  /** Of frames of one size with at least one star each. */
  static FieldLevels of(List<StarField> fields) {
    int fewest = fields.stream().mapToInt(field -> field.stars().size()).min().orElse(0);
    RealVector middle =
        fewest < LEAST_STARS ? MatrixUtils.createRealVector(new double[] {1}) : middle(fields);
    List<Double> px2 = new ArrayList<>();
    List<Double> errors = new ArrayList<>();
    for (StarField field : fields) {
      double[] level = level(field, middle);
      px2.add(level[0]);
      errors.add(level[1]);
    }
    return new FieldLevels(px2, errors);
  }

  /** 1, x, y and r² about the frame's centre, in half diagonals. */
  private static double[] terms(StarField field, double xPx, double yPx, int count) {
    double half = Math.hypot(field.widthPx(), field.heightPx()) / 2;
    double x = (xPx - (field.widthPx() - 1) / 2.0) / half;
    double y = (yPx - (field.heightPx() - 1) / 2.0) / half;
    return Arrays.copyOf(new double[] {1, x, y, x * x + y * y}, count);
  }

  /** Mean of the terms over the cells with stars. */
  private static RealVector middle(List<StarField> fields) {
    StarField first = fields.get(0);
    int fewest = fields.stream().mapToInt(field -> field.stars().size()).min().orElse(0);
    int finer = fewest >= FINE_FROM ? 2 : 1;
    int columns = finer * COLUMNS;
    int rows = finer * ROWS;
    double cellX = (double) first.widthPx() / columns;
    double cellY = (double) first.heightPx() / rows;
    boolean[] held = new boolean[columns * rows];
    for (StarField field : fields) {
      for (Star star : field.stars()) {
        int column = cell(star.xPx() + 0.5, cellX, columns);
        held[cell(star.yPx() + 0.5, cellY, rows) * columns + column] = true;
      }
    }
    double half2 = Math.pow(Math.hypot(first.widthPx(), first.heightPx()) / 2, 2);
    double within = (cellX * cellX + cellY * cellY) / 12 / half2;
    RealVector sum = MatrixUtils.createRealVector(TERMS);
    int count = 0;
    for (int k = 0; k < held.length; k++) {
      if (held[k]) {
        double x = (k % columns + 0.5) * cellX - 0.5;
        double y = (k / columns + 0.5) * cellY - 0.5;
        sum = sum.add(MatrixUtils.createRealVector(terms(first, x, y, TERMS)));
        count++;
      }
    }
    RealVector mean = sum.mapDivide(count);
    mean.addToEntry(TERMS - 1, within);
    return mean;
  }

  private static int cell(double place, double size, int cells) {
    return (int) Math.max(0, Math.min(cells - 1, place / size));
  }

  /** Level and error of one frame: least squares of all terms, far stars left out in turn. */
  private static double[] level(StarField field, RealVector middle) {
    int count = middle.getDimension();
    List<Star> stars = field.stars();
    RealVector solved = MatrixUtils.createRealVector(count);
    solved.setEntry(0, RobustStats.median(means(stars)));
    RealVector weights = middle;
    List<Star> near = stars;
    for (int round = 0; round < ROUNDS; round++) {
      double reach = CLIP_SIGMAS * RobustStats.madSigma(residuals(field, stars, solved)) + 1e-9;
      RealVector line = solved;
      near = stars.stream().filter(star -> Math.abs(residual(field, star, line)) <= reach).toList();
      RealMatrix normal = MatrixUtils.createRealMatrix(count, count);
      RealVector right = MatrixUtils.createRealVector(count);
      for (Star star : near) {
        RealVector row = MatrixUtils.createRealVector(terms(field, star.xPx(), star.yPx(), count));
        normal = normal.add(row.outerProduct(row));
        right = right.add(row.mapMultiply(star.moments().meanPx2()));
      }
      LUDecomposition solver = new LUDecomposition(normal, 1e-12);
      if (!solver.getSolver().isNonSingular()) {
        break;
      }
      solved = solver.getSolver().solve(right);
      weights = solver.getSolver().solve(middle);
    }
    return new double[] {solved.dotProduct(middle), noise(field, near, weights)};
  }

  private static double[] means(List<Star> stars) {
    return stars.stream().mapToDouble(star -> star.moments().meanPx2()).toArray();
  }

  private static double[] residuals(StarField field, List<Star> stars, RealVector solved) {
    return stars.stream().mapToDouble(star -> residual(field, star, solved)).toArray();
  }

  private static double residual(StarField field, Star star, RealVector solved) {
    double[] row = terms(field, star.xPx(), star.yPx(), solved.getDimension());
    return star.moments().meanPx2() - solved.dotProduct(MatrixUtils.createRealVector(row));
  }

  /** The level is a weighted sum of the stars' moments. */
  private static double noise(StarField field, List<Star> stars, RealVector weights) {
    double sum = 0;
    for (Star star : stars) {
      double[] row = terms(field, star.xPx(), star.yPx(), weights.getDimension());
      double weight = weights.dotProduct(MatrixUtils.createRealVector(row));
      double error2 = Math.pow(star.xxErrorPx2(), 2) + Math.pow(star.yyErrorPx2(), 2);
      sum += weight * weight * error2 / 4;
    }
    return Math.max(1e-6, Math.sqrt(sum));
  }
}
