package rondure.blur;

import java.util.Optional;
import rondure.base.RobustStats;
import rondure.stars.AverageStar;
import rondure.stars.StarField;

/**
 * A ring around the average star that is darker than the sky beyond it: the picture was sharpened
 * in the camera (unsharp masking takes a blurred copy off and so digs a moat around every light).
 *
 * @param depthShare how far the ring lies below the sky, over the star's peak
 * @param errorShare standard error of that
 * @param radiusPx of the darkest ring
 */
record DarkRing(double depthShare, double errorShare, double radiusPx) {
  private static final double FROM_HALF_RADII = 1.3;
  private static final double TO_HALF_RADII = 4.5;

  /** The sky is read in the outermost part of the picture. */
  private static final double RIM_FROM = 0.85;

  /** Grid points near each other share values: one independent value for this area, px². */
  private static final double CORRELATED_PX2 = 0.5;

  private static final double SURE_SIGMAS = 4;

  /** Shallower rings come from neighbours' light in the rim. */
  private static final double LEAST_SHARE = 0.006;

  /** The ring of a field's average star, when it is there beyond doubt. */
  static Optional<DarkRing> of(StarField field) {
    return field.averageStars().stream()
        .filter(average -> average.zone() == AverageStar.Zone.WHOLE)
        .findFirst()
        .flatMap(DarkRing::read)
        .filter(ring -> ring.depthShare() > LEAST_SHARE)
        .filter(ring -> ring.depthShare() > SURE_SIGMAS * ring.errorShare());
  }

  /** The darkest ring, whether it means something or not; empty without a half-maximum width. */
  static Optional<DarkRing> read(AverageStar average) {
    RadialProfile profile = new RadialProfile(average);
    double half = profile.halfRadius();
    int rim = (int) Math.ceil(RIM_FROM * (profile.size() - 1));
    int from = (int) Math.ceil(FROM_HALF_RADII * half);
    int to = (int) Math.min(rim - 1.0, TO_HALF_RADII * half);
    if (Double.isNaN(half) || from > to) {
      return Optional.empty();
    }
    double[] outside = rim(average, rim);
    double level = RobustStats.median(outside);
    int darkest = from;
    for (int radius = from; radius <= to; radius++) {
      darkest = profile.at(radius) < profile.at(darkest) ? radius : darkest;
    }
    double peak = profile.at(profile.peak()) - level;
    double perValue = CORRELATED_PX2 * profile.samplesPerPx() * profile.samplesPerPx();
    double values = Math.max(1, profile.count(darkest) / Math.max(1, perValue));
    double noise =
        RobustStats.madSigma(outside) * Math.sqrt(1 / values + perValue / outside.length);
    return Optional.of(
        new DarkRing(
            (level - profile.at(darkest)) / peak, noise / peak, darkest / profile.samplesPerPx()));
  }

  private static double[] rim(AverageStar average, int fromRadius) {
    int side = average.stamp().sidePx();
    double[] values = new double[side * side];
    int count = 0;
    for (int i = 0; i < values.length; i++) {
      double radius = Math.hypot(i % side - side / 2, i / side - side / 2);
      float value = average.stamp().at(i % side, i / side);
      if (radius >= fromRadius && radius <= side / 2 && !Float.isNaN(value)) {
        values[count++] = value;
      }
    }
    return java.util.Arrays.copyOf(values, count);
  }
}
