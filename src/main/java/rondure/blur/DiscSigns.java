package rondure.blur;

import java.util.List;

/**
 * On which side of focus each frame is, relative to the one farthest from it, before the lens is
 * known.
 *
 * <p>Tilt, curvature and astigmatism meet the frame's disc d as products d · tilt and so on, so
 * that the slope of the widths over the field, their growth with r² and the radial stretch turn
 * their signs with d: frames on one side of focus agree in them, frames on the other side disagree.
 */
final class DiscSigns {
  private static final int ROUND_TERMS = 4;

  private DiscSigns() {}

  /**
   * 1 or -1 for each frame.
   *
   * @param roundPx2 how much wider than the core each frame's stars are
   */
  static double[] of(List<FrameModel> models, double[] roundPx2) {
    int farthest = 0;
    for (int j = 1; j < roundPx2.length; j++) {
      farthest = roundPx2[j] > roundPx2[farthest] ? j : farthest;
    }
    double[] signs = new double[roundPx2.length];
    double[] reference = features(models.get(farthest));
    for (int j = 0; j < signs.length; j++) {
      double[] features = features(models.get(j));
      double agreement = 0;
      for (int k = 0; k < features.length; k++) {
        agreement += features[k] * reference[k];
      }
      signs[j] = agreement < 0 ? -1 : 1;
    }
    return signs;
  }

  /** Slope to the right and down, growth with r², radial stretch growing with r², px². */
  private static double[] features(FrameModel model) {
    FrameStars stars = model.stars();
    double[][] matrix = new double[ROUND_TERMS][ROUND_TERMS];
    double[] pull = new double[ROUND_TERMS];
    double radial = 0;
    double weight = 0;
    for (int i = 0; i < stars.count; i++) {
      double x = stars.places.x[i];
      double y = stars.places.y[i];
      double square = x * x + y * y;
      addRow(matrix, pull, new double[] {1, x, y, square}, left(model, i, 0));
      // r² times the radial part of the spin-2 is its product with (x² - y², 2 x y).
      radial += (x * x - y * y) * left(model, i, 1) + 2 * x * y * left(model, i, 2);
      weight += square * square;
    }
    double[] round = new SymmetricSolve(matrix, 0).solve(pull);
    return new double[] {round[1], round[2], round[3], radial / Math.max(1e-9, weight)};
  }

  private static double left(FrameModel model, int i, int part) {
    FrameStars stars = model.stars();
    return stars.seen[3 * i + part] - model.lengthening() * stars.places.moved[3 * i + part];
  }

  private static void addRow(double[][] matrix, double[] pull, double[] row, double value) {
    for (int k = 0; k < row.length; k++) {
      pull[k] += row[k] * value;
      for (int m = 0; m < row.length; m++) {
        matrix[k][m] += row[k] * row[m];
      }
    }
  }
}
