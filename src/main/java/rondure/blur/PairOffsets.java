package rondure.blur;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rondure.base.RobustStats;

/**
 * Autocorrelation of a list of lights: the offset that most pairs share, at one ratio of
 * brightness.
 *
 * <p>On a wide lens a turn of the camera moves stars farther in the corners (by 1 + ρ²), so the
 * tolerance grows with the offset. What chance gives is counted in the same field: pairs of the
 * same ratio, as far apart, in all other directions.
 */
final class PairOffsets {
  /** A knock farther than this leaves two frames' worth of sky, not a blur. */
  static final int FARTHEST_PX = 40;

  private static final double TOLERANCE_PX = 1;
  private static final double TOLERANCE_SHARE = 0.15;
  private static final int ROUNDS = 4;

  /** Brightness ratios of the same pair of images agree to ±42 %. */
  private static final double RATIO_TOLERANCE = 0.35;

  /** A light: centroid in px and its flux. */
  record Light(double xPx, double yPx, double flux) {}

  /** Two lights, the first towards the second. */
  private record Pair(int from, int to, double xPx, double yPx, double logRatio) {}

  /**
   * The strongest repeated offset.
   *
   * @param xPx median offset
   * @param yPx median offset
   * @param logRatio median natural logarithm of flux at the end over flux at the start
   * @param pairs lights that start a pair with this offset and ratio
   * @param chained how many of them also end one
   * @param expected pairs that chance gives here
   */
  record Cluster(
      double xPx, double yPx, double logRatio, int pairs, int chained, double expected) {}

  private final double nearestPx;
  private final List<Pair> pairs;

  PairOffsets(List<Light> lights, double nearestPx) {
    this.nearestPx = nearestPx;
    this.pairs = pairs(lights, nearestPx);
  }

  /** Either way, between lights sorted downwards. */
  private static List<Pair> pairs(List<Light> lights, double nearestPx) {
    List<Pair> pairs = new ArrayList<>();
    Light[] down = lights.toArray(Light[]::new);
    Arrays.sort(down, Comparator.comparingDouble(Light::yPx));
    for (int i = 0; i < down.length; i++) {
      for (int k = i + 1; k < down.length && down[k].yPx() - down[i].yPx() <= FARTHEST_PX; k++) {
        double dx = down[k].xPx() - down[i].xPx();
        double dy = down[k].yPx() - down[i].yPx();
        double square = dx * dx + dy * dy;
        if (square <= FARTHEST_PX * FARTHEST_PX && square >= nearestPx * nearestPx) {
          pairs.add(new Pair(i, k, dx, dy, Math.log(down[k].flux() / down[i].flux())));
          pairs.add(new Pair(k, i, -dx, -dy, Math.log(down[i].flux() / down[k].flux())));
        }
      }
    }
    return pairs;
  }

  /** The cluster with the largest surplus over chance; empty when nothing repeats. */
  Optional<Cluster> strongest() {
    if (pairs.isEmpty()) {
      return Optional.empty();
    }
    double[] centre = peak();
    List<Pair> inside = near(centre);
    for (int round = 0; round < ROUNDS && !inside.isEmpty(); round++) {
      centre = middle(inside);
      inside = near(centre);
    }
    return inside.isEmpty() ? Optional.empty() : Optional.of(cluster(centre, inside));
  }

  private Cluster cluster(double[] centre, List<Pair> inside) {
    double ratio = median(inside.stream().mapToDouble(Pair::logRatio).toArray());
    Set<Integer> starts = new HashSet<>();
    Set<Integer> ends = new HashSet<>();
    for (Pair pair : inside) {
      if (agrees(pair, ratio)) {
        starts.add(pair.from());
        ends.add(pair.to());
      }
    }
    int count = starts.size();
    starts.retainAll(ends);
    double chance =
        expected(Math.atan2(centre[1], centre[0]), Math.hypot(centre[0], centre[1]), ratio);
    return new Cluster(centre[0], centre[1], ratio, count, starts.size(), chance);
  }

  /** Median of the pairs in the densest place. */
  private double[] peak() {
    OffsetHistogram histogram = new OffsetHistogram(FARTHEST_PX);
    pairs.forEach(pair -> histogram.add(pair.xPx(), pair.yPx()));
    OffsetHistogram.Place place = histogram.densest(nearestPx, TOLERANCE_SHARE);
    double reach = place.halfPx() + 0.5;
    return middle(
        pairs.stream()
            .filter(pair -> Math.abs(pair.xPx() - place.xPx()) <= reach)
            .filter(pair -> Math.abs(pair.yPx() - place.yPx()) <= reach)
            .toList());
  }

  private static double[] middle(List<Pair> inside) {
    return new double[] {
      median(inside.stream().mapToDouble(Pair::xPx).toArray()),
      median(inside.stream().mapToDouble(Pair::yPx).toArray())
    };
  }

  private List<Pair> near(double[] centre) {
    double reach = tolerance(Math.hypot(centre[0], centre[1]));
    return pairs.stream().filter(pair -> distance(pair, centre) <= reach).toList();
  }

  private static double distance(Pair pair, double[] centre) {
    double dx = pair.xPx() - centre[0];
    double dy = pair.yPx() - centre[1];
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** Pairs of this ratio at this distance in other directions, for an area as large. */
  private double expected(double angleRad, double distance, double ratio) {
    double reach = tolerance(distance);
    double inner = Math.max(nearestPx, distance - reach);
    double outer = Math.min(FARTHEST_PX, distance + reach);
    long count =
        pairs.stream()
            .filter(pair -> agrees(pair, ratio) && isAside(pair, angleRad))
            .mapToDouble(pair -> Math.hypot(pair.xPx(), pair.yPx()))
            .filter(length -> length >= inner && length <= outer)
            .count();
    double area = Math.PI * (outer * outer - inner * inner) / 2;
    return count * Math.PI * reach * reach / area;
  }

  /** Farther than 45° from a direction and from its opposite: half of all directions. */
  private static boolean isAside(Pair pair, double angleRad) {
    double away = Math.atan2(pair.yPx(), pair.xPx()) - angleRad;
    return Math.abs(Math.cos(away)) < Math.sqrt(0.5);
  }

  private static boolean agrees(Pair pair, double ratio) {
    return Math.abs(pair.logRatio() - ratio) <= RATIO_TOLERANCE;
  }

  private static double tolerance(double distancePx) {
    return TOLERANCE_PX + TOLERANCE_SHARE * distancePx;
  }

  private static double median(double[] values) {
    return RobustStats.median(values);
  }
}
