package rondure.blur;

import java.util.ArrayList;
import java.util.List;

/**
 * How badly a solution fits where measured widths may be off with the width, the same at one width
 * all over the field and in all frames.
 *
 * <p>Measured moments of discs come out too large, the more the larger they are, and what fits show
 * of coma ({@link SeenComa}) is known to a tenth. That is a curve over the width, free here within
 * its usual size (a line and a parabola, both expected to be 0); what differs between stars of one
 * width, one side of the field or one frame against another, is evidence.
 */
final class TolerantLoss {
  /** Of what is beyond the narrowest stars, for each star alone. */
  private static final double OWN_SHARE = 0.1;

  private final SceneSolution solution;
  private final double curveShare;
  private final List<Seen> frames = new ArrayList<>();
  private double widest;

  /** A frame's stars: what is beyond the narrowest, and the residuals, three for each star. */
  private static final class Seen {
    private final FrameStars stars;
    private final double[] beyond;
    private final double[] off;

    Seen(FrameStars stars, double[] beyond, double[] off) {
      this.stars = stars;
      this.beyond = beyond;
      this.off = off;
    }
  }

  /**
   * @param frames asked
   * @param curveShare standard error of the curve over what is beyond the frame's narrowest stars
   */
  TolerantLoss(SceneSolution solution, List<Integer> frames, double curveShare) {
    this.solution = solution;
    this.curveShare = curveShare;
    for (int frame : frames) {
      if (solution.models().get(frame).whole()) {
        add(frame);
      }
    }
  }

  private void add(int frame) {
    FrameModel model = solution.models().get(frame);
    FrameStars stars = model.stars();
    double[] off = solution.predicted(frame);
    double[] beyond = new double[stars.count];
    double narrow = stars.narrowestStillPx2(model.lengthening());
    for (int i = 0; i < off.length; i++) {
      off[i] = stars.seen[i] - off[i];
    }
    for (int i = 0; i < beyond.length; i++) {
      beyond[i] = Math.max(0, stars.seen[3 * i] - narrow);
      widest = Math.max(widest, beyond[i]);
    }
    frames.add(new Seen(stars, beyond, off));
  }

  /** Half of χ² with Huber's loss of each star, expectations of the curve included. */
  double value() {
    double[] curve = curve();
    double sum = (curve[0] * curve[0] + curve[1] * curve[1]) / (2 * curveShare * curveShare);
    for (Seen seen : frames) {
      for (int i = 0; i < seen.beyond.length; i++) {
        sum += FrameNormals.loss(square(seen, i, curve, OWN_SHARE));
      }
    }
    return sum;
  }

  /** The likeliest, one step of weighted least squares: strays count as they do beside no curve. */
  private double[] curve() {
    double[][] matrix = {{1 / (curveShare * curveShare), 0}, {0, 1 / (curveShare * curveShare)}};
    double[] pull = new double[2];
    double[] none = new double[2];
    for (Seen seen : frames) {
      for (int i = 0; i < seen.beyond.length; i++) {
        double x = seen.beyond[i];
        double[] row = {x, bent(x)};
        double error = Math.hypot(seen.stars.error[3 * i], OWN_SHARE * x);
        double weight = FrameNormals.weight(square(seen, i, none, curveShare)) / (error * error);
        for (int k = 0; k < 2; k++) {
          pull[k] += weight * row[k] * seen.off[3 * i];
          matrix[k][0] += weight * row[k] * row[0];
          matrix[k][1] += weight * row[k] * row[1];
        }
      }
    }
    return new SymmetricSolve(matrix, 0).solve(pull);
  }

  private double bent(double x) {
    return widest > 0 ? x * x / widest : 0;
  }

  private double square(Seen seen, int i, double[] curve, double ownShare) {
    double x = seen.beyond[i];
    FrameStars stars = seen.stars;
    double round = seen.off[3 * i] - curve[0] * x - curve[1] * bent(x);
    double square = Math.pow(round / Math.hypot(stars.error[3 * i], ownShare * x), 2);
    for (int part = 3 * i + 1; part < 3 * i + 3; part++) {
      square += Math.pow(seen.off[part] / stars.error[part], 2);
    }
    return square;
  }
}
