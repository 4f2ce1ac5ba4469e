package rondure.blur;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rondure.base.RobustStats;
import rondure.stars.Detection;
import rondure.stars.Refusal;
import rondure.stars.Star;
import rondure.stars.StarField;

/**
 * Every star of a frame twice: the camera was knocked while the shutter was open.
 *
 * <p>Proof is one repeated offset among the detections: at least 25 pairs, one for a quarter of the
 * lights whose fainter image could be seen, with the same ratio of brightness, far more often than
 * the density of the field gives by chance, and not as links of a longer chain. Stored coordinates.
 *
 * @param offsetXPx from the brighter to the fainter image, median over the pairs
 * @param offsetYPx the same downwards
 * @param fainterShare share of the light in the fainter image, in (0, 0.5]
 * @param pairs pairs with this offset and ratio
 * @param expectedPairs pairs that chance would give
 */
public record DoubleImage(
    double offsetXPx, double offsetYPx, double fainterShare, int pairs, double expectedPairs) {

  /** Fewer pairs prove nothing (from trials on simulated nights). */
  static final int LEAST_PAIRS = 25;

  /** Of the lights bright enough to show a fainter image, the fewest that have one, as a share. */
  static final double LEAST_SHARE = 0.25;

  /** Where the list of lights begins to be complete, as a share of its length. */
  private static final double FAINTEST = 0.1;

  /** Parts of one wide star are no two images. */
  private static final double LEAST_OFFSET_PER_FWHM = 1.2;

  private static final double LEAST_OFFSET_PX = 3;
  private static final double TIMES_CHANCE = 3;
  private static final double SIGMAS_OVER_CHANCE = 5;

  /** In a regular pattern most images begin one pair and end another. */
  private static final double MOST_CHAINED = 0.5;

  public DoubleImage {
    if (!(fainterShare > 0 && fainterShare <= 0.5)) {
      throw new IllegalArgumentException("fainterShare must be in (0, 0.5], was " + fainterShare);
    }
    if (!(Math.hypot(offsetXPx, offsetYPx) > 0) || pairs < 1 || !(expectedPairs >= 0)) {
      throw new IllegalArgumentException(
          "a double image needs an offset and pairs, were "
              + offsetXPx
              + ", "
              + offsetYPx
              + ", "
              + pairs
              + ", "
              + expectedPairs);
    }
  }

  /** Distance of the two images, px. */
  public double offsetPx() {
    return Math.hypot(offsetXPx, offsetYPx);
  }

  /** Direction of the offset, rad, from +x towards +y, of either sign alike: [0, π). */
  public double angleRad() {
    double signed = Math.atan2(offsetYPx, offsetXPx);
    double angle = signed < 0 ? signed + Math.PI : signed;
    return angle >= Math.PI ? 0 : angle;
  }

  /** The double image of a field, when it is proven. */
  public static Optional<DoubleImage> of(StarField field) {
    List<PairOffsets.Light> lights = lights(field);
    if (lights.size() < 2 * LEAST_PAIRS) {
      return Optional.empty();
    }
    return new PairOffsets(lights, leastOffset(field))
        .strongest()
        .filter(cluster -> isProof(cluster, lights))
        .map(DoubleImage::of);
  }

  private static boolean isProof(PairOffsets.Cluster cluster, List<PairOffsets.Light> lights) {
    double chance =
        Math.max(
            TIMES_CHANCE * cluster.expected(),
            cluster.expected() + SIGMAS_OVER_CHANCE * Math.sqrt(cluster.expected()));
    return cluster.pairs() >= LEAST_PAIRS
        && cluster.pairs() > LEAST_SHARE * bright(lights, Math.exp(-Math.abs(cluster.logRatio())))
        && cluster.pairs() > chance
        && cluster.chained() <= MOST_CHAINED * cluster.pairs();
  }

  /** Lights bright enough that their fainter image would be among the lights too. */
  private static long bright(List<PairOffsets.Light> lights, double ratio) {
    double[] fluxes = lights.stream().mapToDouble(PairOffsets.Light::flux).toArray();
    double faintest = RobustStats.percentile(FAINTEST, fluxes);
    return Arrays.stream(fluxes).filter(flux -> flux * ratio >= faintest).count();
  }

  private static DoubleImage of(PairOffsets.Cluster cluster) {
    double ratio = Math.exp(-Math.abs(cluster.logRatio()));
    double sign = cluster.logRatio() <= 0 ? 1 : -1;
    return new DoubleImage(
        sign * cluster.xPx(),
        sign * cluster.yPx(),
        ratio / (1 + ratio),
        cluster.pairs(),
        cluster.expected());
  }

  private static double leastOffset(StarField field) {
    double[] widths = field.stars().stream().mapToDouble(Star::fwhmMinorPx).toArray();
    double width = widths.length == 0 ? 0 : RobustStats.median(widths);
    return Math.max(LEAST_OFFSET_PX, LEAST_OFFSET_PER_FWHM * width);
  }

  /** All that may be a star or an image of one. */
  private static List<PairOffsets.Light> lights(StarField field) {
    List<PairOffsets.Light> lights = new ArrayList<>();
    for (Star star : field.stars()) {
      lights.add(new PairOffsets.Light(star.xPx(), star.yPx(), star.fluxCounts()));
    }
    for (Detection other : field.others()) {
      if (mayBeStar(other.reason()) && other.fluxCounts() > 0) {
        lights.add(new PairOffsets.Light(other.xPx(), other.yPx(), other.fluxCounts()));
      }
    }
    return lights;
  }

  private static boolean mayBeStar(Refusal reason) {
    return reason != Refusal.HOT_PIXEL && reason != Refusal.NOT_SKY && reason != Refusal.STATIC;
  }
}
