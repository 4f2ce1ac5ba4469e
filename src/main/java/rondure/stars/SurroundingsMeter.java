package rondure.stars;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rondure.base.PixelPlane;
import rondure.base.RobustStats;
import rondure.base.WeightedMedian;

/**
 * Measures the light in wide rings about the brightest stars that stand alone. Every ring of every
 * star takes the mean of the middle half of its pixels, less that of the star's own outermost ring,
 * so that neighbours and an uneven sky hardly show; over the stars the weighted median is taken.
 * Noise and neighbours are the same for all stars in counts, so a star's weight is its flux
 * squared, no star weighing more than the eighth brightest.
 */
final class SurroundingsMeter {
  /** Edges of the rings, px; the last ring is each star's ground. */
  private static final double[] EDGES_PX = {
    3, 4, 5, 6.5, 8, 10, 12.5, 15.5, 19, Surroundings.GROUND_FROM_PX, Surroundings.GROUND_TO_PX
  };

  private static final int RINGS = EDGES_PX.length - 1;
  private static final int REACH_PX = 29;
  private static final int MOST_STARS = 60;
  private static final int LEAST_STARS = 12;

  /** The brightest so many weigh alike. */
  private static final int ALIKE = 8;

  /** A neighbour of more of a star's light leaves it no star alone. */
  private static final double NEIGHBOUR_SHARE = 0.5;

  private static final int LEAST_VALUES = 6;

  /** Standard error of a median over that of a mean, for Gaussian scatter. */
  private static final double MEDIAN_ERROR = Math.sqrt(Math.PI / 2);

  private final PixelPlane plane;
  private final Background background;
  private final SkyMask mask;

  /** A star's light in its rings over its flux. */
  private static final class Lone {
    private final double[] light;
    private final double fluxCounts;

    Lone(double[] light, double fluxCounts) {
      this.light = light;
      this.fluxCounts = fluxCounts;
    }
  }

  SurroundingsMeter(PixelPlane plane, Background background, SkyMask mask) {
    this.plane = plane;
    this.background = background;
    this.mask = mask;
  }

  /**
   * @param stars brightest first
   * @param others what else was found
   */
  Surroundings of(List<Star> stars, List<Detection> others) {
    List<Lone> lone = new ArrayList<>();
    for (Star star : stars) {
      boolean asked = lone.size() < MOST_STARS && star.fluxCounts() > 0;
      if (asked && isInSky(star) && isAlone(star, stars, others)) {
        rings(star).ifPresent(light -> lone.add(new Lone(light, star.fluxCounts())));
      }
    }
    return lone.size() < LEAST_STARS
        ? Surroundings.NONE
        : new Surroundings(lone.size(), together(lone));
  }

  private boolean isInSky(Star star) {
    int x = (int) Math.round(star.xPx());
    int y = (int) Math.round(star.yPx());
    boolean whole =
        x >= REACH_PX
            && y >= REACH_PX
            && x < plane.widthPx() - REACH_PX
            && y < plane.heightPx() - REACH_PX;
    return whole
        && mask.isSky(x - REACH_PX, y - REACH_PX)
        && mask.isSky(x + REACH_PX, y - REACH_PX)
        && mask.isSky(x - REACH_PX, y + REACH_PX)
        && mask.isSky(x + REACH_PX, y + REACH_PX);
  }

  private static boolean isAlone(Star star, List<Star> stars, List<Detection> others) {
    double least = NEIGHBOUR_SHARE * star.fluxCounts();
    return stars.stream()
            .noneMatch(
                s ->
                    s != star
                        && s.fluxCounts() > least
                        && isNear(s.xPx() - star.xPx(), s.yPx() - star.yPx()))
        && others.stream()
            .noneMatch(
                d -> d.fluxCounts() > least && isNear(d.xPx() - star.xPx(), d.yPx() - star.yPx()));
  }

  private static boolean isNear(double dx, double dy) {
    return dx * dx + dy * dy < (double) REACH_PX * REACH_PX;
  }

  /** Empty where a ring holds too few pixels. */
  private Optional<double[]> rings(Star star) {
    double[][] values = new double[RINGS][4 * REACH_PX * REACH_PX];
    int[] counts = new int[RINGS];
    int x0 = (int) Math.round(star.xPx());
    int y0 = (int) Math.round(star.yPx());
    for (int y = y0 - REACH_PX; y <= y0 + REACH_PX; y++) {
      for (int x = x0 - REACH_PX; x <= x0 + REACH_PX; x++) {
        int ring = ring(Math.hypot(x - star.xPx(), y - star.yPx()));
        float value = plane.at(x, y);
        if (ring >= 0 && !Float.isNaN(value)) {
          values[ring][counts[ring]++] = value - background.levelAt(x, y);
        }
      }
    }
    double[] light = new double[RINGS];
    for (int i = 0; i < RINGS; i++) {
      if (counts[i] < LEAST_VALUES) {
        return Optional.empty();
      }
      light[i] = AverageStars.middleMean(values[i], counts[i]) / star.fluxCounts();
    }
    double ground = light[RINGS - 1];
    return Optional.of(Arrays.stream(light).map(l -> l - ground).toArray());
  }

  /** -1 outside all. */
  private static int ring(double radius) {
    int ring = RINGS - 1;
    while (ring >= 0 && radius < EDGES_PX[ring]) {
      ring--;
    }
    return radius < EDGES_PX[RINGS] ? ring : -1;
  }

  private static List<Surroundings.Ring> together(List<Lone> lone) {
    double most = lone.get(Math.min(ALIKE, lone.size()) - 1).fluxCounts;
    double[] weights =
        lone.stream().mapToDouble(l -> Math.pow(Math.min(1, l.fluxCounts / most), 2)).toArray();
    List<Surroundings.Ring> rings = new ArrayList<>();
    for (int i = 0; i < RINGS - 1; i++) {
      int ring = i;
      double[] light = lone.stream().mapToDouble(l -> l.light[ring]).toArray();
      double middle = WeightedMedian.of(light.clone(), weights.clone());
      double[] off = Arrays.stream(light).map(l -> Math.abs(l - middle)).toArray();
      double scatter = RobustStats.SIGMA_PER_MAD * WeightedMedian.of(off, weights.clone());
      rings.add(
          new Surroundings.Ring(
              EDGES_PX[i], EDGES_PX[i + 1], middle, MEDIAN_ERROR * scatter * perMean(weights)));
    }
    return rings;
  }

  /** Standard error of a weighted mean over the scatter of one value: √Σw² / Σw. */
  private static double perMean(double[] weights) {
    double squares = Arrays.stream(weights).map(w -> w * w).sum();
    return Math.sqrt(squares) / Arrays.stream(weights).sum();
  }
}
