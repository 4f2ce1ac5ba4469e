package rondure.night;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rondure.base.Orientation;
import rondure.blur.SceneBudget;
import rondure.sky.Camera;
import rondure.sky.CameraFinding;
import rondure.sky.FrameSky;
import rondure.sky.ImageVelocity;
import rondure.sky.MountDrift;
import rondure.sky.SceneSky;
import rondure.sky.Spin;

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
 * @param projections how well each projection fits the stars' paths, best first
 * @param mount how the stars drift on a mount that follows the sky
 * @param explainedShare share of the star shapes' variation that the budget explains (chi²)
 * @param shared core and lens as the budget found them, from all frames that were explained
 *     together
 */
public record SceneSolution(
    SceneSky.Finding finding,
    int registeredFrames,
    Optional<Camera> camera,
    boolean calibrated,
    Optional<Double> centreDeclinationDeg,
    Optional<Double> poleErrorDeg,
    List<CameraFinding.Score> projections,
    Optional<Drift> mount,
    Optional<Double> explainedShare,
    Optional<SceneBudget.Shared> shared) {
  public SceneSolution {
    Objects.requireNonNull(finding, "finding");
    Objects.requireNonNull(camera, "camera");
    Objects.requireNonNull(centreDeclinationDeg, "centreDeclinationDeg");
    Objects.requireNonNull(poleErrorDeg, "poleErrorDeg");
    Objects.requireNonNull(mount, "mount");
    Objects.requireNonNull(explainedShare, "explainedShare");
    Objects.requireNonNull(shared, "shared");
    projections = List.copyOf(projections);
  }

  /** Where core and lens are not known. */
  public SceneSolution(
      SceneSky.Finding finding,
      int registeredFrames,
      Optional<Camera> camera,
      boolean calibrated,
      Optional<Double> centreDeclinationDeg,
      Optional<Double> poleErrorDeg,
      List<CameraFinding.Score> projections,
      Optional<Drift> mount,
      Optional<Double> explainedShare) {
    this(
        finding,
        registeredFrames,
        camera,
        calibrated,
        centreDeclinationDeg,
        poleErrorDeg,
        projections,
        mount,
        explainedShare,
        Optional.empty());
  }

  /**
   * Stars that drift on a mount.
   *
   * @param pxPerMin at the frame's centre
   * @param angleDeg where to, as displayed: 0 = to the right, clockwise, below 360
   * @param axisOffDeg of the mount's axis off the pole, if its rate is right
   */
  public record Drift(double pxPerMin, double angleDeg, double axisOffDeg) {

    static Drift of(MountDrift drift, Camera camera, Orientation orientation) {
      ImageVelocity seen = drift.atCentre(camera);
      double x = orientation.displayX(seen.xPxPerS(), seen.yPxPerS(), 1, 1);
      double y = orientation.displayY(seen.xPxPerS(), seen.yPxPerS(), 1, 1);
      double angle = Math.toDegrees(Math.atan2(y, x));
      return new Drift(60 * seen.speedPxPerS(), (angle + 360) % 360, drift.axisOffDeg());
    }
  }

  /**
   * @param sky of all frames that were explained together
   * @param own frames of the scene among them, in time order
   * @param orientation in which the scene's pictures are displayed
   * @param shared what the budget found the frames to have in common
   */
  static SceneSolution of(
      SceneSky sky,
      List<FrameSky> own,
      Orientation orientation,
      Optional<SceneBudget.Shared> shared) {
    int registered = (int) own.stream().filter(FrameSky::isRegistered).count();
    Optional<Double> declination =
        sky.pole()
            .flatMap(
                pole ->
                    own.stream()
                        .flatMap(frame -> frame.skySpin().stream())
                        .findFirst()
                        .map(SceneSolution::centreDeclinationDeg));
    return new SceneSolution(
        sky.finding(),
        registered,
        sky.finding() == SceneSky.Finding.SCALE_UNKNOWN ? Optional.empty() : sky.camera(),
        sky.calibrated(),
        declination,
        declination.map(known -> sky.poleErrorDeg()),
        sky.projections(),
        MountDrift.of(sky).flatMap(d -> sky.camera().map(c -> Drift.of(d, c, orientation))),
        shared.map(SceneBudget.Shared::explainedShare),
        shared);
  }

  /** The optical axis is (0, 0, 1); sin δ is its component along the north pole, -spin / rate. */
  private static double centreDeclinationDeg(Spin sky) {
    double sine = -sky.zRadPerS() / sky.rateRadPerS();
    return Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, sine))));
  }
}
