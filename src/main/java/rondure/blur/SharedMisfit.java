package rondure.blur;

import java.util.Arrays;

/**
 * How much more the stars of a block of the field miss a scene's model together than they would
 * each for themselves: 1 when only their own errors count, n when n stars count as one. A lens that
 * no polynomial of the model describes misses alike in all frames.
 */
final class SharedMisfit {
  private static final int CELLS_ALONG = 6;
  private static final int CELLS_ACROSS = 4;
  private static final int LEAST_STARS = 4;

  /** Residuals beyond so many errors are single stars' troubles. */
  private static final double CLIP = 3;

  private final double[] pulls = new double[3 * CELLS_ALONG * CELLS_ACROSS];
  private final double[] weights = new double[3 * CELLS_ALONG * CELLS_ACROSS];
  private final int[] stars = new int[CELLS_ALONG * CELLS_ACROSS];

  private SharedMisfit() {}

  /** The ratio of variances, at least 1. */
  static double of(SceneSolution solution) {
    SharedMisfit misfit = new SharedMisfit();
    for (int k = 0; k < solution.models().size(); k++) {
      FrameModel model = solution.models().get(k);
      if (model.whole()) {
        misfit.add(model.stars(), solution.predicted(k));
      }
    }
    return Math.max(1, misfit.ratio());
  }

  private void add(FrameStars frame, double[] predicted) {
    int[] cells = frame.cells(CELLS_ALONG, CELLS_ACROSS);
    for (int i = 0; i < frame.count; i++) {
      stars[cells[i]]++;
      for (int part = 0; part < 3; part++) {
        double error = frame.error[3 * i + part];
        double off = (frame.seen[3 * i + part] - predicted[3 * i + part]) / error;
        pulls[3 * cells[i] + part] += Math.max(-CLIP, Math.min(CLIP, off)) / error;
        weights[3 * cells[i] + part] += 1 / (error * error);
      }
    }
  }

  private double ratio() {
    double sum = 0;
    int terms = -FrameModel.ALL;
    for (int k = 0; k < pulls.length; k++) {
      if (stars[k / 3] >= LEAST_STARS) {
        sum += pulls[k] * pulls[k] / weights[k];
        terms++;
      }
    }
    return terms > 0 ? sum / terms : Arrays.stream(stars).average().orElse(1);
  }
}
