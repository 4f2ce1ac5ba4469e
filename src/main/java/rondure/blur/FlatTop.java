package rondure.blur;

import java.util.Optional;
import rondure.stars.AverageStar;
import rondure.stars.StarField;

/**
 * How flat the top of the average star is: out of focus, a star is a disc or a ring.
 *
 * <p>Flatness = light at 0.7 of the half-maximum radius over the most light at any radius, averaged
 * around the star: a Gaussian gives 2^-0.49 = 0.712, a Moffat star 0.70, a disc or ring nearly 1.
 */
final class FlatTop {
  /** Between a core ⊗ disc of twice its width (0.80) and a Gaussian. */
  static final double FLAT_FROM = 0.8;

  private static final double LEAST_FWHM_PX = 4;
  private static final double PROBE = 0.7;

  private FlatTop() {}

  /** The flatness of the frame's average star, when it is wide enough to have a shape. */
  static Optional<Double> of(StarField field) {
    return field.averageStars().stream()
        .filter(average -> average.zone() == AverageStar.Zone.WHOLE)
        .findFirst()
        .flatMap(FlatTop::of);
  }

  static Optional<Double> of(AverageStar average) {
    RadialProfile profile = new RadialProfile(average);
    double half = profile.halfRadius();
    boolean wide = 2 * half / profile.samplesPerPx() >= LEAST_FWHM_PX;
    return wide
        ? Optional.of(profile.at(PROBE * half) / profile.at(profile.peak()))
        : Optional.empty();
  }
}
