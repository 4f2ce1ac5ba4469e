package rondure.blur;

import java.util.Arrays;
import java.util.Comparator;
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
    int[] nearest = squares.length > 1 ? nearest(stars) : new int[0];
    for (int i = 0; i < nearest.length; i++) {
      double difference = tensors.get(i).minus(tensors.get(nearest[i])).spin2Px2();
      squares[i] = difference * difference / 2;
    }
    return squares;
  }

  /** Each star's nearest neighbour: from it up and down through the stars sorted downwards. */
  private static int[] nearest(List<Star> stars) {
    Star[] all = stars.toArray(Star[]::new);
    Integer[] down = new Integer[all.length];
    Arrays.setAll(down, i -> i);
    Arrays.sort(down, Comparator.comparingDouble((Integer i) -> all[i].yPx()));
    int[] nearest = new int[all.length];
    for (int place = 0; place < down.length; place++) {
      int above = nearest(all, down, place, -1);
      int below = nearest(all, down, place, 1);
      Star star = all[down[place]];
      boolean up = below < 0 || above >= 0 && square(star, all[above]) < square(star, all[below]);
      nearest[down[place]] = up ? above : below;
    }
    return nearest;
  }

  /** The nearest on one side; -1 where no star lies there. */
  private static int nearest(Star[] all, Integer[] down, int place, int step) {
    Star star = all[down[place]];
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int at = place + step; at >= 0 && at < down.length; at += step) {
      double dy = all[down[at]].yPx() - star.yPx();
      if (dy * dy >= least) {
        break;
      }
      double square = square(star, all[down[at]]);
      if (square < least) {
        best = down[at];
        least = square;
      }
    }
    return best;
  }

  private static double square(Star one, Star other) {
    double dx = other.xPx() - one.xPx();
    double dy = other.yPx() - one.yPx();
    return dx * dx + dy * dy;
  }
}
