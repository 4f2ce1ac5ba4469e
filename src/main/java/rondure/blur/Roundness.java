package rondure.blur;

import java.util.List;
import rondure.base.Moments;
import rondure.base.RobustStats;
import rondure.stars.Star;

/**
 * Axis ratio typical of a list of stars.
 *
 * <p>Noise makes every single star look oval: the plain median of axis ratios of round stars of 1.2
 * px is 0.7. A true stretch is shared with the nearest neighbour, noise is not, so half of the
 * squared difference of neighbours measures the noise. It is taken off the squared stretch, and so
 * is the standard error of what is left: a few stars do not make a frame oval.
 */
final class Roundness {
  /** √(π/2): standard error of a median over that of a mean, for Gaussian scatter. */
  private static final double MEDIAN_ERROR_FACTOR = Math.sqrt(Math.PI / 2);

  private Roundness() {}

  /** b/a in [0, 1]; 1 for stars that differ among themselves as much as they are oval. */
  static double of(List<Star> stars) {
    List<Moments> tensors = stars.stream().map(Roundness::halfMaximumTensor).toList();
    double mean = RobustStats.median(tensors.stream().mapToDouble(Moments::meanPx2).toArray());
    double[] squares = tensors.stream().mapToDouble(t -> t.spin2Px2() * t.spin2Px2()).toArray();
    double[] noise = unshared(stars, tensors);
    double square = RobustStats.median(squares) - RobustStats.median(noise);
    double error = Math.hypot(errorOfMedian(squares), errorOfMedian(noise));
    double stretch = Math.min(mean, Math.sqrt(Math.max(common(tensors), square - error)));
    return Math.sqrt((mean - stretch) / (mean + stretch));
  }

  /** Squared stretch that all stars share, less what the errors of its two parts add. */
  private static double common(List<Moments> tensors) {
    double[] along = tensors.stream().mapToDouble(t -> (t.xxPx2() - t.yyPx2()) / 2).toArray();
    double[] diagonal = tensors.stream().mapToDouble(Moments::xyPx2).toArray();
    double square = 0;
    for (double[] part : List.of(along, diagonal)) {
      double error = errorOfMedian(part);
      square += Math.pow(RobustStats.median(part), 2) - error * error;
    }
    return Math.max(0, square);
  }

  private static double errorOfMedian(double[] values) {
    return MEDIAN_ERROR_FACTOR * RobustStats.madSigma(values) / Math.sqrt(values.length);
  }

  /** The tensor of the Gaussian that has the star's half-maximum ellipse, px². */
  static Moments halfMaximumTensor(Star star) {
    double major = star.fwhmMajorPx() / Moments.FWHM_PER_SIGMA;
    double minor = star.fwhmMinorPx() / Moments.FWHM_PER_SIGMA;
    return Moments.ofAxes(major * major, minor * minor, star.moments().positionAngleRad());
  }

  /** Half the squared difference in stretch from the nearest neighbour, which noise alone makes. */
  private static double[] unshared(List<Star> stars, List<Moments> tensors) {
    double[] squares = new double[stars.size()];
    for (int i = 0; i < squares.length && squares.length > 1; i++) {
      double difference = tensors.get(i).minus(tensors.get(nearest(stars, i))).spin2Px2();
      squares[i] = difference * difference / 2;
    }
    return squares;
  }

  private static int nearest(List<Star> stars, int i) {
    int best = -1;
    double bestSquare = Double.POSITIVE_INFINITY;
    for (int k = 0; k < stars.size(); k++) {
      double dx = stars.get(k).xPx() - stars.get(i).xPx();
      double dy = stars.get(k).yPx() - stars.get(i).yPx();
      double square = dx * dx + dy * dy;
      if (k != i && square < bestSquare) {
        best = k;
        bestSquare = square;
      }
    }
    return best;
  }
}
