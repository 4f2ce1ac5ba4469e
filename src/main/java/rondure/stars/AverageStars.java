package rondure.stars;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import rondure.base.PixelPlane;
import rondure.base.RobustStats;
import rondure.base.Stamp;

/**
 * Average pictures of a frame's stars. Every valid pixel of every star is placed by its distance
 * from that star's centroid on a fine grid; a grid point takes the mean of the middle half of the
 * values near it, so that a neighbour or a hot pixel does not show.
 */
final class AverageStars {
  private static final int LEAST_STARS = 5;
  private static final int STARS_MAX = 40;
  private static final int SIDE_MAX = 65;
  private static final int FINEST = 4;
  private static final double WIDTHS_SHOWN = 6;
  private static final double VALUES_WANTED = 8;
  private static final double REACH_MAX_PX = 2;

  private final PixelPlane plane;
  private final Background background;

  AverageStars(PixelPlane plane, Background background) {
    this.plane = plane;
    this.background = background;
  }

  /** Averages of the zones with at least 5 stars, WHOLE first; stars brightest first. */
  List<AverageStar> of(List<Star> stars) {
    List<AverageStar> averages = new ArrayList<>();
    for (AverageStar.Zone zone : AverageStar.Zone.values()) {
      List<Star> inside = stars.stream().filter(star -> isIn(zone, star)).limit(STARS_MAX).toList();
      if (inside.size() >= LEAST_STARS) {
        average(zone, inside).ifPresent(averages::add);
      }
    }
    return averages;
  }

  private boolean isIn(AverageStar.Zone zone, Star star) {
    double centreX = (plane.widthPx() - 1) / 2.0;
    double centreY = (plane.heightPx() - 1) / 2.0;
    double out =
        Math.hypot(star.xPx() - centreX, star.yPx() - centreY) / Math.hypot(centreX, centreY);
    return switch (zone) {
      case WHOLE -> true;
      case CENTRE -> out < 0.4;
      case MIDWAY -> out >= 0.4 && out <= 0.75;
      case EDGE -> out > 0.75;
    };
  }

  private Optional<AverageStar> average(AverageStar.Zone zone, List<Star> stars) {
    double shownPx = WIDTHS_SHOWN * median(stars, Star::fwhmMajorPx);
    int samplesPerPx = (int) Math.max(1, Math.min(FINEST, SIDE_MAX / shownPx));
    int half = (int) Math.min((SIDE_MAX - 1) / 2, Math.ceil(shownPx * samplesPerPx / 2));
    int side = 2 * half + 1;
    double reach = reach(stars.size(), samplesPerPx);
    float[] values = new float[side * side];
    double[] near = new double[4 * STARS_MAX];
    float peak = 0;
    for (int i = 0; i < values.length; i++) {
      double dx = (double) (i % side - half) / samplesPerPx;
      double dy = (double) (i / side - half) / samplesPerPx;
      int count = 0;
      for (double wider = reach; count == 0 && wider < REACH_MAX_PX; wider *= 1.5) {
        count = collect(stars, dx, dy, wider, near);
      }
      values[i] = count > 0 ? (float) middleMean(near, count) : 0;
      peak = Math.max(peak, values[i]);
    }
    if (!(peak > 0)) {
      return Optional.empty();
    }
    for (int i = 0; i < values.length; i++) {
      values[i] /= peak;
    }
    return Optional.of(new AverageStar(zone, stars.size(), samplesPerPx, new Stamp(side, values)));
  }

  /**
   * Half side of the square, px, in which a grid point finds about 8 values, at first at most 0.75.
   */
  private double reach(int starCount, int samplesPerPx) {
    double perPx2 = plane.lattice() == PixelPlane.Lattice.EVERY_PIXEL ? 1 : 0.5;
    double wanted = Math.sqrt(VALUES_WANTED / (starCount * perPx2)) / 2;
    return Math.max(0.5 / samplesPerPx, Math.min(0.75, wanted));
  }

  private int collect(List<Star> stars, double dx, double dy, double reach, double[] into) {
    int count = 0;
    for (Star star : stars) {
      double atX = star.xPx() + dx;
      double atY = star.yPx() + dy;
      for (int y = (int) Math.ceil(atY - reach); y <= atY + reach; y++) {
        for (int x = (int) Math.ceil(atX - reach); x <= atX + reach; x++) {
          boolean inside = x >= 0 && y >= 0 && x < plane.widthPx() && y < plane.heightPx();
          if (inside && !Float.isNaN(plane.at(x, y)) && count < into.length) {
            into[count] = (plane.at(x, y) - background.levelAt(x, y)) / star.fluxCounts();
            count++;
          }
        }
      }
    }
    return count;
  }

  /** Mean of the middle half of the first {@code count} values; sorts them. */
  static double middleMean(double[] values, int count) {
    Arrays.sort(values, 0, count);
    int cut = count / 4;
    double sum = 0;
    for (int i = cut; i < count - cut; i++) {
      sum += values[i];
    }
    return sum / (count - 2 * cut);
  }

  private static double median(List<Star> stars, ToDoubleFunction<Star> width) {
    return RobustStats.median(stars.stream().mapToDouble(width).toArray());
  }
}
