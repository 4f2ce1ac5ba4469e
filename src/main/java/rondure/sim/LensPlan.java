package rondure.sim;

import java.util.Objects;

/**
 * The lens of a night. Corner values are at half the sensor's diagonal from the centre.
 *
 * @param model invented name
 * @param focalLengthMm true focal length
 * @param fNumber aperture at which the aberrations are given
 * @param coreFwhmPx width of the best star, before the pixel's own 1/12 px²
 * @param moffatBeta β of a Moffat core (1 + r²/α²)^-β; 0 asks for a Gaussian core
 * @param distortionK1 radial distortion: tan θ becomes tan θ (1 + k1 tan² θ)
 * @param tiltRightMicrons focus error added at the right edge (and taken off at the left)
 * @param tiltDownMicrons focus error added at the lower edge
 * @param curvatureMicrons focus error added at the corner, growing with r²
 * @param astigmatismMicrons tangential minus sagittal focus error at the corner, growing with r²
 * @param comaPx coefficient of Seidel coma at the corner, growing with r: a ray through the pupil
 *     at (u, v) lands at coefficient · (3u² + v², 2uv), radial and tangential; negative: tail
 *     inwards
 * @param obstruction diameter of a central hole in the pupil over the pupil's diameter
 * @param vignettingStops light lost at the corner, growing with r²
 */
public record LensPlan(
    String model,
    double focalLengthMm,
    double fNumber,
    double coreFwhmPx,
    double moffatBeta,
    double distortionK1,
    double tiltRightMicrons,
    double tiltDownMicrons,
    double curvatureMicrons,
    double astigmatismMicrons,
    double comaPx,
    double obstruction,
    double vignettingStops) {

  public LensPlan {
    Objects.requireNonNull(model, "lens model");
    Checks.positive("focalLengthMm", focalLengthMm);
    Checks.positive("fNumber", fNumber);
    Checks.within("coreFwhmPx", coreFwhmPx, 0.4, 40);
    if (moffatBeta != 0) {
      Checks.within("moffatBeta", moffatBeta, 1.5, 20);
    }
    Checks.within("distortionK1", distortionK1, -0.2, 0.5);
    Checks.finite("tiltRightMicrons", tiltRightMicrons);
    Checks.finite("tiltDownMicrons", tiltDownMicrons);
    Checks.finite("curvatureMicrons", curvatureMicrons);
    Checks.finite("astigmatismMicrons", astigmatismMicrons);
    Checks.finite("comaPx", comaPx);
    Checks.within("obstruction", obstruction, 0, 0.9);
    Checks.within("vignettingStops", vignettingStops, 0, 6);
  }
}
