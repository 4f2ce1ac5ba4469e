package rondure.night;

import java.util.Objects;
import java.util.Optional;
import rondure.sky.Camera;
import rondure.sky.Direction;
import rondure.sky.FrameSky;
import rondure.sky.SceneSky;

/**
 * What the stars told about the aim and the lens of a scene, and how well the budget fits it.
 *
 * @param finding what could be solved
 * @param registeredFrames frames whose attitude is known
 * @param camera projection, focal length and distortion used, when any is known
 * @param calibrated whether they were found from the stars' motion, and not taken from the facts
 * @param centreDeclinationDeg declination of the image centre, north positive, at the first frame
 *     that knows it
 * @param poleErrorDeg standard error of the pole's direction
 * @param explainedShare share of the star shapes' variation that the budget explains (chi²)
 */
public record SceneSolution(
    SceneSky.Finding finding,
    int registeredFrames,
    Optional<Camera> camera,
    boolean calibrated,
    Optional<Double> centreDeclinationDeg,
    Optional<Double> poleErrorDeg,
    Optional<Double> explainedShare) {
  public SceneSolution {
    Objects.requireNonNull(finding, "finding");
    Objects.requireNonNull(camera, "camera");
    Objects.requireNonNull(centreDeclinationDeg, "centreDeclinationDeg");
    Objects.requireNonNull(poleErrorDeg, "poleErrorDeg");
    Objects.requireNonNull(explainedShare, "explainedShare");
  }

  static SceneSolution of(SceneSky sky, Optional<Double> explainedShare) {
    int registered = (int) sky.frames().stream().filter(FrameSky::isRegistered).count();
    Optional<Double> declination = sky.pole().map(SceneSolution::centreDeclinationDeg);
    return new SceneSolution(
        sky.finding(),
        registered,
        sky.finding() == SceneSky.Finding.SCALE_UNKNOWN ? Optional.empty() : sky.camera(),
        sky.calibrated(),
        declination,
        sky.pole().map(pole -> sky.poleErrorDeg()),
        explainedShare);
  }

  /** The optical axis is (0, 0, 1); sin δ is its component along the north pole. */
  private static double centreDeclinationDeg(Direction northPole) {
    return Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, northPole.z()))));
  }
}
