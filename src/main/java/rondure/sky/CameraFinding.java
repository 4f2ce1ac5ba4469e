package rondure.sky;

import java.util.List;
import java.util.Objects;

/**
 * What the turning sky tells of a camera.
 *
 * @param camera the calibrated camera, or the nominal one where nothing better was proven
 * @param outcome what was found
 * @param focalErrorShare standard error of the focal length, as a share of it; infinite when not
 *     fitted
 * @param k1Error standard error of k1; infinite when not fitted
 * @param correlation of both errors; 0 when not fitted
 * @param residualPx root mean square of the places' misfit per axis, outliers left out; NaN when
 *     not fitted
 * @param rateShare the sky's rate that the calibrated camera sees, over the sidereal one; NaN
 *     without a clock
 * @param scores how well each projection fits, best first
 */
public record CameraFinding(
    Camera camera,
    Outcome outcome,
    double focalErrorShare,
    double k1Error,
    double correlation,
    double residualPx,
    double rateShare,
    List<Score> scores) {

  /** What was found. */
  public enum Outcome {
    /** Focal length and distortion come from the scene. */
    CALIBRATED,
    /** Too few sightings, or too little motion between them. */
    TOO_FEW,
    /** The scene leaves the focal length open by more than the nominal value does. */
    TOO_UNCERTAIN,
    /** No camera that sees its whole frame explains the places within their errors. */
    NO_FIT
  }

  /**
   * One projection's fit.
   *
   * @param projection of the ideal lens
   * @param focalLengthPx the best focal length
   * @param k1 the best distortion
   * @param criterion squared misfits like chi squared, at a scale common to all projections, those
   *     of the camera's facts included; less is better
   */
  public record Score(Projection projection, double focalLengthPx, double k1, double criterion) {}

  public CameraFinding {
    Objects.requireNonNull(camera, "camera");
    Objects.requireNonNull(outcome, "outcome");
    scores = List.copyOf(scores);
    if (!(focalErrorShare >= 0 && k1Error >= 0)) {
      throw new IllegalArgumentException(
          "errors must be >= 0, were " + focalErrorShare + ", " + k1Error);
    }
    if (!(Math.abs(correlation) <= 1)) {
      throw new IllegalArgumentException("correlation must be in [-1, 1], was " + correlation);
    }
  }

  /** Nothing better than a camera's nominal values. */
  static CameraFinding nominal(Camera camera, Outcome outcome, List<Score> scores) {
    double open = Double.POSITIVE_INFINITY;
    return new CameraFinding(camera, outcome, open, open, 0, Double.NaN, Double.NaN, scores);
  }

  /** How far the calibrated camera may be wrong. */
  CameraDoubt doubt() {
    double covariance = correlation * focalErrorShare * k1Error;
    return new CameraDoubt(focalErrorShare * focalErrorShare, k1Error * k1Error, covariance);
  }

  public boolean isCalibrated() {
    return outcome == Outcome.CALIBRATED;
  }
}
