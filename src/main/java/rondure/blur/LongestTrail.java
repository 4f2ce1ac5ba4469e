package rondure.blur;

import java.util.Optional;
import rondure.base.RobustStats;
import rondure.sky.Camera;
import rondure.sky.SkyMotion;
import rondure.stars.Star;
import rondure.stars.StarField;

/** The longest trail that a frame's exposure allows, wherever the camera looked. */
final class LongestTrail {
  private LongestTrail() {}

  /** Its length in the image centre, px: a star on the celestial equator. */
  static Optional<Double> centrePx(FrameEvidence evidence) {
    return evidence
        .exposureSeconds()
        .flatMap(
            seconds ->
                evidence.focalLengthPx().map(px -> SkyMotion.smallFieldTrailPx(px, 0, seconds)));
  }

  /**
   * The smear that it adds per axis, L²/24, px²: a quantile over the stars.
   *
   * @return empty where exposure or focal length is unknown, or no trail is possible
   */
  static Optional<Double> smearPx2(FrameEvidence evidence, double quantile) {
    if (evidence.exposureSeconds().isEmpty() || evidence.focalLengthPx().isEmpty()) {
      return Optional.empty();
    }
    StarField field = evidence.field();
    Camera camera =
        Camera.rectilinear(evidence.focalLengthPx().get(), field.widthPx(), field.heightPx());
    double seconds = evidence.exposureSeconds().get();
    double[] smears = new double[field.stars().size()];
    for (int i = 0; i < smears.length; i++) {
      Star star = field.stars().get(i);
      double length = SkyMotion.largestTrailPx(camera, star.xPx(), star.yPx(), seconds);
      smears[i] = length * length / 24;
    }
    return Optional.of(RobustStats.percentile(quantile, smears)).filter(px2 -> px2 > 0);
  }
}
