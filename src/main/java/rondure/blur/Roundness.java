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
 * squared difference of neighbours measures the noise, which is taken off the squared stretch.
 */
final class Roundness {
  /** Median over mean per axis of the squared length of a Gaussian 2-vector, 2 ln 2. */
  private static final double MEDIAN_OF_SQUARE = 2 * Math.log(2);

  private static final int LEAST_STARS = 10;

  private Roundness() {}

  /** b/a in [0, 1]; with fewer than 10 stars nothing is taken off. */
  static double of(List<Star> stars) {
    List<Moments> tensors = stars.stream().map(Roundness::halfMaximumTensor).toList();
    double mean = RobustStats.median(tensors.stream().mapToDouble(Moments::meanPx2).toArray());
    double[] squares = tensors.stream().mapToDouble(t -> t.spin2Px2() * t.spin2Px2()).toArray();
    double noise = stars.size() < LEAST_STARS ? 0 : noiseVariance(stars, tensors);
    double square = RobustStats.median(squares) - MEDIAN_OF_SQUARE * noise;
    double stretch = Math.min(mean, Math.sqrt(Math.max(0, square)));
    return Math.sqrt((mean - stretch) / (mean + stretch));
  }

  /** The tensor of the Gaussian that has the star's half-maximum ellipse, px². */
  static Moments halfMaximumTensor(Star star) {
    double major = star.fwhmMajorPx() / Moments.FWHM_PER_SIGMA;
    double minor = star.fwhmMinorPx() / Moments.FWHM_PER_SIGMA;
    return Moments.ofAxes(major * major, minor * minor, star.moments().positionAngleRad());
  }

  /** Variance per spin-2 component that a star does not share with its nearest neighbour. */
  private static double noiseVariance(List<Star> stars, List<Moments> tensors) {
    double[] squares = new double[stars.size()];
    for (int i = 0; i < squares.length; i++) {
      double difference = tensors.get(i).minus(tensors.get(nearest(stars, i))).spin2Px2();
      squares[i] = difference * difference;
    }
    return RobustStats.median(squares) / (2 * MEDIAN_OF_SQUARE);
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
